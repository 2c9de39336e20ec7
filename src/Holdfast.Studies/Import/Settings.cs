using System.Collections.Immutable;
using Holdfast.Studies.History;
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
            source.Talk.Note(Codes.Ambiguous, Weight.Caution, $"Two lines state the {clash.Key.Title}: {string.Join(" and ", clash.Select(c => $"{c.Written} (line {Ordinal.Text(c.Row)})").Distinct())}. Neither is used; set it for the vessels it holds for.", clash.Key.Title);
        }

        if (source.Layout.Notes.Drawn is { } drawn)
            source.Talk.Note(Codes.Ambiguous, Weight.Note, $"Line {Ordinal.Text(drawn.Row)}: {drawn.Written} was drawn each time. The volume of the vessel is kept; what was drawn is not taken off.", "volume");
        if (lacking.Count == 0)
            return;
        var said = string.Join("; ", lacking.Select(n => $"{n.Property.Title} {n.Written} ({Where(n)})"));
        if (source.Talk.Assume("settings", Codes.Ambiguous, $"Taken for every vessel of this table: {said}.", ["use", "ignore"], [.. lacking.Select(n => n.Property.Title)]) != "use")
            return;
        foreach (var (row, note) in vessels.SelectMany(r => lacking.Select(n => (r, n))).Where(x => Lacks(x.r, x.n.Property, source)))
        {
            row.Facts = row.Facts.SetItem(note.Property.Name, new Fact(note.Property.Name, note.Value, null, null, null, note.Written, source.At(note.Row, null)));
        }
    }

    // The title says one thing for all, the column another for every row: one of them is a slip.
    private static void Contradict(List<SampleRow> vessels, ImmutableArray<Column> columns, TableSource source)
    {
        foreach (var note in source.Layout.Notes.All.Where(n => n.Row > 0 && (n.Property == BatchProperties.InitialConcentration || n.Property == BatchProperties.Volume || n.Property == BatchProperties.ContactTime)))
        {
            if (columns.FirstOrDefault(c => c.Use == ColumnUse.Fact && c.Property == note.Property) is not { } column)
                continue;
            var values = vessels.Select(r => r.Facts.GetValueOrDefault(note.Property.Name)?.Value).OfType<double>().Distinct().ToList();
            if (values is not [var all] || Math.Abs(all - note.Value) <= SameWithin * Math.Abs(all))
                continue;
            var answer = source.Talk.Ask("line-or-column:" + note.Property.Name, Codes.Ambiguous, $"{column.Heading} is {vessels[0].Facts[note.Property.Name].Written} in every row, but line {Ordinal.Text(note.Row)} says {note.Written}. Which holds?", ["column", "line"], column.Heading);
            foreach (var row in vessels)
            {
                row.IsUndecided |= answer is null;
                if (answer == "line")
                    row.Facts = row.Facts.SetItem(note.Property.Name, new Fact(note.Property.Name, note.Value, null, null, null, note.Written, source.At(note.Row, null)));
            }
        }
    }

    private static string Where(NotedSetting note) => note.Row == 0 ? "name of the sheet" : "line " + Ordinal.Text(note.Row);

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
        foreach (var row in vessels.Where(r => !r.Facts.ContainsKey(SampleProperties.Series.Name) && source.Known.GetValueOrDefault(r.Code ?? "")?.Series is null))
            row.Facts = row.Facts.SetItem(SampleProperties.Series.Name, new Fact(SampleProperties.Series.Name, null, null, null, name, name, source.At(source.Layout.Heading?.Number ?? 0, null)));
    }

    /// <summary>The line above a table that names it, or null.</summary>
    internal static string? TitleOf(TableLayout layout)
        => layout.Preamble.LastOrDefault(r => r.Filled == 1) is { } line ? line.Cells.First(c => !c.IsBlank).Text is { Length: <= 60 } title ? title.TrimEnd(':') : null : null;
}
