using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Facts that a sheet gives by two columns: the mass from two weighings, the contact time from two times, the dilution from two volumes.</summary>
internal static class ByDifference
{
    private const double MinutesOfADay = 24 * 60;

    /// <summary>Works them out, row by row.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    /// <param name="mark">The file's decimal mark.</param>
    public static void Read(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source, DecimalMark? mark)
    {
        var (full, filled) = (columns.FirstOrDefault(c => c.Use == ColumnUse.WeighedFull), columns.FirstOrDefault(c => c.Use == ColumnUse.WeighedFilled));
        // "bottle empty" and "bottle with solution" beside two weighings of a vial: what the bottle weighs belongs to the liquid.
        var bare = filled is null ? null : columns.FirstOrDefault(c => c.Use == ColumnUse.WeighedEmpty && IsOfOneVessel(c, filled) && (full is null || !IsOfOneVessel(c, full)));
        var empty = columns.FirstOrDefault(c => c.Use == ColumnUse.WeighedEmpty && c != bare);
        // "Powder: boat | boat + powder": a heading over both names the powder twice, and the plus tells which holds it.
        if (empty is null && columns.Where(c => c.Use == ColumnUse.WeighedFull).ToList() is [var one, var two] && one.Heading.Contains('+', StringComparison.Ordinal) != two.Heading.Contains('+', StringComparison.Ordinal))
            (full, empty) = one.Heading.Contains('+', StringComparison.Ordinal) ? (one, two) : (two, one);
        if (full is null != empty is null && columns.FirstOrDefault(c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.Mass) is { } other
            && (full is null ? IsAbove(other, empty!) : IsOfTheBoat(other.Heading, full.Heading) && IsAbove(full, other)))
        {
            (full, empty) = (full ?? other, empty ?? other);
            foreach (var row in rows)
                row.Facts = row.Facts.Remove(BatchProperties.Mass.Name);
        }

        bool IsAbove(Column heavy, Column light) => rows.TrueForAll(r => heavy.Value(r.Row.At(heavy.Index), mark) is not { } a || light.Value(r.Row.At(light.Index), mark) is not { } b || a >= b);

        if (full is not null && empty is not null)
        {
            foreach (var row in rows)
                Weigh(row, full, empty, source, mark);
        }
        else if ((full ?? empty) is { } alone)
        {
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"{alone.Heading} is one weighing of two: without the other no mass follows. Where it is the powder alone, say that it holds the mass.", alone.Heading);
        }

        if ((bare ?? full) is { } before && filled is not null && !columns.Any(c => c.Property == BatchProperties.Volume)
            && source.Talk.Assume("volume-weighed", Codes.Ambiguous, $"The volume is {filled.Heading} less {before.Heading}, with 1.00 g/mL as for water.", ["use", "ignore"], filled.Heading) == "use")
        {
            foreach (var row in rows)
                Fill(row, filled, before, source, mark);
        }

        if (columns.FirstOrDefault(c => c.Use == ColumnUse.DilutedFrom) is { } taken && columns.FirstOrDefault(c => c.Use == ColumnUse.DilutedTo) is { } total)
        {
            foreach (var row in rows)
            {
                if (taken.Read(row.Row.At(taken.Index), row.Row.Number, mark).Value is > 0 and var from && total.Read(row.Row.At(total.Index), row.Row.Number, mark).Value is > 0 and var to)
                    row.Dilution = to / from;
            }
        }

        if (columns.FirstOrDefault(c => c.Use == ColumnUse.TakenOut) is { } gone && !columns.Any(c => c.Use == ColumnUse.Signal || c is { Use: ColumnUse.Fact } && (c.Property == BatchProperties.ReportedRemoval || c.Property == BatchProperties.ReportedRemaining)))
        {
            foreach (var row in rows)
                TakeOut(row, gone, source, mark);
        }

        var (start, end) = (columns.FirstOrDefault(c => c.Use == ColumnUse.ClockStart), columns.FirstOrDefault(c => c.Use == ColumnUse.ClockEnd));
        if (end is null || (start is null && source.Layout.Notes.StartClock is null))
            return;
        if (start is null && source.Talk.Assume("start-clock", Codes.Ambiguous, $"Contact began at {source.Layout.Notes.StartClock} for every row, as a line says, and ended at {end.Heading}.", ["use", "ignore"], end.Heading) != "use")
            return;
        var order = OrderOfDates(rows, start ?? end, end, source);
        foreach (var row in rows)
            Time(row, start, end, source, order);
    }

    // 01/03/2026 is the first of March or the third of January: the contact time waits for the answer, the rest does not.
    private static string? OrderOfDates(List<SampleRow> rows, Column start, Column end, TableSource source)
    {
        foreach (var (column, cell) in rows.SelectMany(r => new[] { (start, r.Row.At(start.Index)), (end, r.Row.At(end.Index)) }))
        {
            if (DateText.Read(cell.Text, null, out var swappable) is null && swappable)
            {
                return source.Talk.Assume("date", Codes.Ambiguous, $"{cell.Text} in {column.Heading} could begin with the day or with the month, and the contact time hangs on it. Until it is answered there is none.",
                    ["as-written", "day-first", "month-first"], column.Heading);
            }
        }

        return null;
    }

    // "removed (mg/L)" beside the start concentration: its share is the removal.
    private static void TakeOut(SampleRow row, Column column, TableSource source, DecimalMark? mark)
    {
        var start = row.Facts.GetValueOrDefault(BatchProperties.InitialConcentration.Name)?.Value ?? source.Known.GetValueOrDefault(row.Written)?.Number(BatchProperties.InitialConcentration);
        if (start is not > 0 || column.Read(row.Row.At(column.Index), row.Row.Number, mark).Value is not { } gone)
            return;
        var name = BatchProperties.ReportedRemoval.Name;
        row.Facts = row.Facts.SetItem(name, new Fact(name, 100 * gone / start, null, null, null, column.Written(row.Row.At(column.Index)), source.At(row.Row.Number, column.Heading)));
    }

    private static void Weigh(SampleRow row, Column full, Column empty, TableSource source, DecimalMark? mark)
    {
        var (with, without) = (row.Row.At(full.Index), row.Row.At(empty.Index));
        if (full.Read(with, row.Row.Number, mark).Value is not { } a || empty.Read(without, row.Row.Number, mark).Value is not { } b || row.Facts.ContainsKey(BatchProperties.Mass.Name))
            return;
        // Digits that both weighings lack are no digits of the difference.
        var mass = Math.Round(a - b, 6);
        row.Facts = row.Facts.SetItem(BatchProperties.Mass.Name, new Fact(BatchProperties.Mass.Name, mass, null, null, null,
            $"{full.Written(with)} − {empty.Written(without)}", source.At(row.Row.Number, full.Heading)));
    }

    private static bool IsOfOneVessel(Column one, Column other)
        => Lexicon.Tokens(one.Heading).Intersect(Lexicon.Tokens(other.Heading), StringComparer.Ordinal).Any(t => t.Length > 2 && Lexicon.OfToken(t).Contains(HeadingWord.Boat));

    // "pan at start" beside "pan + clay": what both name, and the powder's word does not, is the boat in any language.
    private static bool IsOfTheBoat(string one, string both)
    {
        var parts = HeadingReading.Of(both).Name.Split('+').Select(p => Lexicon.Tokens(p).Where(t => t.Length > 2).ToHashSet(StringComparer.Ordinal)).ToList();
        var named = Lexicon.Tokens(HeadingReading.Of(one).Name);
        return parts.Count == 2 && named.Any(parts[0].Contains) && !named.Any(parts[1].Contains);
    }

    // Milligrams of a dilute solution are thousandths of a millilitre.
    private static void Fill(SampleRow row, Column filled, Column full, TableSource source, DecimalMark? mark)
    {
        var (with, without) = (row.Row.At(filled.Index), row.Row.At(full.Index));
        if (filled.Read(with, row.Row.Number, mark).Value is not { } a || full.Read(without, row.Row.Number, mark).Value is not { } b)
            return;
        row.Facts = row.Facts.SetItem(BatchProperties.Volume.Name, new Fact(BatchProperties.Volume.Name, Math.Round((a - b) / 1000, 6), null, null, null,
            $"({filled.Written(with)} − {full.Written(without)}) / 1.00 g/mL", source.At(row.Row.Number, filled.Heading)));
    }

    private static void Time(SampleRow row, Column? start, Column end, TableSource source, string? order)
    {
        var (from, to) = (start is null ? new Cell(source.Layout.Notes.StartClock) : row.Row.At(start.Index), row.Row.At(end.Index));
        start?.Show(from);
        end.Show(to);
        if (Clock(from, order) is not { } a || Clock(to, order) is not { } b || row.Facts.ContainsKey(BatchProperties.ContactTime.Name))
            return;
        var minutes = (b.Moment - a.Moment).TotalMinutes;
        if (minutes < 0 && !a.HasDay && !b.HasDay)
            minutes += MinutesOfADay;
        row.Facts = row.Facts.SetItem(BatchProperties.ContactTime.Name, new Fact(BatchProperties.ContactTime.Name, Math.Round(minutes, 4), null, null, null,
            $"{from.Text} to {to.Text}", source.At(row.Row.Number, end.Heading)));
    }

    private static (DateTime Moment, bool HasDay)? Clock(Cell cell, string? order)
    {
        var text = cell.Text;
        // Workbooks keep a time of the day as a share of a day.
        if (cell.Kind == CellKind.Number && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var share) && share is >= 0 and < 100000)
            return (new DateTime(1899, 12, 30).AddDays(share), share >= 1);
        var plain = text.Replace(" Uhr", "", StringComparison.OrdinalIgnoreCase).Replace('h', ':').TrimEnd(':').Trim();
        var next = CellParts.NextDay(text);
        if (TimeOnly.TryParseExact(next?.Replace('h', ':').Trim() ?? plain, ["H:mm", "HH:mm", "H:mm:ss", "HH:mm:ss", "h:mm tt", "H.mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
            return (new DateTime(1899, 12, next is null ? 30 : 31).Add(time.ToTimeSpan()), false);
        string[] forms = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss", "dd.MM.yyyy HH:mm", "dd.MM.yyyy HH:mm:ss", "dd/MM/yyyy HH:mm", "d.M.yyyy H:mm", "d/M/yyyy H:mm", "d-M-yyyy H:mm", "d-M-yyyy H:mm:ss"];
        if (DateTime.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment))
            return (moment, true);
        return DateText.Read(text, order, out _) is { } day && DateTime.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? (date, true) : null;
    }
}
