using Holdfast.Fitting;
using Holdfast.Statistics;
using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Planning;

/// <summary>
/// Where to measure to tell a rival curve from the one held true (T-optimal): even the rival's best fit misses there most. One curve is held with its
/// parameters, the other is free, so run it both ways and mix the two designs half and half.
/// </summary>
/// <remarks>
/// A. C. Atkinson and V. V. Fedorov, Biometrika 62 (1975) 57 (from memory). The largest least-squares misfit over all designs equals the smallest largest
/// misfit over the rival's parameters. So the rival is fitted in the sense of Chebyshev by Remez' exchange: with p parameters the misfit alternates in sign at
/// p + 1 levels. The weights are those for which these levels make the same parameters the least-squares fit.
/// </remarks>
/// <param name="Levels">The p + 1 levels, rising.</param>
/// <param name="Weights">Share of the vessels at each; they add to 1.</param>
/// <param name="T">Squared misfit in units of one reading's variance, mean over the design; the larger the better.</param>
/// <param name="Rival">The rival's parameters at its best.</param>
/// <param name="Bound">T over the largest squared misfit in the range: 1 when the design is optimal.</param>
public sealed record Discrimination(IReadOnlyList<double> Levels, IReadOnlyList<double> Weights, double T, IReadOnlyList<double> Rival, double Bound)
{
    private const int Grid = 600;
    private const int MostExchanges = 60;

    /// <summary>A curve with slopes by its parameters, as <see cref="Model.Value(double, ReadOnlySpan{double}, Span{double})"/> is.</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    /// <param name="p">Parameters in the card's order.</param>
    /// <param name="byParameter">Receives the slopes.</param>
    public delegate double Curve(double x, ReadOnlySpan<double> p, Span<double> byParameter);

    /// <summary>The levels that tell one curve of the trade from another.</summary>
    /// <param name="held">The curve held true.</param>
    /// <param name="parameters">Its parameters, in its card's order.</param>
    /// <param name="rival">The curve to be told from it.</param>
    /// <param name="lowest">Lower end of the range, in the unit of the abscissa; 0 or above.</param>
    /// <param name="highest">Upper end, above the lower.</param>
    /// <param name="uncertainty">Standard uncertainty of one reading at an abscissa, in the unit of y.</param>
    public static Outcome<Discrimination> Between(
        Model held, IReadOnlyList<double> parameters, Model rival, double lowest, double highest, Func<double, double> uncertainty)
    {
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(rival);
        ArgumentNullException.ThrowIfNull(uncertainty);
        double[] p = [.. parameters];
        var grid = Candidates(lowest, highest).Where((_, i) => i % 8 == 0).Where(x => x > lowest || held.Value(x, p) != 0).ToArray();
        double[] y = [.. grid.Select(x => held.Value(x, p))];
        var fit = rival.Fit(new(grid, y, u: [.. grid.Select(uncertainty)]), new() { Profiles = false });
        return fit.Parameters.Count == 0
            ? Outcome<Discrimination>.None(Alike(rival.Card.Name, held.Card.Name))
            : Between(x => held.Value(x, p), rival.Value, fit.Values, lowest, highest, uncertainty) is { } found
                ? new(found, [])
                : Outcome<Discrimination>.None(Alike(rival.Card.Name, held.Card.Name));
    }

    /// <summary>The levels that tell any curve from any other, from a start near the rival's best.</summary>
    /// <param name="held">The curve held true.</param>
    /// <param name="rival">The rival, with slopes.</param>
    /// <param name="start">Parameters at which the rival comes close, for example those of a least-squares fit.</param>
    /// <param name="lowest">Lower end of the range.</param>
    /// <param name="highest">Upper end, above the lower.</param>
    /// <param name="uncertainty">Standard uncertainty of one reading at an abscissa, in the unit of y.</param>
    /// <returns>The design, or null when the misfit does not alternate at p + 1 levels: the rival can follow the curve.</returns>
    public static Discrimination? Between(
        Func<double, double> held, Curve rival, IReadOnlyList<double> start, double lowest, double highest, Func<double, double> uncertainty)
    {
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(rival);
        ArgumentNullException.ThrowIfNull(uncertainty);
        if (!(highest > lowest))
            throw new ArgumentOutOfRangeException(nameof(highest), highest, "The upper end is above the lower.");
        var grid = Candidates(lowest, highest);
        double[] p = [.. start];
        Approach(held, rival, uncertainty, [.. grid.Where((_, i) => i % 16 == 0)], p);
        double Misfit(double x)
        {
            Span<double> slopes = stackalloc double[p.Length];
            return (held(x) - rival(x, p, slopes)) / uncertainty(x);
        }

        double[]? levels = null;
        var size = 0.0;
        for (var exchange = 0; exchange < MostExchanges; exchange++)
        {
            var next = Alternating(grid, Misfit, p.Length + 1);
            if (next is null)
                return null;
            var largest = grid.Max(x => Math.Abs(Misfit(x)));
            if (levels is not null && largest <= size * (1 + 1e-9))
                break;
            levels = next;
            if (Level(held, rival, uncertainty, levels, p) is not { } equal)
                return null;
            size = equal;
        }

        if (levels is null || !(size > 0))
            return null;
        var top = Math.Max(size, grid.Max(x => Math.Abs(Misfit(x))));
        return Weigh(rival, uncertainty, levels, p, Misfit) is { } weights
            ? new(levels, weights, size * size, p, size * size / (top * top))
            : null;
    }

    /// <summary>Vessels needed to see the rival fail, for one parameter of difference and known uncertainty: λ/T.</summary>
    /// <param name="power">Chance to see it, above 0.05 and below 1.</param>
    /// <param name="alpha">Level of the test.</param>
    public double Vessels(double power = 0.8, double alpha = 0.05) => NoncentralChiSquare.NoncentralityFor(1, alpha, power) / T;

    private static Finding Alike(string rival, string held) => Finding.Of(
        "HF-489", Weight.Note, $"{rival} can follow {held} over this range: no choice of levels tells them apart. Widen the range.");

    // A few Gauss-Newton steps of least squares over the range: they bring the rival near enough for its misfit to alternate.
    private static void Approach(Func<double, double> held, Curve rival, Func<double, double> uncertainty, double[] grid, double[] p)
    {
        var slopes = new double[p.Length];
        for (var step = 0; step < 20; step++)
        {
            var rows = Matrix<double>.Build.Dense(grid.Length, p.Length);
            var right = Vector<double>.Build.Dense(grid.Length);
            for (var i = 0; i < grid.Length; i++)
            {
                var u = uncertainty(grid[i]);
                right[i] = (held(grid[i]) - rival(grid[i], p, slopes)) / u;
                for (var j = 0; j < p.Length; j++)
                    rows[i, j] = slopes[j] / u;
            }

            Move(p, rows.QR().Solve(right));
        }
    }

    // A parameter may at most halve or double in one step, so that a rate or a capacity keeps its sign. True when the whole step was taken.
    private static bool Move(double[] p, Vector<double> step)
    {
        var share = 1.0;
        for (var j = 0; j < p.Length; j++)
            share = p[j] == 0 || step[j] == 0 ? share : Math.Min(share, 0.5 * Math.Abs(p[j] / step[j]));
        if (!double.IsFinite(share))
            return false;
        for (var j = 0; j < p.Length; j++)
            p[j] += share * step[j];
        return share == 1;
    }

    // One level near each extreme of the misfit, of alternating sign; the largest run of the wanted length.
    private static double[]? Alternating(double[] grid, Func<double, double> misfit, int wanted)
    {
        var found = new List<(double X, double R)>();
        for (var i = 0; i < grid.Length; i++)
        {
            var r = misfit(grid[i]);
            if (found.Count > 0 && Math.Sign(found[^1].R) == Math.Sign(r))
            {
                if (Math.Abs(r) > Math.Abs(found[^1].R))
                    found[^1] = (grid[i], r);
            }
            else if (r != 0)
            {
                found.Add((grid[i], r));
            }
        }

        while (found.Count > wanted)
            found.RemoveAt(Math.Abs(found[0].R) < Math.Abs(found[^1].R) ? 0 : found.Count - 1);
        return found.Count < wanted ? null : [.. found.Select(f => Polish(grid, misfit, f.X))];
    }

    // The extreme between the grid's neighbours, by a parabola repeated on a shrinking step.
    private static double Polish(double[] grid, Func<double, double> misfit, double x)
    {
        var i = Array.BinarySearch(grid, x);
        var step = Math.Max(i > 0 ? x - grid[i - 1] : 0, i < grid.Length - 1 ? grid[i + 1] - x : 0);
        for (var round = 0; round < 40; round++)
        {
            step /= 2;
            foreach (var trial in new[] { x - step, x + step })
            {
                if (trial >= grid[0] && trial <= grid[^1] && Math.Abs(misfit(trial)) > Math.Abs(misfit(x)))
                    x = trial;
            }
        }

        return x;
    }

    // Parameters that make the misfit equal in size and alternating at the levels, by Newton; the size, or null when it does not settle.
    private static double? Level(Func<double, double> held, Curve rival, Func<double, double> uncertainty, double[] levels, double[] p)
    {
        var n = levels.Length;
        var slopes = new double[p.Length];
        double size = 0;
        for (var step = 0; step < 60; step++)
        {
            var jacobian = Matrix<double>.Build.Dense(n, n);
            var right = Vector<double>.Build.Dense(n);
            for (var i = 0; i < n; i++)
            {
                var u = uncertainty(levels[i]);
                right[i] = (held(levels[i]) - rival(levels[i], p, slopes)) / u;
                for (var j = 0; j < p.Length; j++)
                    jacobian[i, j] = slopes[j] / u;
                jacobian[i, n - 1] = i % 2 == 0 ? 1 : -1;
            }

            var solved = jacobian.Solve(right);
            if (!solved.All(double.IsFinite))
                return null;
            var whole = Move(p, solved);
            var moved = Math.Abs(solved[n - 1] - size);
            size = solved[n - 1];
            if (whole && moved <= 1e-13 * Math.Abs(size))
                return Math.Abs(size);
        }

        return null;
    }

    // Σ w·r·∂f/∂θ = 0 for every parameter and Σ w = 1; null where they would not be positive.
    private static double[]? Weigh(Curve rival, Func<double, double> uncertainty, double[] levels, double[] p, Func<double, double> misfit)
    {
        var n = levels.Length;
        var slopes = new double[p.Length];
        var matrix = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++)
        {
            rival(levels[i], p, slopes);
            for (var j = 0; j < p.Length; j++)
                matrix[j, i] = Math.Sign(misfit(levels[i])) * slopes[j] / uncertainty(levels[i]);
            matrix[n - 1, i] = 1;
        }

        var right = Vector<double>.Build.Dense(n);
        right[n - 1] = 1;
        var weights = matrix.Solve(right).ToArray();
        return weights.All(w => w > 0) ? weights : null;
    }

    private static double[] Candidates(double lowest, double highest)
    {
        var span = highest - lowest;
        var even = Enumerable.Range(0, Grid + 1).Select(i => lowest + span * i / Grid);
        var geometric = Enumerable.Range(1, Grid).Select(i => lowest + span * Math.Pow(10, -4.0 * i / Grid));
        return [.. even.Concat(geometric).Order().Distinct()];
    }
}
