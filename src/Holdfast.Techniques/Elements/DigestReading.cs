using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>Takes dissolved portions as they stand in the file; loadings are worked out afterwards.</summary>
internal sealed partial class DigestReading
{
    private const string Multiply = "multiply", Applied = "applied", AsSamples = "as-the-portions", Undiluted = "undiluted", LeaveOut = "leave-out", OnePowder = "one-powder", Powders = "powders";

    private readonly MeasurementSource source;
    private readonly DigestTable digests;
    private double? volume;
    private string? unitOfMass;

    private DigestReading(MeasurementSource source, DigestTable digests) => (this.source, this.digests) = (source, digests);

    /// <summary>What a grid of dissolved portions would bring.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="digests">Its table.</param>
    public static MeasurementDraft Of(MeasurementSource source, DigestTable digests) => new DigestReading(source, digests).Read();

    private MeasurementDraft Read()
    {
        var table = digests.Table;
        int[] numeric = [digests.MassColumn, .. digests.VolumeColumn >= 0 ? [digests.VolumeColumn] : Array.Empty<int>(), .. digests.Readings.Select(r => r.Column)];
        var evidence = table.Marks(numeric);
        var mark = evidence.Settle(source.Talk);
        var factor = Factor();
        var powder = FileWords.Powder(source, table.Preamble);
        volume = digests.VolumeColumn >= 0 || mark is null ? null : MadeUpTo();
        unitOfMass = mark is null ? null : PortionMass.Unit(source, digests, mark.Value);
        var portions = mark is null ? [] : table.Body.Where(r => !DigestTable.IsBlank(Label(r)) && MeasuredTable.Number(r.At(digests.MassColumn), mark) is > 0 && Volume(r, mark.Value) is > 0 && factor?.Invoke(r) is not null).ToImmutableArray();
        var apart = Apart(portions, powder);
        var blank = mark is null || factor is null ? null : Blank(portions, mark.Value, factor);
        var open = mark is null || factor is null || apart is null || blank is null || unitOfMass is null || digests.VolumeColumn < 0 && volume is null;
        ImmutableArray<Measurement> measured = open ? [] : [.. portions.GroupBy(r => digests.PowderColumn >= 0 ? FileWords.Spelled(source, r.At(digests.PowderColumn).Text) : apart == Powders ? FileWords.Spelled(source, PortionNames.Stem(Label(r))) : powder, StringComparer.Ordinal).Select(g => One(g.Key, [.. g], mark!.Value, factor!, blank!))];
        var used = portions.Length + digests.Blanks.Length;
        return new(new RowCount(open ? 0 : used, open ? used : 0, table.Blank, table.Body.Length - used + table.Below.Length), Columns(), measured)
        {
            HeadingLine = table.HeadingLine,
            UnitsLine = table.Units?.Number,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            FirstRows = table.Body,
        };
    }

    private Measurement One(string powder, ImmutableArray<GridRow> portions, DecimalMark mark, Func<GridRow, double?> factor, Func<GridRow, int, double> blank)
    {
        var unit = digests.UnitOf(digests.Readings[0].Column);
        var lines = (from row in portions from reading in digests.Readings let read = MeasuredTable.Number(row.At(reading.Column), mark) where read is not null && factor(row) is not null select (Row: row, reading.Column, reading.Element, Read: Same(read.Value, reading.Column, unit))).ToImmutableArray();
        MeasuredColumn Numbers(string name, int column, string of, Func<GridRow, double?> get) => new(name, column >= 0 ? digests.Table.Named(column) : "", of) { Numbers = [.. lines.Select(l => get(l.Row))] };
        return new("", ElementFiles.TechniqueName, powder, [],
        [
            new(ElementFiles.Spot, digests.LabelColumn >= 0 ? digests.Table.Named(digests.LabelColumn) : "", "") { Words = [.. lines.Select(l => Label(l.Row))] },
            new(ElementFiles.Symbol, "", "") { Words = [.. lines.Select(l => l.Element.Symbol)] },
            new(DigestLoadings.Reading, digests.Table.Named(digests.Readings[0].Column), unit.Plain) { Numbers = [.. lines.Select(l => (double?)l.Read)] },
            new(DigestLoadings.Blank, "", unit.Plain) { Numbers = [.. lines.Select(l => (double?)Same(blank(l.Row, l.Column), l.Column, unit))] },
            Numbers(DigestLoadings.Portion, digests.MassColumn, unitOfMass!, r => MeasuredTable.Number(r.At(digests.MassColumn), mark)),
            Numbers(DigestLoadings.Volume, digests.VolumeColumn, digests.VolumeColumn >= 0 ? digests.UnitOf(digests.VolumeColumn).Plain : "mL", r => Volume(r, mark)),
            Numbers(DigestLoadings.Dilution, digests.DilutionColumn, "", factor),
        ], source.At(portions[0].Number, null));
    }

    private double Same(double value, int column, Unit unit) => digests.UnitOf(column).Convert(value, unit);

    // How many times each was diluted; null while it is asked. What was calculated back already is not multiplied again.
    private Func<GridRow, double?>? Factor()
    {
        var said = digests.Lines.SelectMany(r => r.Cells.Select(c => (r.Number, Noted: NotedDilution.In(c.Text)))).Where(n => n.Noted is not null).ToList();
        var noted = said.FirstOrDefault(n => n.Noted!.Applied == true);
        var stated = said.FirstOrDefault(n => n.Noted!.Factor is not null);
        if (digests.IsCorrected || noted.Noted is not null)
        {
            var why = noted.Noted is null ? $"{digests.Table.Named(digests.Readings[0].Column)}: what was read seems to be given" : $"Line {noted.Number.ToString(CultureInfo.InvariantCulture)} says that what was read is given";
            if (source.Talk.Ask("dilution", Codes.Ambiguous, $"{why} for the solution before its dilution. Is the dilution in it already?", [Applied, Multiply], digests.Table.Named(digests.Readings[0].Column)) is not { } answer)
                return null;
            if (answer == Applied)
                return _ => 1;
        }

        if (digests.DilutionColumn >= 0)
            return Stated() is { } own ? OfWhich(own, said.Exists(n => n.Noted!.Applied == false)) : null;
        var factor = stated.Noted?.Factor ?? 1;
        var text = factor.ToString("R", CultureInfo.InvariantCulture);
        source.Talk.Assume("factor", Codes.Ambiguous, stated.Noted is null ? "No column or line says that the solutions were diluted before they were read: what was read counts as it is." : $"Every solution was diluted {text} times, as line {stated.Number.ToString(CultureInfo.InvariantCulture)} says.", [text]);
        return _ => factor;
    }

    // "dilution 1:10" beside "mg/L": of the liquid that was read, or of the one before it was diluted? Only words tell.
    private Func<GridRow, double?>? OfWhich(Func<GridRow, double?> factor, bool isSaid)
    {
        var largest = digests.Table.Body.Select(factor).Max();
        // What stands above the highest standard was hardly read so, whatever else is said.
        var isAbove = TopStandard() is { } top && digests.Table.Body.Where(r => !DigestTable.IsBlank(Label(r)) && factor(r) > 1).Select(r => MeasuredTable.Number(r.At(digests.Readings[0].Column), digests.Table.Marks([digests.Readings[0].Column]).Mark)).OfType<double>().ToList() is { Count: > 0 } readings && readings.Min() > top;
        if (largest is not > 1 || (!isAbove && (isSaid || digests.SaysAsRead)))
            return factor;
        var (read, dilution, times) = (digests.Table.Named(digests.Readings[0].Column), digests.Table.Named(digests.DilutionColumn), largest.Value.ToString("R", CultureInfo.InvariantCulture));
        var answer = source.Talk.Ask("dilution", Codes.Ambiguous, $"“{read}” stands beside “{dilution}” (up to {times} times), and {(isAbove ? "lies above the highest standard" : "nothing says of which liquid it is")}: as read after diluting, or already multiplied by the factor?", isAbove ? [Applied, Multiply] : [Multiply, Applied], read, dilution);
        ImmutableArray<string> follows = [$"as read: each is multiplied by its dilution, up to {times} times", "multiplied already: each counts as it stands"];
        source.Talk.Explain("dilution", isAbove ? [follows[1], follows[0]] : follows);
        return answer switch { null => null, Applied => _ => 1, _ => factor };
    }

    // "standards 0.5 / 1 / 2 / 5 mg/L"
    private double? TopStandard()
        => digests.Lines.SelectMany(r => r.Cells).Where(c => Lexicon.Of(c.Text).Contains(HeadingWord.Standard)).SelectMany(c => c.Text.Split([' ', '/', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
            .Select(w => double.TryParse(w, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : (double?)null).Max();

    // A portion whose dilution cannot be read is not taken for one that was not diluted.
    private Func<GridRow, double?>? Stated()
    {
        double? Factor(GridRow row) => FactorIn(row.At(digests.DilutionColumn));
        var bare = digests.Table.Body.Where(r => !DigestTable.IsBlank(Label(r)) && Factor(r) is null && digests.Readings.Any(c => !r.At(c.Column).IsBlank)).ToList();
        if (bare.Count == 0)
            return Factor;
        return source.Talk.Ask("factor", Codes.Ambiguous, $"{string.Join(", ", bare.Take(4).Select(Label))}: no dilution that can be read in {digests.Table.Named(digests.DilutionColumn)}. Not diluted?", [Undiluted, LeaveOut], Label(bare[0])) switch
        {
            null => null,
            Undiluted => r => Factor(r) ?? (bare.Contains(r) ? 1 : null),
            _ => Factor,
        };
    }

    // "50", "1:50", "50x", "1 mL to 50 mL".
    private static double? FactorIn(Cell cell)
        => (CellParts.Factor(cell.Text) ?? cell.Text) is var number && MeasuredTable.Number(cell with { Content = number }, null) is > 0 and var factor ? factor : CellParts.DilutionIn(cell.Text);

    // What a blank holds, as it would read in each portion: blanks that were made up or diluted otherwise count by their amounts.
    private Func<GridRow, int, double>? Blank(ImmutableArray<GridRow> portions, DecimalMark mark, Func<GridRow, double?> factor)
    {
        var blanks = digests.Blanks;
        if (blanks.IsEmpty)
        {
            source.Talk.Note(ElementCodes.Blank, Weight.Caution, "No row is a blank: nothing is subtracted from what was read.", source.Talk.FileName);
            return (_, _) => 0;
        }

        var diluted = portions.Any(p => factor(p) is > 1);
        var own = blanks.Where(b => factor(b) is null).ToList();
        var asUndiluted = false;
        if (own.Count > 0 && diluted)
        {
            var answer = source.Talk.Ask("blank-dilution", Codes.Ambiguous, $"{Label(own[0])} has no dilution, the others have. Was it diluted like them before it was read?", [AsSamples, Undiluted], Label(own[0]));
            if (answer is null)
                return null;
            asUndiluted = answer == Undiluted;
        }

        return (row, column) =>
        {
            var (own, times) = (Volume(row, mark) ?? 1, factor(row) ?? 1);
            double[] read = [.. blanks.Select(b => (b, Read: MeasuredTable.Number(b.At(column), mark))).Where(b => b.Read is not null)
                .Select(b => b.Read!.Value * (Volume(b.b, mark) ?? own) * (factor(b.b) ?? (asUndiluted ? 1 : times)) / (own * times))];
            return read.Length > 0 ? read.Average() : 0;
        };
    }

    private double? Volume(GridRow row, DecimalMark mark) => digests.VolumeColumn < 0 ? volume : MeasuredTable.Number(row.At(digests.VolumeColumn), mark) is > 0 and var v ? v : null;

    // One volume for all, in a line of the file or asked.
    private double? MadeUpTo()
    {
        ImmutableArray<string> stated = [.. digests.Lines.SelectMany(r => r.Cells).Where(c => !c.IsBlank).SelectMany(c => c.Text.Split([", ", ";", "("], StringSplitOptions.None)).Where(clause => !NotedDilution.IsOfVolumes(clause)).SelectMany(clause => Millilitres().Matches(clause)).Select(m => m.Groups["v"].Value.Replace(',', '.')).Distinct()];
        var (id, text) = (source.Question("value:volume"), "No column holds the volume that the portions were made up to.");
        var answer = stated.Length == 1 ? source.Talk.Assume(id, Codes.Ambiguous, $"{text} A line says {stated[0]} mL, which is taken for all.", stated) : source.Talk.Ask(id, Codes.UnitMissing, text + " How many mL was it?", stated);
        return answer is null ? null : CellText.Read(answer, null) is CellText.Number { Value: > 0 } number ? number.Value : throw Answers.Unknown(id, answer, "a volume above 0, in mL");
    }

    [GeneratedRegex(@"(^|[^\d.,])(?<v>\d+([.,]\d+)?)\s*mL(\W|$)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Millilitres();

    // Rows may be portions of one powder or powders of their own.
    private string? Apart(ImmutableArray<GridRow> portions, string powder)
    {
        string[] names = [.. portions.Select(Label)];
        if (digests.PowderColumn >= 0)
            return Powders;
        if (digests.LabelColumn < 0 || PortionNames.AreOfOne(names, digests.Table.Named(digests.LabelColumn), powder))
            return OnePowder;
        return source.Talk.Ask("places", Codes.Ambiguous, $"Are {string.Join(", ", names.Take(4))}{(names.Length > 4 ? " and the others" : "")} portions of one powder, or powders of their own?", [OnePowder, Powders], names[0]);
    }

    private string Label(GridRow row) => digests.LabelColumn >= 0 ? row.At(digests.LabelColumn).Text : "row " + row.Number.ToString(CultureInfo.InvariantCulture);

    private ImmutableArray<ColumnUnderstanding> Columns() => [.. Enumerable.Range(0, digests.Table.Width).Select(i =>
        digests.Readings.Any(r => r.Column == i) ? Shown(i, digests.Readings.First(r => r.Column == i).Element.Name + " read", "What stands behind ± is not used: the scatter between portions is.")
        : i == digests.MassColumn ? Shown(i, "mass of powder", null) : i == digests.VolumeColumn && i >= 0 ? Shown(i, "volume", null) : i == digests.DilutionColumn ? Shown(i, "times diluted", null)
        : i == digests.PowderColumn ? digests.Table.Shown(i, ColumnUse.Measured, "powder", null, null)
        : i == digests.LabelColumn ? digests.Table.Shown(i, ColumnUse.Measured, "portion", null, null)
        : digests.Table.Shown(i, ColumnUse.LeftOut, null, null, "Loadings are worked out from what was read."))];

    private ColumnUnderstanding Shown(int column, string measures, string? remark)
        => digests.Table.Shown(column, ColumnUse.Measured, measures, digests.UnitOf(column) is { IsOne: false } unit ? unit.Plain : null, remark is not null && digests.Table.Words(column).Any(w => w.Contains('±', StringComparison.Ordinal) || w.Contains("+/-", StringComparison.Ordinal)) ? remark : null);
}
