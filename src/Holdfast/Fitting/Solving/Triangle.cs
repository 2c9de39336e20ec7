namespace Holdfast.Fitting.Solving;

/// <summary>Triangular factors of a small symmetric positive matrix held by rows: A = L·L′ (A.-L. Cholesky).</summary>
internal static class Triangle
{
    /// <summary>Overwrites the lower half of A with L.</summary>
    /// <param name="a">Matrix by rows, n × n.</param>
    /// <param name="n">Size.</param>
    /// <returns>ln |A|; not a number when A is not positive.</returns>
    public static double Factor(Span<double> a, int n)
    {
        double logarithm = 0;
        for (var i = 0; i < n; i++)
        {
            var row = a.Slice(i * n, n);
            for (var j = 0; j <= i; j++)
            {
                var other = a.Slice(j * n, n);
                var sum = row[j];
                for (var k = 0; k < j; k++)
                    sum -= row[k] * other[k];
                if (j < i)
                {
                    row[j] = sum / other[j];
                    continue;
                }

                if (!(sum > 0))
                    return double.NaN;
                row[i] = Math.Sqrt(sum);
                logarithm += Math.Log(sum);
            }
        }

        return logarithm;
    }

    /// <summary>Overwrites b with L⁻¹·b.</summary>
    /// <param name="l">L by rows.</param>
    /// <param name="n">Size.</param>
    /// <param name="b">Right side.</param>
    public static void Forward(ReadOnlySpan<double> l, int n, Span<double> b)
    {
        for (var i = 0; i < n; i++)
        {
            var row = l.Slice(i * n, n);
            var sum = b[i];
            for (var k = 0; k < i; k++)
                sum -= row[k] * b[k];
            b[i] = sum / row[i];
        }
    }

    /// <summary>A⁻¹ from L, both halves.</summary>
    /// <param name="l">L by rows.</param>
    /// <param name="n">Size.</param>
    public static double[] Inverse(ReadOnlySpan<double> l, int n)
    {
        // Rows of L⁻¹ first, then A⁻¹ = L⁻ᵀ·L⁻¹.
        var turned = new double[n * n];
        for (var j = 0; j < n; j++)
        {
            turned[j * n + j] = 1 / l[j * n + j];
            for (var i = j + 1; i < n; i++)
            {
                double sum = 0;
                for (var k = j; k < i; k++)
                    sum -= l[i * n + k] * turned[k * n + j];
                turned[i * n + j] = sum / l[i * n + i];
            }
        }

        var inverse = new double[n * n];
        for (var k = 0; k < n; k++)
        {
            for (var i = 0; i <= k; i++)
            {
                var factor = turned[k * n + i];
                for (var j = 0; j <= i; j++)
                    inverse[i * n + j] += factor * turned[k * n + j];
            }
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
                inverse[j * n + i] = inverse[i * n + j];
        }

        return inverse;
    }
}
