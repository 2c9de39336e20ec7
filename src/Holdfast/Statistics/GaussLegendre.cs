namespace Holdfast.Statistics;

/// <summary>Integration by the Gauss–Legendre rule with 16 points: exact for polynomials up to degree 31.</summary>
/// <remarks>Nodes and weights are computed once by Newton's method on the Legendre recurrence (M. Abramowitz and I. A. Stegun, 25.4.29).</remarks>
internal static class GaussLegendre
{
    private const int Points = 16;
    private static readonly (double Node, double Weight)[] Rule = MakeRule();

    /// <summary>The integral of a smooth function.</summary>
    /// <param name="function">The function.</param>
    /// <param name="from">Lower end, in the function's own unit.</param>
    /// <param name="to">Upper end, in the function's own unit.</param>
    public static double Integrate(Func<double, double> function, double from, double to)
    {
        var middle = 0.5 * (from + to);
        var half = 0.5 * (to - from);
        var sum = 0.0;
        foreach (var (node, weight) in Rule)
            sum += weight * function(middle + half * node);
        return half * sum;
    }

    /// <summary>The integral over equal panels.</summary>
    /// <param name="function">The function.</param>
    /// <param name="from">Lower end, in the function's own unit.</param>
    /// <param name="to">Upper end, in the function's own unit.</param>
    /// <param name="panels">How many panels.</param>
    public static double Integrate(Func<double, double> function, double from, double to, int panels)
    {
        var sum = 0.0;
        for (var i = 0; i < panels; i++)
            sum += Integrate(function, from + i * (to - from) / panels, from + (i + 1) * (to - from) / panels);
        return sum;
    }

    /// <summary>Nodes and weights over panels of equal width, for an integrand whose costly part can be kept.</summary>
    /// <param name="from">Lower end.</param>
    /// <param name="to">Upper end.</param>
    /// <param name="panels">Number of panels.</param>
    public static IEnumerable<(double Node, double Weight)> Nodes(double from, double to, int panels)
    {
        var half = 0.5 * (to - from) / panels;
        for (var i = 0; i < panels; i++)
        {
            var middle = from + (2 * i + 1) * half;
            foreach (var (node, weight) in Rule)
                yield return (middle + half * node, half * weight);
        }
    }

    private static (double Node, double Weight)[] MakeRule()
    {
        var rule = new (double, double)[Points];
        for (var i = 0; i < Points; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (Points + 0.5));
            var slope = 0.0;
            for (var step = 0; step < 20; step++)
            {
                double before = 1, value = x;
                for (var k = 2; k <= Points; k++)
                    (before, value) = (value, ((2 * k - 1) * x * value - (k - 1) * before) / k);
                slope = Points * (x * value - before) / (x * x - 1);
                x -= value / slope;
            }

            rule[i] = (x, 2 / ((1 - x * x) * slope * slope));
        }

        return rule;
    }
}
