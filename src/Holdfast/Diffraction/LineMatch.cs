using System.Collections.Immutable;

namespace Holdfast.Diffraction;

/// <summary>Measured lines against the lines that a phase should show.</summary>
/// <param name="Matched">Lines with their reference, by angle.</param>
/// <param name="Unmatched">Measured lines of no reference line; ghosts of the tube included, marked by their flags.</param>
/// <param name="Missing">Reference lines above 10 % of the strongest, inside the scan, that were not seen.</param>
/// <param name="Displacement">Shift refined with the reference's own cell, degrees: amplitude D of D·cos θ.</param>
/// <param name="Lattice">Cell refined with the matched lines, or null when the reference gives no planes or the lines cannot tell.</param>
/// <param name="DetectionLimit">Height a line must have to reach z = 5 over the usual background, per cent of the strongest line; not a number where no pattern is at hand.</param>
public sealed record LineMatch(
    ImmutableArray<MatchedLine> Matched, ImmutableArray<FittedLine> Unmatched, ImmutableArray<ReferenceLine> Missing, double Displacement, Lattice? Lattice, double DetectionLimit)
{
    /// <summary>z from which an unmatched line may be a second phase, without unit.</summary>
    public const double SecondPhase = 5;

    /// <summary>Reference lines above this must be seen, per cent of the strongest.</summary>
    public const double MustBeSeen = 10;

    // Tolerances in degrees before and after the shift (common practice), and as shares of the width for broad lines.
    private const double Loose = 0.20, Tight = 0.04, LooseShare = 0.5, TightShare = 0.15;

    // Reference lines weaker than this explain a measured line only when nothing stronger does, per cent.
    private const double Weak = 0.5;

    // Families closer than this are one line to the eye, degrees; a family this weak beside another does not move it.
    private const double OneLine = 0.05, Negligible = 0.05;
    private const int Rounds = 4;

    /// <summary>The only axis that the matched lines tell of; null where they tell of the lattice, or of nothing.</summary>
    public OrdersOfAxis? Axis { get; init; }

    /// <summary>Possible second phase: unmatched lines with z of 5 or more that are no ghosts of the tube.</summary>
    public IEnumerable<FittedLine> Strangers
        => Unmatched.Where(l => l.Significance >= SecondPhase && (l.Flags & (LineDoubts.MaybeKBeta | LineDoubts.MaybeTungsten | LineDoubts.NarrowerThanInstrument)) == LineDoubts.None);

    /// <summary>Matches the fitted lines of a pattern.</summary>
    /// <param name="fit">Fitted lines.</param>
    /// <param name="scan">The pattern they were fitted on.</param>
    /// <param name="reference">Lines of the phase, above 0 % intensity.</param>
    /// <param name="cell">Cell of the reference; null when the list has none.</param>
    /// <param name="radiation">Radiation of the pattern.</param>
    public static LineMatch Of(ProfileFit fit, PowderScan scan, IReadOnlyList<ReferenceLine> reference, UnitCell? cell, Radiation radiation)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(scan);
        return Of(fit.Lines, (scan.TwoTheta[0], scan.TwoTheta[^1]), reference, cell, radiation) with { DetectionLimit = Limit(scan, fit, fit.Lines.Where(l => l.IsSettled).Select(l => l.Height).DefaultIfEmpty().Max()) };
    }

    /// <summary>Matches lines of which no pattern is at hand: what a weaker line would have to be is not known then.</summary>
    /// <param name="measured">The lines.</param>
    /// <param name="range">Angles between which lines were looked for, degrees of 2θ.</param>
    /// <param name="reference">Lines of the phase, above 0 % intensity.</param>
    /// <param name="cell">Cell of the reference; null when the list has none.</param>
    /// <param name="radiation">Radiation of the lines.</param>
    public static LineMatch Of(IReadOnlyList<FittedLine> measured, (double From, double To) range, IReadOnlyList<ReferenceLine> reference, UnitCell? cell, Radiation radiation)
    {
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(radiation);
        FittedLine[] lines = [.. measured.Where(l => l.IsSettled)];
        (ReferenceLine Line, double At)[] expected = [.. reference.Where(r => Bragg.TwoTheta(r.Spacing, radiation.Ka1) is not null).Select(r => (r, Bragg.TwoTheta(r.Spacing, radiation.Ka1)!.Value))];
        var own = Pair(lines, expected, Loose, LooseShare);
        var displacement = Shift(own);
        Lattice? lattice = null;
        OrdersOfAxis? axis = null;
        var places = expected;
        for (var round = 0; round < Rounds; round++)
        {
            places = [.. expected.Select(e => (e.Line, lattice is not null && e.Line.Planes is { } planes && lattice.Fit.Place(planes, radiation.Ka1) is { } at
                ? at : axis is not null && e.Line.Planes is { } order && axis.At(order, radiation.Ka1) is { } along ? along : e.At + displacement * Math.Cos(Bragg.Theta(e.At))))];
            own = Pair(lines, places, round == 0 ? (Loose + Tight) / 2 : Tight, round == 0 ? LooseShare : TightShare);
            if (cell is not null && Refined(own, cell, lattice, radiation) is { } refined)
                lattice = refined;
            else if (cell is not null && lattice is null && OrdersOfAxis.Of(Indexed(own), cell, radiation.Ka1) is { } orders)
                axis = orders;
            else if (lattice is null)
                displacement = Shift(Pair(lines, expected, Loose, LooseShare));
        }

        HashSet<FittedLine> matched = [.. own.Select(m => m.Line)];
        var (from, to) = range;
        return new(
            own,
            [.. lines.Where(l => !matched.Contains(l) && !Explained(l, places))],
            [.. places.Where(p => p.Line.Intensity >= MustBeSeen && p.At > from + Loose && p.At < to - Loose && !own.Any(m => Math.Abs(m.Line.TwoTheta - p.At) < Math.Max(Loose, LooseShare * m.Line.Width)))
                .Select(p => p.Line)],
            displacement, lattice, double.NaN)
        { Axis = lattice is null ? axis : null };
    }

    // A line beside a matched one that the reference explains by another family.
    private static bool Explained(FittedLine line, (ReferenceLine Line, double At)[] places)
        => places.Any(p => !(p.Line.Intensity < Weak) && Math.Abs(p.At - line.TwoTheta) <= Tolerance(line, Tight, TightShare));

    private static double Tolerance(FittedLine line, double degrees, double share) => Math.Max(Math.Max(degrees, 3 * line.TwoThetaU), share * line.Width);

    // Strongest reference line first, nearest measured line; each measured line once.
    private static ImmutableArray<MatchedLine> Pair(FittedLine[] lines, (ReferenceLine Line, double At)[] places, double degrees, double share)
    {
        var free = lines.ToList();
        var pairs = new List<MatchedLine>();
        foreach (var (reference, at) in places.OrderByDescending(p => p.Line.Intensity ?? 100))
        {
            if (free.Where(l => Math.Abs(l.TwoTheta - at) <= Tolerance(l, degrees, share)).MinBy(l => Math.Abs(l.TwoTheta - at)) is not { } line)
                continue;
            // A strong line is not explained by a family that should hardly show.
            if (reference.Intensity < Weak && line.Significance > 10 * SecondPhase)
                continue;
            free.Remove(line);
            pairs.Add(new(line, reference, IsAlone(reference, at, places, line), line.TwoTheta - at));
        }

        return [.. pairs.OrderBy(p => p.Line.TwoTheta)];
    }

    // Families of one spacing (333 and 511) are one place; families beside it pull the line.
    private static bool IsAlone(ReferenceLine reference, double at, (ReferenceLine Line, double At)[] places, FittedLine line)
        => !places.Any(p => !ReferenceEquals(p.Line, reference) && Math.Abs(p.At - at) < Math.Max(OneLine, line.Width) && Math.Abs(p.Line.Spacing / reference.Spacing - 1) > 1e-6
            && (p.Line.Intensity ?? 100) > Negligible * (reference.Intensity ?? 100));

    // Weighted least squares of one amplitude of cos θ, weights from intensity; the median guards against wrong pairs.
    private static double Shift(ImmutableArray<MatchedLine> pairs)
    {
        double[] each = [.. pairs.OrderByDescending(p => p.Line.Area).Take(12).Select(p => p.Offset / Math.Cos(Bragg.Theta(p.Line.TwoTheta))).Order()];
        return each.Length == 0 ? 0 : (each[(each.Length - 1) / 2] + each[each.Length / 2]) / 2;
    }

    private static Lattice? Refined(ImmutableArray<MatchedLine> pairs, UnitCell cell, Lattice? before, Radiation radiation)
        => Diffraction.Lattice.Of(Indexed(pairs), cell.System, before?.Fit.Cell ?? cell, radiation.Ka1);

    private static IndexedLine[] Indexed(ImmutableArray<MatchedLine> pairs)
        => [.. pairs.Where(p => p.IsAlone && p.Reference.Planes is not null && (p.Line.Flags & LineDoubts.Entangled) == LineDoubts.None).Select(p => new IndexedLine(p.Reference.Planes!.Value, p.Line.TwoTheta, p.Line.TwoThetaU))];

    // z = N/√(N + 1.5·B) = 5 for N counts in a window as wide as the usual line (two side windows of one width each), against the strongest line's height.
    private static double Limit(PowderScan scan, ProfileFit fit, double strongest)
    {
        if (strongest <= 0)
            return double.NaN;
        double[] y = [.. scan.Counts.ToArray().Order()];
        double[] widths = [.. fit.Lines.Select(l => l.Width).Order()];
        var n = Math.Max(3, widths[widths.Length / 2] / scan.Step);
        var background = scan.Variance(y[y.Length / 2]) / scan.VariancePerCount * n / scan.VariancePerCount;
        var square = SecondPhase * SecondPhase;
        var counts = (square + Math.Sqrt(square * square + 6 * square * background)) / 2 * scan.VariancePerCount;
        // Mean of a profile over its width at half height is about 0.8 of its height.
        return 100 * counts / (0.8 * n) / strongest;
    }
}
