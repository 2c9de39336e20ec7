namespace Holdfast.Calibration;

/// <summary>Two portions of one sample taken through the whole method.</summary>
/// <param name="First">First result.</param>
/// <param name="Second">Second result, same unit.</param>
/// <param name="Limit">Detection limit, same unit, or null.</param>
public sealed record Duplicates(double First, double Second, double? Limit = null)
{
    /// <summary>Largest relative difference, 20 % (common practice).</summary>
    public const double LargestPercent = 20;

    /// <summary>|a − b| over the mean, in %; no unit.</summary>
    public double RelativeDifferencePercent => 200 * Math.Abs(First - Second) / Math.Abs(First + Second);

    /// <summary>True when both are below five detection limits, where a relative difference says little and the absolute one is judged.</summary>
    public bool IsNearLimit => Limit is { } limit && First < 5 * limit && Second < 5 * limit;

    /// <summary>True when the pair agrees: within 20 %, or within the detection limit when near it.</summary>
    public bool Passes => IsNearLimit ? Math.Abs(First - Second) <= Limit!.Value : RelativeDifferencePercent <= LargestPercent;

    /// <summary>Judges a pair.</summary>
    /// <param name="id">The sample.</param>
    /// <param name="first">First result, any unit.</param>
    /// <param name="second">Second result, same unit.</param>
    /// <param name="limit">Detection limit, same unit, or null.</param>
    public static Outcome<Duplicates> Of(string id, double first, double second, double? limit = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        var pair = new Duplicates(first, second, limit);
        return new(pair, pair.Passes ? [] : [CalibrationFindings.DuplicatesApart(id, pair)]);
    }

    /// <summary>Standard deviation of one result from k pairs, √(Σd²/2k), with k degrees of freedom, in the unit of the results.</summary>
    /// <param name="pairs">One or more pairs in one unit.</param>
    public static double PooledSd(IReadOnlyList<Duplicates> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentOutOfRangeException.ThrowIfZero(pairs.Count, nameof(pairs));
        return Math.Sqrt(pairs.Sum(p => (p.First - p.Second) * (p.First - p.Second)) / (2 * pairs.Count));
    }
}
