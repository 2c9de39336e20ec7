using Holdfast.Fitting.Solving;

namespace Holdfast.Diffraction;

/// <summary>The cell that indices and spacings of lines give by themselves.</summary>
/// <remarks>
/// 1/d² is linear in the reciprocal metric (International Tables A), so that each system is one linear least squares with equal relative weights.
/// The systems are tried from the most symmetric one on; a later one is taken only when it fits clearly better. Lines tell a metric, never a symmetry.
/// </remarks>
public static class CellOfPlanes
{
    // Spacings of a list may be off by this part: a displaced sample, rounded angles (common practice).
    private const double Within = 4e-3;

    // A less symmetric cell has more to fit with; it must leave this many times less.
    private const double ClearlyBetter = 3;

    private static readonly (Func<Miller, double[]> Terms, Func<double[], UnitCell> Cell)[] Systems =
    [
        (p => [p.H * p.H + p.K * p.K + p.L * p.L], g => new(Length(g[0]), Length(g[0]), Length(g[0]), 90, 90, 90)),
        (p => [p.H * p.H + p.H * p.K + p.K * p.K, p.L * p.L], g => new(Length(g[0] * 3 / 4), Length(g[0] * 3 / 4), Length(g[1]), 90, 90, 120)),
        (p => [p.H * p.H + p.K * p.K, p.L * p.L], g => new(Length(g[0]), Length(g[0]), Length(g[1]), 90, 90, 90)),
        (p => [p.H * p.H, p.K * p.K, p.L * p.L], g => new(Length(g[0]), Length(g[1]), Length(g[2]), 90, 90, 90)),
        (p => [p.H * p.H, p.K * p.K, p.L * p.L, 2 * p.H * p.L], Monoclinic),
    ];

    /// <summary>The cell, or null when no system up to monoclinic fits or the lines are too few to tell one: one more than there are lengths and angles.</summary>
    /// <param name="lines">Indices and spacing of each line, ångström.</param>
    public static UnitCell? Of(IReadOnlyList<(Miller Planes, double Spacing)> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        UnitCell? best = null;
        var left = double.PositiveInfinity;
        foreach (var (terms, cellOf) in Systems)
        {
            if (Solved(lines, terms) is not { } metric || cellOf(metric) is not { IsSound: true } cell)
                continue;
            double[] off = [.. lines.Select(l => cell.Spacing(l.Planes) / l.Spacing - 1)];
            var scatter = Math.Sqrt(off.Sum(o => o * o) / (lines.Count - metric.Length));
            if (off.All(o => Math.Abs(o) <= Within) && ClearlyBetter * scatter < left)
                (best, left) = (cell, scatter);
        }

        return best;
    }

    // Rows scaled by d², so that each line counts by its relative error.
    private static double[]? Solved(IReadOnlyList<(Miller Planes, double Spacing)> lines, Func<Miller, double[]> terms)
    {
        double[][] rows = [.. lines.Select(l => terms(l.Planes))];
        var (n, p) = (rows.Length, rows.Length == 0 ? 0 : rows[0].Length);
        if (n <= p || p == 0)
            return null;
        var a = new double[n * p];
        var b = Enumerable.Repeat(1.0, n).ToArray();
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < p; j++)
                a[j * n + i] = rows[i][j] * lines[i].Spacing * lines[i].Spacing;
        }

        var heads = new double[p];
        Householder.Factor(a, n, p, heads);
        Householder.Turn(a, heads, n, p, b);
        var metric = new double[p];
        return Householder.Back(a, n, p, b, metric) && metric.All(double.IsFinite) ? metric : null;
    }

    private static double Length(double inverseSquare) => 1 / Math.Sqrt(inverseSquare);

    private static UnitCell Monoclinic(double[] g)
    {
        var (a, b, c) = (Math.Sqrt(g[0]), Math.Sqrt(g[1]), Math.Sqrt(g[2]));
        var cosine = g[3] / (a * c);
        var sine = Math.Sqrt(1 - cosine * cosine);
        return new(1 / (a * sine), 1 / b, 1 / (c * sine), 90, 180 - Math.Acos(cosine) * 180 / Math.PI, 90);
    }
}
