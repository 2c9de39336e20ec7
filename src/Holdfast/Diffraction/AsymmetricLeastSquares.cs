namespace Holdfast.Diffraction;

/// <summary>A smooth curve below a pattern by asymmetric least squares. For looking and for finding, never before a fit whose uncertainty is reported.</summary>
/// <remarks>
/// P. H. C. Eilers and H. F. M. Boelens, 2005 (from memory): minimise Σ w(y−z)² + λ Σ (Δ²z)² with w = p above the curve and 1 − p below it,
/// repeated. The matrix has five diagonals, so the work grows with the number of points.
/// </remarks>
public static class AsymmetricLeastSquares
{
    /// <summary>The curve.</summary>
    /// <param name="y">Readings at equal steps.</param>
    /// <param name="stiffness">λ, without unit: 1e4 to 1e7 for patterns; too small a value eats broad lines.</param>
    /// <param name="asymmetry">p, without unit: 0.001 to 0.01.</param>
    /// <param name="iterations">How often the weights are set anew.</param>
    public static double[] Of(IReadOnlyList<double> y, double stiffness, double asymmetry, int iterations = 10)
    {
        ArgumentNullException.ThrowIfNull(y);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stiffness);
        if (!(asymmetry > 0 && asymmetry < 1))
            throw new ArgumentOutOfRangeException(nameof(asymmetry), asymmetry, "The asymmetry lies between 0 and 1.");
        var n = y.Count;
        if (n < 3)
            return [.. y];
        var w = new double[n];
        Array.Fill(w, 1);
        double[] z = [];
        for (var k = 0; k < iterations; k++)
        {
            z = Solve(y, w, stiffness);
            for (var i = 0; i < n; i++)
                w[i] = y[i] > z[i] ? asymmetry : 1 - asymmetry;
        }

        return z;
    }

    // (W + λ D′D) z = W y with D the second difference, by L·D·L′ of the band.
    private static double[] Solve(IReadOnlyList<double> y, double[] w, double stiffness)
    {
        var n = w.Length;
        var (diagonal, first, second) = (new double[n], new double[n], new double[n]);
        for (var i = 0; i < n; i++)
            diagonal[i] = w[i];
        for (var i = 0; i < n - 2; i++)
        {
            diagonal[i] += stiffness;
            diagonal[i + 1] += 4 * stiffness;
            diagonal[i + 2] += stiffness;
            first[i] -= 2 * stiffness;
            first[i + 1] -= 2 * stiffness;
            second[i] += stiffness;
        }

        var z = new double[n];
        for (var i = 0; i < n; i++)
        {
            var d1 = i > 0 ? diagonal[i - 1] : 0;
            if (i > 0)
            {
                // first and second hold the unscaled band until a row is done; then they hold L.
                diagonal[i] -= first[i - 1] * first[i - 1] * d1;
                if (i > 1)
                    diagonal[i] -= second[i - 2] * second[i - 2] * diagonal[i - 2];
            }

            if (i > 0 && i + 1 < n)
                first[i] -= second[i - 1] * d1 * first[i - 1];
            first[i] /= diagonal[i];
            second[i] /= diagonal[i];
            z[i] = w[i] * y[i] - (i > 0 ? first[i - 1] * z[i - 1] : 0) - (i > 1 ? second[i - 2] * z[i - 2] : 0);
        }

        for (var i = n - 1; i >= 0; i--)
            z[i] = z[i] / diagonal[i] - (i + 1 < n ? first[i] * z[i + 1] : 0) - (i + 2 < n ? second[i] * z[i + 2] : 0);
        return z;
    }
}
