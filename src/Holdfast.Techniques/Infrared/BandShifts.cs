using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Infrared;

/// <summary>"The band moves by more than the resolution": Welch on its position in several preparations, against what the instrument can tell apart.</summary>
public sealed class BandShifts : IClaimRule
{
    /// <summary>Id of the rule.</summary>
    public const string RuleId = "band-shifts";

    /// <summary>The limits of the rule.</summary>
    public static class Limits
    {
        /// <summary>Fewest spectra of each powder, each of a preparation of its own.</summary>
        public const int Preparations = 3;
    }

    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The band of {before} at {wavenumber} moves by more than the resolution in {after}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [InfraredParameters.Before, InfraredParameters.Wavenumber, InfraredParameters.After];

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
        var (before, after) = (study.For(claim.Words("before")), study.For(claim.Words("after")));
        return Judge(claim, before, after).On(claim, ClaimSentence.Of(claim, this), InfraredParameters.Scope([.. before, .. after]), before.Concat(after).Select(s => s.Measurement.Id));
    }

    /// <summary>Judges the spectra that a claim names.</summary>
    /// <param name="claim">The claim, with a wavenumber.</param>
    /// <param name="before">Spectra before.</param>
    /// <param name="after">Spectra after.</param>
    internal static Decision Judge(Claim claim, ImmutableArray<MeasuredSpectrum> before, ImmutableArray<MeasuredSpectrum> after)
    {
        if (claim.In("wavenumber", "cm^-1") is not { } at)
            return Decision.NotNamed(claim, "wavenumber", "1041 cm-1");
        if (before.IsEmpty)
            return InfraredParameters.NoSpectrum(claim.Words("before"));
        if (after.IsEmpty)
            return InfraredParameters.NoSpectrum(claim.Words("after"));
        var (first, second) = (Positions(before, at), Positions(after, at));
        if (first.IsEmpty || second.IsEmpty)
            return Decision.Missing($"{(first.IsEmpty ? "Before" : "After")} there is no band within {Phrase.Number(Holdfast.Infrared.BandShift.SameBandWithin)} cm⁻¹ of {Phrase.With(at, "cm⁻¹")}: it cannot be said to move.");
        return Decide(first, second, before.Concat(after).Max(s => s.Spectrum!.Limit), before.Concat(after).Select(s => s.Spectrum!.IsReflected).Distinct().Count() == 1);
    }

    /// <summary>Judges positions of a band.</summary>
    /// <param name="before">Position and standard uncertainty in each spectrum before, cm⁻¹.</param>
    /// <param name="after">The same after, cm⁻¹.</param>
    /// <param name="resolution">What the instrument can tell apart, cm⁻¹.</param>
    /// <param name="measuredAlike">False when some were measured by total reflection and some not.</param>
    public static Decision Decide(IReadOnlyList<(double At, double U)> before, IReadOnlyList<(double At, double U)> after, double resolution, bool measuredAlike)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var shift = after.Average(p => p.At) - before.Average(p => p.At);
        var next = new NextExperiment(
            $"Measure {Limits.Preparations} pellets before and {Limits.Preparations} after, alike, at a resolution of at most {Phrase.With(Math.Max(0.5, Math.Abs(shift) / 2), "cm⁻¹")}, and {Limits.Preparations} of powder kept in the same solution without metal.",
            2 * Limits.Preparations, [], "half the shift claimed (common practice)");
        Question[] questions = Math.Abs(shift) < resolution ? [new("Q11", $"Your points are {Phrase.With(resolution, "cm⁻¹")} apart: how do you see {Phrase.With(Math.Abs(shift), "cm⁻¹")}?")] : [];
        double propagated = Math.Sqrt(Mean(before) + Mean(after));
        if (TwoMeans.Welch([.. after.Select(p => p.At)], [.. before.Select(p => p.At)]).Value is not { } welch)
        {
            return Decision.Missing(
                $"The band lies {Phrase.With(shift, "cm⁻¹")} away (standard uncertainty {Phrase.With(propagated, "cm⁻¹")} from the peaks alone) in {Phrase.Count(before.Count, "spectrum", "spectra")} before and {Phrase.Number(after.Count)} after: how preparations scatter is not known.",
                next, [.. questions]) with
            { Numbers = [new("shift", shift, null, null, "cm⁻¹", "no interval: preparations were not repeated") { U = propagated }] };
        }

        // The size of the shift, whichever way: the sign was not claimed.
        var size = (welch with { Value = Math.Abs(welch.Value) }).AtLeast(propagated);
        return new(
            IntervalRuling.Above(size, resolution),
            $"The band moves by {Phrase.With(shift, "cm⁻¹")}, {Phrase.Interval(welch.AtLeast(propagated).Interval(), "cm⁻¹")}, n = {before.Count} and {after.Count} spectra; the resolution is {Phrase.With(resolution, "cm⁻¹")}.",
            "Welch on the position of the band, one-sided against the resolution")
        {
            Numbers = [Deciding.Of("shift", welch.AtLeast(propagated), 0.95, "cm⁻¹"), Deciding.Plain("resolution", resolution, "cm⁻¹")],
            Gates =
            [
                new("preparations", Math.Min(before.Count, after.Count) >= Limits.Preparations, $"{before.Count} and {after.Count} spectra; {Limits.Preparations} of each are needed"),
                new("measured alike", measuredAlike, measuredAlike ? "all spectra were measured alike" : "total reflection moves bands by itself and is not compared with transmission") { Silences = true },
            ],
            Questions = [.. questions],
            Next = next,
        };
    }

    /// <summary>Positions of the band in each spectrum that has it.</summary>
    /// <param name="spectra">The spectra.</param>
    /// <param name="at">Wavenumber, cm⁻¹.</param>
    internal static ImmutableArray<(double At, double U)> Positions(ImmutableArray<MeasuredSpectrum> spectra, double at)
        => [.. spectra.Select(s => s.Near(at)).OfType<NamedBand>().Select(b => (b.Band.Wavenumber, b.Band.U))];

    private static double Mean(IReadOnlyList<(double At, double U)> positions) => positions.Sum(p => p.U * p.U) / positions.Count / positions.Count;
}
