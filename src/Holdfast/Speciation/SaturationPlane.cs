using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Speciation;

/// <summary>
/// The ln activities at which a set of solids is exactly saturated: each solid fixes one
/// component by the others. The scarcest is chosen, so that the amounts follow from balances that rounding does not blur; all factors are small whole numbers.
/// </summary>
internal sealed class SaturationPlane
{
    private const double Vanishing = 1e-9;

    private readonly int components;
    private readonly List<int> pivots = [];
    private readonly double[] rows;
    private readonly double[] rights;
    private readonly double[] solids;

    private SaturationPlane(int components, double[] rows, double[] rights, double[] solids, List<int> pivots)
    {
        this.components = components;
        this.rows = rows;
        this.rights = rights;
        this.solids = solids;
        this.pivots = pivots;
        Free = components - pivots.Count;
        var free = Enumerable.Range(0, components).Where(j => !pivots.Contains(j)).ToArray();
        Directions = new double[components * Math.Max(Free, 1)];
        for (var d = 0; d < Free; d++)
        {
            Directions[free[d] * Free + d] = 1;
            for (var s = 0; s < pivots.Count; s++)
                Directions[pivots[s] * Free + d] = -rows[s * components + free[d]];
        }
    }

    /// <summary>How many directions are left to move in.</summary>
    public int Free { get; }

    /// <summary>The directions, component by component: <see cref="Free"/> numbers for each.</summary>
    public double[] Directions { get; }

    /// <summary>The plane of some solids, or null when one of them is a mixture of the others in composition.</summary>
    /// <param name="solids">How much of each component a formula unit holds, solid by solid.</param>
    /// <param name="lnConstants">ln of the ion product of each solid at saturation.</param>
    /// <param name="totals">Total of each component, mol/L.</param>
    public static SaturationPlane? Of(double[] solids, double[] lnConstants, double[] totals)
    {
        var components = totals.Length;
        var count = lnConstants.Length;
        var rows = (double[])solids.Clone();
        var rights = (double[])lnConstants.Clone();
        var pivots = new List<int>();
        for (var s = 0; s < count; s++)
        {
            var pivot = -1;
            for (var j = 0; j < components; j++)
            {
                if (!pivots.Contains(j) && Math.Abs(rows[s * components + j]) > Vanishing && (pivot < 0 || totals[j] < totals[pivot]))
                    pivot = j;
            }

            if (pivot < 0)
                return null;
            pivots.Add(pivot);
            var by = rows[s * components + pivot];
            for (var j = 0; j < components; j++)
                rows[s * components + j] /= by;
            rights[s] /= by;
            for (var t = 0; t < count; t++)
            {
                if (t == s || rows[t * components + pivot] is not (not 0 and var times))
                    continue;
                for (var j = 0; j < components; j++)
                    rows[t * components + j] -= times * rows[s * components + j];
                rights[t] -= times * rights[s];
            }
        }

        return new(components, rows, rights, solids, pivots);
    }

    /// <summary>Moves a point onto the plane.</summary>
    /// <param name="x">ln activities.</param>
    public void Project(double[] x)
    {
        for (var s = 0; s < pivots.Count; s++)
        {
            var value = rights[s];
            for (var j = 0; j < components; j++)
            {
                if (!pivots.Contains(j))
                    value -= rows[s * components + j] * x[j];
            }

            x[pivots[s]] = value;
        }
    }

    /// <summary>The amount of each solid that closes the balances of the fixed components, mol/L; negative where a solid dissolves.</summary>
    /// <param name="lacking">Total less dissolved of each component, mol/L.</param>
    public double[] Amounts(ReadOnlySpan<double> lacking)
    {
        var n = pivots.Count;
        var balances = Matrix<double>.Build.Dense(n, n, (s, t) => solids[t * components + pivots[s]]);
        var open = Vector<double>.Build.Dense(n);
        for (var s = 0; s < n; s++)
            open[s] = lacking[pivots[s]];
        return balances.Solve(open).ToArray();
    }
}
