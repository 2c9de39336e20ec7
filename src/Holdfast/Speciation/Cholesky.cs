namespace Holdfast.Speciation;

/// <summary>Solves a small symmetric positive system, scaled to a unit diagonal first: the sizes here differ by orders.</summary>
internal static class Cholesky
{
    private const double Smallest = 1e-15;

    /// <summary>Overwrites b with the solution of a x = b; a is destroyed. A direction that the matrix hardly determines is held back.</summary>
    /// <param name="a">Matrix by rows, n × n.</param>
    /// <param name="b">Right side, n.</param>
    /// <param name="n">Size.</param>
    public static void Solve(Span<double> a, Span<double> b, int n)
    {
        Span<double> scale = stackalloc double[n];
        for (var i = 0; i < n; i++)
            scale[i] = 1 / Math.Sqrt(Math.Max(a[i * n + i], double.Epsilon * 1e16));
        for (var i = 0; i < n; i++)
        {
            b[i] *= scale[i];
            for (var j = 0; j <= i; j++)
                a[i * n + j] *= scale[i] * scale[j];
        }

        for (var j = 0; j < n; j++)
        {
            for (var k = 0; k < j; k++)
                a[j * n + j] -= a[j * n + k] * a[j * n + k];
            var pivot = a[j * n + j] = Math.Sqrt(Math.Max(a[j * n + j], Smallest));
            for (var i = j + 1; i < n; i++)
            {
                for (var k = 0; k < j; k++)
                    a[i * n + j] -= a[i * n + k] * a[j * n + k];
                a[i * n + j] /= pivot;
            }
        }

        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++)
                b[i] -= a[i * n + k] * b[k];
            b[i] /= a[i * n + i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++)
                b[i] -= a[k * n + i] * b[k];
            b[i] /= a[i * n + i];
        }

        for (var i = 0; i < n; i++)
            b[i] *= scale[i];
    }
}
