using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Columns that only the rest of the sheet explains: "R1, R2, R3", readings of one liquid; "suspension added (mL)", powder by its volume.</summary>
internal sealed partial class Columns
{
    private const int FewestRepeats = 2;

    private void RepeatedReadings(Column[] columns)
    {
        var start = columns.FirstOrDefault(c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.InitialConcentration);
        if (start is null || columns.Any(c => c.Use is ColumnUse.Signal || c.Property == BatchProperties.ReportedRemoval || c.Property == BatchProperties.ReportedRemaining || c.Property == BatchProperties.ReportedUptake))
            return;
        var most = Numbers(start.Index).DefaultIfEmpty(0).Max();
        var repeats = columns.Where(c => c.Use is ColumnUse.NotUnderstood or ColumnUse.Position && headings[c.Index].Unit is Amounts.UnitText.Absent && IsNumbered(headings[c.Index].Name)
                && Numbers(c.Index) is { Count: > 0 } values && values.Count * 2 > layout.Body.Length && values.TrueForAll(v => v >= 0 && v <= most * 1.1))
            .GroupBy(c => HeadingWords.Unnumbered(headings[c.Index].Name).Trim(), StringComparer.OrdinalIgnoreCase).Where(g => g.Count() >= FewestRepeats).MaxBy(g => g.Count());
        if (repeats is null)
            return;
        foreach (var column in repeats)
            columns[column.Index] = Settle(column.Index, headings[column.Index], ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "repeated readings of what is left, below the start concentration");
    }

    // One volume alone says nothing of a dilution: what is taken may be what the vessel holds.
    private void OneVolumeOfTwo(Column[] columns)
    {
        if (columns.Where(c => c.Use is ColumnUse.DilutedFrom or ColumnUse.DilutedTo && !IsAnswered(c.Index)).ToList() is not [var alone])
            return;
        columns[alone.Index] = columns.Any(c => c.Property == BatchProperties.Volume)
            ? alone.Become(ColumnUse.LeftOut, null, "Not used: one volume of a dilution, the other is not given.")
            : Take(alone.Index, headings[alone.Index], ColumnUse.Fact, BatchProperties.Volume, "a volume");
    }

    // "suspension added (mL)" under "kept as a suspension, 10 mg/mL": the mass is their product.
    private Column? Suspended(int index, HeadingReading h)
    {
        if (!h.Has(HeadingWord.Suspension) || UnitKinds.Of(h.Unit) != UnitKind.Volume || layout.Notes.Suspension is not var (strength, row) || BridgeFor(h, BatchProperties.Volume)?.Convert(1) is not { } millilitres)
            return null;
        var of = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{h.Name} times {strength:0.####} mg/mL, as line {row} says");
        if (talk.Assume("suspension", Codes.Ambiguous, $"The mass of powder is {of}.", ["use", "ignore"], h.Name) != "use")
            return null;
        return new Column(index, h.Text, ColumnUse.Fact, BatchProperties.Mass, ((Amounts.UnitText.Known)h.Unit).Unit, $"Mass: {of}.") { Scale = strength * millilitres, Evidence = "a volume of suspension" };
    }

    // "R1", "Rep 2", "reading3", "1".
    private static bool IsNumbered(string name) => name.Length > 0 && char.IsAsciiDigit(name[^1]) && HeadingWords.Unnumbered(name) is var stem && stem.Length <= 12 && name.Length - stem.Length <= 2 && !stem.Any(char.IsDigit);
}
