using Holdfast.Statistics;

namespace Holdfast.Composition;

/// <summary>One step of a loss on heating, between the two places beside it where least is lost.</summary>
/// <param name="From">Temperature where it begins, °C.</param>
/// <param name="Peak">Temperature at which most is lost, °C.</param>
/// <param name="To">Temperature where it ends, °C.</param>
/// <param name="Loss">Mass lost, percent of the mass at the start.</param>
/// <param name="U">Standard uncertainty from the scatter of the balance alone; buoyancy is not in it; percent.</param>
public sealed record LossStep(double From, double Peak, double To, double Loss, double U)
{
    private const double LeastShareOfRate = 0.08;
    private const double LeastLoss = 5;
    private const int Window = 15;

    /// <summary>Steps of a run; empty when nothing above the scatter is lost.</summary>
    /// <param name="celsius">Temperatures, rising, °C; at least 30.</param>
    /// <param name="mass">Masses, any unit.</param>
    public static IReadOnlyList<LossStep> Of(IReadOnlyList<double> celsius, IReadOnlyList<double> mass)
    {
        ArgumentNullException.ThrowIfNull(celsius);
        ArgumentNullException.ThrowIfNull(mass);
        ArgumentOutOfRangeException.ThrowIfLessThan(mass.Count, 2 * Window, nameof(mass));
        double[] percent = [.. mass.Select(m => 100 * m / mass[0])], smooth = SavitzkyGolay.Smooth(percent, Window);
        var noise = Math.Sqrt(percent.Zip(smooth, (p, s) => (p - s) * (p - s)).Sum() / (percent.Length - 1));
        double[] rate = SavitzkyGolay.Smooth([.. Enumerable.Range(0, smooth.Length).Select(i => Rate(celsius, smooth, i))], Window);
        var threshold = LeastShareOfRate * rate.Max();
        int[] peaks = [.. Enumerable.Range(1, rate.Length - 2).Where(i => rate[i] > threshold && rate[i] >= rate[i - 1] && rate[i] > rate[i + 1])];
        peaks = Merge(peaks, rate);
        var steps = new List<LossStep>();
        for (var k = 0; k < peaks.Length; k++)
        {
            int from = k == 0 ? 0 : Lowest(rate, peaks[k - 1], peaks[k]), to = k == peaks.Length - 1 ? rate.Length - 1 : Lowest(rate, peaks[k], peaks[k + 1]);
            var loss = smooth[from] - smooth[to];
            if (loss > LeastLoss * noise)
                steps.Add(new(celsius[from], celsius[peaks[k]], celsius[to], loss, noise * Math.Sqrt(2)));
        }

        return steps;
    }

    private static double Rate(IReadOnlyList<double> x, double[] y, int i)
    {
        int before = Math.Max(0, i - 1), after = Math.Min(y.Length - 1, i + 1);
        return x[after] > x[before] ? -(y[after] - y[before]) / (x[after] - x[before]) : 0;
    }

    // Two peaks without a valley of half the lower one between them are one step.
    private static int[] Merge(int[] peaks, double[] rate)
    {
        var kept = new List<int>();
        foreach (var peak in peaks)
        {
            if (kept.Count > 0 && rate[Lowest(rate, kept[^1], peak)] > 0.5 * Math.Min(rate[kept[^1]], rate[peak]))
                kept[^1] = rate[peak] > rate[kept[^1]] ? peak : kept[^1];
            else
                kept.Add(peak);
        }

        return [.. kept];
    }

    private static int Lowest(double[] rate, int from, int to) => Enumerable.Range(from, to - from + 1).MinBy(i => rate[i]);
}
