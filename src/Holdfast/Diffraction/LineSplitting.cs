namespace Holdfast.Diffraction;

/// <summary>How the strongest lines split: whether there is a Kα2 at all, and whether it lies where the stated anode puts it.</summary>
/// <param name="IsSingle">True when lines without a partner suit the readings far better.</param>
/// <param name="Better">Another anode whose doublet suits them far better; null when none does.</param>
public sealed record LineSplitting(bool IsSingle, Radiation? Better)
{
    /// <summary>True when lines with the partner of the stated anode suit the readings far better than single ones.</summary>
    public bool IsDouble { get; private init; }

    private const int MostLines = 8;

    // χ² must fall by this many times max(1, χ²ᵣ) before the lines are believed against the words.
    private const double Convincing = 60;
    private const double Alone = 6;
    private const double MostOfPartner = 0.75;
    private const double Together = 4;

    // A partner closer than this part of the width cannot be told from a broad line.
    private const double LeastSplit = 0.5;

    /// <summary>Looks at the strongest lines that stand alone and are sharp enough to split.</summary>
    /// <param name="scan">The pattern.</param>
    /// <param name="stated">Radiation as stated.</param>
    public static LineSplitting Of(PowderScan scan, Radiation stated)
    {
        ArgumentNullException.ThrowIfNull(scan);
        ArgumentNullException.ThrowIfNull(stated);
        if (stated.Ka2 is null)
            return new(false, null);
        var peaks = PeakSearch.In(scan, stated).Peaks;
        // Only the ratio of the two wavelengths matters for the splitting.
        double Split(FoundPeak p, Radiation r) => Bragg.Moved(p.TwoTheta, r.Ka1, r.Ka2!.Value) is { } at ? at - p.TwoTheta : 0;
        Radiation[] others = [.. Radiation.All.Where(r => r.Ka2 is not null && r.Anode != stated.Anode).Select(r => stated with { Anode = r.Anode, Ka2 = stated.Ka1 * r.Ka2!.Value / r.Ka1 })];
        // A partner under another anode stands as a peak of its own; it is no neighbour.
        bool IsPartner(FoundPeak q, FoundPeak p) => q.Height < MostOfPartner * p.Height && others.Any(r => Math.Abs(p.TwoTheta + Split(p, r) - q.TwoTheta) < Math.Max(2 * scan.Step, 0.3 * p.Width));
        FoundPeak[] lines = [.. peaks.Where(p => Split(p, stated) > LeastSplit * p.Width && !peaks.Any(q => q != p && Math.Abs(q.TwoTheta - p.TwoTheta) < Alone * p.Width + Split(p, stated) && !IsPartner(q, p) && !IsPartner(p, q)))
            .Where(p => !peaks.Any(q => IsPartner(p, q))).OrderByDescending(p => p.Significance).Take(MostLines)];
        if (lines.Length == 0)
            return new(false, null);
        (double S, int Freedom) Fit(Radiation radiation)
        {
            var (s, freedom) = (0.0, 0);
            foreach (var line in lines)
            {
                var (from, to) = (line.TwoTheta - Together * line.Width, line.TwoTheta + others.Append(stated).Max(r => Split(line, r)) + Together * line.Width);
                int[] points = [.. Enumerable.Range(0, scan.Length).Where(i => scan.TwoTheta[i] >= from && scan.TwoTheta[i] <= to)];
                if (points.Length < 10)
                    continue;
                var group = new LineGroup([line], radiation, points, (from + to) / 2, (to - from) / 2);
                group.Fit(scan, new double[scan.Length], null, null);
                s += group.ChiSquare;
                freedom += points.Length - 6;
            }

            return (s, freedom);
        }

        var own = Fit(stated);
        if (own.Freedom <= 0)
            return new(false, null);
        var rivals = others.Select(r => (Radiation: Radiation.Of(r.Anode)!, Fit(r).S)).OrderBy(r => r.S).ToArray();
        var single = Fit(stated.WithoutKa2()).S;
        var least = Math.Min(single, Math.Min(own.S, rivals[0].S));
        var needed = Convincing * Math.Max(1, least / own.Freedom);
        return single <= rivals[0].S && own.S - single > needed ? new(true, null)
            : rivals[0].S < single && own.S - rivals[0].S > needed ? new(false, rivals[0].Radiation) : new(false, null) { IsDouble = single - own.S > needed };
    }
}
