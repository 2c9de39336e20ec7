namespace Holdfast.Planning;

/// <summary>The highest place of a function that rises and falls once, or that is highest at an end.</summary>
/// <remarks>J. Kiefer, Proc. Am. Math. Soc. 4 (1953) 502 (from memory).</remarks>
internal static class GoldenSection
{
    // As far as two numbers of this size can be told apart.
    private const double Settled = 1e-12;

    /// <summary>Where it is highest; the ends count too.</summary>
    /// <param name="f">The function.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    public static double Peak(Func<double, double> f, double low, double high)
    {
        var ratio = (Math.Sqrt(5) - 1) / 2;
        var (a, b) = (low, high);
        var (x1, x2) = (b - ratio * (b - a), a + ratio * (b - a));
        var (f1, f2) = (f(x1), f(x2));
        while (b - a > Settled * Math.Max(Math.Abs(a), Math.Abs(b)) + 1e-300 && x1 < x2)
        {
            if (f1 >= f2)
            {
                (b, x2, f2) = (x2, x1, f1);
                x1 = b - ratio * (b - a);
                f1 = f(x1);
            }
            else
            {
                (a, x1, f1) = (x1, x2, f2);
                x2 = a + ratio * (b - a);
                f2 = f(x2);
            }
        }

        var middle = (a + b) / 2;
        var inside = f(middle);
        return f(low) >= inside ? low : f(high) >= inside ? high : middle;
    }
}
