namespace Holdfast.Statistics;

/// <summary>Slope of values against level, time or cycle number by least squares.</summary>
public static class LinearTrend
{
    /// <summary>The slope with its standard error and n − 2 degrees of freedom.</summary>
    /// <param name="x">Level, time or order; any unit.</param>
    /// <param name="y">Values in the same order; any unit.</param>
    public static Outcome<Estimate> Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Values.Require(x);
        Values.Require(y);
        if (x.Count < 3 || x.Distinct().Count() < 2)
        {
            return Outcome<Estimate>.None(Finding.Of("HF-449", Weight.Stop,
                "A trend needs three values at two or more different levels. Add levels before speaking of a rise or fall."));
        }

        var slope = PolynomialFit.Of(x, y).Coefficient(1)!;
        return slope.StandardError > 0
            ? new(slope with { Method = "linear trend, least squares" }, [])
            : Outcome<Estimate>.None(NoScatter.Of(x.Count));
    }
}
