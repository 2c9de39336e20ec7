using System.Collections.Immutable;

namespace Holdfast.Diffraction;

/// <summary>All lines of a pattern, fitted on the raw readings in groups of neighbours.</summary>
/// <param name="Lines">Fitted lines, by angle.</param>
/// <param name="Search">The search they started from.</param>
/// <param name="Model">Background and lines at each reading, in its unit; null where no line is near.</param>
/// <param name="Background">Background at each reading; null where no line is near.</param>
/// <remarks>
/// Weights are 1/variance, first of the reading, then of the fitted curve (which frees weak lines of the bias of Poisson weights). Groups are fitted in turn
/// with the tails of the others taken off.
/// </remarks>
public sealed record ProfileFit(ImmutableArray<FittedLine> Lines, PeakSearch Search, ImmutableArray<double?> Model, ImmutableArray<double?> Background)
{
    // Lines closer than this many widths are fitted together, and a window reaches as far beyond the outer ones.
    private const double Together = 4;
    private const int MostTogether = 8;
    private const int Passes = 3;
    private const int Rounds = 3;

    // A weaker line does not tell its Lorentz share; it takes the median of the stronger ones, or the usual one.
    private const double TellsMixing = 30;
    private const double UsualMixing = 0.5;

    // A rise in what is left over counts as a line of its own when it is this part of the curve there: a measured profile is never quite the fitted one.
    private const double LeastShareOfNeighbour = 0.06;

    // Kβ and tungsten lines are this weak against the line they come from (common practice, a nickel filter in place).
    private const double GhostShare = 0.2;
    private const double GhostSpread = 3;

    /// <summary>Searches and fits a pattern.</summary>
    /// <param name="scan">The pattern.</param>
    /// <param name="radiation">Its radiation.</param>
    /// <param name="instrumentWidth">Width that the instrument gives a perfect powder, degrees, or null when not measured.</param>
    /// <param name="cancel">Stops it.</param>
    public static ProfileFit Of(PowderScan scan, Radiation radiation, double? instrumentWidth = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(scan);
        ArgumentNullException.ThrowIfNull(radiation);
        var search = PeakSearch.In(scan, radiation);
        List<FoundPeak> peaks = [.. search.Peaks];
        var groups = Fitted(scan, radiation, peaks, search.Spikes, cancel);
        for (var round = 0; round < Rounds; round++)
        {
            // A start that led to no line of its own only disturbs its neighbours; what a first fit left over may be lines of their own.
            FoundPeak[] empty = [.. groups.SelectMany(g => g.Empty())];
            var more = round == 0 ? LeftOver(scan, groups, peaks) : [];
            if (more.Count + empty.Length == 0)
                break;
            peaks = [.. peaks.Except(empty).Concat(more).OrderBy(p => p.TwoTheta)];
            groups = Fitted(scan, radiation, peaks, search.Spikes, cancel);
        }

        var model = new double?[scan.Length];
        var background = new double?[scan.Length];
        foreach (var group in groups)
        {
            foreach (var i in group.Points)
            {
                background[i] = group.BackgroundAt(scan.TwoTheta[i]);
                model[i] = background[i] + groups.Sum(g => g.LinesAt(scan.TwoTheta[i]));
            }
        }

        return new(WithGhosts([.. groups.SelectMany(g => g.Results(instrumentWidth)).Where(l => !l.IsEmpty).OrderBy(l => l.TwoTheta)], radiation), search, [.. model], [.. background]);
    }

    private static List<LineGroup> Fitted(PowderScan scan, Radiation radiation, List<FoundPeak> peaks, ImmutableArray<double> spikes, CancellationToken cancel)
    {
        var groups = Groups(scan, radiation, peaks, spikes);
        double[]? model = null;
        double? eta = null;
        var lines = groups.Select(_ => new double[scan.Length]).ToArray();
        for (var pass = 0; pass < Passes; pass++)
        {
            for (var g = 0; g < groups.Count; g++)
            {
                cancel.ThrowIfCancellationRequested();
                var others = new double[scan.Length];
                foreach (var i in groups[g].Points)
                {
                    for (var o = 0; o < groups.Count; o++)
                        others[i] += o == g ? 0 : lines[o][i];
                }

                groups[g].Fit(scan, others, model, groups[g].Significance < TellsMixing ? eta ?? UsualMixing : null);
                // Only where another group looks.
                foreach (var group in groups)
                {
                    foreach (var i in group.Points)
                        lines[g][i] = groups[g].LinesAt(scan.TwoTheta[i]);
                }
            }

            double[] strong = [.. groups.Where(g => g.Significance >= TellsMixing).Select(g => g.Eta).Order()];
            eta = strong.Length > 0 ? strong[strong.Length / 2] : null;
            model = scan.Counts.ToArray();
            foreach (var group in groups)
            {
                foreach (var i in group.Points)
                    model[i] = group.BackgroundAt(scan.TwoTheta[i]) + lines.Sum(l => l[i]);
            }
        }

        return groups;
    }

    private static List<LineGroup> Groups(PowderScan scan, Radiation radiation, List<FoundPeak> peaks, ImmutableArray<double> spikes)
    {
        var together = new List<List<FoundPeak>>();
        foreach (var peak in peaks)
        {
            if (together.Count > 0 && together[^1][^1] is var last && peak.TwoTheta - last.TwoTheta < Together * Math.Max(peak.Width, last.Width))
                together[^1].Add(peak);
            else
                together.Add([peak]);
        }

        together = [.. together.SelectMany(Split)];
        HashSet<int> left = [.. spikes.Select(scan.Nearest)];
        var groups = new List<LineGroup>();
        for (var g = 0; g < together.Count; g++)
        {
            var (first, last) = (together[g][0], together[g][^1]);
            double Partner(FoundPeak p) => radiation.Ka2 is { } second && Bragg.Moved(p.TwoTheta, radiation.Ka1, second) is { } at ? at : p.TwoTheta;
            var from = first.TwoTheta - Together * first.Width - 2 * scan.Step;
            var to = Partner(last) + Together * last.Width + 2 * scan.Step;
            if (g > 0)
                from = Math.Max(from, Math.Max((Partner(together[g - 1][^1]) + first.TwoTheta) / 2, Partner(together[g - 1][^1]) + together[g - 1][^1].Width));
            if (g + 1 < together.Count)
                to = Math.Min(to, Math.Min((last.TwoTheta + together[g + 1][0].TwoTheta) / 2, together[g + 1][0].TwoTheta - together[g + 1][0].Width));
            int[] points = [.. Enumerable.Range(0, scan.Length).Where(i => scan.TwoTheta[i] >= from && scan.TwoTheta[i] <= to && !left.Contains(i))];
            if (points.Length > 4 + 3 * together[g].Count)
                groups.Add(new(together[g], radiation, points, (from + to) / 2, Math.Max((to - from) / 2, scan.Step)));
        }

        return groups;
    }

    private static IEnumerable<List<FoundPeak>> Split(List<FoundPeak> group)
    {
        if (group.Count <= MostTogether)
            return [group];
        var at = Enumerable.Range(1, group.Count - 1).MaxBy(k => (group[k].TwoTheta - group[k - 1].TwoTheta) / Math.Max(group[k].Width, group[k - 1].Width));
        return Split(group[..at]).Concat(Split(group[at..]));
    }

    private static List<FoundPeak> LeftOver(PowderScan scan, List<LineGroup> groups, List<FoundPeak> peaks)
    {
        var rest = new double[scan.Length];
        var level = scan.Counts.ToArray();
        foreach (var group in groups)
        {
            foreach (var i in group.Points)
            {
                level[i] = group.BackgroundAt(scan.TwoTheta[i]) + groups.Sum(g => g.LinesAt(scan.TwoTheta[i]));
                rest[i] = scan.Counts[i] - level[i];
            }
        }

        return [.. PeakSearch.In(scan, rest, level).Peaks.Where(p => groups.Sum(g => g.LinesAt(p.TwoTheta)) is var near
            && p.Height > LeastShareOfNeighbour * groups.Sum(g => NearbyTop(g, p, scan))
            && p.Height > LeastShareOfNeighbour * near
            && !peaks.Exists(q => Math.Abs(q.TwoTheta - p.TwoTheta) < 0.5 * q.Width))];
    }

    // Highest line intensity of a group within the width of a place.
    private static double NearbyTop(LineGroup group, FoundPeak p, PowderScan scan)
        => Enumerable.Range(-4, 9).Max(k => group.LinesAt(p.TwoTheta + k * Math.Max(p.Width, 2 * scan.Step) / 2));

    private static ImmutableArray<FittedLine> WithGhosts(ImmutableArray<FittedLine> lines, Radiation radiation)
    {
        LineDoubts Of(FittedLine line)
            => (radiation.Kb is { } kb && IsGhost(line, lines, radiation, kb) ? LineDoubts.MaybeKBeta : LineDoubts.None)
                | (radiation.Anode.Length > 0 && IsGhost(line, lines, radiation, Radiation.TungstenLa) ? LineDoubts.MaybeTungsten : LineDoubts.None);
        return [.. lines.Select(l => l with { Flags = l.Flags | Of(l) })];
    }

    // A ghost of one line is believed only when the strongest line has its ghost too, about as strong: the beam is the same for all.
    private static bool IsGhost(FittedLine line, ImmutableArray<FittedLine> lines, Radiation radiation, double wavelength)
    {
        bool Of(FittedLine ghost, FittedLine strong)
            => ghost.Height < GhostShare * strong.Height && Bragg.Moved(strong.TwoTheta, radiation.Ka1, wavelength) is { } at
                && Math.Abs(at - ghost.TwoTheta) < Math.Max(0.3 * strong.Width, 3 * ghost.TwoThetaU);
        var strongest = lines.MaxBy(l => l.Height)!;
        return lines.FirstOrDefault(strong => Of(line, strong)) is { } source
            && lines.Any(g => Of(g, strongest) && g.Height / strongest.Height * GhostSpread >= line.Height / source.Height);
    }
}
