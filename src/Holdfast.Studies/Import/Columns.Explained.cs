using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.History;
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
        if (start is null && !(traits.NotesConcentration && columns.Any(c => c.Use == ColumnUse.Code)))
            return;
        if (columns.Any(c => c.Use is ColumnUse.Signal || c.Property == BatchProperties.ReportedRemaining || c.Property == BatchProperties.ReportedUptake || (c.Property == BatchProperties.ReportedRemoval && headings[c.Index].Unit is not UnitText.Absent)))
            return;
        // Without a start concentration to stay below, readings are told from running numbers by their decimals.
        var most = start is null ? double.PositiveInfinity : Numbers(start.Index).DefaultIfEmpty(0).Max();
        var repeats = columns.Where(c => c.Use is ColumnUse.NotUnderstood or ColumnUse.Position && headings[c.Index].Unit is UnitText.Absent && IsNumbered(headings[c.Index].Name)
                && Numbers(c.Index) is { Count: > 0 } values && values.Count * 2 > layout.Body.Length && values.TrueForAll(v => v <= most * 1.1) && (start is null ? values.Exists(v => v != Math.Round(v)) : values.TrueForAll(v => v >= 0)))
            .GroupBy(c => HeadingWords.Unnumbered(headings[c.Index].Name).Trim(), StringComparer.OrdinalIgnoreCase).Where(g => g.Count() >= FewestRepeats).MaxBy(g => g.Count());
        if (repeats is null)
            return;
        foreach (var column in repeats)
            columns[column.Index] = Settle(column.Index, headings[column.Index], ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, start is null ? "repeated readings, in the unit that a line states" : "repeated readings of what is left, below the start concentration");
        foreach (var mean in columns.Where(c => c.Use == ColumnUse.NotUnderstood && IsMean(headings[c.Index])).ToList())
            columns[mean.Index] = mean.Become(ColumnUse.LeftOut, mean.Property, "A mean of columns that are read themselves.");
    }

    // "all concentrations in mmol/L" above headings that say mg/L: one of them is a slip.
    private void UnitOfTheTitle(Column[] columns)
    {
        if (layout.Notes.UnitFor(UnitKind.Concentration) is not { Row: > 0 } noted)
            return;
        var concerned = columns.Where(c => c.Use is ColumnUse.Signal or ColumnUse.Fact && c is { Unit: not null, Property: { } p } && (p == SpectrometryProperties.ReportedConcentration || p == BatchProperties.InitialConcentration)
            && UnitKinds.Of(headings[c.Index].Unit) == UnitKind.Concentration && talk.Answers.To("unit:" + headings[c.Index].Name) is null).ToList();
        if (concerned.Count == 0 || concerned.Exists(c => c.Unit!.HasSameScale(noted.Unit)) || !concerned.TrueForAll(c => c.Unit!.HasSameScale(concerned[0].Unit!)))
            return;
        var own = concerned[0].Unit!;
        var holds = talk.Ask("unit-of-title", Codes.UnitMissing, $"{string.Join(" and ", concerned.Select(c => c.Heading))}: the headings say {own.Plain}, line {Ordinal.Text(noted.Row)} says {noted.Unit.Plain}. Which holds?", [own.Plain, noted.Unit.Plain], [.. concerned.Select(c => c.Heading)]);
        foreach (var column in concerned.Where(_ => holds != own.Plain))
        {
            columns[column.Index] = holds is null ? column.Become(ColumnUse.WithoutUnit, column.Property, "Its unit must be chosen.")
                : Settle(column.Index, headings[column.Index] with { Unit = new UnitText.Known(noted.Unit) }, column.Use, column.Property!, "its heading, in the unit of the title");
        }
    }

    // "Result | DF | Unit", with the same unit all the way down: that of the result.
    private (int Result, UnitText Unit)? UnitOfResults()
    {
        var unit = headings.FirstOrDefault(h => h.Tokens is [var only] && Lexicon.OfToken(only).Contains(HeadingWord.Unit));
        var result = headings.Where(h => h.Unit is UnitText.Absent && h.HasAny(HeadingWord.Result, HeadingWord.AsRead) && !h.HasAny(HeadingWord.Spread, HeadingWord.Unit)).ToList();
        if (unit is null || result is not [var one])
            return null;
        var written = layout.Body.Select(r => r.At(headings.IndexOf(unit)).Text).Where(t => t.Length > 0).Distinct(StringComparer.Ordinal).ToList();
        return written is [var same] && HeadingReading.UnitOf(same) is (UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) and var read ? (headings.IndexOf(one), read) : null;
    }

    // "A brute" beside "reagent blank: A = 0.031, to be subtracted".
    private void BlankToSubtract(Column[] columns)
    {
        if (columns.FirstOrDefault(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.Absorbance && headings[c.Index].Tokens.Any(ColumnGuess.Raw.Contains)) is not { } raw
            || layout.Notes.Blank is not var (value, line))
            return;
        var answer = talk.Ask("blank", Codes.Ambiguous, $"{raw.Heading}: is the blank, {value.ToString("0.#####", CultureInfo.InvariantCulture)}, still in it and to be subtracted, as “{line}” says?", ["subtract", "as-it-is"], raw.Heading);
        columns[raw.Index] = answer is null ? raw.Become(ColumnUse.WithoutUnit, raw.Property, "Whether the blank is in it must be said.")
            : answer == "subtract" ? new Column(raw.Index, raw.Heading, raw.Use, raw.Property, raw.Unit, "The blank is subtracted, as you said.") { Bridge = raw.Bridge, Less = value, Evidence = raw.Evidence } : raw;
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

    // Two columns of grams, one a little above the other in every row: the boat without and with the powder, whatever they are called.
    private void TwoWeighings(Column[] columns)
    {
        if (columns.Where(c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.Mass && !IsAnswered(c.Index)).ToList() is not [var one, var other] || one.Unit is not { Plain: "g" } || other.Unit is not { Plain: "g" }
            || headings[one.Index].HasAny(HeadingWord.Known, HeadingWord.Planned) || headings[other.Index].HasAny(HeadingWord.Known, HeadingWord.Planned))
            return;
        var pairs = layout.Body.Select(r => (One: one.Value(r.At(one.Index), source.Mark), Other: other.Value(r.At(other.Index), source.Mark))).Where(p => p is { One: > 0, Other: > 0 }).ToList();
        if (pairs.Count < FewestWeighings)
            return;
        var (light, heavy) = pairs[0].One < pairs[0].Other ? (one, other) : (other, one);
        if (pairs.Select(p => Math.Min(p.One!.Value, p.Other!.Value)).Distinct().Count() < 2 || !pairs.TrueForAll(p => light == one ? IsLittleBelow(p.One!.Value, p.Other!.Value) : IsLittleBelow(p.Other!.Value, p.One!.Value))
            || talk.Assume("two-weighings", Codes.Ambiguous, $"The mass of powder is {heavy.Heading} less {light.Heading}: two weighings of the same thing.", ["difference", "choose"], heavy.Heading) != "difference")
            return;
        columns[light.Index] = light.Become(ColumnUse.WeighedEmpty, BatchProperties.Mass, null);
        columns[heavy.Index] = heavy.Become(ColumnUse.WeighedFull, BatchProperties.Mass, null);
    }

    private static bool IsLittleBelow(double light, double heavy) => light < heavy && heavy - light < LargestShareOfPowder * heavy;

    // "suspension added (mL)" under "kept as a suspension, 10 mg/mL": the mass is their product.
    private Column? Suspended(int index, HeadingReading h)
    {
        if (!h.Has(HeadingWord.Suspension) || UnitKinds.Of(h.Unit) != UnitKind.Volume || layout.Notes.Suspension is not var (strength, row) || BridgeFor(h, BatchProperties.Volume)?.Convert(1) is not { } millilitres)
            return null;
        var of = string.Create(CultureInfo.InvariantCulture, $"{h.Name} times {strength:0.####} mg/mL, as line {row} says");
        if (talk.Assume("suspension", Codes.Ambiguous, $"The mass of powder is {of}.", ["use", "ignore"], h.Name) != "use")
            return null;
        return new Column(index, h.Text, ColumnUse.Fact, BatchProperties.Mass, ((UnitText.Known)h.Unit).Unit, $"Mass: {of}.") { Scale = strength * millilitres, IsSuspension = true, Evidence = "a volume of suspension" };
    }

    /// <summary>True for "lab no | bottle": two names for each sample, and nothing else; a report may go by the other.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="headings">Its headings.</param>
    /// <param name="code">Place of the column that names the rows.</param>
    public static bool IsListOfNames(TableLayout layout, ImmutableArray<HeadingReading> headings, int code)
    {
        const int fewest = 2, longest = 20;
        if (headings.Length != 2 || layout.Heading is null || headings[1 - code] is not { Unit: UnitText.Absent } h || !h.HasAny(HeadingWord.Sample, HeadingWord.Position) || h.HasAny(HeadingWord.Replicate, HeadingWord.Role))
            return false;
        var names = layout.Body.Where(r => !r.IsBlank).Select(r => r.At(1 - code).Text).ToList();
        // 1, 2, 3 only counts the rows.
        return names.Count >= fewest && names.TrueForAll(n => n.Length is > 0 and <= longest && n.Any(char.IsDigit) && !n.Contains('.', StringComparison.Ordinal) && !n.Contains(',', StringComparison.Ordinal))
            && names.Distinct(StringComparer.OrdinalIgnoreCase).Count() == names.Count && !names.Select((n, i) => n == Ordinal.Text(i + 1)).All(same => same);
    }

    // "C0 − Ce" under "gone" or "removed" without a unit is no share, though its numbers may pass for per cent.
    private void GoneOfALitre(Column[] columns)
    {
        const int fewest = 3;
        const double ofTheStart = 0.02;
        var start = Array.Find(columns, c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.InitialConcentration);
        var read = columns.Where(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.ReportedConcentration).ToList();
        foreach (var column in columns.Where(c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.ReportedRemoval && headings[c.Index].Unit is UnitText.Absent && !IsAnswered(c.Index)).ToList())
        {
            var rows = start is null ? [] : layout.Body.Select(r => (Gone: (CellText.Read(r.At(column.Index).Text, source.Mark) as CellText.Number)?.Value, From: start.Value(r.At(start.Index), source.Mark), Left: read.Select(c => c.Value(r.At(c.Index), source.Mark)).Average()))
                .Where(r => r is { Gone: not null, From: > 0, Left: not null }).ToList();
            if (rows.Count >= fewest && rows.TrueForAll(r => Math.Abs(r.Gone!.Value - (r.From!.Value - r.Left!.Value)) <= ofTheStart * r.From.Value))
                columns[column.Index] = column.Become(ColumnUse.LeftOut, null, "Not used: worked out, what was taken out of a litre.");
        }
    }

    // "R1", "Rep 2", "reading3", "1".
    private static bool IsNumbered(string name) => name.Length > 0 && char.IsAsciiDigit(name[^1]) && HeadingWords.Unnumbered(name) is var stem && stem.Length <= 12 && name.Length - stem.Length <= 2 && !stem.Any(char.IsDigit);
}
