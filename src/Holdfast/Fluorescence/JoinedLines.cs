using Holdfast.Fitting;
using Holdfast.Fitting.Lines;
using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>
/// Two straight lines that meet at a break found by least squares, y = a + b1·x + b2·max(0, x − B), against one line. A curve that bends smoothly
/// always yields two lines: they are two regions of use, not two mechanisms.
/// </summary>
/// <remarks>
/// Between two levels the best break is where the separate lines of both sides cross, if they cross there (D. J. Hudson, J. Am. Stat. Assoc. 61 (1966)
/// 1097; from memory); else it stands at a level. Interval of the break: where the sum of squares rises by the factor 1 + F(1, n − 4)/(n − 4).
/// </remarks>
/// <param name="Break">Where the lines meet, in the unit of x.</param>
/// <param name="BreakInterval">95 % profile interval of the break, cut at the levels between which a break was looked for.</param>
/// <param name="First">Slope below the break, unit of y over unit of x.</param>
/// <param name="Second">Slope above it.</param>
/// <param name="SumOfSquares">Sum of squared residuals, four parameters.</param>
/// <param name="OneLine">The single line.</param>
/// <param name="Gain">AICc of the single line less that of the two; null where either is not defined.</param>
public sealed record JoinedLines(
    double Break, Interval BreakInterval, double First, double Second, double SumOfSquares, StraightLine OneLine, double? Gain)
{
    /// <summary>Fewest different levels on each side of the break: replicates at one level say nothing of a slope.</summary>
    public const int FewestLevels = 3;

    /// <summary>AICc that two lines must gain before they are worth saying.</summary>
    public const double WorthSaying = 4;

    private const int Parameters = 4;

    /// <summary>True when two lines are worth saying; else one smooth curve describes the data as well.</summary>
    public bool AreShown => Gain > WorthSaying;

    /// <summary>Finds the break.</summary>
    /// <param name="x">Abscissas, any unit.</param>
    /// <param name="y">Ordinates, any unit.</param>
    /// <returns>The lines; none with fewer than three levels on each side of every possible break.</returns>
    public static Outcome<JoinedLines> Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        if (x.Count != y.Count)
            throw new ArgumentException(FormattableString.Invariant($"{x.Count} abscissas and {y.Count} ordinates."), nameof(y));
        double[] levels = [.. x.Distinct().Order()];
        var allowed = Enumerable.Range(0, Math.Max(levels.Length - 1, 0)).Where(i => HasBothSides(x, levels[i])).ToArray();
        if (allowed.Length == 0 || x.Count <= Parameters)
            return Outcome<JoinedLines>.None(FluorescenceFindings.TooFewForTwoLines(x.Count));

        // The break lies after at least three levels and before at least three.
        var (low, high) = (levels[allowed[0]], levels[allowed[^1] + 1]);
        var candidates = allowed.SelectMany(i => Candidates(x, y, levels[i], levels[i + 1]))
            .Where(b => b > low && b < high).Distinct().Select(b => (Break: b, Fit: At(x, y, b))).Where(c => c.Fit is not null).ToArray();
        if (candidates.Length == 0)
            return Outcome<JoinedLines>.None(FluorescenceFindings.TooFewForTwoLines(x.Count));
        var (at, fit) = candidates.MinBy(c => c.Fit!.SumOfSquares);
        var one = StraightLine.Through([.. x], [.. y]);
        var gain = Criteria.Of(x.Count, 2, one.ResidualSquares, known: false)?.Aicc - Criteria.Of(x.Count, Parameters, fit!.SumOfSquares, known: false)?.Aicc;
        var lines = new JoinedLines(
            at, Profile(x, y, at, fit.SumOfSquares, low, high), fit.Coefficients[1], fit.Coefficients[1] + fit.Coefficients[2], fit.SumOfSquares, one, gain);
        return new(lines, [lines.AreShown ? FluorescenceFindings.TwoRegions(at, gain!.Value) : FluorescenceFindings.OneSmoothCurve(gain)]);
    }

    private static bool HasBothSides(IReadOnlyList<double> x, double upTo)
        => x.Where(v => v <= upTo).Distinct().Count() >= FewestLevels && x.Where(v => v > upTo).Distinct().Count() >= FewestLevels;

    // Between two neighbouring levels: the crossing of the separate lines where it falls between them, and both ends.
    private static IEnumerable<double> Candidates(IReadOnlyList<double> x, IReadOnlyList<double> y, double from, double to)
    {
        var below = Through(x, y, v => v <= from);
        var above = Through(x, y, v => v >= to);
        var crossing = (above.Intercept - below.Intercept) / (below.Slope - above.Slope);
        return crossing > from && crossing < to ? [from, crossing, to] : [from, to];
    }

    private static StraightLine Through(IReadOnlyList<double> x, IReadOnlyList<double> y, Func<double, bool> use)
    {
        int[] used = [.. Enumerable.Range(0, x.Count).Where(i => use(x[i]))];
        return StraightLine.Through(Array.ConvertAll(used, i => x[i]), Array.ConvertAll(used, i => y[i]));
    }

    private static LinearModel? At(IReadOnlyList<double> x, IReadOnlyList<double> y, double b)
        => LinearModel.Of([[.. x.Select(_ => 1.0)], [.. x], [.. x.Select(v => Math.Max(0, v - b))]], y).Value;

    private static Interval Profile(IReadOnlyList<double> x, IReadOnlyList<double> y, double at, double least, double low, double high)
    {
        var dof = x.Count - Parameters;
        var cut = least * (1 + FisherDistribution.Quantile(0.95, 1, dof) / dof);
        double Excess(double b) => (At(x, y, b)?.SumOfSquares ?? double.PositiveInfinity) - cut;

        // A break at the very end makes one of the terms vanish; the search stays a hair inside.
        double End(double limit)
        {
            var inside = limit + 1e-9 * (at - limit);
            return Excess(inside) <= 0 ? limit : Root.Of(Excess, at, inside);
        }

        return new(End(low), End(high), 0.95);
    }
}
