namespace Holdfast.Statistics;

/// <summary>
/// Mean and sum of squares about the mean without loss of digits when the values are large and close together: values are first
/// moved by one of themselves, then summed with carried error.
/// </summary>
/// <remarks>Two-pass formula with correction (T. F. Chan, G. H. Golub, R. J. LeVeque, Am. Stat. 37 (1983) 242–247; from memory); sums after A. Neumaier (1974).</remarks>
internal static class CentredSums
{
    /// <summary>The mean, as a shift and the rest, so that differences of means keep their digits.</summary>
    /// <param name="values">At least one value, any unit.</param>
    /// <param name="shift">A value near the mean, same unit.</param>
    public static double MeanAbove(IReadOnlyList<double> values, double shift)
    {
        var mean = Sum(values, v => v - shift) / values.Count;
        return mean + Sum(values, v => v - shift - mean) / values.Count;
    }

    /// <summary>The mean.</summary>
    /// <param name="values">At least one value, any unit.</param>
    public static double Mean(IReadOnlyList<double> values) => values[0] + MeanAbove(values, values[0]);

    /// <summary>Sum of squares about the mean.</summary>
    /// <param name="values">At least one value, any unit.</param>
    public static double SquaresAboutMean(IReadOnlyList<double> values)
    {
        var shift = values[0];
        var mean = MeanAbove(values, shift);
        var rest = Sum(values, v => v - shift - mean);
        return Sum(values, v => (v - shift - mean) * (v - shift - mean)) - rest * rest / values.Count;
    }

    /// <summary>Sum of a function of the values, with the lost low digits carried along.</summary>
    /// <param name="values">Any unit.</param>
    /// <param name="term">What is summed.</param>
    public static double Sum(IReadOnlyList<double> values, Func<double, double> term)
    {
        double sum = 0, lost = 0;
        for (var i = 0; i < values.Count; i++)
        {
            var next = term(values[i]);
            var total = sum + next;
            lost += Math.Abs(sum) >= Math.Abs(next) ? sum - total + next : next - total + sum;
            sum = total;
        }

        return sum + lost;
    }
}
