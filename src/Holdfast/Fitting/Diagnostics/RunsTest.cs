namespace Holdfast.Fitting.Diagnostics;

/// <summary>
/// The exact runs test: whether the signs of the residuals, ordered by x, change too seldom for chance. Weak with few points: with eight only two
/// runs are significant. The residuals of a fit are tied to each other, which makes it careful.
/// </summary>
/// <remarks>A. Wald and J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147 (from memory).</remarks>
/// <param name="Plus">Residuals above 0.</param>
/// <param name="Minus">Residuals below 0.</param>
/// <param name="Runs">Runs of one sign.</param>
/// <param name="TooFew">Probability of so few runs or fewer: a pattern is left over.</param>
/// <param name="TooMany">Probability of so many runs or more: the signs alternate.</param>
public sealed record RunsTest(int Plus, int Minus, int Runs, double TooFew, double TooMany)
{
    /// <summary>The test of the residuals of a fit, ordered by x.</summary>
    /// <param name="fit">The fit.</param>
    /// <returns>Null when all residuals have one sign or there are none.</returns>
    public static RunsTest? Of(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Of([.. Enumerable.Range(0, fit.Residuals.Count).OrderBy(i => fit.Points.X[i]).Select(i => fit.Residuals[i])]);
    }

    /// <summary>The test of residuals in their order; zeros are passed over.</summary>
    /// <param name="residuals">Residuals, in any unit.</param>
    /// <returns>Null when all have one sign.</returns>
    public static RunsTest? Of(IReadOnlyList<double> residuals)
    {
        ArgumentNullException.ThrowIfNull(residuals);
        var signs = residuals.Where(r => r != 0).Select(Math.Sign).ToArray();
        var plus = signs.Count(s => s > 0);
        var runs = signs.Length == 0 ? 0 : 1 + Enumerable.Range(1, signs.Length - 1).Count(i => signs[i] != signs[i - 1]);
        return plus == 0 || plus == signs.Length ? null : Of(plus, signs.Length - plus, runs);
    }

    /// <summary>The test for given counts.</summary>
    /// <param name="plus">Residuals above 0, at least 1.</param>
    /// <param name="minus">Residuals below 0, at least 1.</param>
    /// <param name="runs">Runs of one sign, from 2.</param>
    public static RunsTest Of(int plus, int minus, int runs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(plus, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(minus, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(runs, 2);
        var all = Choose(plus + minus, plus);
        double few = 0, many = 0;
        for (var r = 2; r <= plus + minus; r++)
        {
            var share = Ways(plus, minus, r) / all;
            if (r <= runs)
                few += share;
            if (r >= runs)
                many += share;
        }

        return new(plus, minus, runs, Math.Min(few, 1), Math.Min(many, 1));
    }

    private static double Ways(int plus, int minus, int runs)
    {
        var half = runs / 2;
        return runs % 2 == 0
            ? 2 * Choose(plus - 1, half - 1) * Choose(minus - 1, half - 1)
            : Choose(plus - 1, half) * Choose(minus - 1, half - 1) + Choose(plus - 1, half - 1) * Choose(minus - 1, half);
    }

    private static double Choose(int n, int k)
    {
        if (k < 0 || k > n)
            return 0;
        var ways = 1.0;
        for (var i = 1; i <= k; i++)
            ways = ways * (n - k + i) / i;
        return ways;
    }
}
