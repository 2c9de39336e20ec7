using Holdfast.Statistics;
using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Amounts;

/// <summary>
/// Whether several differences are zero together: χ² = dᵀ·V⁻¹·d with the full covariance of the differences, so that what they share
/// (stock, calibration line, fitted parameters) is not counted once for each of them.
/// </summary>
/// <param name="ChiSquare">χ²; no unit.</param>
/// <param name="DegreesOfFreedom">Number of independent directions among the differences.</param>
/// <param name="P">Probability of so large a χ² when all true differences are zero.</param>
public sealed record Agreement(double ChiSquare, int DegreesOfFreedom, double P)
{
    /// <summary>Tests differences, each with its uncertainty.</summary>
    /// <param name="differences">Observed minus predicted, in one unit; each with an uncertainty.</param>
    /// <exception cref="ArgumentException">No difference is given, or one has no uncertainty.</exception>
    public static Agreement Of(ReadOnlySpan<Measured> differences)
    {
        var n = differences.Length;
        if (n == 0)
            throw new ArgumentException("No difference is given.", nameof(differences));
        var scaled = Vector<double>.Build.Dense(n);
        var correlation = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++)
        {
            var u = differences[i].U;
            if (!(u > 0))
                throw new ArgumentException("A difference has no uncertainty.", nameof(differences));
            scaled[i] = differences[i].Value / u;
            for (var j = 0; j < n; j++)
                correlation[i, j] = i == j ? 1 : Measured.Correlation(differences[i], differences[j]);
        }

        // Directions in which the differences cannot vary on their own are left out, and are not counted.
        var split = correlation.Evd(Symmetricity.Symmetric);
        double chiSquare = 0;
        var rank = 0;
        for (var k = 0; k < n; k++)
        {
            var variance = split.EigenValues[k].Real;
            if (variance < 1e-10)
                continue;
            var along = split.EigenVectors.Column(k).DotProduct(scaled);
            chiSquare += along * along / variance;
            rank++;
        }

        return new(chiSquare, rank, ChiSquareDistribution.Above(chiSquare, rank));
    }
}
