using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>What the patterns of a study give: lines, phases, lattices, sizes.</summary>
/// <param name="Patterns">Patterns that are not struck, in the order they came.</param>
/// <param name="Findings">What stands in the way of some.</param>
internal sealed record DiffractionStudy(ImmutableArray<PatternFound> Patterns, ImmutableArray<Finding> Findings)
{
    /// <summary>Patterns were smoothed or scaled: significance and uncertainties rest on the scatter.</summary>
    internal const string NotCounts = "HF-701";

    /// <summary>A measurement that cannot be read as a pattern.</summary>
    internal const string NoPattern = "HF-702";

    /// <summary>Single readings that no line could make.</summary>
    internal const string Spike = "HF-703";

    /// <summary>A known phase fits under another radiation.</summary>
    internal const string OtherRadiation = "HF-704";

    /// <summary>Lines of one axis only.</summary>
    internal const string OneAxis = "HF-705";

    // A phase is in a pattern when this part of its strong lines is there; by chance lines of another phase match less.
    private const double PhaseSeen = 0.6;

    // Lines that tell a size: as strong as this, and not entangled.
    private const double SizeSignificance = 20;

    // What a displaced sample may move lines by while a cell is sought, degrees.
    private const double IndexingU = 0.02;

    // Lines weaker than this part of the strongest do not vote on the cell.
    private const double VotesFrom = 0.01;

    private static readonly Analysis<DiffractionStudy> Known = new(Work);

    // Fits depend on the measurement alone, which never changes.
    private static readonly ConditionalWeakTable<Measurement, Fitted> Fits = [];

    /// <summary>What is found; the same object for the same evidence.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static DiffractionStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>Patterns of a powder of the study, standards left out.</summary>
    public IEnumerable<PatternFound> Powders => Patterns.Where(p => !p.IsStandard);

    /// <summary>The pattern of a powder that reaches farthest, the last of several; a list of its lines where there is no other, or null.</summary>
    /// <param name="sample">Its name.</param>
    public PatternFound? Of(string? sample) => sample is null ? null : Powders.Where(p => Studies.Import.Techniques.PowderName.Same(p.Sample, sample)).OrderBy(p => p.Fitted is null ? 0 : p.Range.To - p.Range.From).LastOrDefault();

    private static DiffractionStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        Measurement[] own = [.. study.Measurements.Where(m => m.Technique == DiffractionFiles.TechniqueName && !study.IsStruck(m))];
        KnownPhase[] known = [.. own.Select(KnownPhase.Of).OfType<KnownPhase>()];
        var findings = new List<Finding>();
        var fitted = new List<PatternFound>();
        foreach (var measurement in own.Where(m => m.Setting(ScanNames.Structure) is null && !ListedLines.IsReference(m)))
        {
            var outcome = Room.Of("the pattern of " + measurement.Sample, () => Fits.GetValue(measurement, Fitted.Of), measurement.Id);
            findings.AddRange(outcome.Findings);
            if (outcome.Value is { Pattern: { } pattern })
                fitted.Add(pattern);
            else if (outcome.Value is not null)
                findings.Add(Finding.Of(NoPattern, Weight.Stop, ListedLines.Are(measurement) ? $"{measurement.Id} ({measurement.Sample}) lists no line that can be used. Strike it, or take the right file in."
                    : $"{measurement.Id} ({measurement.Sample}) is no pattern: fewer than {PowderScan.FewestReadings} readings with rising angles. Strike it, or take the right file in.", measurement.Id));
        }

        var instruments = fitted.Where(p => p.IsStandard && p.Fitted is not null).Select(p => (p.Radiation.Ka1, Width: InstrumentWidth.Of(p.Lines))).Where(i => i.Width is not null).ToArray();
        ImmutableArray<PatternFound> patterns = [.. fitted.Select(p =>
        {
            var width = instruments.LastOrDefault(i => Math.Abs(i.Ka1 / p.Radiation.Ka1 - 1) < 1e-3).Width;
            var outcome = Room.Of("the phases of " + p.Sample, () => Compared(p, known, p.IsStandard ? null : width), p.Measurement.Id);
            return outcome.Value ?? p with { Findings = [.. p.Findings, .. outcome.Findings] };
        })];
        return new(patterns, [.. findings]);
    }

    private static PatternFound Compared(PatternFound pattern, KnownPhase[] known, InstrumentWidth? instrument)
    {
        var (from, to) = pattern.Range;
        var phases = new List<PhaseFound>();
        var findings = pattern.Findings.ToBuilder();
        foreach (var phase in known)
        {
            var lines = phase.Lines(pattern.Radiation, from, to);
            var match = pattern.Against(lines, phase.Cell);
            if (IsSeen(match, lines))
                phases.Add(new(phase.Name, phase.Cell, lines, match, lines.Any(l => l.Intensity is not null)));
            else if (Elsewhere(pattern, phase, from, to) is { } other)
                findings.Add(Finding.Of(OtherRadiation, Weight.Caution, $"{pattern.Sample}: the lines of {phase.Name} are not where {pattern.Radiation.Name} puts them, but where {other.Name} does. Look at the radiation of {pattern.Measurement.Id}.", pattern.Measurement.Id));
        }

        if (pattern.Measurement.Setting(ScanNames.Cell) is { } stated && ReferenceCell.Of(stated.Written) is { } cell)
        {
            var lines = Everywhere(cell, pattern.Radiation, from, to);
            phases.Insert(0, new("stated cell", cell, lines, pattern.Against(lines, cell), false));
        }
        else if (phases.Count == 0 && pattern.Fitted is null && OfOwnIndices(pattern, from, to) is { } listed)
        {
            phases.Add(listed);
        }

        phases = [.. phases.OrderByDescending(p => p.Area)];
        var axis = phases.Count > 0 ? phases[0].Match.Axis : null;
        if (axis is not null)
            findings.Add(Finding.Of(OneAxis, Weight.Caution, string.Create(CultureInfo.InvariantCulture, $"{pattern.Sample}: every line that fits {phases[0].Name} is of planes {axis.Planes}: {axis.Axis.Symbol} = {axis.Axis.Value:0.0000} ± {axis.Axis.U:0.0000} Å follows, and {axis.Free} cannot be had, since no line depends on it."), pattern.Measurement.Id));
        var cubic = phases.Count == 0 ? Indexed(pattern) : [];
        HashSet<FittedLine> explained = [.. phases.SelectMany(p => pattern.Lines.Except(p.Match.Unmatched))];
        return pattern with
        {
            Phases = [.. phases],
            Cubic = cubic,
            Lattice = phases.Count > 0 ? phases[0].Match.Lattice : cubic is [var first, ..] && cubic.Select(c => Math.Round(c.A, 2)).Distinct().Count() == 1 ? OfCubic(pattern, first) : null,
            Axis = axis,
            Size = pattern.IsStandard || pattern.Fitted is null ? null : SizeOf(pattern, phases.Count > 0 ? [.. phases[0].Match.Matched.Where(m => m.IsAlone).Select(m => m.Line)] : [.. pattern.TrueLines], instrument),
            Strangers = phases.Count == 0 ? [] : [.. phases[0].Match.Strangers.Where(l => !explained.Contains(l))],
            Findings = findings.ToImmutable(),
        };
    }

    /// <summary>A lattice from lines matched with the planes of a stated cell alone.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="cell">A cell near the answer.</param>
    /// <param name="planes">Planes that show.</param>
    public static LineMatch With(PatternFound pattern, UnitCell cell, IEnumerable<Miller> planes)
        => pattern.Against([.. planes.Select(p => new ReferenceLine(p, cell.Spacing(p), null))], cell);

    // A line without an intensity may be a strong one; none of those counts as missing in the match, so that enough of them must be there.
    private static bool IsSeen(LineMatch match, ImmutableArray<ReferenceLine> lines)
    {
        var strong = lines.Count(l => !(l.Intensity < LineMatch.MustBeSeen));
        var seen = match.Matched.Count(m => !(m.Reference.Intensity < LineMatch.MustBeSeen));
        return strong > 0 && match.Matched.Length >= Math.Min(3, strong) && strong - match.Missing.Length >= PhaseSeen * strong
            && seen >= (lines.Any(l => l.Intensity is null) ? PhaseSeen * strong : Math.Min(3, PhaseSeen * strong));
    }

    private static Radiation? Elsewhere(PatternFound pattern, KnownPhase phase, double from, double to)
        => Radiation.All.FirstOrDefault(r => r.Anode != pattern.Radiation.Anode && phase.Lines(r, from, to) is { IsEmpty: false } lines
            && pattern.Against(lines, phase.Cell, r) is var match && match.Missing.IsEmpty && match.Matched.Length >= 5 && IsSeen(match, lines));

    // A list may bring the indices of its lines: they give a cell by themselves.
    private static PhaseFound? OfOwnIndices(PatternFound pattern, double from, double to)
    {
        ReferenceLine[] own = [.. ListedLines.AsReference(pattern.Measurement).Where(l => l.Planes is not null)];
        if (CellOfPlanes.Of([.. own.Select(l => (l.Planes!.Value, l.Spacing))]) is not { } cell)
            return null;
        ImmutableArray<ReferenceLine> lines = [.. own.Select(l => l with { Spacing = cell.Spacing(l.Planes!.Value), Intensity = null }).Where(l => Bragg.TwoTheta(l.Spacing, pattern.Radiation.Ka1) is { } at && at >= from && at <= to)];
        return new("indices as listed", cell, lines, pattern.Against(lines, cell), false);
    }

    // Every set of planes of a bare cell that is not the double of symmetry: one for each spacing.
    internal static ImmutableArray<ReferenceLine> Everywhere(UnitCell cell, Radiation radiation, double from, double to)
    {
        var least = Bragg.Spacing(to, radiation.Ka1);
        var most = Bragg.Spacing(from, radiation.Ka1);
        var (hs, ks, ls) = ((int)(cell.A / least), (int)(cell.B / least), (int)(cell.C / least));
        var found = new SortedDictionary<double, Miller>();
        for (var h = hs; h >= -hs; h--)
        {
            for (var k = ks; k >= -ks; k--)
            {
                for (var l = ls; l >= 0; l--)
                {
                    if ((h, k, l) != default && cell.Spacing(new(h, k, l)) is var d && d >= least && d <= most)
                        found.TryAdd(Math.Round(d, 7), new(h, k, l));
                }
            }
        }

        return [.. found.Reverse().Select(f => new ReferenceLine(f.Value, cell.Spacing(f.Value), null))];
    }

    private static ImmutableArray<CubicIndexing> Indexed(PatternFound pattern)
    {
        var lines = Voting(pattern);
        return lines.Length < 5 ? [] : CubicIndexing.Of([.. lines.Select(l => l.TwoTheta)], IndexingU, pattern.Radiation.Ka1);
    }

    private static FittedLine[] Voting(PatternFound pattern)
    {
        var top = pattern.TrueLines.Select(l => l.Height).DefaultIfEmpty().Max();
        return [.. pattern.TrueLines.Where(l => l.Height >= VotesFrom * top && (l.Flags & LineDoubts.Entangled) == LineDoubts.None).OrderBy(l => l.TwoTheta)];
    }

    private static Lattice? OfCubic(PatternFound pattern, CubicIndexing cell)
        => Lattice.Of([.. Voting(pattern).Zip(cell.N, (l, n) => new IndexedLine(Planes(n), l.TwoTheta, l.TwoThetaU))], CrystalSystem.Cubic, new(cell.A, cell.A, cell.A, 90, 90, 90), pattern.Radiation.Ka1);

    // Any planes with this h² + k² + l²: a cubic spacing depends on nothing else.
    private static Miller Planes(int n)
    {
        for (var h = (int)Math.Sqrt(n); h > 0; h--)
        {
            for (var k = Math.Min(h, (int)Math.Sqrt(n - h * h)); k >= 0; k--)
            {
                var l = (int)Math.Round(Math.Sqrt(n - h * h - k * k));
                if (l <= k && h * h + k * k + l * l == n)
                    return new(h, k, l);
            }
        }

        throw new ArgumentOutOfRangeException(nameof(n), n, "No sum of three squares.");
    }

    private static SizeFound? SizeOf(PatternFound pattern, FittedLine[] candidates, InstrumentWidth? instrument)
    {
        FittedLine[] lines = [.. candidates.Where(l => l.IsSettled && l.Significance >= SizeSignificance && (l.Flags & (LineDoubts.WidthUncertain | LineDoubts.Entangled)) == LineDoubts.None)];
        if (lines.Length == 0)
            return null;
        var wavelength = pattern.Radiation.Ka1;
        ImmutableArray<Scherrer> each = [.. lines.Select(l => Scherrer.Of(l, wavelength, instrument?.At(l.TwoTheta)))];
        WilliamsonHall? Fit(Func<FittedLine, double, (double Breadth, double U)> off)
            => instrument is null || each.Any(s => s.Largest is null) ? null : WilliamsonHall.Of([.. lines.Select(l => off(l, instrument.At(l.TwoTheta)!.Value) is var (b, u) ? (l.TwoTheta, b, u) : default)], wavelength);
        return new(each, Fit((l, b) => (l.Width - b, l.WidthU)), Fit((l, b) => Math.Sqrt(l.Width * l.Width - b * b) is var s ? (s, l.WidthU * l.Width / s) : default), instrument is not null);
    }

    // A pattern with its lines, or none where the measurement makes no pattern.
    private sealed record Fitted(PatternFound? Pattern)
    {
        public static Fitted Of(Measurement measurement)
        {
            if (ScanRadiation.Of(measurement) is not { } radiation)
                return new((PatternFound?)null);
            if (ListedLines.Are(measurement))
                return new(ListedLines.AsMeasured(measurement, radiation) is { IsEmpty: false } listed ? new PatternFound(measurement, radiation, listed) : null);
            if (PatternReading.Scan(measurement, radiation.Ka1) is not { } scan)
                return new((PatternFound?)null);
            var fit = ProfileFit.Of(scan, radiation);
            return new(new PatternFound(measurement, radiation, fit.Lines) { Fitted = (scan, fit), Findings = [.. About(measurement, scan, fit)] });
        }

        private static IEnumerable<Finding> About(Measurement measurement, PowderScan scan, ProfileFit fit)
        {
            if (!scan.AreCounts)
            {
                yield return Finding.Of(NotCounts, Weight.Caution,
                    string.Create(CultureInfo.InvariantCulture, $"The readings of {measurement.Sample} scatter {scan.Scatter:0.##} times as counts do: they were scaled or smoothed. Uncertainties rest on their scatter; export raw counts."), measurement.Id);
            }

            if (!fit.Search.Spikes.IsEmpty)
            {
                yield return Finding.Of(Spike, Weight.Note,
                    $"{measurement.Sample}: single readings at {string.Join(", ", fit.Search.Spikes.Take(5).Select(s => s.ToString("0.00", CultureInfo.InvariantCulture)))}° are no lines and are left out of the fits.", measurement.Id);
            }
        }
    }
}
