using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Infrared;

namespace Holdfast.Techniques.Infrared;

/// <summary>"The carboxylate sits on the metal in this way": the distance of its two stretches against that of the sodium salt of the same acid.</summary>
/// <remarks>G. B. Deacon and R. J. Phillips, Coord. Chem. Rev. 33 (1980) 227, with many exceptions: it suggests and shows no more.</remarks>
public sealed class CarboxylateBound : IClaimRule
{
    private const string Group = "carboxylate anion";

    /// <inheritdoc/>
    public string Id => "carboxylate-bound";

    /// <inheritdoc/>
    public string Wording => "The stretches of {powder} suggest {binding} carboxylate, by those of {salt}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
        [InfraredParameters.Powder, new("binding", "unidentate, chelating, or ionic or bridging", "unidentate", null), new("salt", "sodium salt of the same acid", "sodium acetate", null)];

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
        var (powder, salt) = (study.For(claim.Words("powder")), study.For(claim.Words("salt")));
        var decision = powder.IsEmpty ? InfraredParameters.NoSpectrum(claim.Words("powder"))
            : salt.IsEmpty ? InfraredParameters.NoSpectrum(claim.Words("salt"))
            : BindingNamed(claim.Words("binding")) is not { } binding ? Decision.NotNamed(claim, "binding", "unidentate")
            : Stretches(powder[0]) is not { } own ? Decision.Missing($"{powder[0].Name} does not show both stretches of a carboxylate.")
            : Stretches(salt[0]) is not { } reference ? Decision.Missing($"{salt[0].Name} does not show both stretches of a carboxylate.")
            : Decide(own, reference, binding, powder[0].Spectrum!.IsReflected == salt[0].Spectrum!.IsReflected);
        return decision.On(claim, ClaimSentence.Of(claim, this), InfraredParameters.Scope([.. powder, .. salt]), powder.Concat(salt).Select(s => s.Measurement.Id));
    }

    /// <summary>Judges two distances.</summary>
    /// <param name="own">Of the powder.</param>
    /// <param name="salt">Of the sodium salt.</param>
    /// <param name="binding">What is claimed.</param>
    /// <param name="measuredAlike">False when one was measured by total reflection and the other not.</param>
    public static Decision Decide(CarboxylateStretches own, CarboxylateStretches salt, CarboxylateBinding binding, bool measuredAlike)
    {
        ArgumentNullException.ThrowIfNull(own);
        ArgumentNullException.ThrowIfNull(salt);
        var found = own.Against(salt);
        return new(
            found == CarboxylateBinding.NotTold ? Ruling.NotShownYet : found == binding ? Ruling.Holds : Ruling.Contradicted,
            $"The stretches lie {Phrase.With(own.Difference, "cm⁻¹")} apart, those of the salt {Phrase.With(salt.Difference, "cm⁻¹")}: {Words(found)}.",
            "distance of the carboxylate stretches against the sodium salt's")
        {
            Numbers =
            [
                new("distance of the stretches", own.Difference, null, null, "cm⁻¹", null) { U = own.U }, new("the salt's", salt.Difference, null, null, "cm⁻¹", null) { U = salt.U },
            ],
            Gates = [new("measured alike", measuredAlike, measuredAlike ? "both were measured alike" : "total reflection moves bands by itself and is not compared with transmission") { Silences = true }],
            Warnings = ["The rule has many exceptions: it suggests, and a structure shows."],
            Questions = [new("Q12", "Which other evidence do you have for how the carboxylate sits?")],
            Next = new("Measure the sodium salt of the same acid and the powder alike, three pellets each; a crystal structure settles it.", 6, [], "three preparations (common practice)"),
        };
    }

    private static CarboxylateStretches? Stretches(MeasuredSpectrum spectrum)
    {
        var rows = GroupRange.All.Where(r => r.Group == Group).OrderByDescending(r => r.Low).ToArray();
        var bands = rows.Select(r => spectrum.Bands.Where(b => r.Fits(b.Band) && b.Air.All(a => a.Name != "water vapour")).MaxBy(b => b.Band.Prominence)?.Band).ToArray();
        return bands[0] is { } high && bands[^1] is { } low ? CarboxylateStretches.Of(high, low) : null;
    }

    private static CarboxylateBinding? BindingNamed(string? words) => words?.Trim().ToUpperInvariant() switch
    {
        "UNIDENTATE" or "MONODENTATE" => CarboxylateBinding.Unidentate,
        "CHELATING" or "BIDENTATE CHELATING" => CarboxylateBinding.Chelating,
        "IONIC" or "BRIDGING" or "IONIC OR BRIDGING" => CarboxylateBinding.IonicOrBridging,
        _ => null,
    };

    private static string Words(CarboxylateBinding binding) => binding switch
    {
        CarboxylateBinding.Unidentate => "larger than the salt's by more than " + Phrase.With(CarboxylateStretches.LargerBy, "cm⁻¹") + ", as unidentate ones are",
        CarboxylateBinding.Chelating => "smaller than the salt's by more than " + Phrase.With(CarboxylateStretches.SmallerBy, "cm⁻¹") + ", as chelating ones are",
        CarboxylateBinding.IonicOrBridging => "like the salt's, as ionic and bridging ones are",
        _ => "too near a limit to be told",
    };
}
