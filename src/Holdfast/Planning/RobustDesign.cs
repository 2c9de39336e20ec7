using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Planning;

/// <summary>
/// Levels that stay good while the parameters are only roughly known: the mean of ln det M over what is held possible is largest (pseudo-Bayesian
/// D-optimal). It is optimal where the mean d(x) stays at p or below over the whole range.
/// </summary>
/// <remarks>K. Chaloner and K. Larntz, J. Stat. Plan. Inference 21 (1989) 191 (from memory).</remarks>
/// <param name="Levels">The levels, rising.</param>
/// <param name="Weights">Share of the vessels at each; they add to 1.</param>
/// <param name="Excess">Largest mean d(x) − p over the range; near 0 when the design is optimal.</param>
public sealed record RobustDesign(IReadOnlyList<double> Levels, IReadOnlyList<double> Weights, double Excess)
{
    private const int Grid = 400;
    private const int StepsOnGrid = 600;
    private const int Rounds = 12;
    private const int Cycles = 20;
    private const int StepsOfWeights = 200;
    private const double Settled = 1e-5;
    private const double Share = 0.005;
    private const double Vanished = 1e-5;

    /// <summary>A case held possible.</summary>
    /// <param name="Weight">How likely it is; the weights of all cases add to 1.</param>
    /// <param name="Row">Slopes by the parameters over the reading's standard uncertainty, at a level.</param>
    public sealed record Case(double Weight, Func<double, double[]> Row);

    /// <summary>A parameter known up to a factor, as cases: normal in its logarithm, at Gauss and Hermite's nodes.</summary>
    /// <param name="middle">Geometric mean, above 0.</param>
    /// <param name="geometricSd">Geometric standard deviation, 1 or above: about two thirds lie within this factor.</param>
    /// <param name="row">The row of slopes as a function of the level for one value of the parameter.</param>
    /// <param name="nodes">Number of nodes.</param>
    public static IReadOnlyList<Case> WithinFactor(double middle, double geometricSd, Func<double, Func<double, double[]>> row, int nodes = 15)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(middle);
        ArgumentOutOfRangeException.ThrowIfLessThan(geometricSd, 1);

        // Golub and Welsch: nodes are the eigenvalues of the tridiagonal matrix of the recurrence, weights the squared first components.
        var recurrence = Matrix<double>.Build.Dense(nodes, nodes, (i, j) => Math.Abs(i - j) == 1 ? Math.Sqrt(Math.Max(i, j)) : 0);
        var eigen = recurrence.Evd(Symmetricity.Symmetric);
        return [.. Enumerable.Range(0, nodes).Select(i => new Case(
            eigen.EigenVectors[0, i] * eigen.EigenVectors[0, i], row(middle * Math.Exp(Math.Log(geometricSd) * eigen.EigenValues[i].Real))))];
    }

    /// <summary>Searches the design.</summary>
    /// <param name="cases">What is held possible, at least one case.</param>
    /// <param name="lowest">Lower end of the range, in the unit of the level.</param>
    /// <param name="highest">Upper end, above the lower.</param>
    public static RobustDesign Search(IReadOnlyList<Case> cases, double lowest, double highest)
    {
        ArgumentNullException.ThrowIfNull(cases);
        if (!(highest > lowest))
            throw new ArgumentOutOfRangeException(nameof(highest), highest, "The upper end is above the lower.");
        if (cases.Count == 0)
            throw new ArgumentException("At least one case is held possible.", nameof(cases));
        double[] grid = lowest > 0
            ? [.. Enumerable.Range(0, Grid + 1).Select(i => lowest * Math.Pow(highest / lowest, i / (double)Grid))]
            : [.. Enumerable.Range(0, Grid + 1).Select(i => highest * i / Grid)];
        (grid[0], grid[^1]) = (lowest, highest);
        var p = cases[0].Row(highest).Length;
        var (levels, weights) = Gathered(grid, Weigh(cases, grid, [.. grid.Select(_ => 1.0 / grid.Length)], p, StepsOnGrid));
        var excess = double.PositiveInfinity;
        for (var round = 0; round < Rounds; round++)
        {
            Polish(cases, levels, ref weights, p, lowest, highest);
            var (at, largest) = grid.Zip(MeanVariance(cases, levels, weights, grid, p)).MaxBy(g => g.Second);
            excess = largest - p;
            if (excess < Settled)
                break;
            levels.Add(at);
            weights = [.. weights.Select(w => w * (1 - Share)), Share];
        }

        (double X, double W)[] kept = [.. levels.Zip(weights).Where(l => l.Second > Vanished).OrderBy(l => l.First)];
        return new([.. kept.Select(l => l.X)], [.. kept.Select(l => l.W)], excess);
    }

    /// <summary>How good a layout of equal vessels is against this design, over all cases: 1 is as good, 0.5 needs twice the vessels.</summary>
    /// <param name="cases">What is held possible.</param>
    /// <param name="layout">One level for each vessel.</param>
    public double EfficiencyOf(IReadOnlyList<Case> cases, IReadOnlyList<double> layout)
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(layout);
        var p = cases[0].Row(Levels[^1]).Length;
        var ours = Informations(cases, Levels, Weights, p);
        var theirs = Informations(cases, layout, [.. layout.Select(_ => 1.0 / layout.Count)], p);
        return Math.Exp(cases.Select((c, i) => c.Weight * Math.Log(theirs[i].Determinant / ours[i].Determinant)).Sum() / p);
    }

    private static Information[] Informations(IReadOnlyList<Case> cases, IReadOnlyList<double> levels, IReadOnlyList<double> weights, int p)
        => [.. cases.Select(c =>
        {
            var information = new Information(p);
            for (var j = 0; j < levels.Count; j++)
                information.Add(c.Row(levels[j]), weights[j]);
            return information;
        })];

    // d(x) of each case, averaged over the cases.
    private static double[] MeanVariance(IReadOnlyList<Case> cases, IReadOnlyList<double> levels, IReadOnlyList<double> weights, double[] at, int p)
    {
        var mean = new double[at.Length];
        var information = Informations(cases, levels, weights, p);
        for (var i = 0; i < cases.Count; i++)
        {
            if (information[i].Covariance() is not { } covariance)
                return [.. mean.Select(_ => double.PositiveInfinity)];
            for (var j = 0; j < at.Length; j++)
                mean[j] += cases[i].Weight * Quadratic(cases[i].Row(at[j]), covariance);
        }

        return mean;
    }

    private static double Quadratic(double[] row, double[,] covariance)
    {
        var sum = 0.0;
        for (var a = 0; a < row.Length; a++)
        {
            for (var b = 0; b < row.Length; b++)
                sum += row[a] * row[b] * covariance[a, b];
        }

        return sum;
    }

    // w ← w·d̄/p raises the criterion at every step (the multiplicative rule).
    private static double[] Weigh(IReadOnlyList<Case> cases, IReadOnlyList<double> levels, double[] weights, int p, int steps)
    {
        double[] w = [.. weights];
        var rows = cases.Select(c => levels.Select(c.Row).ToArray()).ToArray();
        for (var step = 0; step < steps; step++)
        {
            var mean = new double[w.Length];
            for (var i = 0; i < cases.Count; i++)
            {
                var information = new Information(p);
                for (var j = 0; j < w.Length; j++)
                    information.Add(rows[i][j], w[j]);
                var covariance = information.Covariance()!;
                for (var j = 0; j < w.Length; j++)
                    mean[j] += cases[i].Weight * Quadratic(rows[i][j], covariance);
            }

            for (var j = 0; j < w.Length; j++)
                w[j] *= mean[j] / p;
        }

        var sum = w.Sum();
        return [.. w.Select(v => v / sum)];
    }

    // Neighbours of the grid that carry weight become one level at their mean.
    private static (List<double> Levels, double[] Weights) Gathered(double[] grid, double[] weights)
    {
        var levels = new List<double>();
        var shares = new List<double>();
        double sum = 0, at = 0;
        for (var i = 0; i <= grid.Length; i++)
        {
            if (i < grid.Length && weights[i] > 0.1 / grid.Length)
            {
                (sum, at) = (sum + weights[i], at + weights[i] * grid[i]);
            }
            else if (sum > 0)
            {
                levels.Add(at / sum);
                shares.Add(sum);
                (sum, at) = (0, 0);
            }
        }

        return (levels, [.. shares.Select(s => s / shares.Sum())]);
    }

    // Weights and levels in turn, each level along the criterion itself, until nothing moves.
    private static void Polish(IReadOnlyList<Case> cases, List<double> levels, ref double[] weights, int p, double lowest, double highest)
    {
        for (var cycle = 0; cycle < Cycles; cycle++)
        {
            var moved = 0.0;
            var before = weights;
            weights = Weigh(cases, levels, weights, p, StepsOfWeights);
            for (var j = 0; j < levels.Count; j++)
                moved = Math.Max(moved, Math.Abs(weights[j] - before[j]));
            for (var j = 0; j < levels.Count; j++)
            {
                var (at, shares) = (levels[j], weights);
                double With(double x)
                {
                    levels[j] = x;
                    var information = Informations(cases, levels, shares, p);
                    return cases.Select((c, i) => c.Weight * Math.Log(information[i].Determinant)).Sum();
                }

                var reach = 0.3 * at;
                var peak = GoldenSection.Peak(With, Math.Max(lowest, at - reach), Math.Min(highest, at + reach));
                levels[j] = With(peak) > With(at) ? peak : at;
                moved = Math.Max(moved, Math.Abs(levels[j] / at - 1));
            }

            for (var j = levels.Count - 1; j >= 0; j--)
            {
                var other = levels.FindIndex(x => Math.Abs(x / levels[j] - 1) < 1e-3);
                if (other < j)
                {
                    weights[other] += weights[j];
                    weights = [.. weights.Where((_, i) => i != j)];
                    levels.RemoveAt(j);
                }
            }

            if (moved < 1e-7)
                return;
        }
    }
}
