using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>
/// Whether neighbouring residuals, ordered by x, resemble each other: d = Σ(rᵢ − rᵢ₋₁)²/Σr², near 2 for independent errors, lower when a pattern is left
/// over. The probability is exact for a linear model and, with the slopes at the fit in place of its design, good for a curve.
/// </summary>
/// <remarks>
/// J. Durbin and G. S. Watson, Biometrika 37 (1950) 409; distribution of the ratio by J. P. Imhof, Biometrika 48 (1961) 419 (from memory): with ν
/// the eigenvalues of M A M less d, P(D &lt; d) = 1/2 − (1/π) ∫ sin(½ Σ arctan νu) / (u Π(1 + ν²u²)^¼) du.
/// </remarks>
/// <param name="Statistic">d, between 0 and 4.</param>
/// <param name="PositiveP">Probability of so small a d without correlation.</param>
public sealed record DurbinWatson(double Statistic, double PositiveP)
{
    /// <summary>The test of a fit's weighted residuals; null with fewer than p + 2 points or an exact fit.</summary>
    /// <param name="fit">The fit.</param>
    public static DurbinWatson? Of(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (!fit.IsFit || fit.Nu < 2 || fit.Problem is null)
            return null;
        int[] order = [.. Enumerable.Range(0, fit.Points.Count).Where(i => fit.Weights[i] > 0).OrderBy(i => fit.Points.X[i])];
        var slopes = fit.WeightedSlopes();
        return Of(
            [.. order.Select(i => fit.Residuals[i] * Math.Sqrt(fit.Weights[i]))],
            Matrix<double>.Build.Dense(order.Length, fit.P, (i, j) => slopes[order[i], j]));
    }

    /// <summary>The test of residuals in their order.</summary>
    /// <param name="residuals">Residuals, in any unit.</param>
    /// <param name="design">Design matrix or slopes, one row for each residual.</param>
    internal static DurbinWatson? Of(IReadOnlyList<double> residuals, Matrix<double> design)
    {
        var n = residuals.Count;
        var square = residuals.Sum(r => r * r);
        if (!(square > 0))
            return null;
        var d = Enumerable.Range(1, n - 1).Sum(i => (residuals[i] - residuals[i - 1]) * (residuals[i] - residuals[i - 1])) / square;
        var q = design.NormalizeColumns(2).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Q;
        var maker = Matrix<double>.Build.DenseIdentity(n) - q * q.Transpose();
        var difference = Matrix<double>.Build.Dense(n, n, (i, j) => i == j ? (i == 0 || i == n - 1 ? 1 : 2) : Math.Abs(i - j) == 1 ? -1 : 0);
        var values = (maker * difference * maker).Evd(Symmetricity.Symmetric).EigenValues.Real().ToArray();
        Array.Sort(values);
        double[] nu = [.. values.Skip(design.ColumnCount).Select(v => v - d)];
        return new(d, 0.5 - Imhof(nu) / Math.PI);
    }

    // Gauss–Legendre in pieces of the angle after u = tan, which turns the half-line into a finite range.
    private static double Imhof(double[] nu)
    {
        const int pieces = 400;
        var scale = nu.Max(Math.Abs);
        var sum = 0.0;
        for (var piece = 0; piece < pieces; piece++)
        {
            var (from, to) = (Math.PI / 2 * piece / pieces, Math.PI / 2 * (piece + 1) / pieces);
            sum += MathNet.Numerics.Integration.GaussLegendreRule.Integrate(Integrand, from, to, 10);
        }

        return sum;

        double Integrand(double angle)
        {
            var u = Math.Tan(angle) / scale;
            double turn = 0, size = 0;
            foreach (var v in nu)
            {
                turn += Math.Atan(v * u);
                size += Math.Log(1 + v * v * u * u);
            }

            var cosine = Math.Cos(angle);
            return Math.Sin(turn / 2) / (u * Math.Exp(size / 4)) / (scale * cosine * cosine);
        }
    }
}
