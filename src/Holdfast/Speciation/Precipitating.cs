namespace Holdfast.Speciation;

/// <summary>
/// Which solids are there: the one with the largest saturation index is let form, the balances are solved anew, a solid whose amount comes out negative
/// dissolves, until none is supersaturated. Since the balances have one solution, the order does not matter for the result.
/// </summary>
internal static class Precipitating
{
    private const int MostChanges = 200;
    private const double Saturated = 1e-9;

    /// <summary>Solves balances with solids.</summary>
    /// <param name="balances">The balances.</param>
    /// <param name="x">ln activities: the start, then the solution.</param>
    /// <param name="totals">Total of each component, mol/L.</param>
    /// <param name="solids">How much of each component a formula unit holds, solid by solid.</param>
    /// <param name="lnConstants">ln of the ion product of each solid at saturation.</param>
    /// <returns>The amount of each solid, mol/L.</returns>
    public static double[] Solve(MassAction balances, double[] x, double[] totals, double[] solids, double[] lnConstants)
    {
        var amounts = new double[lnConstants.Length];
        balances.Solve(x);
        var present = new List<int>();
        for (var change = 0; change < MostChanges; change++)
        {
            var next = Largest(x, solids, lnConstants, present);
            if (next < 0)
                break;
            Let(next, present, amounts, solids, lnConstants, totals);
            Settle(balances, x, totals, solids, lnConstants, present, amounts);
        }

        return amounts;
    }

    private static int Largest(double[] x, double[] solids, double[] lnConstants, List<int> present)
    {
        var largest = -1;
        var index = Saturated;
        for (var s = 0; s < lnConstants.Length; s++)
        {
            if (present.Contains(s))
                continue;
            var here = -lnConstants[s];
            for (var j = 0; j < x.Length; j++)
                here += solids[s * x.Length + j] * x[j];
            if (here > index)
                (largest, index) = (s, here);
        }

        return largest;
    }

    // A solid whose composition is a mixture of solids that are there takes the place of the one that would be used up first.
    private static void Let(int next, List<int> present, double[] amounts, double[] solids, double[] lnConstants, double[] totals)
    {
        if (Plane([.. present, next], solids, lnConstants, totals) is null)
        {
            var used = present
                .Where(s => Plane([.. present.Where(t => t != s), next], solids, lnConstants, totals) is not null)
                .MinBy(s => amounts[s]);
            present.Remove(used);
            amounts[used] = 0;
        }

        present.Add(next);
    }

    private static void Settle(
        MassAction balances, double[] x, double[] totals, double[] solids, double[] lnConstants, List<int> present, double[] amounts)
    {
        var lacking = new double[totals.Length];
        while (true)
        {
            if (present.Count == 0)
            {
                balances.Solve(x);
                return;
            }

            var plane = Plane(present, solids, lnConstants, totals)!;
            balances.Solve(x, plane);
            for (var j = 0; j < totals.Length; j++)
                lacking[j] = totals[j] - balances.Dissolved[j];
            var found = plane.Amounts(lacking);
            for (var s = 0; s < found.Length; s++)
                amounts[present[s]] = found[s];
            var least = Array.IndexOf(found, found.Min());
            if (found[least] >= 0)
                return;
            amounts[present[least]] = 0;
            present.RemoveAt(least);
        }
    }

    private static SaturationPlane? Plane(IReadOnlyList<int> chosen, double[] solids, double[] lnConstants, double[] totals)
        => SaturationPlane.Of(
            [.. chosen.SelectMany(s => solids.AsSpan(s * totals.Length, totals.Length).ToArray())], [.. chosen.Select(s => lnConstants[s])], totals);
}
