namespace Holdfast.Techniques;

/// <summary>Rows or columns that close a table with a mean, a scatter, the largest or the number of what stands before: known by their numbers, in whatever language they are named.</summary>
internal static class ClosingStatistics
{
    // Of fewer numbers, one may be the mean or the largest by chance.
    private const int Fewest = 3;

    // Over so many lines, two are enough.
    private const int ManyLines = 20;

    // A mean that was worked out before its parts were rounded misses them by less.
    private const double RelativeRounding = 1e-3;

    // Parts of a unit of the last digit.
    private const double LastDigit = 0.6;

    private static readonly Func<IReadOnlyList<double>, double>[] Statistics =
        [n => n.Average(), n => n.Max(), n => n.Min(), Median, n => Scatter(n, 1), n => Scatter(n, 0), n => 100 * Scatter(n, 1) / n.Average(), n => n.Max() - n.Min(), n => n.Sum(), n => n.Count];

    /// <summary>True where each number is the same statistic of those before it, in two lines of numbers or more.</summary>
    /// <param name="lines">The numbers before, and the one that may close them as it is written.</param>
    public static bool Are(IReadOnlyCollection<(IReadOnlyList<double> Before, double Value, string Written)> lines)
        => lines.Count > 1 && lines.All(l => l.Before.Count >= (lines.Count < ManyLines ? Fewest : Fewest - 1)) && Array.Exists(Statistics, s => lines.All(l => Math.Abs(s(l.Before) - l.Value) <= RelativeRounding * Math.Abs(l.Value) + Rounding(l.Written)));

    private static double Median(IReadOnlyList<double> numbers) => Holdfast.Statistics.Summary.Of([.. numbers]).Median;

    private static double Scatter(IReadOnlyList<double> numbers, int off) => Math.Sqrt(numbers.Sum(n => (n - numbers.Average()) * (n - numbers.Average())) / (numbers.Count - off));

    private static double Rounding(string number) => number.LastIndexOfAny(['.', ',']) is >= 0 and var at ? LastDigit * Math.Pow(10, at + 1 - number.Length) : LastDigit;
}
