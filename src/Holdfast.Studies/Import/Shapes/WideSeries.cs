using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Tables of one setting against another: times down the side, "C0 = 10 mg/L", "C0 = 25 mg/L" along the top, results in the body.</summary>
internal static class WideSeries
{
    private const int FewestSeries = 2, LongestName = 4;

    /// <summary>The table with one row a result; null where it is none.</summary>
    /// <param name="layout">The table.</param>
    public static TableLayout? Turn(TableLayout layout) => WithSettingAbove(layout) ?? WithSettingsAsHeadings(layout) ?? WithNamesAsHeadings(layout);

    // "Ct (mg/L) | Time (min)" over "Material | 5 | 10 | 20": the setting's name on one line, its values on the next.
    private static TableLayout? WithSettingAbove(TableLayout layout)
    {
        if (layout.Heading is not { } heading || layout.Units is not null || layout.Body.Where(r => !r.IsBlank).ToList() is not [var values, _, ..] rows)
            return null;
        var place = heading.Cells.Length - 1;
        while (place > 0 && heading.At(place).IsBlank)
            place--;
        if (place < 1 || Enumerable.Range(1, place - 1).Any(i => !heading.At(i).IsBlank) || TableLayout.IsNumeric(values.At(0)) || Along(HeadingReading.Of(heading.At(place).Text)) is not { } along)
            return null;
        var places = Enumerable.Range(place, Math.Max(0, values.Cells.Length - place)).Where(i => TableLayout.IsNumeric(values.At(i))).ToList();
        var others = Enumerable.Range(place, Math.Max(0, values.Cells.Length - place)).Where(i => !values.At(i).IsBlank && !places.Contains(i));
        if (places.Count < FewestSeries || others.Any(i => !Footer.IsSummary(values.At(i).Text)) || (Result(heading.At(0)) ?? Body(layout)) is not { } result)
            return null;
        var name = HeadingReading.Of(heading.At(place).Text) is { Name.Length: > 0 } of ? of.Name : along.Title;
        var side = values.At(0).IsBlank ? "Series" : values.At(0).Text;
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(heading.Number, [new Cell("Sample"), new Cell(side), heading.At(place), new Cell(result)]), null,
            [.. rows.Skip(1).Where(r => !r.At(0).IsBlank && !Footer.IsSummary(r.At(0).Text)).SelectMany(r => places.Where(i => r.At(i).Text.Any(char.IsLetterOrDigit))
                .Select(i => new GridRow(r.Number, [new Cell($"{r.At(0).Text} {(name.Length <= LongestName ? name + " " : "")}{values.At(i).Text}"), r.At(0), values.At(i), r.At(i)])))])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a result: {side} down, {along.Title} along",
        };
    }

    private static Property? Along(HeadingReading top)
        => SettingDown(top) is { } along && (along == BatchProperties.InitialConcentration || along == BatchProperties.ContactTime || along == BatchProperties.StartPh || along == BatchProperties.Temperature || along == BatchProperties.Dose || along == BatchProperties.Mass) ? along : null;

    // "Média de Ct (mg/L)" in the corner says what the body holds.
    private static string? Result(Cell corner)
    {
        if (corner.IsBlank)
            return null;
        var h = HeadingReading.Of(corner.Text);
        return h.Unit is Amounts.UnitText.Known { Unit: var unit } known && UnitKinds.Of(known) switch { UnitKind.Concentration when !h.Has(HeadingWord.Start) => $"Ce ({unit.Plain})", UnitKind.Share when h.Has(HeadingWord.Removal) => "Removal (%)", UnitKind.Loading => $"q ({unit.Plain})", _ => null } is { } result ? result : null;
    }

    private static TableLayout? WithSettingsAsHeadings(TableLayout layout)
    {
        if (layout.Heading is not { } heading || layout.Headings.Length < FewestSeries + 1)
            return null;
        var side = Columns.WithUnitsInCells(layout)[0];
        if ((SettingDown(side) ?? (heading.At(0).IsBlank ? OfUnit(side) : null)) is not { } down)
            return null;
        var tops = layout.Headings.Skip(1).Select((h, i) => (Place: i + 1, Setting: Setting(h))).Where(t => !heading.At(t.Place).IsBlank).ToList();
        if (tops.Count < FewestSeries || tops.Exists(t => t.Setting is null) || tops.Select(t => t.Setting!.Property).Distinct().Count() != 1 || tops[0].Setting!.Property == down)
            return null;
        if (Body(layout) is not { } result)
            return null;
        var along = tops[0].Setting!.Property;
        var rows = layout.Body.Where(r => !r.IsBlank).SelectMany(r => tops.Where(t => !r.At(t.Place).IsBlank).Select(t => new GridRow(r.Number,
            [new Cell($"{(heading.At(0).IsBlank ? "" : side.Name + " ")}{r.At(0).Text} at {layout.Headings[t.Place]}"), r.At(0), new Cell(t.Setting!.Written), r.At(t.Place), new Cell(CellParts.Split(layout.Headings[t.Place]) is null ? layout.Headings[t.Place] : "at " + layout.Headings[t.Place])])));
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(heading.Number,
            [new Cell("Sample"), new Cell(heading.At(0).IsBlank ? down.Headings[0] : layout.Units is null ? layout.Headings[0] : $"{layout.Headings[0]} ({layout.Units.At(0).Text})"), new Cell(along.Headings[0]), new Cell(result), new Cell("Series")]), null, [.. rows])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a result: {down.Title} down, {along.Title} along",
        };
    }

    // "time | raw | washed | fired" under "Ni left (mg/L)": one powder a column, by names that mean nothing else.
    private static TableLayout? WithNamesAsHeadings(TableLayout layout)
    {
        if (layout.Heading is not { } heading || layout.Units is not null || layout.Headings.Length < FewestSeries + 1 || SettingDown(Columns.WithUnitsInCells(layout)[0]) is not { } down)
            return null;
        var names = Enumerable.Range(1, layout.Headings.Length - 1).Where(i => !heading.At(i).IsBlank).ToList();
        var rows = layout.Body.Where(r => !r.IsBlank).ToList();
        if (names.Count < FewestSeries || rows.Count == 0 || !names.TrueForAll(i => IsNameAlone(heading.At(i).Text) && rows.TrueForAll(r => r.At(i).IsBlank || TableLayout.IsNumberLike(r.At(i)))) || Body(layout) is not { } result)
            return null;
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(heading.Number, [new Cell("Sample"), heading.At(0), new Cell(result), new Cell("Series")]), null,
            [.. rows.SelectMany(r => names.Where(i => !r.At(i).IsBlank).Select(i => new GridRow(r.Number, [new Cell($"{heading.At(i).Text} {r.At(0).Text}"), r.At(0), r.At(i), heading.At(i)])))])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a result: {down.Title} down, {string.Join(", ", names.Select(i => heading.At(i).Text))} along",
        };
    }

    private static bool IsNameAlone(string text)
        => HeadingReading.Of(text) is { Unit: Amounts.UnitText.Absent } h && HeadingWords.Properties(h.Key).IsEmpty && ColumnGuess.Of(h, default) is null or { Property: null, Use: ColumnUse.Position };

    // An empty corner over "10 min", "30 min": the unit says what is varied down the side.
    private static Property? OfUnit(HeadingReading side) => UnitKinds.Of(side.Unit) switch { UnitKind.Time => BatchProperties.ContactTime, UnitKind.Temperature => BatchProperties.Temperature, _ => null };

    /// <summary>What is varied down the side, where a heading names a number with its unit; null elsewhere.</summary>
    /// <param name="side">Heading of the first column.</param>
    public static Property? SettingDown(HeadingReading side)
        => ColumnGuess.Of(side, default) is { Use: ColumnUse.Fact, Property: { } down } && down.Holds != Holds.Words && (UnitKinds.Of(side.Unit) != UnitKind.None || down.Unit.Length == 0) ? down : null;

    private static NotedSetting? Setting(string heading)
    {
        var written = HeadingReading.Of(heading);
        var notes = Notes.Of([new GridRow(0, [new Cell(CellParts.Split(heading) is not null ? "C0 = " + heading : heading)])]);
        return notes.All is [var only] && heading.Any(char.IsDigit) && written.Name.Length > 0 && (only.Property == BatchProperties.InitialConcentration || only.Property == BatchProperties.StartPh || only.Property == BatchProperties.Temperature || only.Property == BatchProperties.Dose || only.Property == BatchProperties.Mass || only.Property == BatchProperties.ContactTime)
            ? only : null;
    }

    // What stands in the body, a line above says: "body of the table = Co left in mg/L", "removal in %".
    private static string? Body(TableLayout layout)
    {
        foreach (var clause in layout.Preamble.SelectMany(r => r.Cells).Where(c => !c.IsBlank).SelectMany(c => c.Text.Split("; ")))
        {
            var words = Lexicon.Of(clause);
            if (words.Contains(HeadingWord.Removal) && (clause.Contains('%', StringComparison.Ordinal) || words.Contains(HeadingWord.Percent)))
                return "Removal (%)";
            if (words.Contains(HeadingWord.End) && Notes.Of([new GridRow(0, [new Cell(clause)])]).UnitFor(UnitKind.Concentration) is { } unit)
                return $"Ce ({unit.Unit.Plain})";
            // "nickel left in the liquid, mg/L (all ours)": a unit behind words, and no amount.
            var said = clause.Split([' ', ',', '(', ')', '[', ']'], StringSplitOptions.RemoveEmptyEntries);
            var unitAt = Array.FindIndex(said, w => HeadingReading.UnitOf(w) is Amounts.UnitText.Known known && UnitKinds.Of(known) == UnitKind.Concentration);
            if (words.Contains(HeadingWord.End) && unitAt > 0 && !char.IsDigit(said[unitAt - 1][^1]) && HeadingReading.UnitOf(said[unitAt]) is Amounts.UnitText.Known { Unit: var stated })
                return $"Ce ({stated.Plain})";
        }

        return null;
    }
}
