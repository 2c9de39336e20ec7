using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Diffraction;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>How a text or sheet holds a scan: angles in a column, or start, step and stop with the counts row after row.</summary>
/// <param name="Lines">Rows above the numbers as lines of text, with their row.</param>
/// <param name="Heading">Row whose cells stand over the columns; null for none.</param>
/// <param name="Body">Rows of numbers.</param>
/// <param name="Steps">Start, step and stop; null for angles in a column.</param>
/// <param name="StepRow">Row in which they stand; 0 for none.</param>
/// <param name="Says">What speaks for it.</param>
internal sealed partial record ScanLayout(
    ImmutableArray<(int Row, string Text)> Lines, GridRow? Heading, ImmutableArray<GridRow> Body, (double Start, double Step, double Stop)? Steps, int StepRow, Recognition Says)
{
    // A scan has more rows than a table of vessels, and its steps are fine.
    private const int FewestPoints = PowderScan.FewestReadings;
    private const int FewestBare = 200;
    private const double WidestStep = 0.5;
    private const double FinestStep = 0.0005;
    private const double WidestBareStep = 0.11;
    /// <summary>No goniometer of a laboratory goes further, degrees 2θ.</summary>
    internal const double LargestAngle = 168;
    private const int ManyTimes = 3;
    private const int RowsLooked = 120;
    private const int HeadingWithin = 3;

    /// <summary>The row right above the heading, where it has several cells; null for none.</summary>
    public GridRow? Above { get; private init; }


    /// <summary>The layout of a grid, or null when it holds no scan.</summary>
    /// <param name="grid">The grid.</param>
    public static ScanLayout? Of(Grid grid)
    {
        var rows = Rows(grid);
        var first = rows.FindIndex(IsNumbers);
        if (first < 0 || rows.Count - first < 3)
            return null;
        return Stepped(rows, first) ?? Columned(rows, grid);
    }

    /// <summary>The scans of a grid, cut apart where each has a name of its own above its numbers; the grid alone elsewhere.</summary>
    /// <param name="grid">The grid.</param>
    public static ImmutableArray<(string? Name, Grid Grid)> Apart(Grid grid)
    {
        // Lines as they read once a decimal comma is no separator; a row may hold several pairs, and is one row still.
        var rows = Mended(grid);
        var runs = new List<(int From, int To)>();
        for (var i = 0; i < rows.Length; i++)
        {
            var from = i;
            while (i < rows.Length && (rows[i].IsBlank || IsNumbers(rows[i])))
                i++;
            if (i - from >= FewestPoints)
                runs.Add((from, i));
        }

        var blocks = StackedBlocks.Of(grid, runs, ScanWords.NamesScan);
        if (blocks.Length == 1 && Again(grid, rows, runs) is { } again)
            blocks = again;
        return blocks.All(b => Of(b.Grid) is not null) ? blocks : [(null, grid)];
    }

    // The angles begin anew after each gap: scans of one powder, which nothing but their order tells apart.
    private static ImmutableArray<(string? Name, Grid Grid)>? Again(Grid grid, ImmutableArray<GridRow> rows, List<(int From, int To)> runs)
    {
        double? First(int row) => Number(rows[row].Cells.FirstOrDefault(c => !c.IsBlank), null);
        int LastFilled((int From, int To) run) => Enumerable.Range(run.From, run.To - run.From).Last(i => !rows[i].IsBlank);
        if (runs.Count < 2 || !Enumerable.Range(1, runs.Count - 1).All(k => First(Enumerable.Range(runs[k].From, runs[k].To - runs[k].From).First(i => !rows[i].IsBlank)) < First(LastFilled(runs[k - 1]))))
            return null;
        // What stands over the gap above the first scan holds for all.
        var own = Enumerable.Range(0, runs[0].From).LastOrDefault(i => rows[i].IsBlank && rows[..i].Any(r => !r.IsBlank), 0);
        return [.. runs.Select((run, k) => ((string?)null, grid with { Rows = [.. grid.Rows[..own], .. grid.Rows[(k == 0 ? own : runs[k - 1].To)..run.To]] }))];
    }

    /// <summary>Number in a cell under a decimal mark, or null.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="mark">Decimal mark; null takes either where only one reading is possible.</param>
    public static double? Number(Cell cell, DecimalMark? mark)
        => CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) switch
        {
            CellText.Number n => n.Value,
            // "20.025" could be twenty thousand: for the look of a row it is the angle.
            CellText.Ambiguous a when mark is null => a.Candidates.Min(),
            _ => null,
        };

    /// <summary>Start, step and stop in words: "20, 0.02, 72".</summary>
    public string StepsInWords => Steps is { } s ? string.Create(CultureInfo.InvariantCulture, $"from {s.Start:0.####} to {s.Stop:0.####}° in steps of {s.Step:0.#####}°") : "";

    // A comma in a title, or as a decimal mark, was taken for the separator of a file of blanks: "20,00 118" came as "20" and "00 118", and "446 392 403" whole.
    private static List<GridRow> Rows(Grid grid) => RowsOfPairs.Unrolled([.. Mended(grid)]);

    private static ImmutableArray<GridRow> Mended(Grid grid)
        => grid.Separator is null ? grid.Rows : [.. grid.Rows.Select(r => Whole(r, grid.Separator) is { } text && ByBlanks().IsMatch(text)
            ? r with { Cells = [.. text.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(t => new Cell(t))] } : grid.Separator == "," ? Mended(r) : r)];

    // Words that were cut at a decimal comma: "Kα1 1" and "54059 Å" are one.
    private static GridRow Mended(GridRow row)
    {
        var cells = new List<Cell>();
        foreach (var cell in row.Cells)
        {
            if (cells.Count > 0 && cells[^1].Text is [.., >= '0' and <= '9'] before && cell.Text is [>= '0' and <= '9', ..] && (before + cell.Text).Any(char.IsLetter))
                cells[^1] = new(before + "," + cell.Text);
            else
                cells.Add(cell);
        }

        return cells.Count == row.Cells.Length ? row : row with { Cells = [.. cells] };
    }

    // The line as it was written, where one separator at most could have been a decimal mark in each number.
    private static string? Whole(GridRow row, string separator)
        => row.Filled == 1 ? row.Cells.First(c => !c.IsBlank).Content : separator == "," ? string.Join(',', row.Cells.Select(c => c.Content)) : null;

    private static bool IsNumbers(GridRow row) => row.Filled > 0 && row.Cells.All(c => c.IsBlank || Number(c, null) is not null);

    private static string Text(GridRow row) => string.Join(' ', row.Cells.Where(c => !c.IsBlank).Select(c => c.Text)) is var text && text.Length > ScanWords.LongestLine ? text[..ScanWords.LongestLine] : text;

    // Three numbers that fit the count of all that follow: start, step and stop in any order, or start, step and count.
    private static ScanLayout? Stepped(List<GridRow> rows, int first)
    {
        var lines = rows.TakeWhile((r, i) => i < RowsLooked && (i <= first + 2 || !IsNumbers(r))).ToList();
        // Words first: "Start 5.000", "Step size [°2θ]: 0.02".
        if (Stated(lines, StartWord()) is { } from && Stated(lines, StepWord()) is { } by && by.Value is >= FinestStep and <= WidestStep)
        {
            var after = Math.Max(from.Index, by.Index) + 1;
            // The last angle, or how many there are.
            var points = Stated(lines, CountWord());
            var stop = Stated(lines, StopWord()) ?? (points is { Value: > 1 } n ? (from.Value + (n.Value - 1) * by.Value, n.Index) : null);
            after = Math.Max(after, Math.Max(stop?.Index ?? 0, points?.Index ?? 0) + 1);
            var body = Numbers(rows, after);
            var count = body.Sum(r => r.Filled);
            var expected = stop is { } s ? Count(from.Value, by.Value, s.Value) : null;
            // Start, step and stop in words: a count that does not fit them is asked about, as long as it is in their order of size.
            var fits = expected is null || (expected.Value < ManyTimes * count && count < ManyTimes * expected.Value);
            if (count >= FewestPoints && fits && !HasAngles(body, from.Value, by.Value))
                return Made(rows, body, (from.Value, by.Value, stop?.Value ?? from.Value + (count - 1) * by.Value), rows[by.Index].Number, "start and step in words, then intensities in rows");
        }

        for (var i = first; i < Math.Min(rows.Count, first + 4); i++)
        {
            if (!IsNumbers(rows[i]) || rows[i].Filled is < 3 or > 5)
                continue;
            double[] n = [.. rows[i].Cells.Where(c => !c.IsBlank).Select(c => Number(c, null)!.Value)];
            var body = Numbers(rows, i + 1);
            var count = body.Sum(r => r.Filled);
            if (count < FewestPoints)
                continue;
            foreach (var (start, step, stop) in new[] { (n[0], n[1], n[2]), (n[0], n[2], n[1]), (n[1], n[2], n[0]) })
            {
                if (step is < FinestStep or > WidestStep || !(stop > start) || start is < 0 or > LargestAngle)
                    continue;
                var ends = stop <= LargestAngle && Count(start, step, stop) == count ? stop : stop == count ? start + (count - 1) * step : double.NaN;
                if (ends <= LargestAngle)
                    return Made(rows, body, (start, step, ends), rows[i].Number, string.Create(CultureInfo.InvariantCulture, $"line {rows[i].Number} gives start, step and stop for the {count} intensities below it"));
            }
        }

        return null;

        ScanLayout Made(List<GridRow> all, ImmutableArray<GridRow> body, (double, double, double) steps, int row, string evidence)
        {
            ImmutableArray<(int, string)> above = [.. all.TakeWhile(r => r != body[0]).Where(r => !r.IsBlank).Select(r => (r.Number, Text(r)))];
            return new(above, null, body, steps, row, Recognition.Certain(evidence));
        }
    }

    private static int? Count(double start, double step, double stop) => (stop - start) / step is var n && n < 1e7 && Math.Abs(n - Math.Round(n)) < 0.3 ? (int)Math.Round(n) + 1 : null;

    private static ImmutableArray<GridRow> Numbers(List<GridRow> rows, int from) => [.. rows.Skip(from).SkipWhile(r => !IsNumbers(r)).Where(r => r.Filled > 0).TakeWhile(IsNumbers)];

    // A first column that itself counts up by the step holds the angles: then the words above only repeat them.
    private static bool HasAngles(ImmutableArray<GridRow> body, double start, double step)
        => body.Length > 2 && body[0].Filled >= 2 && Number(body[0].At(0), null) is { } a && Number(body[1].At(0), null) is { } b && Math.Abs(a - start) < 0.5 * step && Math.Abs(b - a - step) < 0.5 * step;

    private static (double Value, int Index)? Stated(List<GridRow> lines, Regex word)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            // "first angle (2 theta): 18.00": the 2 is no angle.
            var text = ScanWords.WithoutTwoTheta(Text(lines[i]));
            if (word.Match(text) is { Success: true } m && double.TryParse(m.Groups["number"].Value.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
                return (value, i);
        }

        return null;
    }

    private static ScanLayout? Columned(List<GridRow> rows, Grid grid)
    {
        // The width that most rows of numbers have.
        var widths = rows.Where(IsNumbers).GroupBy(r => r.Filled).Where(g => g.Key >= 2).ToArray();
        if (widths.Length == 0 || widths.MaxBy(g => g.Count()) is not { } usual || usual.Count() < FewestPoints)
            return null;
        ImmutableArray<GridRow> body = [.. usual];
        var above = rows.TakeWhile(r => r != body[0]).Where(r => !r.IsBlank).ToList();
        // A line of units or notes may stand between the heading and the numbers.
        var heading = above.TakeLast(HeadingWithin).LastOrDefault(r => r.Cells.Any(c => ScanWords.SaysTwoTheta(c.Text)) && r.Filled >= 2)
            ?? above.TakeLast(HeadingWithin).LastOrDefault(r => r.Filled == usual.Key && r.Cells.Any(c => ScanWords.Axis(c.Text) is not null) && r.Cells.Any(c => ScanWords.Column(c.Text) == ScanColumn.Intensity)) ?? above.LastOrDefault(r => r.Cells.Any(c => c.Text.Any(char.IsLetter) || c.Text.Contains('°', StringComparison.Ordinal)));
        ImmutableArray<(int, string)> lines = [.. above.Select(r => (r.Number, Text(r)))];
        var layout = new ScanLayout(lines, heading, body, null, 0, Recognition.None) { Above = above.TakeWhile(r => r != heading).LastOrDefault() is { Filled: > 1 } names ? names : null };
        return layout.Evidence(grid) is { Evidence: not null } says ? layout with { Says = says } : null;
    }

    // Certain: 2θ over the first column, or words of diffraction above a fine even scan. Possible: a bare fine scan of whole numbers.
    private Recognition Evidence(Grid grid)
    {
        var names = Headings();
        var at = names.FindIndex(h => ScanWords.Axis(h) is not null);
        var axis = at >= 0 ? at : 0;
        double[] x = [.. Body.Select(r => Number(r.At(Place(r, axis)), null) ?? double.NaN).Where(double.IsFinite)];
        if (x.Length < FewestPoints)
            return Recognition.None;
        var rising = Enumerable.Range(1, x.Length - 1).Count(i => x[i] > x[i - 1]) >= 0.98 * (x.Length - 1);
        var falling = Enumerable.Range(1, x.Length - 1).Count(i => x[i] < x[i - 1]) >= 0.98 * (x.Length - 1);
        double[] steps = [.. Enumerable.Range(1, x.Length - 1).Select(i => Math.Abs(x[i] - x[i - 1])).Order()];
        var step = steps[steps.Length / 2];
        var isAngle = (rising || falling && at >= 0) && x.Min() > -10 && x.Max() <= LargestAngle && step is >= FinestStep and <= WidestStep;
        var named = at >= 0 ? ScanWords.Axis(names[at]) : null;
        if (named == ScanAxis.TwoTheta && ScanWords.SaysTwoTheta(names[at]) && isAngle)
            return Recognition.Certain($"the heading {names[at]}");
        var spoken = Lines.FirstOrDefault(l => ScanWords.IsOfDiffraction(l.Text) || !RadiationSaid.In([l]).IsSilent);
        var saysAngle = Lines.Any(l => ScanWords.SaysTwoTheta(l.Text));
        if (isAngle && (saysAngle || spoken.Text is not null && (named is null or ScanAxis.TwoTheta or ScanAxis.Theta)))
            return Recognition.Certain(saysAngle ? "2θ above the columns" : $"line {spoken.Row.ToString(CultureInfo.InvariantCulture)} speaks of diffraction");
        if (named is ScanAxis.Spacing or ScanAxis.Q && spoken.Text is not null && (rising || falling))
            return Recognition.Certain($"line {spoken.Row.ToString(CultureInfo.InvariantCulture)} speaks of diffraction");
        if (named is ScanAxis.Theta && isAngle)
            return Recognition.Possible($"the heading {names[at]}");
        // Bare columns: fine even steps of an angle and whole counts.
        var even = steps.Count(s => Math.Abs(s - step) < 0.1 * step) >= 0.95 * steps.Length;
        if (!isAngle || !even || step > WidestBareStep || x.Length < FewestBare || names.Exists(h => h.Length > 0 && ScanWords.Axis(h) is null && ScanWords.Column(h) is null))
            return Recognition.None;
        return Recognition.Possible(string.Create(CultureInfo.InvariantCulture, $"{x.Length} rows in even steps of {step:0.####} from {x.Min():0.##} to {x.Max():0.##}"));
    }

    /// <summary>Heading of each column of numbers, "" where there is none.</summary>
    public List<string> Headings()
    {
        var width = Body[0].Filled;
        if (Heading is not { } row)
            return [.. Enumerable.Repeat("", width)];
        if (row.Filled == width && row.Filled > 1)
        {
            int[] places = [.. Enumerable.Range(0, Body[0].Cells.Length).Where(i => !Body[0].At(i).IsBlank)];
            // "angle | counts | counts" under " | scan 1 | scan 2": what tells columns apart stands above them.
            var alike = places.GroupBy(i => row.At(i).Text, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1).SelectMany(g => g).ToArray();
            return [.. places.Select(i => Above is { } names && alike.Length == names.Filled && alike.Contains(i) && !names.At(i).IsBlank ? names.At(i).Text : row.At(i).Text)];
        }

        // "# columns: 2theta(deg)  counts": the words of a comment, by runs of blanks, commas or tabs.
        var text = Comment().Replace(Text(row), "");
        foreach (var cut in new[] { Runs(), Marks(), Blanks() })
        {
            string[] parts = [.. cut.Split(text).Select(p => p.Trim()).Where(p => p.Length > 0)];
            if (parts.Length == width)
                return [.. parts];
        }

        // Too many words: those that name an axis or an intensity, in their order, when there are as many as columns.
        string[] known = [.. Blanks().Split(text).Where(w => ScanWords.Axis(w) is not null || ScanWords.Column(w) is not null)];
        return known.Length == width ? [.. known] : [.. Enumerable.Repeat("", width)];
    }

    /// <summary>Place of the n-th filled cell of a row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="n">From 0.</param>
    public static int Place(GridRow row, int n)
    {
        for (var i = 0; i < row.Cells.Length; i++)
        {
            if (!row.Cells[i].IsBlank && n-- == 0)
                return i;
        }

        return -1;
    }

    [GeneratedRegex(@"^\s*[-+]?\d+([.,]\d+)?([eE][-+]?\d+)?([ \t]+[-+]?\d+([.,]\d+)?([eE][-+]?\d+)?)+\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex ByBlanks();

    [GeneratedRegex(@"^[\s#!;%/*'""]*((columns?|spalten|colonnes|data|x\s*,\s*y)\s*[:=])?\s*", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Comment();

    [GeneratedRegex(@"\s{2,}|\t", RegexOptions.None, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Runs();

    [GeneratedRegex(@"\s*[,;|]\s*", RegexOptions.None, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Marks();

    [GeneratedRegex(@"\s+", RegexOptions.None, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Blanks();

    [GeneratedRegex(@"(?<![a-z])(start|begin|from|first|premier|première|erster|primo|primero|primeiro|primer|eerste|pierwszy|anfang|début|debut|départ|depart|inicio|início|inizio|od|początek|min(imum)?)(?![a-z])[^0-9+\-]*(?<number>[+\-]?\d+([.,]\d+)?)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex StartWord();

    [GeneratedRegex(@"(?<![a-z])(step|stepsize|increment|inc|schritt(weite)?|pas|paso|passo|krok|stap)(?![a-z])(?!\s*time)[^0-9+\-]*(?<number>\d+([.,]\d+)?)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex StepWord();

    [GeneratedRegex(@"(?<![a-z])((number|nombre|nb|anzahl|zahl|numero|número|liczba|aantal|antal|počet) (of |de |der |di |dei |de los |van )?(data ?|mess|meet|mät)?(points?|punkte?|puntos?|pontos?|punti|punten|punktów|punkter|bodů|steps|readings|intensities|values)|(data |mess|meet)?(points|punkte|puntos|pontos|punti|punten|punktów|intensities)\s*[:=]|no\. of points|npts)[^0-9+\-]*(?<number>\d+)(?![.,]\d)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex CountWord();

    [GeneratedRegex(@"(?<![a-z])(stop|end|to|last|final|ende|fin|arrivée|arrivee|fine|fim|koniec|max(imum)?)(?![a-z])[^0-9+\-]*(?<number>\d+([.,]\d+)?)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex StopWord();
}
