namespace Holdfast.Fitting.Solving;

/// <summary>Singular values and right singular vectors of a small square matrix, by one-sided Jacobi rotations.</summary>
/// <remarks>M. R. Hestenes, J. SIAM 6 (1958) 51 (from memory): small singular values come out with full relative accuracy.</remarks>
/// <param name="Values">Singular values, largest first.</param>
/// <param name="Vectors">Right singular vectors; column k belongs to value k.</param>
internal sealed record Singular(double[] Values, double[,] Vectors)
{
    private const int MostSweeps = 60;

    /// <summary>Largest over smallest singular value; infinite when singular.</summary>
    public double Condition => Values.Length == 0 ? 1 : Values[0] / Values[^1];

    /// <summary>Decomposes a triangle R whose columns are first scaled to unit length.</summary>
    /// <param name="r">Matrix by columns with <paramref name="rows"/> rows, of which the upper triangle is read.</param>
    /// <param name="rows">Rows in memory.</param>
    /// <param name="n">Size of the triangle.</param>
    /// <param name="lengths">Receives the lengths of the columns before scaling.</param>
    public static Singular OfScaledTriangle(ReadOnlySpan<double> r, int rows, int n, Span<double> lengths)
    {
        var u = new double[n, n];
        var v = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var sum = 0.0;
            for (var i = 0; i <= j; i++)
                sum += r[j * rows + i] * r[j * rows + i];
            lengths[j] = Math.Sqrt(sum);
            for (var i = 0; i <= j; i++)
                u[i, j] = lengths[j] > 0 ? r[j * rows + i] / lengths[j] : 0;
            v[j, j] = 1;
        }

        for (var (sweep, turned) = (0, true); turned && sweep < MostSweeps; sweep++)
        {
            turned = false;
            for (var a = 0; a < n - 1; a++)
            {
                for (var b = a + 1; b < n; b++)
                    turned |= Rotate(u, v, a, b, n);
            }
        }

        var order = Enumerable.Range(0, n).OrderByDescending(k => Length(u, k, n)).ToArray();
        var vectors = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            for (var i = 0; i < n; i++)
                vectors[i, k] = v[i, order[k]];
        }

        return new([.. order.Select(k => Length(u, k, n))], vectors);
    }

    private static bool Rotate(double[,] u, double[,] v, int a, int b, int n)
    {
        double alpha = 0, beta = 0, gamma = 0;
        for (var i = 0; i < n; i++)
        {
            alpha += u[i, a] * u[i, a];
            beta += u[i, b] * u[i, b];
            gamma += u[i, a] * u[i, b];
        }

        if (Math.Abs(gamma) <= 1e-15 * Math.Sqrt(alpha * beta) || gamma == 0)
            return false;
        var zeta = (beta - alpha) / (2 * gamma);
        var t = (zeta < 0 ? -1 : 1) / (Math.Abs(zeta) + Math.Sqrt(1 + zeta * zeta));
        var c = 1 / Math.Sqrt(1 + t * t);
        var s = c * t;
        for (var i = 0; i < n; i++)
        {
            (u[i, a], u[i, b]) = (c * u[i, a] - s * u[i, b], s * u[i, a] + c * u[i, b]);
            (v[i, a], v[i, b]) = (c * v[i, a] - s * v[i, b], s * v[i, a] + c * v[i, b]);
        }

        return true;
    }

    private static double Length(double[,] u, int k, int n)
    {
        var sum = 0.0;
        for (var i = 0; i < n; i++)
            sum += u[i, k] * u[i, k];
        return Math.Sqrt(sum);
    }
}
