namespace Holdfast.Fitting.Solving;

/// <summary>Orthogonal factors of a tall matrix kept by columns, and what is read off them.</summary>
/// <remarks>A. S. Householder, J. ACM 5 (1958) 339; G. Golub, Numer. Math. 7 (1965) 206 (from memory).</remarks>
internal static class Householder
{
    /// <summary>Overwrites a with R in the upper triangle and the reflectors below it.</summary>
    /// <param name="a">Matrix by columns, rows × columns.</param>
    /// <param name="rows">Rows, at least as many as columns.</param>
    /// <param name="columns">Columns.</param>
    /// <param name="heads">Receives the first entry of each reflector, whose place R takes.</param>
    public static void Factor(Span<double> a, int rows, int columns, Span<double> heads)
    {
        for (var k = 0; k < columns; k++)
        {
            var v = a.Slice(k * rows + k, rows - k);
            var norm = Norm(v);
            var alpha = v[0] > 0 ? -norm : norm;
            heads[k] = v[0] - alpha;
            v[0] = alpha;
            for (var j = k + 1; j < columns && norm > 0; j++)
                Reflect(v, heads[k], a.Slice(j * rows + k, rows - k));
        }
    }

    /// <summary>Replaces b by Q′b, or by Qb on the way back.</summary>
    public static void Turn(ReadOnlySpan<double> a, ReadOnlySpan<double> heads, int rows, int columns, Span<double> b, bool back = false)
    {
        for (var step = 0; step < columns; step++)
        {
            var k = back ? columns - 1 - step : step;
            var v = a.Slice(k * rows + k, rows - k);
            if (v[0] != 0)
                Reflect(v, heads[k], b.Slice(k, rows - k));
        }
    }

    /// <summary>Solves R x = c; false when R is singular.</summary>
    public static bool Back(ReadOnlySpan<double> r, int rows, int columns, ReadOnlySpan<double> c, Span<double> x)
    {
        for (var i = columns - 1; i >= 0; i--)
        {
            var sum = c[i];
            for (var k = i + 1; k < columns; k++)
                sum -= r[k * rows + i] * x[k];
            var diagonal = r[i * rows + i];
            if (diagonal == 0)
                return false;
            x[i] = sum / diagonal;
        }

        return true;
    }

    /// <summary>Solves R′ x = c.</summary>
    public static void Forward(ReadOnlySpan<double> r, int rows, int columns, ReadOnlySpan<double> c, Span<double> x)
    {
        for (var i = 0; i < columns; i++)
        {
            var sum = c[i];
            for (var k = 0; k < i; k++)
                sum -= r[i * rows + k] * x[k];
            x[i] = sum / r[i * rows + i];
        }
    }

    /// <summary>(R′R)⁻¹ of a sound triangle, row by row: the covariance for a scatter of 1.</summary>
    public static double[,] Inverse(ReadOnlySpan<double> r, int rows, int columns)
    {
        var inverse = new double[columns, columns];
        Span<double> unit = stackalloc double[columns], x = stackalloc double[columns];
        var triangle = new double[columns, columns];
        for (var j = 0; j < columns; j++)
        {
            unit.Clear();
            unit[j] = 1;
            Back(r, rows, columns, unit, x);
            for (var i = 0; i < columns; i++)
                triangle[i, j] = x[i];
        }

        for (var i = 0; i < columns; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                for (var k = Math.Max(i, j); k < columns; k++)
                    inverse[i, j] += triangle[i, k] * triangle[j, k];
            }
        }

        return inverse;
    }

    private static double Norm(ReadOnlySpan<double> v)
    {
        var largest = 0.0;
        foreach (var x in v)
            largest = Math.Max(largest, Math.Abs(x));
        if (largest == 0 || !double.IsFinite(largest))
            return largest;
        var sum = 0.0;
        foreach (var x in v)
            sum += x / largest * (x / largest);
        return largest * Math.Sqrt(sum);
    }

    // x − v (v′x)/(v′v/2), where v′v/2 = −alpha·head and alpha stands in the place of the head.
    private static void Reflect(ReadOnlySpan<double> v, double head, Span<double> x)
    {
        var dot = head * x[0];
        for (var i = 1; i < v.Length; i++)
            dot += v[i] * x[i];
        dot /= -v[0] * head;
        x[0] -= dot * head;
        for (var i = 1; i < v.Length; i++)
            x[i] -= dot * v[i];
    }
}
