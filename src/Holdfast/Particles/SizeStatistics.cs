using MathNet.Numerics;
using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>What a list of particle sizes says, counted by number and weighted by volume. Which size was measured must be said beside it.</summary>
public sealed class SizeStatistics
{
    /// <summary>Fewer particles than this are a sketch, not a distribution (common practice).</summary>
    public const int Few = 100;

    /// <summary>No particle of a powder is smaller than an atom or larger than a centimetre, nm (common practice).</summary>
    public const double Smallest = 0.1, Largest = 1e7;

    /// <summary>Numbers of a shape, length over width say, lie between a thousandth and a thousand (common practice); no unit.</summary>
    public const double LargestShape = 1000;

    private readonly double[] sorted;

    private SizeStatistics(double[] sorted)
    {
        this.sorted = sorted;
        Summary = Summary.Of(sorted);
        double[] logs = [.. sorted.Select(v => Math.Log(v))];
        var log = Summary.Of(logs);
        GeometricMean = Math.Exp(log.Mean);
        LogSd = log.Sd ?? 0;
        Normality = ShapiroWilk.Of(sorted).Value;
        LogNormality = ShapiroWilk.Of(logs).Value;
        LogMean = log.MeanEstimate().Value is { } e ? e with { Method = "geometric mean", Value = GeometricMean, Scale = Scale.Logarithmic } : null;
    }

    /// <summary>True for what can be the size of a particle.</summary>
    /// <param name="size">Size; in any unit, or a number without one.</param>
    /// <param name="nanometres">What the size is multiplied by to be in nm; null for a number without a unit.</param>
    public static bool IsPossible(double size, double? nanometres)
        => nanometres is { } factor ? factor * size is >= Smallest and <= Largest : size is >= 1 / LargestShape and <= LargestShape;

    /// <summary>Sizes from small to large, in their unit.</summary>
    public IReadOnlyList<double> Sizes => sorted;

    /// <summary>Count, mean, median, standard deviation.</summary>
    public Summary Summary { get; }

    /// <summary>Geometric mean, in the unit of the sizes.</summary>
    public double GeometricMean { get; }

    /// <summary>The geometric mean with its standard error; null where sizes do not scatter.</summary>
    public Estimate? LogMean { get; }

    /// <summary>Standard deviation of ln d; no unit.</summary>
    public double LogSd { get; }

    /// <summary>Geometric standard deviation, exp of the former: two thirds lie between median/GSD and median·GSD if log-normal; no unit.</summary>
    public double Gsd => Math.Exp(LogSd);

    /// <summary>Test of a normal distribution of the sizes; null for too few or too many.</summary>
    public ShapiroWilk? Normality { get; }

    /// <summary>Test of a log-normal distribution of the sizes; null for too few or too many.</summary>
    public ShapiroWilk? LogNormality { get; }

    /// <summary>Mean diameter by surface over volume, Σd³/Σd², in the unit of the sizes.</summary>
    public double Sauter => Moment(3) / Moment(2);

    /// <summary>Mean diameter weighted by volume, Σd⁴/Σd³, in the unit of the sizes; one large particle may rule it.</summary>
    public double VolumeMean => Moment(4) / Moment(3);

    /// <summary>Diameter of the mean volume, (Σd³/n)^⅓, in the unit of the sizes.</summary>
    public double MeanVolumeDiameter => Math.Cbrt(Moment(3) / sorted.Length);

    /// <summary>Share of the whole volume that the largest particle has; no unit.</summary>
    public double ShareOfLargest => Math.Pow(sorted[^1], 3) / Moment(3);

    /// <summary>Statistics of sizes.</summary>
    /// <param name="sizes">One value or more, all above 0, all in one unit.</param>
    /// <exception cref="ArgumentException">A size is 0 or less.</exception>
    public static SizeStatistics Of(IReadOnlyList<double> sizes)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        if (sizes.Any(s => !(s > 0 && double.IsFinite(s))))
            throw new ArgumentException("A particle has a size above 0.", nameof(sizes));
        return new([.. sizes.Order()]);
    }

    /// <summary>Size below which a share of the particles lies, counted by number: linear between the ordered sizes at (n − 1)·p; in the unit of the sizes.</summary>
    /// <param name="share">0 to 1: 0.5 for D50; no unit.</param>
    public double Quantile(double share) => QuantileOf(sorted, share);

    /// <summary>Size below which a share of the volume lies, linear in the summed volume; in the unit of the sizes.</summary>
    /// <param name="share">0 to 1; no unit.</param>
    public double VolumeQuantile(double share)
    {
        double whole = Moment(3), below = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            var next = below + Math.Pow(sorted[i], 3) / whole;
            if (next >= share)
                return i == 0 ? sorted[0] : sorted[i - 1] + (share - below) / (next - below) * (sorted[i] - sorted[i - 1]);
            below = next;
        }

        return sorted[^1];
    }

    /// <summary>Interval of the median from ordered sizes, whatever the distribution; null for so few that none covers enough.</summary>
    /// <param name="confidence">Least coverage; the interval's own is stated; no unit.</param>
    public Interval? MedianInterval(double confidence = 0.95)
    {
        var n = sorted.Length;
        (int Rank, double Coverage)? best = null;
        for (var rank = 1; rank <= n / 2; rank++)
        {
            var coverage = 1 - 2 * AtMost(rank - 1, n);
            if (coverage < confidence)
                break;
            best = (rank, coverage);
        }

        return best is { } b ? new(sorted[b.Rank - 1], sorted[n - b.Rank], b.Coverage) : null;
    }

    /// <summary>Linear between ordered values at (n − 1)·p.</summary>
    /// <param name="sorted">Values from small to large.</param>
    /// <param name="share">0 to 1; no unit.</param>
    internal static double QuantileOf(double[] sorted, double share)
    {
        var at = (sorted.Length - 1) * share;
        var low = (int)Math.Floor(at);
        return low + 1 < sorted.Length ? sorted[low] + (at - low) * (sorted[low + 1] - sorted[low]) : sorted[^1];
    }

    // Chance of at most k heads in n throws, through the incomplete beta function.
    private static double AtMost(int k, int n) => SpecialFunctions.BetaRegularized(n - k, k + 1, 0.5);

    private double Moment(int power) => sorted.Sum(s => Math.Pow(s, power));
}
