using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>"The ion entered the lattice": the cell changes step by step with the measured content, in the direction the ion's size asks for, and no phase of the ion shows.</summary>
/// <remarks>Weighted straight line of the lattice parameter on the bulk content over parent and doped powders (weights 1/u²); two-sided 95 % interval of its slope with n − 2 degrees of freedom,
/// the standard error never smaller than the stated uncertainties give. Diffraction alone shows no site: content comes from another method.</remarks>
internal sealed class EnteredLattice : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest contents, the parent's included.</summary>
        public const int Contents = 3;
    }

    /// <inheritdoc/>
    public string Id => "entered-lattice";

    /// <inheritdoc/>
    public string Wording => "{dopant} entered the lattice of {parent}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["powders", "contents", "cell-becomes"];

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("dopant", "ion that is said to be in the lattice", "Eu", null),
        new("parent", "powder without it", "ZF-0", null),
        new("powders", "powders with it, rising content", "ZF-1, ZF-3", null),
        new("contents", "their content by ICP or AAS in the same order", "1.0 %, 2.9 %", null),
        new("cell-becomes", "larger or smaller, as the size of the ion asks for", "larger", null),
    ];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => Listed(claim, "powders") is [.., var last] ? [Claim.Raised("lattice-changed", ("powder", last), ("parent", claim.Words("parent")))] : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var study = DiffractionStudy.Of(evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("dopant", claim.Words("dopant") ?? "the ion"), ("parent", claim.Words("parent") ?? "the parent"));
        string[] names = [.. claim.Words("parent") is { } parent ? [parent] : Array.Empty<string>(), .. Listed(claim, "powders")];
        PatternFound?[] patterns = [.. names.Select(study.Of)];
        return Decided(claim, names, patterns).On(claim, sentence, $"crystalline part of {Phrase.Count(patterns.Length, "powder")}; these batches", patterns.OfType<PatternFound>().Select(p => p.Measurement.Id));
    }

    /// <summary>Judges a series of powders.</summary>
    /// <param name="symbol">Lattice parameter.</param>
    /// <param name="points">Content in per cent, lattice parameter and its standard uncertainty in Å, the parent first.</param>
    /// <param name="larger">True when the cell is expected to grow, false to shrink, null when nothing was said.</param>
    /// <param name="strangers">Lines of no known phase with z of 5 or more, over all doped powders; null where no phase is known to compare with.</param>
    public static Decision Decide(string symbol, IReadOnlyList<(double Content, double Value, double U)> points, bool? larger, int? strangers)
    {
        ArgumentNullException.ThrowIfNull(points);
        var distinct = points.Select(p => p.Content).Distinct().Count();
        if (points.Count < Limits.Contents || distinct < Limits.Contents || points.Any(p => !(p.U > 0)))
            return Decision.Missing($"{Phrase.Count(distinct, "content")} with a lattice; {Phrase.Number(Limits.Contents)}, the parent included, are needed: one doped powder gives no slope.", Next, new Question("Q04", "Would undoped powder stirred with the dopant salt and dried show the same?"));
        double s = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
        foreach (var (x, y, u) in points)
        {
            var w = 1 / (u * u);
            (s, sx, sy, sxx, sxy) = (s + w, sx + w * x, sy + w * y, sxx + w * x * x, sxy + w * x * y);
        }

        var d = s * sxx - sx * sx;
        var (value, intercept) = ((s * sxy - sx * sy) / d, (sxx * sy - sx * sxy) / d);
        var chi = points.Sum(p => Math.Pow((p.Value - intercept - value * p.Content) / p.U, 2)) / (points.Count - 2);
        var slope = new Estimate("weighted straight line", value, Math.Sqrt(s / d * Math.Max(1, chi)), points.Count - 2, points.Count);
        var interval = slope.Interval();
        var sure = !interval.Contains(0);
        var right = larger is null ? (bool?)null : larger.Value == value > 0;
        return new Decision(
            strangers > 0 || sure && right == false ? Ruling.Contradicted : sure && right == true ? Ruling.Holds : Ruling.NotShownYet,
            $"{symbol} changes by {Phrase.With(slope.Value, "Å")} per % of content, {Phrase.Interval(interval, "Å")} over {Phrase.Count(points.Count, "powder")}"
                + (strangers > 0 ? $"; yet {Phrase.Count(strangers.Value, "line")} of no known phase stand in the doped patterns." : right == false && sure ? ", against the direction the ion's size asks for." : "."),
            "slope of the weighted line of the lattice parameter on the content, t interval")
        {
            Numbers = [Deciding.Of($"change of {symbol} per % of content", slope, 0.95, "Å"), .. strangers is { } n ? [Deciding.Plain("lines of no known phase", n)] : Array.Empty<Deciding>()],
            Gates =
            [
                new("direction", larger is not null, "whether the cell should become larger or smaller was not said beforehand"),
                new("phases", strangers is not null, "no structure of the host was compared, so that a phase of the ion may be overlooked"),
            ],
            Warnings = ["A straight change of the cell fits ions in the lattice; charge balance and a site-sensitive method say which site."],
            Questions = sure ? [] : [new Question("Q03", "Your cell change is smaller than its uncertainty: what else says the ions are inside and not on the surface?")],
            Next = Next,
        };
    }

    private static Decision Decided(Claim claim, string[] names, PatternFound?[] patterns)
    {
        if (claim.Words("parent") is null)
            return Decision.NotNamed(claim, "parent", "ZF-0");
        if (Listed(claim, "powders").Length == 0)
            return Decision.NotNamed(claim, "powders", "ZF-1, ZF-3");
        var missing = Array.FindIndex(patterns, p => p?.Lattice is null);
        if (missing >= 0)
            return Decision.Missing(patterns[missing] is null ? $"There is no pattern of {names[missing]}. Take one in, or correct the name." : $"The lines of {names[missing]} give no lattice: take the structure of its phase in as CIF, or state its cell.", Next);
        double[] contents = [0, .. Listed(claim, "contents").Select(Per).OfType<double>()];
        if (contents.Length != names.Length)
            return Decision.NotNamed(claim, "contents", "1.0 %, 2.9 %");
        bool? larger = claim.Words("cell-becomes")?.Trim().ToLowerInvariant() switch { "larger" => true, "smaller" => false, _ => null };
        int? strangers = patterns.Skip(1).All(p => p!.Phases.Any(f => f.HasIntensities)) ? patterns.Skip(1).Sum(p => p!.Strangers.Length) : null;
        return Decide(patterns[0]!.Lattice!.Parameters[0].Symbol, [.. patterns.Select((p, i) => (contents[i], p!.Lattice!.Parameters[0].Value, p.Lattice.Parameters[0].U))], larger, strangers);
    }

    private static double? Per(string words)
        => double.TryParse(words.TrimEnd('%', ' ').Split(' ')[0], System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var value) && value > 0 ? value : null;

    private static string[] Listed(Claim claim, string name) => claim.Words(name)?.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [];

    private static NextExperiment Next => new(
        "Make the powder with no, half, the full and twice the content, measure the content of each by ICP, and scan each with an internal standard; wash one portion, and measure a dry mixture with the salt as control.",
        5, ["0", "x/2", "x", "2x"], "at least three contents for a slope (common practice)");
}
