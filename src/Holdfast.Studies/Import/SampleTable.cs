using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Tables with a column of sample codes: vessel sheets, readings of an instrument, or both in one.</summary>
internal static class SampleTable
{
    /// <summary>Understands one.</summary>
    /// <param name="source">The table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="mark">The decimal mark, or null while it is open.</param>
    public static Draft Understand(TableSource source, ImmutableArray<Column> columns, DecimalMark? mark)
    {
        var (rows, blank, repeated) = Rows(source, columns);
        AnswerDates(source, columns, rows);
        foreach (var row in rows)
            ReadCells(row, columns, source, mark);
        new SampleNames(source, columns).Settle(rows);
        PlausibleValues.Ask(rows, columns, source);
        var used = rows.Where(r => r is { IsLeftOut: false, Code: not null }).ToList();
        var samples = SampleFacts.Of(used, source);
        var (runs, readings) = RunReadings.Of(used, columns, source);
        var undecided = rows.Count(r => r is { IsUndecided: true, IsLeftOut: false });
        var left = rows.Count(r => r.IsLeftOut);
        return new Draft(new RowCount(rows.Count - undecided - left, undecided, blank, left + repeated),
            [.. columns.Select(c => c.Understood())], new TakenIn { Samples = samples, Runs = runs, Readings = readings });
    }

    private static (List<SampleRow> Rows, int Blank, int Repeated) Rows(TableSource source, ImmutableArray<Column> columns)
    {
        var code = columns.First(c => c.Use == ColumnUse.Code);
        var rows = new List<SampleRow>();
        var (blank, repeated) = (0, 0);
        foreach (var row in source.Layout.Body)
        {
            if (row.IsBlank)
            {
                blank++;
                continue;
            }
            if (source.Layout.Heading is { } heading && row.At(code.Index).Text == heading.At(code.Index).Text && row.Cells.SequenceEqual(heading.Cells))
            {
                repeated++;
                continue;
            }
            code.Show(row.At(code.Index));
            rows.Add(new SampleRow(row, row.At(code.Index).Text.Normalize(NormalizationForm.FormC)));
        }
        AskAbout(rows.Where(r => r.Written.Length == 0 || r.Written.Any(IsHidden)), "rows:no-code",
            n => $"{n} without a usable sample code. Leave them out, or write the code into the file.", source);
        AskAbout(rows.Where(r => r.Row.Cells.Skip(source.Layout.Headings.Length).Any(c => !c.IsBlank)), "rows:too-long",
            n => $"{n} with more cells than the heading has columns. Take the first cells only, or mend the file.", source);
        return (rows, blank, repeated);
    }

    private static void AskAbout(IEnumerable<SampleRow> rows, string id, Func<string, string> text, TableSource source)
    {
        var found = rows.ToList();
        if (found.Count == 0)
            return;
        var takeFirst = id == "rows:too-long";
        var answer = source.Talk.Ask(id, Codes.OddCell, text(found.Count == 1 ? "There is 1 row" : $"There are {Ordinal.Text(found.Count)} rows"),
            takeFirst ? ["take-first", "leave-out"] : ["leave-out"], [.. found.Select(r => "row " + Ordinal.Text(r.Row.Number))]);
        foreach (var row in found)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    // Characters that are not seen, or that turn the direction of writing, have no place in a code.
    private static bool IsHidden(char c) => char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format;

    private static void AnswerDates(TableSource source, ImmutableArray<Column> columns, List<SampleRow> rows)
    {
        foreach (var column in columns.Where(c => c is { Use: ColumnUse.Fact, Property: { } p } && p == SampleProperties.Day))
        {
            string? open = null;
            foreach (var cell in rows.Select(r => r.Row.At(column.Index)).Where(c => c is { IsBlank: false, Kind: CellKind.Text }))
            {
                _ = DateText.Read(cell.Text, null, out var swappable);
                open ??= swappable ? cell.Text : null;
            }
            if (open is not null)
                source.Talk.Ask("date", Codes.Ambiguous, $"{open} could begin with the day or with the month. Which does this file write?", ["day-first", "month-first"], column.Heading);
        }
    }

    private static void ReadCells(SampleRow row, ImmutableArray<Column> columns, TableSource source, DecimalMark? mark)
    {
        var facts = Ordinal.Facts.ToBuilder();
        foreach (var column in columns)
        {
            var cell = row.Row.At(column.Index);
            if (cell.IsBlank)
                continue;
            switch (column.Use)
            {
                case ColumnUse.Role:
                    column.Show(cell);
                    row.Role = ReadRole(row, cell, source);
                    break;
                case ColumnUse.Fact when ReadFact(column, cell, row, source, mark) is { } fact:
                    facts[fact.Property] = fact;
                    break;
                case ColumnUse.WithoutUnit:
                    column.Show(cell);
                    if (!column.Property!.IsSignal)
                        facts.TryAdd(column.Property.Name, new Fact(column.Property.Name, null, null, null, null, cell.Text + " (no usable unit)", source.At(row.Row.Number, column.Heading)));
                    break;
                case ColumnUse.Signal when column.Read(cell, row.Row.Number, mark) is { IsNothing: false } readout:
                    row.Signals.Add((column, readout, cell));
                    break;
                case ColumnUse.Dilution when column.Read(cell, row.Row.Number, mark).Value is { } dilution:
                    row.Dilution = dilution;
                    break;
                case ColumnUse.Portion when column.Read(cell, row.Row.Number, mark).Value is { } portion and >= 1 and <= 1000:
                    row.Portion = (int)Math.Round(portion);
                    break;
                case ColumnUse.NotUnderstood or ColumnUse.LeftOut or ColumnUse.Position:
                    column.Show(cell);
                    break;
            }
        }
        foreach (var column in columns.Where(c => c.Use == ColumnUse.Uncertainty))
        {
            if (column.ReadDifference(row.Row.At(column.Index), row.Row.Number, mark) is { } u && facts.TryGetValue(column.Property!.Name, out var fact))
                facts[fact.Property] = fact with { U = u };
        }
        row.Facts = facts.ToImmutable();
    }

    private static SampleRole? ReadRole(SampleRow row, Cell cell, TableSource source)
    {
        if (RoleWords.Read(cell.Text) is { } role)
            return role;
        var answer = source.Talk.Ask("role:" + cell.Text, Codes.Ambiguous, $"What is a sample of the kind '{cell.Text}' for?",
            [.. Enum.GetNames<SampleRole>().Select(n => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(n))], "row " + Ordinal.Text(row.Row.Number));
        row.IsUndecided |= answer is null;
        return answer is null ? null : RoleWords.Read(answer) ?? throw new ArgumentException($"A sample cannot be for '{answer}'.", nameof(source));
    }

    private static Fact? ReadFact(Column column, Cell cell, SampleRow row, TableSource source, DecimalMark? mark)
    {
        var property = column.Property!;
        var origin = source.At(row.Row.Number, column.Heading);
        if (property == SampleProperties.Day)
        {
            column.Show(cell);
            var date = DateText.Read(cell.Text, source.Talk.Answers.To("date"), out var swappable);
            row.IsUndecided |= swappable;
            if (date is null && !swappable)
                column.Note(row.Row.Number, cell, "no date");
            return new Fact(property.Name, null, null, null, date, cell.Text, origin);
        }
        if (property.Holds == Holds.Words)
        {
            column.Show(cell);
            return new Fact(property.Name, null, null, null, cell.Text, cell.Text, origin);
        }
        var readout = column.Read(cell, row.Row.Number, mark);
        return readout.IsNothing ? null : new Fact(property.Name, readout.Value, null, readout.Below, null, column.Written(cell), origin);
    }
}
