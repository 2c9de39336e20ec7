using System.Globalization;
using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Amounts;

/// <summary>
/// Numbers that come out of one fit together: parameters with a covariance matrix. C = L·Lᵀ turns them into independent sources of one
/// group, so that every later result carries their correlation, and the group counts once in the degrees of freedom.
/// </summary>
public static class CorrelatedInputs
{
    /// <summary>Values with the covariance that a fit gave them.</summary>
    /// <param name="values">The values, each in its own unit.</param>
    /// <param name="covariance">Their covariance matrix, row by row, in the product of the units; symmetric and not negative.</param>
    /// <param name="group">Stable identity of the fit, for example "C-4": it names the sources.</param>
    /// <param name="name">The fit in words: "calibration line of run 2".</param>
    /// <param name="degreesOfFreedom">n − p of the fit; infinite when the covariance is taken as known.</param>
    /// <exception cref="ArgumentException">The matrix does not fit the values, or is not a covariance matrix.</exception>
    public static IReadOnlyList<Measured> Of(
        ReadOnlySpan<double> values, ReadOnlySpan<double> covariance, string group, string name, double degreesOfFreedom = double.PositiveInfinity)
    {
        var n = values.Length;
        if (covariance.Length != n * n)
            throw new ArgumentException("The matrix has one row and one column for each value.", nameof(covariance));

        // Scaled to correlations first: parameters of one fit differ by many powers of ten. Eigenvectors rather than Cholesky, since two
        // parameters that a fit cannot tell apart make the matrix singular.
        var u = new double[n];
        for (var i = 0; i < n; i++)
        {
            if (!(covariance[i * n + i] >= 0))
                throw new ArgumentException("A variance is negative or missing.", nameof(covariance));
            u[i] = Math.Sqrt(covariance[i * n + i]);
        }

        var correlation = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var scale = u[i] * u[j];
                correlation[i, j] = i == j ? 1 : scale == 0 ? 0 : (covariance[i * n + j] + covariance[j * n + i]) / (2 * scale);
            }
        }

        var split = correlation.Evd(Symmetricity.Symmetric);
        if (split.EigenValues.Any(e => e.Real < -1e-8))
            throw new ArgumentException("The matrix is not a covariance matrix: it has a negative direction.", nameof(covariance));
        var sources = new Source[n];
        for (var k = 0; k < n; k++)
        {
            var ordinal = (k + 1).ToString(CultureInfo.InvariantCulture);
            sources[k] = new($"{group}#{ordinal}", $"{name}, direction {ordinal}", 1, degreesOfFreedom, Evaluation.Repetition, Group: group);
        }

        var results = new Measured[n];
        for (var i = 0; i < n; i++)
        {
            var row = i;
            results[i] = Measured.From(values[i], Enumerable.Range(0, n).Select(k => new Contribution(
                sources[k], u[row] * split.EigenVectors[row, k] * Math.Sqrt(Math.Max(split.EigenValues[k].Real, 0)))));
        }

        return results;
    }
}
