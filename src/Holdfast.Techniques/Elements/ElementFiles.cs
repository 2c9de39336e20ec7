using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>Tables of elements: mass and atomic percent by X-rays, loadings of digests, percentages by combustion; a row an element or a column an element.</summary>
public sealed class ElementFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "elements";

    /// <summary>Column of the place that was measured: a field, spot or digest.</summary>
    internal const string Spot = "spot";

    /// <summary>Column of element symbols.</summary>
    internal const string Symbol = "element";

    /// <summary>Column of amounts by mass.</summary>
    internal const string Mass = "mass";

    /// <summary>Column of amounts by atoms.</summary>
    internal const string Atomic = "atomic";

    /// <summary>Setting: the headings of mass and atoms are exchanged, as answered.</summary>
    internal const string Labels = "labels";

    /// <summary>Setting: which column counts where two contradict each other, as answered.</summary>
    internal const string Uses = "uses";

    private const string Exchanged = "exchanged";
    private const string AsLabelled = "as-labelled";

    // Parts in a billion of the whole: beyond it no unit makes sense of a number.
    private const double MostOfAnything = 1e9;

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "composition by elements";

    /// <inheritdoc/>
    public string Reads => "tables of elements: mass or atomic percent by X-rays, oxides, dissolved portions with their blank, mg/g, combustion; as CSV, text or XLSX";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        if (DigestTable.Of(grid) is { } digests)
            return Recognition.Certain(digests.Evidence);
        var table = IElementTable.In(grid);
        return table is null ? Recognition.None
            : table.IsCertain ? Recognition.Certain(table.Evidence)
            : Recognition.Possible(table.Evidence);
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (DigestTable.Of(source.Grid) is { } digests)
            return DigestReading.Of(source, digests);
        var table = IElementTable.In(source.Grid)!;
        var evidence = table.Marks();
        var mark = evidence.Settle(source.Talk);
        var kind = table.Kind ?? KindAsked(source, table);
        var lines = mark is null ? [] : Possible(source, table.Lines(mark.Value));
        var powder = FileWords.Powder(source with { Grid = source.Grid with { Sheet = IsPlace(source.Grid.Sheet) ? null : source.Grid.Sheet } }, table.Preamble);
        var settings = ImmutableArray.CreateBuilder<MeasuredSetting>();
        var powders = PowdersOfOneTable.Of(source, lines, table, powder);
        var overview = OverviewSheet.Is(source, table, lines);
        var open = overview != true && (overview is null || mark is null || kind is null || !Settle(source, table, lines, settings) || !SettleLabel(source, table, lines, kind, settings) || !MetalsAsOxides.Settle(source, table, kind, ref lines, settings));
        if (overview != true)
            Remark(source, table, lines, kind);

        // A title "ZX-4, spot 2" on the sheet "Spot 2" is the same place in more words.
        var placed = IsPlace(source.Grid.Sheet) ? source.Grid.Sheet! : "";
        ImmutableArray<Measurement> measured = open || overview == true ? [] : [.. lines.GroupBy(powders, StringComparer.Ordinal).Select(g => One(source, table, kind!, g.Key, [.. g], placed, settings.ToImmutable()))];
        var used = overview == true ? 0 : table.RowsUsed;
        var all = source.Grid.Rows.Count(r => r.Number >= table.FirstRow && !r.IsBlank);
        return new(new RowCount(measured.IsEmpty ? 0 : used, measured.IsEmpty ? used : 0, source.Grid.Rows.Count(r => r.Number >= table.FirstRow && r.IsBlank), Math.Max(0, all - used)), table.Columns(), measured)
        {
            HeadingLine = table.HeadingLine,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            Settings = [.. settings.Select(s => $"{s.Name}: {s.Written}")],
            FirstRows = [.. source.Grid.Rows.Where(r => r.Number >= table.FirstRow && !r.IsBlank)],
        };
    }

    // A slip of an exponent is no amount, and no sum or conversion may be made of it.
    private static ImmutableArray<ElementLine> Possible(MeasurementSource source, ImmutableArray<ElementLine> lines)
    {
        static bool IsAmount(ElementLine line) => Math.Abs(line.Mass ?? 0) <= MostOfAnything && Math.Abs(line.Atomic ?? 0) <= MostOfAnything;
        if (lines.FirstOrDefault(l => !IsAmount(l)) is { } odd)
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"Row {odd.Row.ToString(CultureInfo.InvariantCulture)}: {odd.Species.Symbol} {(odd.Mass ?? odd.Atomic)!.Value.ToString("G4", CultureInfo.InvariantCulture)} is no amount of anything. Left out.", "row " + odd.Row.ToString(CultureInfo.InvariantCulture));
        return [.. lines.Where(IsAmount)];
    }

    private static Measurement One(MeasurementSource source, IElementTable table, string kind, string powder, ImmutableArray<ElementLine> lines, string placed, ImmutableArray<MeasuredSetting> settings)
    {
        var columns = ImmutableArray.CreateBuilder<MeasuredColumn>();
        columns.Add(new(Spot, table.SpotHeading, "") { Words = [.. lines.Select(l => l.Spot.Length == 0 || (placed.Length > 0 && l.Spot.Contains(placed, StringComparison.OrdinalIgnoreCase)) ? placed : l.Spot)] });
        columns.Add(new(Symbol, table.ElementHeading, "") { Words = [.. lines.Select(l => l.Species.Symbol)] });
        if (lines.Any(l => l.Mass is not null))
            columns.Add(new(kind == Atomic && !table.HasBoth ? Atomic : Mass, table.MassHeading, table.Unit) { Numbers = [.. lines.Select(l => l.Mass)] });
        if (lines.Any(l => l.Atomic is not null))
            columns.Add(new(Atomic, table.AtomicHeading, "%") { Numbers = [.. lines.Select(l => l.Atomic)] });
        return new Measurement("", TechniqueName, powder, settings, columns.ToImmutable(), source.At(lines[0].Row, null));
    }

    // A bare "%": by mass or by atoms is not the same thing.
    private static string? KindAsked(MeasurementSource source, IElementTable table)
    {
        var id = source.Question("percent");
        var answer = source.Talk.Ask(id, Codes.UnitMissing, $"{table.MassHeading} does not say whether the percentages are by mass or by atoms. Which?", [Mass, Atomic], table.MassHeading);
        source.Talk.Explain(id, ["kept as mass percent; atomic percent follow from the atomic weights", "kept as atomic percent"]);
        return answer;
    }

    // Two columns of one table must follow from each other by the atomic weights.
    private static bool Settle(MeasurementSource source, IElementTable table, ImmutableArray<ElementLine> lines, ImmutableArray<MeasuredSetting>.Builder settings)
    {
        var spots = lines.Where(l => l is { Mass: not null, Atomic: not null, Element.AtomicWeight: not null, Species.Oxide: null }).GroupBy(l => l.Spot, StringComparer.Ordinal).Where(g => g.Count() > 1)
            .Select(g => PercentColumns.Of([.. g.Select(l => (l.Element, l.Mass!.Value, l.Atomic!.Value))])).ToList();
        if (spots.Count == 0)
            return true;
        var (exchanged, neither) = (spots.Count(s => s.Labels == PercentLabels.Exchanged), spots.Count(s => s.Labels == PercentLabels.Neither));
        if (exchanged == 0 && neither == 0)
            return true;
        var id = source.Question("labels");
        if (exchanged * 2 > spots.Count)
        {
            var answer = source.Talk.Ask(id, Codes.Ambiguous,
                $"{table.MassHeading} and {table.AtomicHeading} contradict each other by up to {Text(spots.Max(s => s.OffAsLabelled))} at% as labelled, and agree when exchanged. Are the headings swapped?",
                [Exchanged, AsLabelled], table.MassHeading, table.AtomicHeading);
            source.Talk.Explain(id, [Consequence(lines, l => l.Atomic, l => l.Mass), Consequence(lines, l => l.Mass, l => l.Atomic)]);
            if (answer == Exchanged)
                settings.Add(new(Labels, Exchanged, null, "", 0));
            else if (answer is not null)
                return Choose(source, table, lines, settings);
            return answer is not null;
        }

        return Choose(source, table, lines, settings);
    }

    // The line that says so: " as line 2 says (“values in weight %”)"; nothing where a heading does.
    private static string SaidBy(Grid grid, string kind)
        => grid.Rows.SelectMany(r => r.Cells.Where(c => !c.IsBlank && c.Text.Length > 8 && PercentKind.In([c.Text]) == kind).Select(c => $" as line {r.Number.ToString(CultureInfo.InvariantCulture)} says (“{c.Text}”)")).FirstOrDefault() ?? "";

    // One column alone can only be compared with what the powder is said to be.
    private static bool SettleLabel(MeasurementSource source, IElementTable table, ImmutableArray<ElementLine> lines, string kind, ImmutableArray<MeasuredSetting>.Builder settings)
    {
        if (table.HasBoth || table.Unit != "%" || LabelAgainstFormula.Of(lines, kind, source.Grid) is not { } doubt)
            return true;
        var id = source.Question("labels");
        var heading = table.MassHeading.Length > 0 ? table.MassHeading : table.AtomicHeading;
        var (said, other) = kind == Mass ? ("by mass", "atomic") : ("by atoms", "mass");
        var answer = source.Talk.Ask(id, Codes.Ambiguous, $"{heading}, read as percent {said}{SaidBy(source.Grid, kind)}, {doubt.Why}. Are the values really {other} percent?", [Exchanged, AsLabelled], heading);
        string byMass = Consequence(lines, l => l.Mass ?? l.Atomic, _ => null), byAtoms = Consequence(lines, _ => null, l => l.Mass ?? l.Atomic);
        source.Talk.Explain(id, kind == Mass ? [byAtoms, byMass] : [byMass, byAtoms]);
        if (answer == Exchanged)
            settings.Add(new(Labels, Exchanged, null, "", 0));
        return answer is not null;
    }

    private static bool Choose(MeasurementSource source, IElementTable table, ImmutableArray<ElementLine> lines, ImmutableArray<MeasuredSetting>.Builder settings)
    {
        var id = source.Question("uses");
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            $"{table.MassHeading} and {table.AtomicHeading} do not agree by the atomic weights, in either order. Which of them is to be used?", [Mass, Atomic], table.MassHeading, table.AtomicHeading);
        source.Talk.Explain(id, [Consequence(lines, l => l.Mass, _ => null), Consequence(lines, _ => null, l => l.Atomic)]);
        if (answer is not null)
            settings.Add(new(Uses, answer, null, "", 0));
        return answer is not null;
    }

    // What the share of the two heaviest elements would be: the consequence a person can judge.
    internal static string Consequence(ImmutableArray<ElementLine> lines, Func<ElementLine, double?> mass, Func<ElementLine, double?> atomic)
    {
        var first = lines.GroupBy(l => l.Spot, StringComparer.Ordinal).First().ToList();
        var masses = first.Where(l => mass(l) is > 0 && l.Element.AtomicWeight is not null).Select(l => new KeyValuePair<Element, Measured>(l.Element, mass(l)!.Value)).ToList();
        var atoms = masses.Count > 1 ? Percentages.ToAtomic(masses) : [.. first.Where(l => atomic(l) is > 0).Select(l => new KeyValuePair<Element, Measured>(l.Element, atomic(l)!.Value))];
        var heavy = atoms.Where(a => a.Key.Number > 10).OrderBy(a => a.Value.Value).ToList();
        return heavy.Count < 2 ? "used so"
            : $"{heavy[0].Key.Symbol}/({heavy[0].Key.Symbol}+{heavy[^1].Key.Symbol}) = {Text(heavy[0].Value.Value / (heavy[0].Value.Value + heavy[^1].Value.Value))}";
    }

    private static void Remark(MeasurementSource source, IElementTable table, ImmutableArray<ElementLine> lines, string? kind)
    {
        if (kind is null || lines.IsEmpty)
            return;
        if (!table.Beside.IsEmpty)
            source.Talk.Note(Codes.OddCell, Weight.Note, $"{string.Join(", ", table.Beside.Take(4).Select(r => $"{r.Cells.First(c => !c.IsBlank).Text} (row {r.Number.ToString(CultureInfo.InvariantCulture)})"))}{(table.Beside.Length > 4 ? " and others" : "")}: a standard or an empty holder, no powder. Left out.", [.. table.Beside.Select(r => "row " + r.Number.ToString(CultureInfo.InvariantCulture))]);
        UnseenElements.Caution(source, lines);
        var read = lines.Select(l => l.Row).ToHashSet();
        string[] below = [.. source.Grid.Rows.Where(r => read.Contains(r.Number)).SelectMany(r => r.Cells.Where(c => c.Text.StartsWith('<')).Select(c => $"{r.Cells.First(f => !f.IsBlank).Text} {c.Text} (row {r.Number.ToString(CultureInfo.InvariantCulture)})"))];
        if (below.Length > 0)
            source.Talk.Note(Codes.OddCell, Weight.Note, $"{string.Join(", ", below.Take(4))}{(below.Length > 4 ? " and others" : "")}: below a limit, and no amount.", below);
        var totals = lines.GroupBy(l => l.Spot, StringComparer.Ordinal).Select(g => g.Sum(l => l.Mass ?? l.Atomic ?? 0)).ToList();
        if (totals.TrueForAll(XrayCautions.IsNormalised))
            source.Talk.Note(ElementCodes.Normalised, Weight.Caution, "Every total is 100 %: it was made so, and says nothing about elements that were not looked for. Ratios are compared, not percentages.", source.Talk.FileName);
    }

    /// <summary>True for a sheet that is called a place: "Spot 3".</summary>
    /// <param name="sheet">Its name, or null.</param>
    internal static bool IsPlace(string? sheet) => sheet is not null && MeasuredTable.Has(sheet, AmountWords.Places);

    private static string Text(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
}
