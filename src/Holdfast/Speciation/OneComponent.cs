namespace Holdfast.Speciation;

/// <summary>
/// One metal among its own complexes: the x = ln activity of the free ion for which Σ p exp(L + p x) is the total. ln of that sum is increasing and convex in x, with
/// a slope between 1 and the largest p, so that Newton's method ends at the one solution from any start, from one side after its first step.
/// </summary>
internal static class OneComponent
{
    private const int MostSteps = 200;
    private const double Tolerance = 1e-14;

    /// <summary>ln activity of the free ion.</summary>
    /// <param name="metals">p of each species: metal ions in it.</param>
    /// <param name="lnFactor">L of each species: ln of its concentration, mol/L, at unit activity of the free ion.</param>
    /// <param name="lnTotal">ln of the total metal, mol/L.</param>
    /// <param name="start">Where to begin; any number gives the same result.</param>
    /// <param name="steps">How many steps it took.</param>
    public static double Solve(ReadOnlySpan<int> metals, ReadOnlySpan<double> lnFactor, double lnTotal, double start, out int steps)
    {
        var x = start;
        for (steps = 1; steps <= MostSteps; steps++)
        {
            var largest = double.NegativeInfinity;
            for (var i = 0; i < metals.Length; i++)
                largest = Math.Max(largest, lnFactor[i] + metals[i] * x);
            double sum = 0, slope = 0;
            for (var i = 0; i < metals.Length; i++)
            {
                var share = metals[i] * Math.Exp(lnFactor[i] + metals[i] * x - largest);
                sum += share;
                slope += metals[i] * share;
            }

            var step = (Math.Log(sum) + largest - lnTotal) * sum / slope;
            x -= step;
            if (Math.Abs(step) <= Tolerance * Math.Max(1, Math.Abs(x)))
                break;
        }

        return x;
    }
}
