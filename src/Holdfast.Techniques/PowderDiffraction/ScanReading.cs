using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Reads a scan from columns or from start, step and stop.</summary>
internal sealed partial class ScanReading
{
    // A second scan has noise of its own; a drawn background has hardly any, and stays below.
    private const double SmoothShare = 0.3;

    // Answers to a count that does not fit the settings.
    private const string WrongStep = "step-is-wrong", WrongStop = "stop-is-wrong";

    // A key stands at the beginning of its line, behind signs of a comment perhaps.
    private const int KeyWithin = 4;

    // Goniometers of laboratories, mm.
    private const double LeastRadius = 50, MostRadius = 600;

    private readonly MeasurementSource source;
    private readonly ScanLayout layout;
    private readonly DecimalEvidence evidence;
    private readonly DecimalMark? mark;
    private readonly string? label;

    private ScanReading(MeasurementSource source, ScanLayout layout, string? label)
    {
        (this.source, this.layout, this.label) = (source, layout, label);
        var stepped = layout.Steps is not null;
        ImmutableArray<GridRow> body = stepped ? [.. source.Grid.Rows.Where(r => r.Number == layout.StepRow), .. layout.Body] : layout.Body;
        var table = new TableLayout(source.Grid, [], layout.Heading, null, body);
        evidence = WithinACircle(DecimalEvidence.Of(table, [.. Enumerable.Range(0, body.Max(r => r.Cells.Length))]), stepped ? [] : layout.Body);
        mark = evidence.Settle(source.Talk);
    }

    // "20,000" to "80,000" could be thousands anywhere else; as angles they cannot.
    private static DecimalEvidence WithinACircle(DecimalEvidence evidence, ImmutableArray<GridRow> body)
    {
        if (evidence is not { Mark: null, Other: null, Example: { } example })
            return evidence;
        var (mark, other) = example.Contains(',', StringComparison.Ordinal) ? (DecimalMark.Comma, DecimalMark.Point) : (DecimalMark.Point, DecimalMark.Comma);
        Cell[] axis = [.. body.Select(r => r.Cells.FirstOrDefault(c => !c.IsBlank))];
        return axis.Length > 0 && axis.All(c => ScanLayout.Number(c, mark) is <= ScanLayout.LargestAngle) && axis.Any(c => ScanLayout.Number(c, other) is > 360)
            ? new(mark, $"{example} is an angle, which no thousands could be", null) : evidence;
    }

    /// <summary>Reads it.</summary>
    /// <param name="source">The grid and what must be known for it.</param>
    /// <param name="layout">How it holds the scan.</param>
    /// <param name="label">Name of the scan where the grid is one of several blocks, else null.</param>
    public static MeasurementDraft Read(MeasurementSource source, ScanLayout layout, string? label)
    {
        var reading = new ScanReading(source, layout, label);
        return layout.Steps is null ? reading.Columns() : reading.Stepped();
    }

    private MeasurementDraft Stepped()
    {
        var (start, step, stop) = layout.Steps!.Value;
        double?[] counts = [.. layout.Body.SelectMany(r => r.Cells.Where(c => !c.IsBlank).Select(c => ScanLayout.Number(c, mark)))];
        // Worked from the start in whole steps, so that the last angle is the stop to the last digit.
        double?[] angles = [.. Enumerable.Range(0, counts.Length).Select(i => (double?)Math.Round(start + i * step, 8))];
        if (Math.Abs(angles[^1]!.Value - stop) > step / 2)
        {
            var even = (stop - start) / (counts.Length - 1);
            var said = string.Create(CultureInfo.InvariantCulture, $"{layout.StepsInWords} makes {Math.Round((stop - start) / step) + 1} intensities; the file holds {counts.Length}, which is a step of {even:0.#####}° to the stop. Which of these is wrong, the step or the stop?");
            var id = source.Question("count");
            var answer = source.Talk.Ask(id, Codes.Ambiguous, said, [WrongStep, WrongStop, "leave-out"]);
            source.Talk.Explain(id, [string.Create(CultureInfo.InvariantCulture, $"{counts.Length} angles from {start:0.####} to {stop:0.####}°"), string.Create(CultureInfo.InvariantCulture, $"{counts.Length} angles from {start:0.####} to {start + (counts.Length - 1) * step:0.####}°"), "nothing of it is kept"]);
            if (answer is not (WrongStep or WrongStop))
                return Draft([], layout.Body.Length, true);
            if (answer == WrongStep)
                angles = [.. Enumerable.Range(0, counts.Length).Select(i => (double?)Math.Round(start + i * even, 8))];
        }

        source.Talk.Assume(source.Question("angles"), Codes.Ambiguous,
            string.Create(CultureInfo.InvariantCulture, $"The {counts.Length} intensities are counted {layout.StepsInWords} of 2θ (line {layout.StepRow})."), ["2θ"]);
        ImmutableArray<ColumnUnderstanding> columns =
            [new(0, "rows of numbers", ColumnUse.Measured, null, null, null, layout.StepsInWords, [.. layout.Body[0].Cells.Where(c => !c.IsBlank).Take(3).Select(c => c.Text)], []) { Measures = "intensity, row after row" }];
        return Settled(ScanAxis.TwoTheta, angles, [("", counts, "counts")], null, columns, layout.Body.Length);
    }

    private MeasurementDraft Columns()
    {
        var headings = layout.Headings();
        var axisAt = headings.FindIndex(h => ScanWords.Axis(h) is not null && ScanWords.Column(h) is null or ScanColumn.Intensity);
        if (axisAt < 0)
            axisAt = Math.Max(0, headings.FindIndex(h => ScanWords.Axis(h) is not null));
        var numbers = Enumerable.Range(0, headings.Count).Select(Column).ToArray();
        if (AxisOf(headings[axisAt], numbers[axisAt]) is not { } axis)
            return Draft([.. headings.Select((h, i) => Shown(i, h, "not settled yet", null))], layout.Body.Length, true);
        var intensities = new List<(string Name, double?[] Values, string Unit)>();
        double?[]? background = null;
        var shown = ImmutableArray.CreateBuilder<ColumnUnderstanding>();
        for (var i = 0; i < headings.Count; i++)
        {
            if (i == axisAt)
            {
                shown.Add(Shown(i, headings[i], Words(axis), null));
                continue;
            }

            var kind = Counts(numbers[i]) ? ScanColumn.Number : intensities.Count > 0 && AreRoots(intensities[0].Values, numbers[i]) ? ScanColumn.Uncertainty : ScanWords.Column(headings[i]) ?? (ScanWords.Axis(headings[i]) is not null ? ScanColumn.Number : ByShape(numbers[i], intensities, headings[i]));
            switch (kind)
            {
                case ScanColumn.Intensity:
                    intensities.Add((headings[i], numbers[i], ScanWords.IntensityUnit(headings[i])));
                    shown.Add(Shown(i, headings[i], "intensity as measured", null));
                    break;
                case ScanColumn.Background when background is null:
                    background = numbers[i];
                    shown.Add(Shown(i, headings[i], "background drawn by hand or program: kept, never taken off before a fit", null));
                    break;
                default:
                    shown.Add(Shown(i, headings[i], null, kind switch
                    {
                        ScanColumn.Uncertainty => "An uncertainty: counts bring their own, so it is not used.",
                        ScanColumn.Computed => "Computed elsewhere, not measured: it stays in the original.",
                        ScanColumn.Time => "Counting time: not needed for places and widths.",
                        _ => "Not part of a scan: it stays in the original.",
                    }));
                    break;
            }
        }

        return intensities.Count == 0 || RepeatedRuns.Together(source, layout.Lines.Where(l => l.Row != layout.Heading?.Number).Select(l => l.Text), intensities) is not { } curves ? Draft(shown.ToImmutable(), layout.Body.Length, true)
            : Settled(axis, numbers[axisAt], curves, background, shown.ToImmutable(), layout.Body.Length);
    }

    // 1, 2, 3 …: the rows are counted, whatever stands above.
    private static bool Counts(double?[] values) => values.Length > 2 && values[0] is 0 or 1 && Enumerable.Range(1, values.Length - 1).All(i => values[i] == values[0] + i);

    private double?[] Column(int n) => [.. layout.Body.Select(r => ScanLayout.Place(r, n) is var at and >= 0 ? ScanLayout.Number(r.At(at), mark) : null)];

    // 2θ unless the heading says otherwise; a bare θ is asked about, since half the angle is another crystal.
    private ScanAxis? AxisOf(string heading, double?[] x)
    {
        var named = ScanWords.Axis(heading) ?? layout.Lines.Select(l => l.Text).Where(t => ScanWords.SaysTwoTheta(t)).Select(_ => (ScanAxis?)ScanAxis.TwoTheta).FirstOrDefault();
        if (named is null or ScanAxis.Theta or ScanAxis.TwoTheta && layout.Lines.FirstOrDefault(l => ScanWords.DeniesTwoTheta(l.Text)) is { Text: not null } denied)
        {
            return source.Talk.Assume(source.Question("axis"), Codes.Ambiguous, $"The angles of the first column are θ and are doubled: line {denied.Row.ToString(CultureInfo.InvariantCulture)} says so.", ["θ", "2θ"]) == "2θ" ? ScanAxis.TwoTheta : ScanAxis.Theta;
        }

        if (named == ScanAxis.TwoTheta || named is null && layout.Lines.IsEmpty && layout.Heading is null)
        {
            if (named is null)
                source.Talk.Assume(source.Question("axis"), Codes.Ambiguous, "The first column has no heading and is taken for 2θ in degrees.", ["2θ", "θ"]);
            return source.Talk.Answers.To(source.Question("axis")) == "θ" ? ScanAxis.Theta : ScanAxis.TwoTheta;
        }

        if (named is null)
        {
            return source.Talk.Assume(source.Question("axis"), Codes.Ambiguous, "No heading says what the first column is; it is taken for 2θ in degrees.", ["2θ", "θ"]) == "θ" ? ScanAxis.Theta : ScanAxis.TwoTheta;
        }

        var known = x.OfType<double>().ToArray();
        var answer = source.Talk.Ask(source.Question("axis"), Codes.Ambiguous,
            string.Create(CultureInfo.InvariantCulture, $"The first column is headed {heading} and runs from {known[0]:0.###} to {known[^1]:0.###}. What is it?"), ["2θ", "θ", "d", "Q"]);
        source.Talk.Explain(source.Question("axis"), ["angles as they stand", "angles are doubled", "spacings, turned into 2θ with the wavelength", "scattering vectors 4π·sin θ/λ, turned into 2θ with the wavelength"]);
        return answer switch { "2θ" => ScanAxis.TwoTheta, "θ" => ScanAxis.Theta, "d" => ScanAxis.Spacing, "Q" => ScanAxis.Q, _ => null };
    }

    // A column without a telling heading: the first is the intensity; a later one is a background when it has no noise and runs below, else another scan.
    private static ScanColumn ByShape(double?[] values, List<(string Name, double?[] Values, string Unit)> before, string heading)
    {
        if (before.Count == 0)
            return ScanColumn.Intensity;
        var (y, z) = (before[0].Values, values);
        int[] both = [.. Enumerable.Range(1, y.Length - 1).Where(i => y[i] is not null && z[i] is not null && y[i - 1] is not null && z[i - 1] is not null)];
        if (both.Length < 10)
            return ScanColumn.Number;
        double Roughness(double?[] v)
        {
            double[] steps = [.. both.Select(i => Math.Abs(v[i]!.Value - v[i - 1]!.Value)).Order()];
            return steps[steps.Length / 2];
        }

        var smooth = Roughness(z) < SmoothShare * Roughness(y);
        if (!smooth)
            return ScanColumn.Intensity;
        var below = both.Count(i => z[i]!.Value <= y[i]!.Value + 4 * Math.Sqrt(Math.Max(y[i]!.Value, 1)));
        return below > 0.97 * both.Length ? ScanColumn.Background : heading.Length > 0 ? ScanColumn.Computed : ScanColumn.Intensity;
    }

    // √counts: the uncertainty of counts, whatever stands above it.
    private static bool AreRoots(double?[] counts, double?[] values)
    {
        int[] both = [.. Enumerable.Range(0, counts.Length).Where(i => counts[i] > 4 && values[i] is not null)];
        return both.Length >= 10 && both.Count(i => Math.Abs(values[i]!.Value - Math.Sqrt(counts[i]!.Value)) < 0.03 * values[i]!.Value + 0.02) > 0.9 * both.Length;
    }

    private MeasurementDraft Settled(
        ScanAxis axis, double?[] x, List<(string Name, double?[] Values, string Unit)> intensities, double?[]? background, ImmutableArray<ColumnUnderstanding> columns, int rows)
    {
        var said = RadiationSaid.In(layout.Lines);
        var first = intensities[0];
        var cell = ReferenceCell.Ask(source);
        var asked = new RadiationQuestion(source, said).Settle(axis, x, first.Values, cell);
        var names = intensities.Count == 1 ? [label is not null ? PowderName.Settle(source, Code().Match(label) is { Success: true, Index: 0 } code ? code.Value : label, 0, label) : PowderName.Settle(source, Stated() is { } s ? s.Name : null, Stated()?.Row ?? 0)]
            : intensities.Select((c, i) => OfHeading(c.Name) is { Length: > 0 } named ? named : $"{Path.GetFileNameWithoutExtension(source.Talk.FileName)} ({(i + 1).ToString(CultureInfo.InvariantCulture)})").ToArray();
        var use = ScanUse.Ask(source, layout.Lines);
        if (asked is not { } radiation || mark is null && evidence.Mark is null)
            return Draft(columns, rows, true);
        ImmutableArray<MeasuredSetting> settings = [.. radiation.Settings(said), .. use, .. cell, .. Others(said)];
        var measured = intensities.Select((c, i) =>
        {
            int[] kept = [.. Enumerable.Range(0, x.Length).Where(r => x[r] is not null && c.Values[r] is not null)];
            var points = ImmutableArray.CreateBuilder<MeasuredColumn>();
            points.Add(new(Name(axis), columns[0].Heading, Unit(axis)) { Numbers = [.. kept.Select(r => x[r])] });
            points.Add(new(ScanNames.Counts, c.Name, c.Unit) { Numbers = [.. kept.Select(r => c.Values[r])] });
            if (background is not null && intensities.Count == 1)
                points.Add(new(ScanNames.Background, "", c.Unit) { Numbers = [.. kept.Select(r => background[r])] });
            return new Measurement("", DiffractionFiles.TechniqueName, names[i], settings, points.ToImmutable(), source.At(layout.Body[0].Number, null));
        }).ToImmutableArray();
        return Draft(columns, rows, false) with { Measurements = measured, Settings = [.. settings.Where(s => s.Row > 0).Select(s => $"{s.Name} {s.Written} (line {s.Row.ToString(CultureInfo.InvariantCulture)})")] };
    }

    private MeasurementDraft Draft(ImmutableArray<ColumnUnderstanding> columns, int rows, bool waiting)
        => new(new RowCount(waiting ? 0 : rows, waiting ? rows : 0, 0, source.Grid.Rows.Count(r => !r.IsBlank) - rows), columns, [])
        {
            HeadingLine = layout.Heading?.Number,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            FirstRows = layout.Body,
        };

    private ColumnUnderstanding Shown(int n, string heading, string? measures, string? why)
    {
        var at = ScanLayout.Place(layout.Body[0], n);
        return new(at, heading.Length > 0 ? heading : "column " + (n + 1).ToString(CultureInfo.InvariantCulture), measures is null ? ColumnUse.LeftOut : ColumnUse.Measured, null, null, null, why,
            [.. layout.Body.Take(3).Select(r => r.At(ScanLayout.Place(r, n)).Text)], [])
        {
            Measures = measures,
        };
    }

    // "sample: oxide SP-4, as calcined", "Scan of RT-1", "AL-9  alumina carrier": a code where there is one, else the words.
    private (string Name, int Row)? Stated()
    {
        foreach (var (row, text) in layout.Lines.Where(l => layout.Heading is not { } heading || l.Row < heading.Number))
        {
            if (SampleKey().Match(text) is { Success: true } m && m.Groups["name"].Value.Trim(' ', ',', ';', '"', '\'', '.') is { Length: > 0 } words)
            {
                if (Code().Match(words) is { Success: true } code && !IsRay(code.Value))
                    return (code.Value, row);
                // "measured twice, sample stayed in the holder": within a sentence the word names nothing.
                if (m.Index < KeyWithin || text[..(text.Length - m.Groups["name"].Length)].TrimEnd() is [.., ':' or '=' or ','])
                    return (words, row);
            }
        }

        foreach (var (row, text) in layout.Lines.Where(l => l.Row != layout.StepRow && l.Row != layout.Heading?.Number).Take(2))
        {
            var plain = text.TrimStart('#', '!', ';', '%', '/', '*', ' ', '"');
            if (Code().Match(plain) is { Success: true, Index: 0 } code && !IsRay(code.Value))
                return (code.Value, row);
        }

        return null;
    }

    // "ZS-0 / counts", "ZS-0 (cps)": the powder without what was counted.
    private static string OfHeading(string heading)
    {
        var at = heading.IndexOfAny(['/', '(', '[', ',']);
        return at > 0 && ScanWords.Column(heading[at..]) == ScanColumn.Intensity && heading[..at].Trim() is { Length: > 0 } name ? name : heading;
    }

    private static bool IsRay(string code) => RayLike().IsMatch(code);

    private IEnumerable<MeasuredSetting> Others(RadiationSaid said)
    {
        foreach (var (row, text) in layout.Lines)
        {
            if (Radius().Match(text) is { Success: true } r && double.Parse(r.Groups["number"].Value.Replace(',', '.'), CultureInfo.InvariantCulture) * (r.Groups["cm"].Success ? 10 : 1) is >= LeastRadius and <= MostRadius and var radius)
                yield return new(ScanNames.Radius, r.Value, radius, "mm", row);
            if (row == layout.Heading?.Number || row == layout.StepRow || row == said.Row)
                continue;
            var cut = text.TrimStart('#', '!', ';', '%', ' ').IndexOfAny([':', '=']);
            var plain = text.TrimStart('#', '!', ';', '%', ' ');
            yield return cut is > 0 and < 40 ? new(plain[..cut].Trim(), plain[(cut + 1)..].Trim(), null, "", row) : new("line " + row.ToString(CultureInfo.InvariantCulture), plain, null, "", row);
        }
    }

    private static string Words(ScanAxis axis) => axis switch { ScanAxis.TwoTheta => "2θ, degrees", ScanAxis.Theta => "θ, degrees", ScanAxis.Spacing => "spacing d", _ => "scattering vector Q" };

    private static string Name(ScanAxis axis) => axis switch { ScanAxis.TwoTheta => ScanNames.TwoTheta, ScanAxis.Theta => ScanNames.Theta, ScanAxis.Spacing => ScanNames.Spacing, _ => ScanNames.Q };

    private string Unit(ScanAxis axis)
    {
        var nano = layout.Heading is { } h && h.Cells.Any(c => c.Text.Contains("nm", StringComparison.Ordinal));
        return axis switch { ScanAxis.TwoTheta or ScanAxis.Theta => "°", ScanAxis.Spacing => nano ? "nm" : "Å", _ => nano ? "1/nm" : "1/Å" };
    }

    [GeneratedRegex(@"(?<![a-z-])(sample( name| id)?(?!\s*(holder|stage|spinner|changer))|specimen|probe|échantillon|muestra|campione|amostra|vzorek|próbka|probka|monster|numune|prov|poudre|pulver|polvo|polvere|proszek|prášek|toz|poeder|powder|образец|title|titel|titre|name|scan of|pattern of|id|试样|样品)(?![a-z])\s*[:=]?\s+(?<name>.+)$|(?<![a-z])(sample|specimen|probe|title|name|id)\s*[:=,]\s*(?<name>.+)$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex SampleKey();

    [GeneratedRegex(@"(?<![A-Za-z0-9])[A-Za-z]{1,5}[-_ ]?[A-Za-z]{0,2}\d+([-_.][A-Za-z0-9]+)*[A-Za-z]?(?![A-Za-z0-9])", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Code();

    [GeneratedRegex(@"^(cu|co|mo|fe|cr|ag)?\s*-?k|^(two|theta|line|step|scan|rev|ver|vers|version|no|nr|pdf|card)\s*[-_ ]?\d", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex RayLike();

    [GeneratedRegex(@"(radius|rayon|radio|raio|raggio|promie(ń|n)|straal)\D{0,30}(?<number>\d+([.,]\d+)?)\s*(mm|(?<cm>cm))?", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Radius();
}
