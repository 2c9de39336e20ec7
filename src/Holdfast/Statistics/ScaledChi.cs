using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>
/// What a standard deviation found from ν degrees of freedom does around the true one: s/σ = √(χ²(ν)/ν). Averaging a normal
/// result over it gives every result in which σ had to be estimated.
/// </summary>
/// <remarks>
/// Composite Gauss–Legendre rule, 24 panels of 16 points between the points that leave 1e-17 outside; panels also end where the
/// caller's function bends sharply. Own arrangement.
/// </remarks>
internal static class ScaledChi
{
    private const int Panels = 24;
    private const double LeftOut = 1e-17;

    /// <summary>Density of s/σ.</summary>
    /// <param name="s">Ratio s/σ, above 0; no unit.</param>
    /// <param name="dof">Degrees of freedom ν.</param>
    public static double Density(double s, double dof)
        => 2 * Math.Exp(0.5 * dof * Math.Log(dof / 2) - SpecialFunctions.GammaLn(dof / 2) + (dof - 1) * Math.Log(s) - 0.5 * dof * s * s);

    /// <summary>The average of a function over s/σ.</summary>
    /// <param name="dof">Degrees of freedom ν; infinite means s = σ.</param>
    /// <param name="function">The function of s/σ.</param>
    /// <param name="bend">A value of s/σ near which the function changes fast, or null.</param>
    /// <param name="width">How wide that change is, in s/σ; no unit.</param>
    /// <param name="upTo">The function is 0 above this s/σ; no unit.</param>
    public static double Average(double dof, Func<double, double> function, double? bend = null, double width = 0, double upTo = double.PositiveInfinity)
    {
        Probability.RequireDegreesOfFreedom(dof);
        if (double.IsPositiveInfinity(dof))
            return function(1);
        var from = Math.Sqrt(ChiSquareDistribution.Quantile(LeftOut, dof) / dof);
        var to = Math.Min(upTo, 1 + 9 / Math.Sqrt(dof) + 9 / dof);
        if (to <= from)
            return 0;
        var borders = new SortedSet<double> { from, to };
        for (var i = 1; i < Panels; i++)
            borders.Add(from + i * (to - from) / Panels);
        if (bend is { } at)
        {
            for (var i = -8; i <= 8; i++)
                borders.Add(Math.Clamp(at + i * width, from, to));
        }

        var sum = 0.0;
        var left = from;
        foreach (var right in borders)
        {
            if (right > left)
                sum += GaussLegendre.Integrate(s => function(s) * Density(s, dof), left, right);
            left = right;
        }

        return sum;
    }
}
