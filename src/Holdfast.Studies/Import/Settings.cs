using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Settings from the lines above and below a table, given to the vessels that have none of their own.</summary>
internal static class Settings
{
    private static readonly ImmutableArray<SampleRole> MadeForTheRun = [SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank, SampleRole.Solvent];

    private const double SameWithin = 0.01;

    /// <summary>Fills them in; what is used is said, and can be declined.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Fill(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var vessels = rows.Where(r => r is { IsLeftOut: false } && (r.Role is null || !MadeForTheRun.Contains(r.Role.Value))).ToList();
        if (vessels.Count == 0 || !Describes(columns))
            return;
        Series(vessels, source);
        Contradict(vessels, columns, source);
        var lacking = source.Layout.Notes.All.Where(n => vessels.Exists(r => Lacks(r, n.Property, source)) && !columns.Any(c => c.Property == n.Property && c.Use is ColumnUse.Fact or ColumnUse.WithoutUnit)).ToList();
        foreach (var clash in source.Layout.Notes.Contradicted.GroupBy(c => c.Property).Where(g => vessels.Exists(r => Lacks(r, g.Key, source))))
        {
            source.Talk.Note(Codes.Ambiguous, Weight.Caution, $"Two lines state the {clash.Key.Title}: {string.Join(" and ", clash.Select(c => $"{c.Written} ({c.Place})").Distinct())}. Neither is used; set it for the vessels it holds for.", clash.Key.Title);
        }

        if (source.Layout.Notes.Drawn is { } drawn)
            source.Talk.Note(Codes.Ambiguous, Weight.Note, $"Line {Ordinal.Text(drawn.Row)}: {drawn.Written} was drawn each time. The volume of the vessel is kept; what was drawn is not taken off.", "volume");
        if (lacking.Count == 0)
            return;
        var said = string.Join("; ", lacking.Select(n => $"{n.Property.Title} {n.Written} ({n.Place})"));
        if (source.Talk.Assume("settings", Codes.Ambiguous, $"Taken for every vessel of this table: {said}.", ["use", "ignore"], [.. lacking.Select(n => n.Property.Title)]) != "use")
            return;
        AskAboutSome(vessels, lacking, source);
        AskAboutOtherStart(vessels, lacking, source);
        foreach (var (row, note) in vessels.SelectMany(r => lacking.Select(n => (r, n))).Where(x => Lacks(x.r, x.n.Property, source)))
        {
            row.Facts = row.Facts.SetItem(note.Property.Name, new Fact(note.Property.Name, note.Value, null, null, null, note.Written, note.At(source)));
        }
    }

    // "the flasks of the second day got only half the volume": a remark takes back for some what a line says for all.
    private static void AskAboutSome(List<SampleRow> vessels, List<NotedSetting> used, TableSource source)
    {
        if (used.Find(n => n.Property == BatchProperties.Volume) is not { } volume || source.Layout.Notes.Lines.FirstOrDefault(SaysHalf) is not { } line)
            return;
        var answer = source.Talk.Ask("half-for-some", Codes.Ambiguous, $"{volume.Place} says {volume.Written} for every vessel, but a remark says: “{line}”. Which vessels are meant? Write their volume into the file, or say that {volume.Written} holds for all.", ["holds-for-all", "leave-out"], [.. vessels.Take(8).Select(r => r.Written)]);
        Wait(vessels, answer);
    }

    // "ran out of the 50 mg/L bottle, the last few got the 40 mg/L one": another start for some, and which is not said.
    private static void AskAboutOtherStart(List<SampleRow> vessels, List<NotedSetting> used, TableSource source)
    {
        if (used.Find(n => n.Property == BatchProperties.InitialConcentration) is not { } start || source.Layout.Notes.Lines.FirstOrDefault(l => Lexicon.Tokens(l).Any(Some.Contains) && OtherConcentrations(l, start).Any()) is not { } line)
            return;
        var answer = source.Talk.Ask("start-for-some", Codes.Ambiguous, $"{start.Place} says {start.Written} for every vessel, but a line says: “{line}”. Which vessels are meant? Write their start concentration into the file, or say that {start.Written} holds for all.", ["holds-for-all", "leave-out"], [.. vessels.Select(r => r.Written)]);
        Wait(vessels, answer);
    }

    // Until it is answered nothing of them is used.
    private static void Wait(List<SampleRow> vessels, string? answer)
    {
        foreach (var row in vessels)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    private static IEnumerable<string> OtherConcentrations(string line, NotedSetting start)
        => AmountLines.AmountsIn(line).Where(a => UnitKinds.Of(a.Unit) == UnitKind.Concentration && a.Unit is Amounts.UnitText.Known known && UnitBridge.Between(known, start.Property, null)?.Convert(a.Value) is { } value && Math.Abs(value - start.Value) > SameWithin * start.Value).Select(a => a.Written);

    private static readonly HashSet<string> Some = new("last rest remaining others some few from onwards except letzten letzte ubrigen anderen einige ab ausser derniers dernieres autres quelques sauf ultimos ultimas demas algunos otros salvo restantes outros alguns exceto ultimi ultime altri alcuni tranne laatste overige andere sommige behalve".Split(' '), StringComparer.Ordinal);

    private static readonly HashSet<string> Half = new("half halved halb halbe halbes halfte moitie mitad medio media metade meta helft polowa polowe polovina yarisi halften setengah".Split(' '), StringComparer.Ordinal);

    private static bool SaysHalf(string line) => Lexicon.Tokens(line).Any(Half.Contains) && Lexicon.Of(line).Overlaps([HeadingWord.Volume, HeadingWord.Liquid]);

    // The title says one thing for all, the column another for every row: one of them is a slip.
    private static void Contradict(List<SampleRow> vessels, ImmutableArray<Column> columns, TableSource source)
    {
        foreach (var note in source.Layout.Notes.All.Where(n => !source.Layout.Notes.IsDrawn(n) && (n.Row > 0 || n.File is not null) && (n.Property == BatchProperties.InitialConcentration || n.Property == BatchProperties.Volume || n.Property == BatchProperties.ContactTime)))
        {
            if (columns.FirstOrDefault(c => c.Use == ColumnUse.Fact && c.Property == note.Property) is not { } column)
                continue;
            var values = vessels.Select(r => r.Facts.GetValueOrDefault(note.Property.Name)?.Value).OfType<double>().Distinct().ToList();
            if (note.Property == BatchProperties.ContactTime && values.Count > 1)
            {
                AskUnitOfTime(note, column, vessels, source);
                continue;
            }

            var written = vessels.Select(r => r.Facts.GetValueOrDefault(note.Property.Name)?.Written).FirstOrDefault(w => w is not null);
            if (values is not [var all] || Math.Abs(all - note.Value) <= SameWithin * Math.Abs(all))
                continue;
            // A start solution made up to 30 mg/L reads 30.4.
            if (note.Property == BatchProperties.InitialConcentration && Tolerances.SameSolution(all, note.Value) && IsRound(note.Value) && !IsRound(all)
                && source.Talk.Assume("made-up-or-read", Codes.Ambiguous, $"{column.Heading} ({written}) is used: {note.Place} says {note.Written}, what it was made up to.", ["column", "line"], column.Heading) == "column")
                continue;
            var answer = source.Talk.Ask("line-or-column:" + note.Property.Name, Codes.Ambiguous, $"{column.Heading} is {written} in every row, but {note.Place} says {note.Written}. Which holds?", ["column", "line"], column.Heading);
            foreach (var row in vessels)
            {
                row.IsUndecided |= answer is null;
                if (answer == "line")
                    row.Facts = row.Facts.SetItem(note.Property.Name, new Fact(note.Property.Name, note.Value, null, null, null, note.Written, note.At(source)));
            }
        }
    }

    private static bool IsRound(double concentration) => Math.Abs((2 * concentration) - Math.Round(2 * concentration)) < 1e-9;

    // "24 h on the shaker" over times that end at 24 min: the number is the same, so one of the units is a slip.
    private static void AskUnitOfTime(NotedSetting note, Column column, List<SampleRow> vessels, TableSource source)
    {
        if (CellParts.Split(note.Written) is not (var number, Amounts.UnitText.Known { Unit: var said }) || Amounts.CellText.Read(number, null) is not Amounts.CellText.Number { Value: var most }
            || column.Unit is not { } written || written == said)
            return;
        var longest = vessels.Select(r => r.Facts.GetValueOrDefault(note.Property.Name)?.Value).OfType<double>().Max();
        if (UnitBridge.Between(new Amounts.UnitText.Known(written), note.Property, null)?.Convert(most) is not { } likewise || Math.Abs(longest - likewise) > SameWithin * longest)
            return;
        var answer = source.Talk.Ask("unit-of-time", Codes.Ambiguous, $"{column.Heading} ends at {most.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture)} {written.Plain}, and {note.Place} says {note.Written}. Which unit are these times in?", [said.Plain, written.Plain], column.Heading);
        foreach (var row in vessels)
        {
            row.IsUndecided |= answer is null;
            if (answer == said.Plain && row.Facts.GetValueOrDefault(note.Property.Name) is { Value: { } value } fact)
                row.Facts = row.Facts.SetItem(note.Property.Name, fact with { Value = value * note.Value / likewise });
        }
    }

    // Start solutions have no mass, and controls no powder.
    private static bool Lacks(SampleRow row, Property property, TableSource source)
        => !row.Facts.ContainsKey(property.Name)
            && !(row.Role is SampleRole.StartSolution && property != BatchProperties.InitialConcentration && property != BatchProperties.Temperature)
            && !(row.Role is SampleRole.Control && property == BatchProperties.Mass)
            && !(property == BatchProperties.Mass && row.Facts.ContainsKey(BatchProperties.Dose.Name))
            && source.Known.GetValueOrDefault(row.Code ?? "")?.Fact(property) is null;

    private static bool Describes(ImmutableArray<Column> columns)
        => columns.Any(c => c.Property is { } p && c.Use is ColumnUse.Fact or ColumnUse.Signal or ColumnUse.WeighedFull or ColumnUse.ClockEnd
            && (p.Unit.Length > 0 || p == BatchProperties.StartPh) && p != SpectrometryProperties.StandardConcentration);

    // Several sheets, each a series of its own: the sheet's name is the series' name.
    private static void Series(List<SampleRow> vessels, TableSource source)
    {
        var name = source.SeveralSheets ? source.Layout.Grid.Sheet : source.Layout.Part > 0 || source.Tables > 1 ? TitleOf(source.Layout) : null;
        if (name is null)
            return;
        // A run of vessels that another sheet describes is no series, and its start solution serves them all.
        var brings = vessels.Exists(r => r.Role is null or SampleRole.Vessel && (source.Known.GetValueOrDefault(r.Code ?? "")?.Series ?? name) == name);
        foreach (var row in vessels.Where(r => (brings || r.Role != SampleRole.StartSolution) && !r.Facts.ContainsKey(SampleProperties.Series.Name) && source.Known.GetValueOrDefault(r.Code ?? "")?.Series is null))
            row.Facts = row.Facts.SetItem(SampleProperties.Series.Name, new Fact(SampleProperties.Series.Name, null, null, null, name, name, source.At(source.Layout.Heading?.Number ?? 0, null)));
    }

    /// <summary>The line above a table that names it, or null.</summary>
    internal static string? TitleOf(TableLayout layout)
        => layout.Preamble.LastOrDefault(r => r.Filled == 1) is { } line ? line.Cells.First(c => !c.IsBlank).Text is { Length: <= 60 } title ? title.TrimEnd(':') : null : null;
}
