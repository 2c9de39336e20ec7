using Holdfast.Statistics;

namespace Holdfast.Claims.NextExperiments;

/// <summary>Contact times at which a first-order and a second-order curve differ most, and how many vessels tell them apart.</summary>
/// <remarks>
/// T-optimal design for a first-order curve against the best second-order one over times up to six time constants: 0.32/k, 2.2/k and the longest
/// time, vessels in ratio 31 : 43 : 26; the mean squared distance there is (0.041 qe)² (computed; reference/design/t-optimal.csv).
/// </remarks>
internal static class TellingTimes
{
    private const double Separation = 0.041;

    /// <summary>The experiment for a series.</summary>
    /// <param name="levels">Uptakes in mg/g at each contact time in min, in rising order.</param>
    public static NextExperiment? For(IReadOnlyList<Setting> levels)
    {
        Setting[] timed = [.. levels.Where(l => l.X > 0)];
        if (timed.Length < 2 || timed[^1].Mean <= 0)
            return null;
        var plateau = timed.Max(l => l.Mean);
        var rate = Rate(timed, plateau);
        double[] times = [0.32 / rate, 2.2 / rate, Math.Max(timed[^1].X, 4 / rate)];
        var scatter = OneWay.Of([.. timed.Select(l => l.Group("min"))]).Value;
        var total = scatter is null ? 9 : Replication.ForCurves(Separation * plateau * Separation * plateau, scatter.PooledSd, scatter.WithinFreedom);
        int[] vessels = [.. new[] { 0.31, 0.43, 0.26 }.Select(share => Math.Max(3, (int)Math.Ceiling(share * total)))];
        string[] words = [.. times.Select(t => Phrase.With(Math.Round(t, t < 10 ? 1 : 0), "min"))];
        return new(
            $"Stop {Phrase.Listed(words.Zip(vessels, (w, n) => $"{Phrase.Count(n, "vessel")} at {w}"))}: there first and second order differ most.",
            vessels.Sum(), [.. words], $"T-optimal times for first against second order; power 80 %, curves {Phrase.With(Separation * plateau, "mg/g")} apart");
    }

    /// <summary>Rate constant from the time at which half of the plateau is reached, read between neighbouring times: k = ln 2/t½.</summary>
    private static double Rate(Setting[] levels, double plateau)
    {
        var after = Array.FindIndex(levels, l => l.Mean >= 0.5 * plateau);
        var (t0, q0) = after == 0 ? (0, 0) : (levels[after - 1].X, levels[after - 1].Mean);
        var half = t0 + (0.5 * plateau - q0) / (levels[after].Mean - q0) * (levels[after].X - t0);
        return Math.Log(2) / half;
    }
}
