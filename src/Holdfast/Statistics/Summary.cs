namespace Holdfast.Statistics;

/// <summary>What a handful of values say about themselves.</summary>
/// <param name="N">How many.</param>
/// <param name="Mean">Mean, in the unit of the values.</param>
/// <param name="Median">Median, in the unit of the values.</param>
/// <param name="Low">Smallest value.</param>
/// <param name="High">Largest value.</param>
/// <param name="Sd">Standard deviation with n − 1, in the unit of the values; null for a single value, which has no scatter.</param>
public sealed record Summary(int N, double Mean, double Median, double Low, double High, double? Sd)
{
    /// <summary>Summarises values.</summary>
    /// <param name="values">At least one finite value, all in one unit.</param>
    /// <exception cref="ArgumentException">No value, or one that is not finite.</exception>
    public static Summary Of(IReadOnlyList<double> values)
    {
        Values.Require(values);
        double[] sorted = [.. values.Order()];
        var n = sorted.Length;
        return new(
            n,
            CentredSums.Mean(values),
            n % 2 == 1 ? sorted[n / 2] : sorted[n / 2 - 1] + 0.5 * (sorted[n / 2] - sorted[n / 2 - 1]),
            sorted[0],
            sorted[^1],
            n < 2 ? null : Math.Sqrt(CentredSums.SquaresAboutMean(values) / (n - 1)));
    }

    /// <summary>Sd divided by the mean, or null when either is missing or zero; no unit.</summary>
    public double? RelativeSd => Sd is { } sd && Mean != 0 ? sd / Math.Abs(Mean) : null;

    /// <summary>The mean with its standard error, or the reason why there is none.</summary>
    public Outcome<Estimate> MeanEstimate()
        => Sd is { } sd && sd > 0
            ? new(new("mean of replicates", Mean, sd / Math.Sqrt(N), N - 1, N), [])
            : Outcome<Estimate>.None(NoScatter.Of(N));

    /// <summary>Interval of the standard deviation from chi-square; how badly a few values know their own scatter.</summary>
    /// <param name="confidence">Between 0 and 1; no unit.</param>
    public Interval? SdInterval(double confidence = 0.95)
        => Sd is { } sd
            ? new(sd * StandardDeviationFactor.At(0.5 * (1 - confidence), N - 1), sd * StandardDeviationFactor.At(0.5 * (1 + confidence), N - 1), confidence)
            : null;

    /// <summary>The standard deviation that the true one stays below with the stated confidence; plans rest on 0.80.</summary>
    /// <param name="confidence">One-sided, between 0 and 1; no unit.</param>
    public double? SdUpperBound(double confidence = 0.80)
        => Sd is { } sd ? sd * StandardDeviationFactor.At(confidence, N - 1) : null;
}
