using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Tables with a column of sample codes: vessel sheets, readings of an instrument, or both in one.</summary>
internal static partial class SampleTable
{
    private const int ShortestPageHead = 6, MostOfATally = 3;

    /// <summary>Understands one.</summary>
    /// <param name="source">The table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="mark">The decimal mark, or null while it is open.</param>
    public static Draft Understand(TableSource source, ImmutableArray<Column> columns, DecimalMark? mark)
    {
        var (rows, blank, repeated, summaries) = Rows(source, columns);
        AnswerDates(source, columns, rows);
        foreach (var row in rows)
            ReadCells(row, columns, source, mark);
        Cycles(rows, columns, source);
        columns = ByStatedLine.Turn(rows, columns, source);
        columns = TitratedResults.Read(rows, columns, source, mark);
        ByDifference.Read(rows, columns, source, mark);
        Suspensions.Settle(rows, columns, source);
        GroupedRows.Settle(rows, columns, source);
        ShiftedRows.Ask(rows, columns, source);
        StruckRows.Settle(rows, columns, source);
        SpoiltRows.Ask(rows, columns, source);
        var repeats = OwnEvaluation.Settle(rows, columns, source);
        OwnResultsOfUnread.Settle(rows, source);
        StartRow.SaidInWords(rows, source);
        new SampleNames(source, columns, repeats).Settle(rows);
        StartRow.Settle(rows, columns, source);
        Settings.Fill(rows, columns, source);
        CodePattern.Fill(rows, source);
        SameCodeTwice.Ask(rows, columns, source);
        Dilutions.Settle(rows, columns, source);
        ReadInTwoRuns.Ask(rows, source);
        PlausibleValues.Ask(rows, columns, source);
        TwoCalibrations.Ask(rows, columns, source);
        var used = rows.Where(r => r is { IsLeftOut: false, Code: not null }).ToList();
        var samples = SampleFacts.Of(used, source);
        var (runs, readings) = RunReadings.Of(used, columns, source);
        var undecided = rows.Count(r => r is { IsUndecided: true, IsLeftOut: false });
        var left = rows.Count(r => r.IsLeftOut);
        NotUsed(source, columns, summaries);
        Unread(source, columns, rows);
        return new Draft(new RowCount(rows.Count - undecided - left, undecided, blank, left + repeated + summaries.Count),
            [.. columns.Select(c => c.Understood())], new TakenIn { Samples = samples, Runs = runs, Readings = readings });
    }

    // Every column and row that is not used is named, once each kind.
    private static void NotUsed(TableSource source, ImmutableArray<Column> columns, List<GridRow> summaries)
    {
        var unknown = columns.Where(c => c.Use == ColumnUse.NotUnderstood && source.Layout.Body.Any(r => !r.At(c.Index).IsBlank)).ToList();
        if (unknown.Count > 0)
        {
            source.Talk.Note(Codes.MeaningLost, Weight.Note, $"Not used: {string.Join(", ", unknown.Take(8).Select(c => c.Heading))}{(unknown.Count > 8 ? ", …" : "")}. "
                + "Choose a meaning where one is needed.", unknown.Select(c => c.Heading));
        }

        var left = columns.Where(c => c.Use == ColumnUse.LeftOut && c.Remark is not null && !source.Layout.Body.All(r => r.At(c.Index).IsBlank)).ToList();
        foreach (var column in left)
            source.Talk.Note(Codes.MeaningLost, Weight.Note, $"{column.Heading}: {column.Remark}", column.Heading);
        if (summaries.Count > 0)
        {
            source.Talk.Note(Codes.MeaningLost, Weight.Note, $"{(summaries.Count == 1 ? "1 row is" : $"{Ordinal.Text(summaries.Count)} rows are")} no sample and left out: "
                + string.Join(", ", summaries.Take(4).Select(r => $"{r.Cells.First(c => !c.IsBlank).Text} (row {Ordinal.Text(r.Number)})")) + ".");
        }
    }

    // A result or an amount that is written and cannot be read is named with its row: nothing is passed over in silence.
    private static void Unread(TableSource source, ImmutableArray<Column> columns, List<SampleRow> rows)
    {
        foreach (var column in columns.Where(c => c.Use is ColumnUse.Signal or ColumnUse.Fact && c.Property?.Holds == Holds.Number && (c.Use == ColumnUse.Signal || ColumnChoices.IsNeeded(c.Property))))
        {
            var odd = column.Understood().Odd;
            if (odd.IsEmpty)
                continue;
            var byRow = rows.ToLookup(r => r.Row.Number, r => r.Written);
            var dates = odd.Any(o => DateText.Read(o.Text, "day-first", out _) is not null || Month().IsMatch(o.Text));
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"{column.Heading} cannot be read for {string.Join(", ", odd.Take(4).Select(o => $"{byRow[o.Row].FirstOrDefault() ?? "a sample"} (row {Ordinal.Text(o.Row)}: “{o.Text}”, {o.Why})"))}{(odd.Length > 4 ? $" and {Ordinal.Text(odd.Length - 4)} more" : "")}. "
                + (dates ? "A spreadsheet may have turned a number into a date. " : "") + "Mend it in the file, or go on without.", [.. odd.Take(20).SelectMany(o => byRow[o.Row])]);
        }
    }

    // "12. Mai", "07-Mar", "5 avr.": a day and a month in words.
    [GeneratedRegex(@"^\d{1,2}[. \-/]\s*\p{L}{3,}\.?$", RegexOptions.NonBacktracking)]
    private static partial Regex Month();

    private static (List<SampleRow> Rows, int Blank, int Repeated, List<GridRow> Summaries) Rows(TableSource source, ImmutableArray<Column> columns)
    {
        var code = columns.FirstOrDefault(c => c.Use == ColumnUse.Code);
        var standards = code is null && columns.Any(c => c.Property == SpectrometryProperties.StandardConcentration);
        var known = columns.FirstOrDefault(c => c.Property == SpectrometryProperties.StandardConcentration);
        var solutions = code is null && source.IsOfStartSolutions && columns.Any(c => c.Property == BatchProperties.InitialConcentration) && !columns.Any(c => c.Property == BatchProperties.Mass || c.Property == BatchProperties.Volume);
        var rows = new List<SampleRow>();
        var summaries = new List<GridRow>();
        var (blank, repeated) = (0, 0);
        var isFilledIn = source.Layout.Body.Any(r => r.Filled > 1);
        var means = MeanRows.In(source.Layout.Body, columns, source.Mark);
        foreach (var row in source.Layout.Body)
        {
            if (row.IsBlank || IsUnusedLine(row, columns) || (code is not null && isFilledIn && IsNumberAlone(row, code)))
            {
                blank++;
                continue;
            }
            if (source.Layout.Heading is { } heading && (code is null || row.At(code.Index).Text == heading.At(code.Index).Text) && row.Cells.SequenceEqual(heading.Cells))
            {
                repeated++;
                continue;
            }
            if (IsPageHead(row, source.Layout))
            {
                repeated++;
                continue;
            }
            if (Footer.IsSummary(code is null ? row.Cells.First(c => !c.IsBlank).Text : row.At(code.Index).IsBlank ? row.Cells.First(c => !c.IsBlank).Text : row.At(code.Index).Text)
                || TableLayout.IsUnits(row) || (code is not null && Footer.IsCheckWeight(row.At(code.Index).Text)) || (code is not null && row.At(code.Index).IsBlank && Footer.IsLimit(row.Cells.First(c => !c.IsBlank).Text)) || columns.Any(c => (c.Property == SampleProperties.Remark || (c.Use == ColumnUse.Position && row.At(c.Index).Text.Length > 1)) && Footer.IsSummary(row.At(c.Index).Text)) || means.Contains(row) || (code is not null && IsTally(row, code, columns)))
            {
                summaries.Add(row);
                continue;
            }
            if (code is not null)
            {
                code.Show(row.At(code.Index));
                rows.Add(new SampleRow(row, NameOf(row, code, columns), row.At(code.Index)));
            }
            else
            {
                rows.Add(new SampleRow(row, standards ? $"Std {row.At(known!.Index).Text}" : $"{source.Stem} row {Ordinal.Text(row.Number)}") { Role = standards ? SampleRole.Standard : solutions ? SampleRole.StartSolution : null });
            }
        }

        if (code is null && rows.Count > 0 && !standards)
            source.Talk.Note(Codes.UnknownSample, Weight.Note, $"No column names the samples, so each row is named by its place: {rows[0].Written} and so on.");
        AskAbout(rows.Where(r => r.Written.Length == 0 || r.Written.Any(IsHidden)), "rows:no-code",
            n => $"{n} without a usable sample code. Leave them out, or write the code into the file.", source);
        // Words beyond the last heading are the rest of a remark, cut at its comma, or what a chart wrote beside: "y = 0.2x + 0.003".
        bool Beyond(SampleRow row, bool numbers) => row.Row.Cells.Length > source.Layout.Headings.Length && row.Row.Cells.Skip(source.Layout.Headings.Length).Where(c => !c.IsBlank).ToList() is { Count: > 0 } cells && cells.Exists(TableLayout.IsNumberLike) == numbers;
        var beyond = rows.Where(r => Beyond(r, numbers: false)).ToList();
        if (beyond.Count > 0)
            source.Talk.Note(Codes.MeaningLost, Weight.Note, $"Not used: what stands beyond the last heading in {(beyond.Count == 1 ? "row" : "rows")} {string.Join(", ", beyond.Take(6).Select(r => Ordinal.Text(r.Row.Number)))}.");
        AskAbout(rows.Where(r => Beyond(r, numbers: true)), "rows:too-long",
            n => $"{n} with more cells than the heading has columns. Take the first cells only, or mend the file.", source);
        return (rows, blank, repeated, summaries);
    }

    // The title of a print-out again, on its next page: only its numbers differ.
    private static bool IsPageHead(GridRow row, TableLayout layout)
        => layout.Preamble.Length > 0 && layout.Grid.Separator == "spaces" && Lettered(row) is { Length: >= ShortestPageHead } said && layout.Preamble.Any(p => Lettered(p) == said);

    private static string Lettered(GridRow row) => string.Concat(row.Cells.SelectMany(c => c.Text.Where(char.IsLetter)));

    // A line of a form that nobody filled in: a running number, and what formulas make of nothing.
    private static bool IsUnusedLine(GridRow row, ImmutableArray<Column> columns)
        => columns.Any(c => c.Use == ColumnUse.Code) && columns.All(c => row.At(c.Index).IsBlank || c.Use is ColumnUse.Position or ColumnUse.LeftOut or ColumnUse.NotUnderstood
            || c.Property == BatchProperties.ReportedRemoval || c.Property == BatchProperties.ReportedRemaining || c.Property == BatchProperties.ReportedUptake)
            && columns.Any(c => !row.At(c.Index).IsBlank && c.Property is not null && c.Use == ColumnUse.Fact);

    // "bottles done … 7": words in a column of words, one number, and no code.
    private static bool IsTally(GridRow row, Column code, ImmutableArray<Column> columns)
        => row.At(code.Index).IsBlank && row.Filled == 2 && columns.Length > MostOfATally && row.Cells.Count(c => !c.IsBlank && TableLayout.IsNumeric(c)) == 1
            && columns.Any(c => c.Use is not ColumnUse.Role && (c.Property is null || c.Property.Holds == Holds.Words) && row.At(c.Index) is { Kind: CellKind.Text, IsBlank: false } said && said.Text.Any(char.IsLetter));

    // "8", "9", "10" down the side of a form, and nothing beside.
    private static bool IsNumberAlone(GridRow row, Column code) => row.Filled == 1 && TableLayout.IsNumeric(row.At(code.Index));

    // A start solution or a blank needs no code of its own; a dash is none.
    private static string NameOf(GridRow row, Column code, ImmutableArray<Column> columns)
    {
        var written = row.At(code.Index).Text.Normalize(NormalizationForm.FormC);
        if (written.Any(char.IsLetterOrDigit))
            return written;
        return columns.FirstOrDefault(c => c.Use == ColumnUse.Role) is { } kind && RoleWords.Read(row.At(kind.Index).Text) is { } role and not SampleRole.Vessel
            ? $"{row.At(kind.Index).Text} row {Ordinal.Text(row.Number)}" : "";
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
                source.Talk.Assume("date", Codes.Ambiguous, $"{open} in {column.Heading} could begin with the day or with the month; it is kept as written.", ["as-written", "day-first", "month-first"], column.Heading);
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
                    row.Role = ReadRole(row, cell, source) ?? row.Role;
                    break;
                case ColumnUse.Fact when ReadFact(column, cell, row, source, mark) is { } fact:
                    facts[fact.Property] = fact;
                    break;
                case ColumnUse.WithoutUnit:
                    column.Show(cell);
                    if (!column.Property!.IsSignal)
                        facts.TryAdd(column.Property.Name, new Fact(column.Property.Name, null, null, null, null, cell.Text + " (no usable unit)", source.At(row.Row.Number, column.Heading)));
                    break;
                case ColumnUse.Signal when column.Read(cell, row.Row.Number, mark, row.Written) is { IsNothing: false } readout:
                    row.Signals.Add((column, readout, cell));
                    break;
                case ColumnUse.Dilution when column.Read(cell, row.Row.Number, mark).Value is { } dilution:
                    row.Dilution = dilution;
                    break;
                case ColumnUse.Portion when column.Read(cell, row.Row.Number, mark).Value is { } portion and >= 1 and <= 1000:
                    row.Portion = (int)Math.Round(portion);
                    break;
                case ColumnUse.Position when HeadingWords.Repeat.Contains(HeadingWords.Key(column.Heading)) || Lexicon.Of(column.Heading).Contains(HeadingWord.Replicate):
                    column.Show(cell);
                    row.Replicate = cell.Text;
                    break;
                case ColumnUse.NotUnderstood or ColumnUse.LeftOut or ColumnUse.Position:
                    column.Show(cell);
                    break;
            }
        }
        foreach (var column in columns.Where(c => c.Use == ColumnUse.Uncertainty))
        {
            if (column.ReadDifference(row.Row.At(column.Index), row.Row.Number, mark) is not { } u)
                continue;
            if (facts.TryGetValue(column.Property!.Name, out var fact))
                facts[fact.Property] = fact with { U = u };
            else if (column.Property == SpectrometryProperties.ReportedConcentration)
                row.ReportedU = u;
        }
        row.Facts = facts.ToImmutable();
    }

    // A code under the heading "Cycle" says which use of the powder it is.
    private static void Cycles(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (columns.FirstOrDefault(c => c.Use == ColumnUse.Code && HeadingWords.Properties(HeadingWords.Key(c.Heading)).Contains(RegenerationProperties.Cycle)) is not { } code)
            return;
        foreach (var row in rows)
        {
            if (int.TryParse(string.Concat(row.Written.Where(char.IsAsciiDigit)), NumberStyles.None, CultureInfo.InvariantCulture, out var cycle))
                row.Facts = row.Facts.SetItem(RegenerationProperties.Cycle.Name, new Fact(RegenerationProperties.Cycle.Name, cycle, null, null, null, row.Written, source.At(row.Row.Number, code.Heading)));
        }
    }

    private static SampleRole? ReadRole(SampleRow row, Cell cell, TableSource source)
    {
        if (RoleWords.Read(cell.Text) is { } role)
            return role;
        var answer = source.Talk.Ask("role:" + cell.Text, Codes.Ambiguous, $"What is a sample of the kind '{cell.Text}' for?",
            [.. Enum.GetNames<SampleRole>().Select(n => System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(n))], "row " + Ordinal.Text(row.Row.Number));
        row.IsUndecided |= answer is null;
        return answer is null ? null : RoleWords.Read(answer) ?? throw new StudyException(Codes.Ambiguous, $"A sample cannot be for '{answer}'. Write vessel, standard, check-standard, blank, control, start-solution or spike.");
    }

    private static Fact? ReadFact(Column column, Cell cell, SampleRow row, TableSource source, DecimalMark? mark)
    {
        var property = column.Property!;
        var origin = source.At(row.Row.Number, column.Heading);
        if (property == SampleProperties.Day)
        {
            column.Show(cell);
            var date = cell.Kind == CellKind.Date ? cell.Text : DateText.Read(cell.Text, source.Talk.Answers.To("date"), out _) ?? cell.Text;
            return new Fact(property.Name, null, null, null, date, cell.Text, origin);
        }
        if (property.Holds == Holds.Words)
        {
            column.Show(cell);
            return new Fact(property.Name, null, null, null, cell.Text, cell.Text, origin);
        }
        var readout = column.Read(cell, row.Row.Number, mark, row.Written);
        return readout.IsNothing ? null : new Fact(property.Name, readout.Value, readout.U, readout.Below, null, column.Written(cell), origin);
    }
}
