using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;

namespace Holdfast.Techniques.Infrared;

/// <summary>
/// "A bond forms on loading": the band moves by more than the resolution, and does not in the control, the same powder mixed with the salt or kept in solution without
/// metal.
/// </summary>
/// <remarks>Infrared alone never proves a bond; what holds is that the change is not one of mixing or of water.</remarks>
public sealed class BondFormed : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "bond-formed";

    /// <inheritdoc/>
    public string Wording => "On going from {before} to {after} a bond changes: the band at {wavenumber} moves, and not in {control}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
        [InfraredParameters.Before, InfraredParameters.After, InfraredParameters.Wavenumber, new("control", "physical mixture, or powder kept in solution without metal", "HAp-1 mixed", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var study = InfraredStudy.Of(evidence);
        var (before, after, control) = (study.For(claim.Words("before")), study.For(claim.Words("after")), study.For(claim.Words("control")));
        var loaded = BandShifts.Judge(claim, before, after);
        var decision = loaded.Numbers.IsEmpty ? loaded
            : Decide(loaded, control.IsEmpty ? null : BandShifts.Judge(claim, before, control));
        return decision.On(claim, ClaimSentence.Of(claim, this), InfraredParameters.Scope([.. before, .. after, .. control]), before.Concat(after).Concat(control).Select(s => s.Measurement.Id));
    }

    /// <summary>Judges the shift on loading beside that of the control.</summary>
    /// <param name="loaded">What <see cref="BandShifts"/> says of the loaded powder.</param>
    /// <param name="control">What it says of the control; null where none was measured.</param>
    public static Decision Decide(Decision loaded, Decision? control)
    {
        ArgumentNullException.ThrowIfNull(loaded);
        var ruling = loaded.Gated == Ruling.Contradicted || control?.Gated == Ruling.Holds ? Ruling.Contradicted
            : loaded.Gated == Ruling.Holds && control?.Gated == Ruling.Contradicted ? Ruling.Holds
            : Ruling.NotShownYet;
        var spoken = control is { Numbers.IsEmpty: false };
        return new(
            ruling,
            loaded.Reason + (control is null ? " No control was measured." : " In the control: " + char.ToLowerInvariant(control.Reason[0]) + control.Reason[1..]),
            "shift of a band on loading against that of a control")
        {
            Numbers = [.. loaded.Numbers, .. spoken ? control!.Numbers.Take(1).Select(n => n with { Name = "shift in the control" }) : []],
            Gates =
            [
                .. loaded.GatesBeside(ruling),
                new("control", spoken, spoken ? "a control without the bond was measured" : "no physical mixture, and no powder kept in solution without metal, was measured"),
            ],
            Questions = spoken ? loaded.Questions : [.. loaded.Questions, new("Q04", "Would the powder mixed dry with the salt, or kept in water without metal, show the same shift?")],
            Next = loaded.Next ?? new("Measure three pellets of the physical mixture, or of powder kept in the same solution without metal.", 3, [], "three preparations (common practice)"),
        };
    }
}
