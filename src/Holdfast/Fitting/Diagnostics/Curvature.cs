using Holdfast.Statistics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>
/// How far the curve is from being linear in its parameters near the fit, as root mean square curvatures times √F(p, ν; 0.95). Above 0.3 symmetric
/// intervals mislead: use the profiles. Intrinsic curvature is a property of the curve; the other depends on how it is written.
/// </summary>
/// <remarks>
/// D. M. Bates and D. G. Watts, J. R. Statist. Soc. B 42 (1980) 1. Second derivatives are five-point differences of the exact slopes (relative
/// error near 1e-11).
/// </remarks>
/// <param name="ParameterEffects">Curvature that another way of writing the parameters could remove.</param>
/// <param name="Intrinsic">Curvature that remains however they are written.</param>
public sealed record Curvature(double ParameterEffects, double Intrinsic)
{
    /// <summary>Above this the linear approximation misleads.</summary>
    public const double Misleading = 0.3;

    /// <summary>The curvatures at a fit; null without a fit or degrees of freedom, or with a parameter on a bound.</summary>
    /// <param name="fit">The fit.</param>
    public static Curvature? Of(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (!fit.IsFit || fit.Nu < 1 || fit.ResidualSd is not { } s)
            return null;
        var (n, p) = (fit.Points.Count, fit.P);
        var factors = Matrix<double>.Build.DenseOfArray(fit.WeightedSlopes()).QR(QRMethod.Full);
        var unscale = factors.R.SubMatrix(0, p, 0, p).Inverse();

        // Each second-derivative face a(k, l) is a vector over the points; turned by Q′ its first p entries lie in the tangent plane.
        var turned = new Vector<double>[p, p];
        for (var l = 0; l < p; l++)
        {
            var second = SecondSlopes(fit, l);
            for (var k = 0; k < p; k++)
                turned[k, l] = factors.Q.TransposeThisAndMultiply(second.Column(k));
        }

        double parameter = 0, intrinsic = 0;
        for (var i = 0; i < n; i++)
        {
            var row = i;
            var face = unscale.TransposeThisAndMultiply(Matrix<double>.Build.Dense(p, p, (k, l) => turned[k, l][row])) * unscale;
            var trace = face.Trace();
            var sum = 2 * face.PointwiseMultiply(face).RowSums().Sum() + trace * trace;
            if (i < p)
                parameter += sum;
            else
                intrinsic += sum;
        }

        var radius = s * Math.Sqrt(p);
        var scale = radius * Math.Sqrt(FisherDistribution.Quantile(0.95, p, fit.Nu) / (p * (p + 2)));
        return new(Math.Sqrt(parameter) * scale, Math.Sqrt(intrinsic) * scale);
    }

    private static Matrix<double> SecondSlopes(FitResult fit, int l)
    {
        var h = 1e-3 * Math.Max(Math.Abs(fit.Values[l]), fit.Parameters[l].StandardError ?? 0);
        return (8 * (At(h) - At(-h)) - (At(2 * h) - At(-2 * h))) / (12 * h);

        Matrix<double> At(double shift)
            => Matrix<double>.Build.DenseOfArray(fit.WeightedSlopes([.. fit.Values.Select((b, j) => j == l ? b + shift : b)]));
    }
}
