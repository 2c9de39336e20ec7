using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>"The lattice of the doped powder differs from that of its parent": the difference of refined lengths and angles, with the doubt about the shift of each pattern in it.</summary>
/// <remarks>
/// Two-sided 95 % intervals of the differences, shared among the parameters (Bonferroni), degrees of freedom after Welch and Satterthwaite. Each uncertainty has half the difference
/// between two models of the shift added, so that a sample mounted too high cannot pass for a change. One line decides nothing: a change of the lattice moves lines with tan θ, a
/// mounting error with cos θ.
/// </remarks>
internal sealed class LatticeChanged : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest lines of each pattern beyond the parameters refined with them.</summary>
        public const int SpareLines = 3;

        /// <summary>A line at this 2θ at least, degrees: a lattice shows at high angles, a mounting error at low ones.</summary>
        public const double HighLine = 60;
    }

    /// <inheritdoc/>
    public string Id => "lattice-changed";

    /// <inheritdoc/>
    public string Wording => "The lattice of {powder} differs from that of {parent}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("powder", "powder whose lattice is claimed to differ", "ZF-3", null),
        new("parent", "powder it is compared with", "ZF-0", null),
        new("no-matter", "difference of a length too small to matter, fixed before the data were seen", "0.001 Å", "Å"),
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
        var study = DiffractionStudy.Of(evidence);
        var (powder, parent) = (study.Of(claim.Words("powder")), study.Of(claim.Words("parent")));
        var sentence = Phrase.Sentence(claim, Wording, ("powder", powder?.Sample ?? claim.Words("powder") ?? "the powder"), ("parent", parent?.Sample ?? claim.Words("parent") ?? "its parent"));
        return Decided(claim, powder, parent).On(claim, sentence, powder is null || parent is null ? null : $"one portion of each, {powder.Radiation.Name}; these batches", new[] { powder, parent }.OfType<PatternFound>().Select(p => p.Measurement.Id));
    }

    /// <summary>Judges the lengths and angles of two cells.</summary>
    /// <param name="parameters">Symbol, unit and both values of each.</param>
    /// <param name="spareLines">Lines beyond the refined parameters, of the pattern with fewer.</param>
    /// <param name="highest">2θ of the highest line, of the pattern where it is lower, degrees.</param>
    /// <param name="sameRadiation">Whether both were taken with the same radiation.</param>
    /// <param name="noMatter">Difference of a length too small to matter, Å; null for none.</param>
    public static Decision Decide(IReadOnlyList<(string Symbol, string Unit, Estimate Powder, Estimate Parent)> parameters, int spareLines, double highest, bool sameRadiation, double? noMatter)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        var level = 1 - 0.05 / parameters.Count;
        var differences = parameters.Select(p => (p.Symbol, p.Unit, D: Difference(p.Powder, p.Parent))).ToArray();
        var changed = differences.Where(d => !d.D.Interval(level).Contains(0)).ToArray();
        var inside = noMatter is { } band && differences.All(d => d.Unit != "Å" || d.D.Interval(level) is var i && i.Low > -band && i.High < band);
        var told = (changed.Length > 0 ? changed : differences).MaxBy(d => Math.Abs(d.D.T(0)));
        return new Decision(
            inside ? Ruling.Contradicted : changed.Length > 0 ? Ruling.Holds : Ruling.NotShownYet,
            $"{told.Symbol} differs by {Phrase.With(told.D.Value, told.Unit)}, {Phrase.Interval(told.D.Interval(level), told.Unit)}" + (parameters.Count > 1 ? $", shared among {Phrase.Count(parameters.Count, "parameter")}" : "")
                + (inside ? $"; all lengths stay inside ± {Phrase.With(noMatter!.Value, "Å")}, which was said not to matter." : changed.Length > 0 ? "." : "; no parameter differs by more than its uncertainty allows."),
            "two-sided 95 % interval of the difference of refined cells, shift refined and its doubt included")
        {
            Numbers = [.. differences.Select(d => Deciding.Of("difference of " + d.Symbol, d.D, level, d.Unit))],
            Gates =
            [
                new("lines", spareLines >= Limits.SpareLines, $"{Phrase.Count(Math.Max(spareLines, 0), "line")} beyond the refined parameters; {Phrase.Number(Limits.SpareLines)} are needed in each pattern") { Silences = true },
                new("high line", highest >= Limits.HighLine, $"the highest line used lies at {Phrase.With(highest, "°")}; one at {Phrase.With(Limits.HighLine, "°")} or more is needed in each pattern"),
                new("radiation", sameRadiation, sameRadiation ? "both with the same radiation" : "the two patterns were taken with different radiation"),
            ],
            Warnings = ["A changed lattice does not say where the ions are: composition and charge balance must agree.", "No internal standard is known of; the height of each sample was refined instead."],
            Questions = changed.Length == 0 ? [new Question("Q03", "Your cell change is smaller than its uncertainty: what else says the ions are inside and not on the surface?")] : [],
            Next = Next,
        };
    }

    /// <summary>A length or angle of a pattern as an estimate.</summary>
    /// <param name="pattern">The pattern; it has a lattice.</param>
    /// <param name="at">Which parameter.</param>
    internal static Estimate Of(PatternFound pattern, int at)
        => new("lattice refinement", pattern.Lattice!.Parameters[at].Value, pattern.Lattice.Parameters[at].U, pattern.Lattice.Fit.DegreesOfFreedom, pattern.Lattice.Fit.Residuals.Length);

    private static Decision Decided(Claim claim, PatternFound? powder, PatternFound? parent)
    {
        foreach (var (name, one) in new[] { ("powder", powder), ("parent", parent) })
        {
            if (claim.Words(name) is null)
                return Decision.NotNamed(claim, name, "ZF-3");
            if (one is null)
                return Decision.Missing($"There is no pattern of {claim.Words(name)}. Take one in, or correct the name.", Next);
            if (one.Lattice is null)
                return Decision.Missing($"The lines of {one.Sample} give no lattice: take the structure of its phase in as CIF, or state its cell, and scan to 90°.", Next);
        }

        if (powder!.Lattice!.Fit.System != parent!.Lattice!.Fit.System)
            return Decision.Missing("The two cells are of different systems, so that no length can be compared.", Next);
        var parameters = powder.Lattice.Parameters.Select((p, i) => (p.Symbol, p.Unit, Of(powder, i), Of(parent, i))).ToArray();
        return Decide(parameters, Math.Min(powder.Lattice.Fit.DegreesOfFreedom, parent.Lattice.Fit.DegreesOfFreedom), Math.Min(Highest(powder), Highest(parent)),
            Math.Abs(powder.Radiation.Ka1 / parent.Radiation.Ka1 - 1) < 1e-3, claim.In("no-matter", "Å"));
    }

    /// <summary>2θ of the highest line that the lattice may rest on, degrees.</summary>
    /// <param name="pattern">The pattern.</param>
    internal static double Highest(PatternFound pattern)
        => (pattern.Main?.Match.Matched.Where(m => m.IsAlone).Select(m => m.Line.TwoTheta) ?? pattern.TrueLines.Select(l => l.TwoTheta)).DefaultIfEmpty().Max();

    private static Estimate Difference(Estimate a, Estimate b)
        => new("difference of refined parameters", a.Value - b.Value, Math.Sqrt(a.StandardError * a.StandardError + b.StandardError * b.StandardError),
            WelchSatterthwaite.Of((a.StandardError * a.StandardError, a.DegreesOfFreedom), (b.StandardError * b.StandardError, b.DegreesOfFreedom)), a.N + b.N);

    private static NextExperiment Next => new(
        "Mix 10 to 20 % of a standard (silicon, corundum) into a portion of each powder and scan both on one day from 20 to 120° with the same settings.", 2, ["parent", "doped"], "an internal standard removes the doubt between shift models (common practice)");
}
