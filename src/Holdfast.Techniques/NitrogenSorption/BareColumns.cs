using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Two columns without a heading that have the shape of an isotherm: the first between 0 and 1 and nearly reaching it, the second rising with it. Only a person can say.</summary>
internal sealed class BareColumns(MeasurementSource source)
{
    private const int FewestRows = 12;
    private const double Reaches = 0.9;

    /// <summary>Whether a grid may be one.</summary>
    /// <param name="grid">The grid.</param>
    public static Recognition Recognise(Grid grid)
    {
        var rows = grid.Rows.Where(r => r.Filled == 2 && r.Cells.Where(c => !c.IsBlank).All(TableLayout.IsNumeric)).ToList();
        if (rows.Count < FewestRows || rows.Count * 10 < grid.Rows.Count(r => !r.IsBlank) * 7)
            return Recognition.None;
        var points = rows.Select(r => r.Cells.Where(c => !c.IsBlank).Select(c => Number(c, null)).ToArray()).Where(p => p.All(n => n is not null)).Select(p => (X: p[0]!.Value, Y: p[1]!.Value)).ToList();
        if (points.Count < FewestRows || points.Any(p => p.X is < 0 or > 1.02) || points.Max(p => p.X) < Reaches || points.Any(p => p.Y < 0))
            return Recognition.None;
        var up = points.TakeWhile((p, i) => i == 0 || p.X > points[i - 1].X).ToList();
        return up.Count >= FewestRows / 2 && up[^1].Y > up[0].Y && up.Zip(up.Skip(1)).Count(p => p.Second.Y >= p.First.Y) >= 0.9 * (up.Count - 1)
            ? Recognition.Possible("two columns without a heading, the first from 0 to nearly 1, the second rising with it") : Recognition.None;
    }

    /// <summary>Reads it, once a person has said that it is one; the unit is asked for.</summary>
    public MeasurementDraft Read()
    {
        var rows = source.Grid.Rows.Where(r => r.Filled == 2 && r.Cells.Where(c => !c.IsBlank).All(TableLayout.IsNumeric)).ToList();
        ImmutableArray<int> places = [.. Enumerable.Range(0, rows[0].Cells.Length).Where(c => !rows[0].At(c).IsBlank)];
        var evidence = DecimalEvidence.Of(new TableLayout(source.Grid, [], null, null, [.. rows]), [.. places]);
        var mark = evidence.Settle(source.Talk);
        var unit = source.Talk.Ask(source.Question("amount-unit"), Codes.UnitMissing, "The amounts stand without a heading. Which unit have they?", ["cm3(STP)/g", "mmol/g"]);
        var name = PowderName.Settle(source, null);
        double?[] Column(int place) => [.. rows.Select(r => Number(r.At(places[place]), mark))];
        var asked = mark is null || unit is null;
        ColumnUnderstanding Shown(int place, string meaning, string? of) => new(places[place], "column " + (places[place] + 1).ToString(CultureInfo.InvariantCulture), ColumnUse.Measured, null, of, null, null, [.. rows.Take(3).Select(r => r.At(places[place]).Text)], []) { Measures = meaning };
        return new(new RowCount(asked ? 0 : rows.Count, asked ? rows.Count : 0, 0, source.Grid.Rows.Count(r => !r.IsBlank) - rows.Count), [Shown(0, "relative pressure p/p0", null), Shown(1, "amount adsorbed", unit)],
            asked ? [] : [new Measurement("", NitrogenIsotherms.TechniqueName, name,
                [new MeasuredSetting("adsorptive", "nitrogen (answered)", null, "", 0), new MeasuredSetting(SorptionReading.AmountIs, SorptionReading.PerGram, null, "", 0)],
                [new(SorptionReading.Relative, "", "") { Numbers = [.. Column(0)] }, new(SorptionReading.Amount, "", unit!) { Numbers = [.. Column(1)] }], source.At(rows[0].Number, null))])
        {
            FirstRows = [.. rows],
            Decimal = mark,
            DecimalReason = evidence.Reason,
        };
    }

    private static double? Number(Cell cell, DecimalMark? mark) => (CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) as CellText.Number)?.Value;
}
