using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>"The powder is one phase": no line of another, all strong lines of its own, and a pattern that would have shown a foreign line of the stated height.</summary>
/// <remarks>
/// A line counts from z = 5, net counts over their standard uncertainty. Heights of foreign lines against the strongest line, 95 % interval. Amorphous matter shows no line: the
/// claim is about crystalline phases alone, and is never "pure" without its limit.
/// </remarks>
internal sealed class PhasePure : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Smallest part of the own lines above 10 % that must be seen; no unit.</summary>
        public const double OwnLines = 1;

        /// <summary>z from which a line of no known phase counts; no unit.</summary>
        public const double Stranger = LineMatch.SecondPhase;
    }

    // Two-sided 95 % of a normal.
    private const double Wide = 1.96;

    /// <inheritdoc/>
    public string Id => "phase-pure";

    /// <inheritdoc/>
    public string Wording => "{powder} shows no crystalline phase beside {phase}, down to lines of {smallest-line} of the strongest.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("powder", "powder whose pattern is meant", "ZF-3", null),
        new("phase", "phase it is claimed to be", "Hydroxyapatite", null),
        new("smallest-line", "smallest foreign line that would have been seen, of the strongest", "2 %", "%"),
    ];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var pattern = DiffractionStudy.Of(evidence).Of(claim.Words("powder"));
        var phase = pattern?.Phases.FirstOrDefault(p => p.HasIntensities && (claim.Words("phase") is not { } name || Studies.Import.Techniques.PowderName.Same(p.Name, name)));
        var sentence = Phrase.Sentence(claim, Wording, ("powder", pattern?.Sample ?? claim.Words("powder") ?? "the powder"), ("phase", phase?.Name ?? claim.Words("phase") ?? "the phase"), ("smallest-line", claim.Words("smallest-line") ?? "the stated height"));
        var decision = claim.Words("powder") is null ? Decision.NotNamed(claim, "powder", "ZF-3")
            : pattern is null ? Decision.Missing($"There is no pattern of {claim.Words("powder")}. Take one in, or correct the name.", Next)
            : pattern.Fitted is not var (scan, _) ? Decision.Missing($"Of {pattern.Sample} there is a list of lines only: a weaker line that its author left out does not stand in it. Take the pattern in.", Next)
            : phase is null ? Decision.Missing($"No structure of {claim.Words("phase") ?? "a phase"} that the lines of {pattern.Sample} fit is in the study. Take it in as CIF.", Next)
            : claim.In("smallest-line", "%") is not { } limit || limit is <= 0 or >= 100 ? Decision.NotNamed(claim, "smallest-line", "2 %")
            : Decide(Foreign(pattern, phase), OwnSeen(phase), phase.Match.DetectionLimit, limit, scan.AreCounts, pattern.Lines.Any(l => (l.Flags & (LineDoubts.MaybeKBeta | LineDoubts.MaybeTungsten)) != LineDoubts.None));
        return decision.On(claim, sentence, pattern is null || phase is null ? null : string.Create(CultureInfo.InvariantCulture, $"crystalline phases with lines between {pattern.Range.From:0.#} and {pattern.Range.To:0.#}° ({pattern.Radiation.Name}), this portion"), pattern is null ? [] : [pattern.Measurement.Id]);
    }

    /// <summary>Judges a pattern.</summary>
    /// <param name="strangers">Lines of no known phase: 2θ in degrees, z, height as per cent of the strongest and its standard uncertainty.</param>
    /// <param name="ownSeen">Part of the own lines above 10 % that are seen, 0 to 1; no unit.</param>
    /// <param name="detectable">Height that a line must have to be seen, per cent of the strongest.</param>
    /// <param name="stated">Height that the claim states, per cent.</param>
    /// <param name="areCounts">Whether the readings are true counts.</param>
    /// <param name="ghosts">Whether lines may be ghosts of the tube.</param>
    public static Decision Decide(IReadOnlyList<(double At, double Z, double Share, double U)> strangers, double ownSeen, double detectable, double stated, bool areCounts, bool ghosts)
    {
        ArgumentNullException.ThrowIfNull(strangers);
        var counted = strangers.Where(s => s.Z >= Limits.Stranger).OrderByDescending(s => s.Share).ToArray();
        var over = counted.Any(s => s.Share - Wide * s.U > stated);
        return new Decision(
            over ? Ruling.Contradicted : counted.Length == 0 ? Ruling.Holds : Ruling.NotShownYet,
            counted.Length > 0
                ? $"{Phrase.Count(counted.Length, "line")} of no known phase: the highest, at {Phrase.Plain(Math.Round(counted[0].At, 2), "°")}, has {Phrase.With(counted[0].Share, "%")} of the strongest (± {Phrase.With(Wide * counted[0].U, "%")}, z = {Phrase.Number(counted[0].Z)}); the claim says {Phrase.With(stated, "%")}."
                : $"No line of another phase has z of {Phrase.Number(Limits.Stranger)} or more; a line of {Phrase.With(detectable, "%")} of the strongest would have been seen, and the claim says {Phrase.With(stated, "%")}.",
            "lines of no known phase, by counts above their surroundings")
        {
            Numbers =
            [
                .. counted.Take(3).Select(s => new Deciding($"foreign line at {Phrase.Plain(Math.Round(s.At, 2), "°")}", s.Share, s.Share - Wide * s.U, s.Share + Wide * s.U, "%", "height of the strongest line, 95 % interval") { Level = 0.95 }),
                Deciding.Plain("smallest line that would be seen", detectable, "%"), Deciding.Plain("stated", stated, "%"),
            ],
            Gates =
            [
                new("own lines", ownSeen >= Limits.OwnLines, $"{Phrase.With(100 * ownSeen, "%")} of the phase's own lines above {Phrase.With(LineMatch.MustBeSeen, "%")} are seen; all are needed"),
                new("limit", detectable <= stated, $"a line would only be seen from {Phrase.With(detectable, "%")} of the strongest on"),
                new("counts", areCounts, areCounts ? "the readings are counts" : "the readings are no true counts, so that z is not known"),
            ],
            Warnings = ["Amorphous matter shows no line; per cent of a line is not per cent by mass.", .. ghosts ? ["Some lines may be ghosts of the tube (Kβ, tungsten) and were not counted."] : Array.Empty<string>()],
            Questions =
            [
                .. counted.Length > 0 ? [new Question("Q01", $"What is the line at {Phrase.Plain(Math.Round(counted[0].At, 2), "°")}, and how much of it would your capacity need to be explained by it?")] : Array.Empty<Question>(),
                .. detectable > stated ? [new Question("Q02", "How much of another crystalline phase could be present without your seeing it?")] : Array.Empty<Question>(),
            ],
            Next = detectable > stated && counted.Length == 0
                ? new($"Count {Phrase.Number(Math.Ceiling(Math.Pow(detectable / stated, 2)))} times as long over the strongest lines of the likely second phases.", null, [], "the smallest visible line falls with the root of the counting time")
                : Next,
        };
    }

    private static NextExperiment Next => new("Scan slowly, with true counts, over the strongest lines of the likely second phases, and take the structure of the phase in as CIF.", null, [], "common practice");

    private static double OwnSeen(PhaseFound phase)
        => phase.Lines.Count(l => l.Intensity >= LineMatch.MustBeSeen) is > 0 and var strong ? 1 - (double)phase.Match.Missing.Length / strong : 0;

    // Lines that no other phase of the study explains count as foreign to this one too: another phase is another phase.
    private static (double, double, double, double)[] Foreign(PatternFound pattern, PhaseFound phase)
    {
        var top = pattern.TrueLines.Select(l => l.Area).DefaultIfEmpty(1).Max();
        return [.. phase.Match.Strangers.Select(l => (l.TwoTheta, l.Significance, 100 * l.Area / top, 100 * l.AreaU / top))];
    }
}
