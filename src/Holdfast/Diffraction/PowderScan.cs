namespace Holdfast.Diffraction;

/// <summary>A measured pattern: intensity against 2θ, as read.</summary>
public sealed class PowderScan
{
    /// <summary>Fewest readings that make a pattern.</summary>
    public const int FewestReadings = 30;

    // True counts scatter as their own square root; readings this far from it were scaled or smoothed.
    private const double SmoothedBelow = 0.5;
    private const double ScaledAbove = 2;

    private readonly double[] twoTheta;
    private readonly double[] counts;
    private readonly double floor;

    /// <summary>A pattern.</summary>
    /// <param name="twoTheta">2θ in degrees, rising.</param>
    /// <param name="counts">Intensities, one for each angle.</param>
    /// <exception cref="ArgumentException">Not rising, not finite, too few, or of unequal number.</exception>
    public PowderScan(IReadOnlyList<double> twoTheta, IReadOnlyList<double> counts)
    {
        ArgumentNullException.ThrowIfNull(twoTheta);
        ArgumentNullException.ThrowIfNull(counts);
        if (twoTheta.Count != counts.Count || counts.Count < FewestReadings)
            throw new ArgumentException($"A pattern has an intensity for each angle, {FewestReadings} or more.", nameof(counts));
        if (counts.Any(c => !double.IsFinite(c)))
            throw new ArgumentException("An intensity is no finite number.", nameof(counts));
        for (var i = 0; i < twoTheta.Count; i++)
        {
            if (!(twoTheta[i] > -20 && twoTheta[i] < 180) || i > 0 && !(twoTheta[i] > twoTheta[i - 1]))
                throw new ArgumentException("2θ rises from reading to reading and stays below 180°.", nameof(twoTheta));
        }

        (this.twoTheta, this.counts) = ([.. twoTheta], [.. counts]);
        Step = Median([.. Enumerable.Range(1, counts.Count - 1).Select(i => this.twoTheta[i] - this.twoTheta[i - 1])]);
        var whole = this.counts.All(c => c >= 0 && c == Math.Floor(c));
        Scatter = Scattering(this.counts);
        AreCounts = whole && (Scatter is >= SmoothedBelow and <= ScaledAbove || this.counts.Average() < 3);
        (VariancePerCount, floor) = AreCounts ? (1, 1) : Scaled(this.counts, Scatter);
    }

    /// <summary>2θ, degrees.</summary>
    public ReadOnlySpan<double> TwoTheta => twoTheta;

    /// <summary>Intensities as read.</summary>
    public ReadOnlySpan<double> Counts => counts;

    /// <summary>Number of readings.</summary>
    public int Length => counts.Length;

    /// <summary>Usual step, degrees.</summary>
    public double Step { get; }

    /// <summary>True when the readings are whole numbers that scatter as counts do.</summary>
    public bool AreCounts { get; }

    /// <summary>Variance of a reading as a multiple of its value, as its scatter from point to point shows: 1 for counts. Unit of the readings.</summary>
    public double Scatter { get; }

    /// <summary>Variance of a reading as a multiple of its value, as used: exactly 1 for counts, <see cref="Scatter"/> otherwise.</summary>
    public double VariancePerCount { get; }

    /// <summary>Variance of a reading where this intensity is expected, in the square of the readings' unit.</summary>
    /// <param name="level">Expected intensity.</param>
    public double Variance(double level) => VariancePerCount * Math.Max(level, floor);

    /// <summary>Index of the reading nearest to an angle.</summary>
    /// <param name="angle">2θ, degrees.</param>
    public int Nearest(double angle)
    {
        var at = Array.BinarySearch(twoTheta, angle);
        if (at >= 0)
            return at;
        at = ~at;
        return at == 0 ? 0 : at == Length ? Length - 1 : angle - twoTheta[at - 1] < twoTheta[at] - angle ? at - 1 : at;
    }

    // Scaled readings: noise from the scatter itself. Where a background was taken off, the noise does not fall to nothing with the reading.
    private static (double PerCount, double Floor) Scaled(double[] y, double scatter)
    {
        double[] steps = [.. Enumerable.Range(1, y.Length - 1).Select(i => Math.Abs(y[i] - y[i - 1]))];
        var noise = Median(steps) * NormalMad / Math.Sqrt(2);
        var least = Math.Max(noise * noise, 1e-12 * y.Max(c => c * c) + 1e-300);
        var perCount = scatter > 0 ? scatter : least / Math.Max(y.Max(Math.Abs), 1e-150);
        return (perCount, (y.Min() <= 0 ? 1 : 0.1) * least / perCount);
    }

    private const double NormalMad = 1.4826;

    // (y − mean of its neighbours)²/(1.5·level) has the mean 1 for counts; the median is not moved by lines.
    private static double Scattering(double[] y)
    {
        var ratios = new List<double>();
        for (var i = 2; i < y.Length - 2; i++)
        {
            var level = (y[i - 2] + y[i - 1] + y[i] + y[i + 1] + y[i + 2]) / 5;
            if (level > 0)
                ratios.Add(Math.Abs(y[i] - (y[i - 1] + y[i + 1]) / 2) / Math.Sqrt(1.5 * level));
        }

        return ratios.Count == 0 ? 0 : Math.Pow(Median([.. ratios]) * NormalMad, 2);
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }
}
