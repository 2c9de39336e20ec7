using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Diffraction;

/// <summary>A smoothed curve for display: a polynomial through each window. Raw readings stay what every fit uses.</summary>
/// <remarks>A. Savitzky, M. J. E. Golay, Anal. Chem. 36 (1964) 1627 (from memory). At the ends the polynomial of the last window is read off.</remarks>
public static class SavitzkyGolay
{
    /// <summary>The smoothed readings.</summary>
    /// <param name="y">Readings at equal steps, at least as many as the window.</param>
    /// <param name="window">Points of a window, odd; at most the width of a line.</param>
    /// <param name="order">Order of the polynomial, below the window.</param>
    public static double[] Of(IReadOnlyList<double> y, int window, int order)
    {
        ArgumentNullException.ThrowIfNull(y);
        if (window < 3 || window % 2 == 0 || order < 0 || order >= window || y.Count < window)
            throw new ArgumentException("The window is odd, above the order, and not longer than the readings.", nameof(window));
        var half = window / 2;
        // Row r of the hat matrix gives the fitted value at place r of a window.
        var hat = Hat(window, order);
        var smooth = new double[y.Count];
        for (var i = 0; i < smooth.Length; i++)
        {
            var first = Math.Clamp(i - half, 0, y.Count - window);
            for (var k = 0; k < window; k++)
                smooth[i] += hat[i - first, k] * y[first + k];
        }

        return smooth;
    }

    /// <summary>Weights of the readings for each place of a window, by rows.</summary>
    internal static Matrix<double> Hat(int window, int order)
    {
        var powers = Matrix<double>.Build.Dense(window, order + 1, (i, j) => Math.Pow(i - window / 2, j));
        return powers * powers.TransposeThisAndMultiply(powers).Inverse() * powers.Transpose();
    }
}
