using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <content>Readings beside concentrations: which are of standards, which are what the instrument made of samples.</content>
internal sealed partial class Columns
{
    private const int FewestStandards = 3;

    // "reading" beside concentrations that only the standards have: the instrument's own signal.
    private void ReadingBesideStandards(Column[] columns)
    {
        var known = Known(columns);
        var far = columns.Where(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.ReportedConcentration && headings[c.Index].Unit is UnitText.Absent && headings[c.Index].Has(HeadingWord.AsRead)
            && !headings[c.Index].Has(HeadingWord.Concentration) && !IsAnswered(c.Index) && known is not null && known.Index != c.Index && IsFarFrom(known, c)).ToList();
        foreach (var column in far)
            columns[column.Index] = Shown(column, "readings of standards that are not their concentrations");
        if (far.Count > 0)
            return;
        if (ReadOfAll(columns) is { } shown)
        {
            columns[shown.Index] = Shown(shown, "a reading of standards and samples, with concentrations for the standards alone");
            return;
        }

        if (columns.Any(c => c.Property?.IsSignal == true && c.Property != SpectrometryProperties.ReportedConcentration) || (known is null && !LabelledStandards(columns)))
            return;
        var bare = columns.Where(c => c.Use == ColumnUse.NotUnderstood && headings[c.Index].HasAny(HeadingWord.Result, HeadingWord.AsRead, HeadingWord.Signal) && IsMostlyNumbers(c)).ToList();
        if (bare.Count == 0 || (known?.Property == SpectrometryProperties.ReportedConcentration && Numbers(known.Index).Count >= Numbers(bare[0].Index).Count && columns.Any(c => c.Use == ColumnUse.Code)))
            return;
        foreach (var column in bare)
            columns[column.Index] = Shown(column, "a reading without unit beside the concentrations of standards");
    }

    // "Start solutions, measured before the powder": what they were made up to, and what was read of them. They are no standards, though they look alike.
    private void StartSolutions(Column[] columns)
    {
        if (!source.IsOfStartSolutions || Array.Find(columns, c => c.Use is ColumnUse.Fact or ColumnUse.Signal && headings[c.Index].Has(HeadingWord.Known) && UnitKinds.Of(headings[c.Index].Unit) == UnitKind.Concentration) is not { } nominal)
            return;
        columns[nominal.Index] = Settle(nominal.Index, headings[nominal.Index], ColumnUse.Fact, BatchProperties.InitialConcentration, "what the start solutions were made up to");
        foreach (var column in columns.Where(c => c.Use == ColumnUse.NotUnderstood && headings[c.Index].HasAny(HeadingWord.Result, HeadingWord.AsRead, HeadingWord.Signal, HeadingWord.Replicate) && IsMostlyNumbers(c)).ToList())
            columns[column.Index] = Settle(column.Index, headings[column.Index], ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, "a reading of a start solution");
    }

    // Counts that rise with what was added, or stand beside a dilution, are of a spectrometer for the metal; light that fades is not diluted.
    private void Counts(Column[] columns)
    {
        var counted = columns.Where(c => c.Use == ColumnUse.Signal && c.Property == FluorescenceProperties.Intensity && !IsAnswered(c.Index) && headings[c.Index].Has(HeadingWord.Counts)).ToList();
        if (counted.Count == 0 || !columns.Any(c => c.Use == ColumnUse.Code))
            return;
        var added = Array.Find(columns, c => c is { Use: ColumnUse.Fact, Property: { } p } && (p == FluorescenceProperties.Added || p == SpectrometryProperties.StandardConcentration || p == BatchProperties.InitialConcentration));
        var rises = added is not null && !columns.Any(c => c.Property == BatchProperties.Mass) && Rises(added, counted[0]);
        if (!rises && !columns.Any(c => c.Property == SpectrometryProperties.Dilution))
            return;
        foreach (var column in counted)
            columns[column.Index] = Shown(column, rises ? "counts that rise with the concentration of standards" : "counts of liquids that were diluted");
        if (rises)
            columns[added!.Index] = Settle(added.Index, headings[added.Index], ColumnUse.Fact, SpectrometryProperties.StandardConcentration, "what the standards hold");
    }

    // 0.11, 0.23, 0.45 for standards of 1, 2 and 4 mg/L.
    private bool IsFarFrom(Column known, Column reading)
    {
        const double near = 0.3;
        var pairs = layout.Body.Select(r => (C: known.Value(r.At(known.Index), source.Mark), S: reading.Value(r.At(reading.Index), source.Mark))).Where(p => p is { C: > 0, S: not null }).ToList();
        return pairs.Count >= FewestStandards && pairs.TrueForAll(p => Math.Abs(p.S!.Value - p.C!.Value) > near * p.C.Value);
    }

    private bool Rises(Column known, Column signal)
    {
        var pairs = layout.Body.Select(r => (C: known.Value(r.At(known.Index), source.Mark), S: signal.Value(r.At(signal.Index), source.Mark))).Where(p => p is { C: not null, S: not null }).OrderBy(p => p.C).ToList();
        return pairs.Count >= FewestStandards && pairs.Zip(pairs.Skip(1)).All(p => p.Second.S >= p.First.S);
    }

    private static Column Shown(Column column, string evidence)
        => new(column.Index, column.Heading, ColumnUse.Signal, SpectrometryProperties.InstrumentSignal, null, null) { Evidence = evidence };

    private bool IsMostlyNumbers(Column column) => !headings[column.Index].Has(HeadingWord.Spread) && Numbers(column.Index).Count * 2 > layout.Body.Length;

    private static Column? Known(Column[] columns)
        => columns.FirstOrDefault(c => c.Property == SpectrometryProperties.ReportedConcentration || c.Property == SpectrometryProperties.StandardConcentration);

    // Three standards or more with their concentrations, and none given for any sample: the one column that was read of all of them is what the instrument showed. Of several, nobody
    // knows which.
    private Column? ReadOfAll(Column[] columns)
    {
        if (Known(columns) is not { } known || columns.Any(c => c.Property == BatchProperties.Mass || c.Property == SpectrometryProperties.Absorbance) || !columns.Any(c => c.Use == ColumnUse.Code))
            return null;
        var rows = layout.Body.Where(r => !r.IsBlank).ToLookup(r => RoleIn(r, columns));
        var samples = rows[null].Concat(rows[SampleRole.Vessel]).ToList();
        if (rows[SampleRole.Standard].Count() < FewestStandards || rows[SampleRole.Standard].Any(r => r.At(known.Index).IsBlank) || samples.Count == 0 || samples.Exists(r => !r.At(known.Index).IsBlank))
            return null;
        return columns.Where(c => !IsAnswered(c.Index) && IsMostlyNumbers(c) && (c.Use == ColumnUse.NotUnderstood || (c.Use == ColumnUse.Signal && c.Property == FluorescenceProperties.Intensity))).ToList() is [var only] ? only : null;
    }

    private static SampleRole? RoleIn(GridRow row, IEnumerable<Column> columns)
    {
        var (kind, code) = (columns.FirstOrDefault(c => c.Use == ColumnUse.Role), columns.FirstOrDefault(c => c.Use == ColumnUse.Code));
        return (kind is null ? null : RoleWords.Read(row.At(kind.Index).Text)) ?? (code is null ? null : RoleWords.Guess(row.At(code.Index).Text));
    }

    private bool LabelledStandards(Column[] columns)
        => Array.Find(columns, c => c.Use == ColumnUse.Code) is { } code && layout.Body.Count(r => RoleWords.Guess(r.At(code.Index).Text) == SampleRole.Standard) >= FewestStandards;

    // Beside absorbances, a concentration is what the standards are known to hold; one given for samples too is what the instrument made of them.
    private Column BesideSignals(Column column, IEnumerable<Column> columns)
    {
        if (columns.Any(c => c is { Use: ColumnUse.Fact, Property: { } p } && p == SpectrometryProperties.StandardConcentration) || IsOfSamples(column, columns))
            return column;
        return column.Become(ColumnUse.Fact, SpectrometryProperties.StandardConcentration, column.Remark);
    }

    private bool IsOfSamples(Column column, IEnumerable<Column> columns)
    {
        var all = layout.Body.Where(r => !r.IsBlank).ToList();
        var samples = all.Where(r => RoleIn(r, columns) is null or SampleRole.Vessel).ToList();
        var isTold = columns.Any(c => c.Use == ColumnUse.Role) || headings[column.Index].HasAny(HeadingWord.AsRead, HeadingWord.Corrected)
            || (columns.Any(c => c.Use == ColumnUse.Code) && AreWorkedOut(column.Index) && samples.Count == all.Count);
        return isTold && samples.Count(r => !r.At(column.Index).IsBlank) * 2 > samples.Count;
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
        var signals = columns.Where(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.InstrumentSignal && !IsAnswered(c.Index)).ToList();
        if (signals.Count == 0 || !columns.Any(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.ReportedConcentration && IsOfSamples(c, columns)))
            return;
        foreach (var signal in signals)
            columns[signal.Index] = signal.Become(ColumnUse.LeftOut, signal.Property, "Not used: the concentrations that the instrument made of it stand beside.");
    }
}
