namespace Holdfast.Diffraction;

/// <summary>A curve below a pattern by clipping peaks (SNIP). For looking and for finding.</summary>
/// <remarks>M. Morháč et al., Nucl. Instrum. Meth. A 401 (1997) 113 (from memory): v ← min(v, mean of the two readings k steps away), k falling to 1.</remarks>
public static class Snip
{
    /// <summary>The curve.</summary>
    /// <param name="y">Readings at equal steps.</param>
    /// <param name="window">Widest half-width m in steps: about twice the width of the broadest line; too small a value eats broad lines.</param>
    /// <param name="compressed">True clips ln(ln(√(y+1)+1)+1), which keeps a strong line from lifting the curve; readings below 0 count as 0.</param>
    public static double[] Of(IReadOnlyList<double> y, int window, bool compressed)
    {
        ArgumentNullException.ThrowIfNull(y);
        ArgumentOutOfRangeException.ThrowIfNegative(window);
        double[] v = [.. compressed ? y.Select(c => Math.Log(Math.Log(Math.Sqrt(Math.Max(c, 0) + 1) + 1) + 1)) : y];
        var next = new double[v.Length];
        for (var k = Math.Min(window, (v.Length - 1) / 2); k >= 1; k--)
        {
            v.CopyTo(next, 0);
            for (var i = k; i < v.Length - k; i++)
                next[i] = Math.Min(v[i], (v[i - k] + v[i + k]) / 2);
            (v, next) = (next, v);
        }

        return compressed ? [.. v.Select(c => Math.Pow(Math.Exp(Math.Exp(c) - 1) - 1, 2) - 1)] : v;
    }
}
