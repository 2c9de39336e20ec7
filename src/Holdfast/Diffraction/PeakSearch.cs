using System.Collections.Immutable;
using Holdfast.Statistics;

namespace Holdfast.Diffraction;

/// <summary>Peaks of a pattern with a stated significance, and the spikes that are none.</summary>
/// <param name="Peaks">Peaks, by angle.</param>
/// <param name="Spikes">2θ of single readings that no line could make, degrees: cosmic rays, a counter's hiccup. They are left out of every fit.</param>
/// <param name="Threshold">Smallest z that counted, without unit: a 5 % chance of one false peak in the whole scan.</param>
/// <remarks>
/// A window of n readings against windows on both sides: z = (G − B)/√(u²(G) + u²(B)), for widths from 3 readings to <see cref="WidestLine"/>.
/// A peak shows twice: in curvature (sides next to the window, which parts close neighbours) and against sides further out, corrected
/// for a curved background, which lets broad humps through neither.
/// </remarks>
public sealed record PeakSearch(ImmutableArray<FoundPeak> Peaks, ImmutableArray<double> Spikes, double Threshold)
{
    /// <summary>Chance of one false peak in the whole scan, without unit.</summary>
    public const double FalseAlarm = 0.05;

    /// <summary>Widest window tried, degrees: broader rises are background.</summary>
    public const double WidestLine = 1.5;

    // Two maxima of the curvature are two peaks only when the dip between them is no chance either, in standard deviations.
    private const double LeastDip = 6;

    // A spike: its neighbours share less than this part of its rise. A line one reading wide would still share 0.3.
    private const double SharedBySpike = 0.2;
    private const double SpikeSignificance = 6;

    // A measured line has skirts that no simple profile has (slits, axial divergence, the edge of a filter): a rise this close to a line and this weak
    // against it is its skirt. Four widths, for a sharp line up to eight but no more than 0.6°.
    private const double Skirt = 0.02;
    private const double SkirtWidths = 4, SharpSkirtWidths = 8, SharpSkirt = 0.6;

    // A Kα2 partner is half as high as its line; more than this is a line of its own.
    private const double MostOfPartner = 0.75;

    private const double Grow = 1.35;

    /// <summary>Searches a pattern.</summary>
    /// <param name="scan">The pattern.</param>
    /// <param name="radiation">For the Kα2 partners, which are not peaks of their own; null keeps them.</param>
    public static PeakSearch In(PowderScan scan, Radiation? radiation)
    {
        ArgumentNullException.ThrowIfNull(scan);
        var y = scan.Counts.ToArray();
        var spikes = RemoveSpikes(scan, y);
        double[] level = [.. y];
        var (peaks, threshold) = In(scan, y, level);
        return new([.. WithoutPartners(peaks, radiation, scan.Step)], [.. spikes.Select(i => scan.TwoTheta[i])], threshold);
    }

    /// <summary>Searches readings whose expected noise is known from elsewhere: what a fit left over.</summary>
    /// <param name="scan">The pattern, for angles and noise.</param>
    /// <param name="y">Readings to search.</param>
    /// <param name="level">Intensity that sets the noise of each reading.</param>
    internal static (List<FoundPeak> Peaks, double Threshold) In(PowderScan scan, double[] y, double[] level)
    {
        var widths = Widths(scan);
        var threshold = -NormalDistribution.Quantile(FalseAlarm / (scan.Length * (double)widths.Count));
        var sums = Sums(y);
        var variances = Sums([.. level.Select(scan.Variance)]);
        var taken = new List<int>();
        foreach (var n in widths)
        {
            foreach (var i in Maxima(Curvature(sums, variances, n), threshold))
            {
                if (!taken.Exists(t => Math.Abs(t - i) < n))
                    taken.Add(i);
            }
        }

        var peaks = new List<FoundPeak>();
        foreach (var i in taken.Order())
        {
            // Windows that reach a neighbour would lend its counts to this place.
            var alone = taken.Where(t => t != i).Select(t => Math.Abs(t - i)).DefaultIfEmpty(int.MaxValue).Min();
            var (z, background) = Best(sums, variances, widths, i, alone);
            if (z >= threshold)
                peaks.Add(Shape(scan, y, taken, i, z, background));
        }

        return ([.. peaks.Where(p => !peaks.Exists(q => IsSkirt(p, q)))], threshold);
    }

    private static bool IsSkirt(FoundPeak p, FoundPeak line)
        => p.Height < Skirt * line.Height
            && Math.Abs(p.TwoTheta - line.TwoTheta) < Math.Max(SkirtWidths * line.Width, Math.Min(SharpSkirtWidths * line.Width, SharpSkirt));

    private static List<int> Widths(PowderScan scan)
    {
        var widths = new List<int>();
        for (double n = 3; n <= Math.Min(WidestLine / scan.Step, scan.Length / 8.0); n = Math.Max(n * Grow, n + 2))
            widths.Add(2 * (int)(n / 2) + 1);
        return widths.Count > 0 ? [.. widths.Distinct()] : [3];
    }

    // z of each window against the two windows next to it.
    private static double[] Curvature(double[] sums, double[] variances, int n)
    {
        var length = sums.Length - 1;
        var z = new double[length];
        var half = n / 2;
        for (var i = half + n; i < length - half - n; i++)
        {
            var (from, to) = (i - half, i + half + 1);
            var net = sums[to] - sums[from] - (sums[from] - sums[from - n] + sums[to + n] - sums[to]) / 2;
            var variance = variances[to] - variances[from] + (variances[from] - variances[from - n] + variances[to + n] - variances[to]) / 4;
            z[i] = net / Math.Sqrt(variance);
        }

        return z;
    }

    // Maxima above the threshold that stand LeastDip above the lower of the dips that part them from higher ones.
    private static IEnumerable<int> Maxima(double[] z, double threshold)
    {
        var best = -1;
        var lowest = 0.0;
        for (var i = 0; i < z.Length; i++)
        {
            if (best < 0)
            {
                // Rising: a candidate must first climb LeastDip out of the last dip.
                lowest = Math.Min(lowest, z[i]);
                if (z[i] >= threshold && z[i] - lowest >= LeastDip)
                    best = i;
                continue;
            }

            if (z[i] > z[best])
            {
                best = i;
            }
            else if (z[best] - z[i] >= LeastDip || i == z.Length - 1)
            {
                yield return best;
                (best, lowest) = (-1, z[i]);
            }
        }
    }

    // The largest z over all widths, against sides at 1.5 widths, or at 1.5 and 2.5 widths freed of curvature, whichever background is higher.
    private static (double Z, double Background) Best(double[] sums, double[] variances, List<int> widths, int i, int alone)
    {
        const double near = 1.5625, far = 0.5625;   // b²/(b² − a²) and a²/(b² − a²) with a = 1.5, b = 2.5 widths
        var length = sums.Length - 1;
        var (best, level) = (double.NegativeInfinity, 0.0);
        foreach (var n in widths)
        {
            var half = n / 2;
            var (from, to) = (i - half, i + half + 1);
            var (left, right) = (from - half, to + half);
            if (left - n < 0 || right + n > length || half >= alone)
                break;
            double Of(double[] s, int a) => s[a + n] - s[a];
            var background = (Of(sums, left - n) + Of(sums, right)) / 2;
            var variance = (Of(variances, left - n) + Of(variances, right)) / 4;
            if (left - 2 * n >= 0 && right + 2 * n <= length)
            {
                var outer = (Of(sums, left - 2 * n) + Of(sums, right + n)) / 2;
                var curved = near * background - far * outer;
                if (curved > background)
                {
                    variance = near * near * variance + far * far * (Of(variances, left - 2 * n) + Of(variances, right + n)) / 4;
                    background = curved;
                }
            }

            var z = (sums[to] - sums[from] - background) / Math.Sqrt(variances[to] - variances[from] + variance);
            if (z > best)
                (best, level) = (z, background / n);
        }

        return (best, level);
    }

    // Half height is walked to on both sides; the nearer side counts twice where a neighbour stands in the way of the other.
    private static FoundPeak Shape(PowderScan scan, double[] y, List<int> taken, int i, double z, double background)
    {
        var (lower, upper) = (taken.Where(t => t < i).DefaultIfEmpty(-1).Max(), taken.Where(t => t > i).DefaultIfEmpty(y.Length).Min());
        var top = Enumerable.Range(i - 1, 3).Where(k => k >= 0 && k < y.Length).MaxBy(k => y[k]);
        var height = Math.Max((Enumerable.Range(top - 1, 3).Where(k => k >= 0 && k < y.Length).Average(k => y[k])) - background, Math.Sqrt(scan.Variance(background)));
        double Walk(int direction, int end)
        {
            for (var k = top; k > 0 && k < y.Length - 1; k += direction)
            {
                if ((k - end) * direction >= 0)
                    break;
                if ((y[k - 1] + y[k] + y[k + 1]) / 3 - background < height / 2)
                    return Math.Abs(scan.TwoTheta[k] - scan.TwoTheta[top]);
            }

            return double.PositiveInfinity;
        }

        var (left, right) = (Walk(-1, (lower + i) / 2), Walk(1, (upper + i) / 2));
        var half = double.IsFinite(left) && double.IsFinite(right) ? (left + right) / 2 : Math.Min(left, right);
        if (!double.IsFinite(half))
            half = Math.Min(i - lower, upper - i) * scan.Step / 2;
        return new(scan.TwoTheta[top], z, Math.Clamp(2 * half - scan.Step, 1.5 * scan.Step, 2 * WidestLine), height);
    }

    private static List<FoundPeak> WithoutPartners(List<FoundPeak> peaks, Radiation? radiation, double step)
    {
        if (radiation?.Ka2 is not { } second)
            return peaks;
        var kept = new List<FoundPeak>();
        foreach (var peak in peaks)
        {
            // Where the second wavelength puts it, and no more than half as high by a margin for noise.
            if (!kept.Exists(k => Bragg.Moved(k.TwoTheta, radiation.Ka1, second) is { } at && at - k.TwoTheta > 2 * step
                && Math.Abs(at - peak.TwoTheta) <= Math.Max(2.5 * step, 0.5 * k.Width) && peak.Height < MostOfPartner * k.Height))
                kept.Add(peak);
        }

        return kept;
    }

    private static List<int> RemoveSpikes(PowderScan scan, double[] y)
    {
        var spikes = new List<int>();
        for (var i = 3; i < y.Length - 3; i++)
        {
            double[] around = [y[i - 3], y[i - 2], y[i + 2], y[i + 3]];
            Array.Sort(around);
            var level = (around[1] + around[2]) / 2;
            var rise = y[i] - level;
            if (rise > SpikeSignificance * Math.Sqrt(scan.Variance(level) * 1.5) && Math.Max(y[i - 1], y[i + 1]) - level < SharedBySpike * rise
                && y[i] - around[3] > 0.8 * rise)
            {
                spikes.Add(i);
                y[i] = (y[i - 1] + y[i + 1]) / 2;
            }
        }

        return spikes;
    }

    private static double[] Sums(double[] y)
    {
        var sums = new double[y.Length + 1];
        for (var i = 0; i < y.Length; i++)
            sums[i + 1] = sums[i] + y[i];
        return sums;
    }
}
