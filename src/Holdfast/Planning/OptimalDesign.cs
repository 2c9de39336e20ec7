namespace Holdfast.Planning;

/// <summary>
/// As many levels as there are parameters, equal numbers of vessels at each, placed where det M is largest (D-optimal). The equivalence theorem
/// tells whether any design can do better: it cannot where d(x) stays at p or below over the whole range.
/// </summary>
/// <remarks>J. Kiefer and J. Wolfowitz, Canadian J. Math. 12 (1960) 363 (from memory).</remarks>
/// <param name="Levels">The levels, rising.</param>
/// <param name="Information">Information of the design with weights 1/p.</param>
/// <param name="Excess">Largest d(x) − p found over the range; near 0 when the design is optimal among all, above it when more levels would do better.</param>
public sealed record OptimalDesign(IReadOnlyList<double> Levels, Information Information, double Excess)
{
    private const int Grid = 240;

    /// <summary>Searches the levels.</summary>
    /// <param name="row">Slopes by the parameters over the reading's standard uncertainty, at a level.</param>
    /// <param name="lowest">Lower end of the range, in the unit of the level.</param>
    /// <param name="highest">Upper end, above the lower.</param>
    public static OptimalDesign Search(Func<double, double[]> row, double lowest, double highest)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (!(highest > lowest))
            throw new ArgumentOutOfRangeException(nameof(highest), highest, "The upper end is above the lower.");
        var grid = Candidates(lowest, highest);
        var rows = grid.Select(row).ToArray();
        var p = rows[0].Length;
        var at = Enumerable.Range(0, p).Select(i => p == 1 ? grid.Length / 2 : i * (grid.Length - 1) / (p - 1)).ToArray();
        var chosen = at.Select(i => rows[i]).ToArray();

        // Exchange over the grid, one level at a time, until no exchange helps.
        var best = Volume(chosen);
        for (var improved = true; improved;)
        {
            improved = false;
            for (var j = 0; j < p; j++)
            {
                for (var i = 0; i < grid.Length; i++)
                {
                    chosen[j] = rows[i];
                    var volume = Volume(chosen);
                    if (volume > best * (1 + 1e-12))
                        (best, at[j], improved) = (volume, i, true);
                }

                chosen[j] = rows[at[j]];
            }
        }

        // Then between the neighbours of each grid point.
        var levels = at.Select(i => grid[i]).ToArray();
        for (var cycle = 0; cycle < 40; cycle++)
        {
            var moved = 0.0;
            for (var j = 0; j < p; j++)
            {
                var before = levels[j];
                var fixedRows = levels.Select(row).ToArray();
                double With(double x)
                {
                    fixedRows[j] = row(x);
                    return Volume(fixedRows);
                }

                var low = Math.Max(lowest, before - 2 * Gap(grid, before));
                var high = Math.Min(highest, before + 2 * Gap(grid, before));
                levels[j] = GoldenSection.Peak(With, low, high);
                moved = Math.Max(moved, Math.Abs(levels[j] - before) / (highest - lowest));
            }

            if (moved < 1e-10)
                break;
        }

        Array.Sort(levels);
        var information = new Information(p);
        foreach (var level in levels)
            information.Add(row(level), 1.0 / p);
        var excess = rows.Concat(levels.Select(row)).Max(r => information.Variance(r) ?? double.PositiveInfinity) - p;
        return new(levels, information, excess);
    }

    // Evenly spaced, and geometrically towards the lower end, where rising curves bend.
    private static double[] Candidates(double lowest, double highest)
    {
        var span = highest - lowest;
        var even = Enumerable.Range(0, Grid + 1).Select(i => lowest + span * i / Grid);
        var geometric = Enumerable.Range(1, Grid).Select(i => lowest + span * Math.Pow(10, -4.0 * i / Grid));
        return [.. even.Concat(geometric).Where(x => x <= highest).Order().Distinct()];
    }

    // Size of the determinant of p rows of p slopes; its square is det M of the p readings.
    private static double Volume(double[][] rows)
    {
        var p = rows.Length;
        Span<double> a = stackalloc double[p * p];
        for (var i = 0; i < p; i++)
            rows[i].CopyTo(a[(i * p)..]);
        var product = 1.0;
        for (var k = 0; k < p; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < p; i++)
                pivot = Math.Abs(a[i * p + k]) > Math.Abs(a[pivot * p + k]) ? i : pivot;
            for (var j = 0; j < p; j++)
                (a[k * p + j], a[pivot * p + j]) = (a[pivot * p + j], a[k * p + j]);
            product *= a[k * p + k];
            if (product == 0)
                return 0;
            for (var i = k + 1; i < p; i++)
            {
                var factor = a[i * p + k] / a[k * p + k];
                for (var j = k; j < p; j++)
                    a[i * p + j] -= factor * a[k * p + j];
            }
        }

        return Math.Abs(product);
    }

    private static double Gap(double[] grid, double x)
    {
        var i = Array.BinarySearch(grid, x);
        if (i < 0)
            i = Math.Min(~i, grid.Length - 1);
        return Math.Max(i > 0 ? grid[i] - grid[i - 1] : 0, i < grid.Length - 1 ? grid[i + 1] - grid[i] : 0);
    }
}
