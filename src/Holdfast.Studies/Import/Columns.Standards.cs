using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <content>Readings beside concentrations: which are of standards, which are what the instrument made of samples.</content>
internal sealed partial class Columns
{
    // "reading" beside concentrations that only the standards have: the instrument's own signal.
    private void ReadingBesideStandards(Column[] columns)
    {
        if (OnlyStandardsAreKnown(columns))
        {
            foreach (var column in columns.Where(c => !IsAnswered(c.Index) && Numbers(c.Index).Count * 2 > layout.Body.Length && !headings[c.Index].Has(HeadingWord.Spread)
                && (c.Use == ColumnUse.NotUnderstood || c is { Use: ColumnUse.Signal } && c.Property == FluorescenceProperties.Intensity)).ToList())
            {
                columns[column.Index] = new Column(column.Index, column.Heading, ColumnUse.Signal, SpectrometryProperties.InstrumentSignal, null, null) { Evidence = "a reading of standards and samples, with concentrations for the standards alone" };
            }
        }

        if (columns.Any(c => c.Property?.IsSignal == true && c.Property != SpectrometryProperties.ReportedConcentration) || (columns.FirstOrDefault(c => c.Property == SpectrometryProperties.ReportedConcentration || c.Property == SpectrometryProperties.StandardConcentration) is null && !LabelledStandards(columns)))
            return;
        var known = columns.FirstOrDefault(c => c.Property == SpectrometryProperties.ReportedConcentration || c.Property == SpectrometryProperties.StandardConcentration);
        var bare = columns.Where(c => c.Use == ColumnUse.NotUnderstood && headings[c.Index].HasAny(HeadingWord.Result, HeadingWord.AsRead, HeadingWord.Signal) && !headings[c.Index].Has(HeadingWord.Spread) && Numbers(c.Index).Count * 2 > layout.Body.Length).ToList();
        if (bare.Count == 0 || (known?.Property == SpectrometryProperties.ReportedConcentration && Numbers(known.Index).Count >= Numbers(bare[0].Index).Count && columns.Any(c => c.Use == ColumnUse.Code)))
            return;
        foreach (var column in bare)
            columns[column.Index] = new Column(column.Index, column.Heading, ColumnUse.Signal, SpectrometryProperties.InstrumentSignal, null, null) { Evidence = "a reading without unit beside the concentrations of standards" };
    }

    // Three standards or more with their concentrations, and none given for any sample: whatever else was read of all of them is what the instrument showed.
    private bool OnlyStandardsAreKnown(Column[] columns)
    {
        const int fewest = 3;
        var known = columns.FirstOrDefault(c => c.Property == SpectrometryProperties.ReportedConcentration || c.Property == SpectrometryProperties.StandardConcentration);
        if (known is null || columns.FirstOrDefault(c => c.Use == ColumnUse.Code) is not { } code || columns.Any(c => c.Property == BatchProperties.Mass || c.Property == SpectrometryProperties.Absorbance))
            return false;
        var kind = columns.FirstOrDefault(c => c.Use == ColumnUse.Role);
        var rows = layout.Body.Where(r => !r.IsBlank).ToLookup(r => (kind is null ? null : RoleWords.Read(r.At(kind.Index).Text)) ?? RoleWords.Guess(r.At(code.Index).Text));
        var samples = rows[null].Concat(rows[SampleRole.Vessel]).ToList();
        return rows[SampleRole.Standard].Count() >= fewest && rows[SampleRole.Standard].All(r => !r.At(known.Index).IsBlank) && samples.Count > 0 && samples.TrueForAll(r => r.At(known.Index).IsBlank);
    }

    private bool LabelledStandards(Column[] columns)
        => Array.Find(columns, c => c.Use == ColumnUse.Code) is { } code && layout.Body.Count(r => RoleWords.Guess(r.At(code.Index).Text) == SampleRole.Standard) >= 3;

    // Beside absorbances, a concentration is what the standards are known to hold; one given for samples too is what the instrument made of them.
    private Column BesideSignals(Column column, IEnumerable<Column> columns)
    {
        if (columns.Any(c => c is { Use: ColumnUse.Fact, Property: { } p } && p == SpectrometryProperties.StandardConcentration) || IsOfSamples(column, columns))
            return column;
        return column.Become(ColumnUse.Fact, SpectrometryProperties.StandardConcentration, column.Remark);
    }

    private bool IsOfSamples(Column column, IEnumerable<Column> columns)
    {
        var (kind, code) = (columns.FirstOrDefault(c => c.Use == ColumnUse.Role), columns.FirstOrDefault(c => c.Use == ColumnUse.Code));
        var samples = layout.Body.Where(r => !r.IsBlank && ((kind is null ? null : RoleWords.Read(r.At(kind.Index).Text)) ?? (code is null ? null : RoleWords.Guess(r.At(code.Index).Text))) is null or SampleRole.Vessel).ToList();
        return (kind is not null || headings[column.Index].HasAny(HeadingWord.AsRead, HeadingWord.Corrected) || (code is not null && AreWorkedOut(column.Index) && samples.Count == layout.Body.Count(r => !r.IsBlank))) && samples.Count > 0 && samples.Count(r => !r.At(column.Index).IsBlank) * 2 > samples.Count;
    }

    // Standards hold round concentrations; what an instrument works out for samples is hardly ever round.
    private bool AreWorkedOut(int index)
    {
        const int roundDigits = 2;
        var figures = layout.Body.Select(r => r.At(index).Text.Trim()).Where(t => t.Length > 0).Select(t => new string([.. t.Where(char.IsAsciiDigit)]).Trim('0').Length).ToList();
        return figures.Count > 0 && figures.Count(f => f > roundDigits) * 2 > figures.Count;
    }

    // What the instrument made of its signal is taken as its result; the signal alone would need the standards again.
    private void SignalBesideResults(Column[] columns)
    {
        if (!columns.Any(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.ReportedConcentration && IsOfSamples(c, columns)))
            return;
        foreach (var signal in columns.Where(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.InstrumentSignal && !IsAnswered(c.Index)).ToList())
            columns[signal.Index] = signal.Become(ColumnUse.LeftOut, signal.Property, "Not used: the concentrations that the instrument made of it stand beside.");
    }
}
