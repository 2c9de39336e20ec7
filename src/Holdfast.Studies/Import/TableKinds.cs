using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Tells what a table is from its headings.</summary>
internal static class TableKinds
{
    private static readonly ImmutableArray<Property> Results =
        [SpectrometryProperties.ReportedConcentration, SpectrometryProperties.Absorbance, BatchProperties.ReportedRemoval, BatchProperties.ReportedRemaining, BatchProperties.ReportedUptake];

    /// <summary>What it is.</summary>
    /// <param name="layout">The table.</param>
    public static TableKind Of(TableLayout layout)
    {
        var keys = layout.Headings.Select(h => HeadingWords.Key(Header.Read(h).Name)).ToList();
        bool Has(IReadOnlySet<string> words) => keys.Any(words.Contains);
        if (Has(HeadingWords.Margin) && (Has(HeadingWords.Low) || Has(HeadingWords.High)))
            return TableKind.Margins;
        if (Has(HeadingWords.Apparatus) && Has(HeadingWords.Serves))
            return TableKind.Apparatus;
        if (Has(HeadingWords.Rule) || Has(HeadingWords.Claim))
            return TableKind.Claims;
        if (SpectraTable.Is(layout))
            return TableKind.Spectra;
        if (SettingsOfSheets.IsList(layout))
            return TableKind.Unknown;
        if (layout.Heading is not null && layout.Body.Length > 0)
        {
            var headings = Columns.WithUnitsInCells(layout);
            var code = CodeColumns.Of(layout, headings);
            var meant = headings.Select((h, i) => i == code ? null : Meant(h)).OfType<Property>().Distinct().ToList();
            if (code >= 0 && meant.Exists(p => p.IsSignal))
                return TableKind.Readings;
            if (code >= 0 && meant.Exists(p => p.Holds == Holds.Number) && layout.Body.Any(r => r.Cells.Any(TableLayout.IsNumberLike)))
                return TableKind.Samples;
            // Known concentrations beside readings without a unit: standards and samples of one run, whatever the instrument showed.
            if (code >= 0 && headings.Any(h => h.HasAny(HeadingWord.Known, HeadingWord.Standard) && h.Has(HeadingWord.Concentration)) && headings.Any(h => h.Unit is UnitText.Absent && h.HasAny(HeadingWord.AsRead, HeadingWord.Signal)))
                return TableKind.Readings;
            // "sample" by name beside a known heading is a list of samples, though nothing is measured yet.
            if (code >= 0 && Properties.SampleProperties.Code.Headings.Contains(headings[code].Key) && keys.Where((_, i) => i != code).Any(k => !HeadingWords.Properties(k).IsEmpty))
                return TableKind.Samples;
            if (code >= 0 && Columns.IsListOfNames(layout, headings, code))
                return TableKind.Samples;
            // Without codes: a table of standards, or vessels that are named by their rows.
            if (code < 0 && meant.Contains(SpectrometryProperties.Absorbance) && meant.Exists(p => p == SpectrometryProperties.StandardConcentration || p == SpectrometryProperties.ReportedConcentration))
                return TableKind.Readings;
            if (code < 0 && meant.Exists(Results.Contains) && meant.Count >= 2 && !IsBarePoints(headings))
                return meant.Exists(p => p.IsSignal) ? TableKind.Readings : TableKind.Samples;
        }

        return PointsColumns.Are(layout) ? TableKind.Points : TableKind.Unknown;
    }

    /// <summary>True for codes beside a concentration that is headed by the element's symbol alone: "U (mg/L)", which is a word elsewhere.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="analyte">The study's element, or null.</param>
    public static bool IsReadOf(TableLayout layout, string? analyte)
        => analyte is not null && layout.Heading is not null && layout.Body.Length > 0 && Columns.WithUnitsInCells(layout) is var headings && CodeColumns.Of(layout, headings) >= 0
            && headings.Any(h => UnitKinds.Of(h.Unit) == UnitKind.Concentration && h.Name.Trim() == analyte);

    /// <summary>True for what a pH meter wrote: codes and pH, and nothing of how the vessels were made up.</summary>
    /// <param name="layout">The table.</param>
    public static bool IsLogOfPh(TableLayout layout)
    {
        // "Datum; Zeit" is when the meter was read.
        var meant = Columns.ReadHeadings(layout).Where(h => UnitKinds.Of(h.Unit) == UnitKind.Time || !h.Has(HeadingWord.Time)).Select(Meant).OfType<Property>().ToList();
        return meant.Exists(p => p == BatchProperties.StartPh || p == BatchProperties.EndPh)
            && !meant.Exists(p => p == BatchProperties.Mass || p == BatchProperties.Volume || p == BatchProperties.Dose || p == BatchProperties.InitialConcentration || p == BatchProperties.ContactTime || p.IsSignal);
    }

    /// <summary>The property that a heading means by itself, or null.</summary>
    /// <param name="h">The heading.</param>
    internal static Property? Meant(HeadingReading h)
    {
        var listed = HeadingWords.Properties(h.Key).Concat(HeadingWords.Properties(HeadingWords.Unnumbered(h.Key)).Where(p => p.IsSignal)).FirstOrDefault();
        var guess = ColumnGuess.Of(h, new(false, true, true, null))?.Property;
        // "cu (mg/L)" in small letters: the study will say whether that is its element.
        if (listed is null && guess is null && UnitKinds.Of(h.Unit) == UnitKind.Concentration && h.Tokens is [{ Length: 2 } symbol] && Composition.ElementNames.SymbolOf(char.ToUpperInvariant(symbol[0]) + symbol[1..]) is not null)
            return SpectrometryProperties.ReportedConcentration;
        // "U 367 / mg/L": a symbol of one letter counts where a line of its spectrum stands behind it.
        if (listed is null && guess is null && UnitKinds.Of(h.Unit) == UnitKind.Concentration && h.Name.Split(' ') is [{ Length: 1 } letter, var line] && line.All(c => char.IsDigit(c) || c is '.' or ',') && Composition.ElementNames.SymbolOf(letter) is not null)
            return SpectrometryProperties.ReportedConcentration;
        if (listed is null || h.Unit is UnitText.Absent)
            return listed ?? guess;
        var fits = listed.Unit.Length == 0 ? listed.Holds == Holds.Number : UnitKinds.Of(h.Unit) == UnitKinds.Of(new UnitText.Known(Unit.Parse(listed.Unit)));
        return fits ? listed : guess;
    }

    // "t,q" or "x,y": symbols alone, for a fit without a study.
    private static bool IsBarePoints(ImmutableArray<HeadingReading> headings) => headings.Length == 2 && headings.All(h => h.Unit is UnitText.Absent);
}
