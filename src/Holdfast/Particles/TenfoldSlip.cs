using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>A size that stands far outside all others while a tenth, a hundredth, ten or a hundred times of it fits: perhaps a decimal point went lost.</summary>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Value">As written.</param>
/// <param name="Suggested">What would fit.</param>
public sealed record TenfoldSlip(int Index, double Value, double Suggested)
{
    /// <summary>A size this many robust standard deviations of ln d from the median is far outside; no unit.</summary>
    public const double FarOutside = 5;

    /// <summary>A size within this many is like the others; no unit.</summary>
    public const double Inside = 3;

    /// <summary>Two groups of like powders whose medians differ more than this times are looked at for a power of ten; no unit.</summary>
    public const double GroupsApart = 5;

    private const int FewestValues = 8;
    private const double MadToSd = 1.4826;
    private const double LeastLogSd = 0.02;

    /// <summary>All such sizes of a list of eight or more.</summary>
    /// <param name="sizes">Above 0, all in one unit.</param>
    public static IReadOnlyList<TenfoldSlip> Among(IReadOnlyList<double> sizes)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        if (sizes.Count < FewestValues || sizes.Any(s => !(s > 0)))
            return [];
        double[] logs = [.. sizes.Select(v => Math.Log(v))];
        var median = Summary.Of(logs).Median;
        var sd = Math.Max(LeastLogSd, MadToSd * Summary.Of([.. logs.Select(l => Math.Abs(l - median))]).Median);
        var found = new List<TenfoldSlip>();
        for (var i = 0; i < logs.Length; i++)
        {
            if (Math.Abs(logs[i] - median) <= FarOutside * sd)
                continue;
            foreach (var factor in Factors)
            {
                if (Math.Abs(logs[i] + Math.Log(factor) - median) <= Inside * sd)
                    found.Add(new(i, sizes[i], sizes[i] * factor));
            }
        }

        return found;
    }

    /// <summary>The power of ten that brings the median of one group near that of another, when they lie more than five times apart; null otherwise.</summary>
    /// <param name="group">Median of the group in question, above 0.</param>
    /// <param name="other">Median of the other, above 0, same unit.</param>
    public static double? OfGroup(double group, double other)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(group);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(other);
        var apart = Math.Abs(Math.Log(group / other));
        if (apart < Math.Log(GroupsApart))
            return null;
        var factor = Math.Pow(10, Math.Round(Math.Log10(other / group)));
        return Math.Abs(Math.Log(group * factor / other)) < apart / 2 ? factor : null;
    }

    private static readonly double[] Factors = [0.1, 10, 0.01, 100];
}
