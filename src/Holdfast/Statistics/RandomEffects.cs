namespace Holdfast.Statistics;

/// <summary>
/// Scatter between batches and within them. Many vessels of three batches know three batches: the mean's error comes from the
/// batch means, never from the vessels as if they were independent.
/// </summary>
/// <remarks>Analysis-of-variance estimators of the variance components (W. G. Cochran's n₀ for unequal groups; from memory); ISO 5725-2 uses the same.</remarks>
/// <param name="Analysis">The one-way analysis behind it.</param>
/// <param name="BetweenSd">Standard deviation between batches, 0 when the within scatter explains it; in the unit of the values.</param>
/// <param name="WithinSd">Standard deviation within a batch; in the unit of the values.</param>
/// <param name="BatchMeans">The batch means as values of their own.</param>
public sealed record RandomEffects(OneWay Analysis, double BetweenSd, double WithinSd, Summary BatchMeans)
{
    /// <summary>Splits the scatter.</summary>
    /// <param name="batches">Two or more batches in one unit, at least one with replicates.</param>
    public static Outcome<RandomEffects> Of(IReadOnlyList<Group> batches)
    {
        var found = OneWay.Of(batches);
        if (!found.HasValue)
            return Outcome<RandomEffects>.None([.. found.Findings]);
        var a = found.Value;
        double n = batches.Sum(b => b.Values.Count), squares = batches.Sum(b => (double)b.Values.Count * b.Values.Count);
        var perBatch = (n - squares / n) / a.BetweenFreedom;
        var between = Math.Max(0, (a.BetweenMeanSquare - a.WithinMeanSquare) / perBatch);
        return new(new(a, Math.Sqrt(between), a.PooledSd, Summary.Of([.. batches.Select(b => b.Summary.Mean)])), []);
    }

    /// <summary>Grand mean of the batches with the standard error that the batches themselves show (batches − 1 degrees of freedom).</summary>
    public Outcome<Estimate> Mean()
    {
        var mean = BatchMeans.MeanEstimate();
        return mean with { Value = mean.Value is { } m ? m with { Method = "mean of batch means" } : null };
    }

    /// <summary>The sd of batch means that the true one stays below with the stated confidence, in the unit of the values.</summary>
    /// <param name="confidence">One-sided, between 0 and 1; no unit.</param>
    public double BatchSdUpperBound(double confidence = 0.95) => BatchMeans.SdUpperBound(confidence)!.Value;
}
