using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Porosity;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Cif;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Reads the isotherms of one grid: every column and row used, or listed; what is plausible and may be wrong is asked about.</summary>
internal sealed class SorptionReading
{
    /// <summary>Words for the branches, as they are kept.</summary>
    public const string Adsorption = "adsorption", Desorption = "desorption";

    /// <summary>Names of the columns that are kept.</summary>
    public const string Relative = "p/p0", Pressure = "pressure", Saturation = "saturation-pressure", Amount = "amount", BranchColumn = "branch";

    /// <summary>Setting that says per what a bare amount is.</summary>
    public const string AmountIs = "amount-is", PerGram = "per-gram", WholeSample = "whole-sample";

    private const int StrayPoints = 3;
    private const double LargestRelative = 1.05;
    private const double LargestDisagreement = 0.05;

    private readonly MeasurementSource source;
    private readonly ImmutableArray<SorptionTable> all;
    private readonly ImmutableArray<SorptionTable> tables;
    private readonly DecimalMark? mark;
    private readonly DecimalEvidence evidence;
    private SorptionSettings settings;

    private SorptionReading(MeasurementSource source)
    {
        this.source = source;
        var grid = source.Grid;
        var early = SorptionSettings.Of(grid.Rows.Where(r => r.Filled is > 0 and <= 2), null);
        all = SorptionTable.In(grid, early["unit-of-pressure"]?.Written);
        tables = [.. all.Where(t => !t.IsDerived)];
        var layout = new TableLayout(grid, [.. Above().Where(r => !r.IsBlank)], tables.IsEmpty ? null : tables[0].Heading, null, [.. tables.SelectMany(t => t.Body)]);
        evidence = DecimalEvidence.Of(layout, [.. tables.SelectMany(t => t.Series).SelectMany(s => new[] { s.Relative, s.Absolute, s.Saturation, s.Amount }).OfType<int>().Distinct()]);
        mark = evidence.Settle(source.Talk);
        settings = SorptionSettings.Of(Above().Concat(all.SelectMany(t => t.Body.Where(r => !IsData(t, r) && r.Cells.Any(c => c.Text.IndexOfAny([':', '=']) > 0)))), mark);
        if (source.File.Length > 1 && source.File.Count(NitrogenSorption.Holds) == 1)
        {
            foreach (var other in source.File.Where(g => !ReferenceEquals(g, grid)))
                settings = settings.Or(SorptionSettings.Of(other.Rows, mark));
        }
    }

    /// <summary>Reads a grid that was recognised.</summary>
    /// <param name="source">The grid and what must be known for it.</param>
    public static MeasurementDraft Of(MeasurementSource source) => new SorptionReading(source).Read();

    private MeasurementDraft Read()
    {
        if (tables.IsEmpty)
            return new BareColumns(source).Read();
        var curves = tables.SelectMany(t => t.Series.Select(s => Curve(t, s))).Where(c => c.Rows.Length > 0).ToList();
        var asked = mark is null;
        var relativeUnit = RelativeUnit(curves, ref asked);
        var p0 = SaturationSetting(curves, relativeUnit, ref asked);
        var unit = UnitOfAmount(curves, p0, relativeUnit, ref asked);
        Gas();
        Disagreeing(curves, relativeUnit);
        var measurements = ImmutableArray.CreateBuilder<Measurement>();
        // Curves of one powder, adsorption and desorption side by side or in tables of their own, are one measurement.
        foreach (var group in curves.GroupBy(c => c.Series.Powder ?? "", StringComparer.Ordinal))
        {
            var stated = group.Key.Length > 0 ? group.Key : settings["sample"]?.Written;
            var name = PowderName.Settle(source, stated, group.Key.Length > 0 ? group.First().Table.Labels!.Number : settings["sample"]?.Row ?? 0, group.Key.Length > 0 ? group.Key : null);
            if (!asked && unit is not null)
                measurements.Add(Measured(name, [.. group], unit.Value, p0, relativeUnit));
        }

        foreach (var derived in all.Where(t => t.IsDerived))
            source.Talk.Note(Codes.MeaningLost, Weight.Note, $"The table in line {derived.Heading.Number.ToString(CultureInfo.InvariantCulture)} was worked out from the isotherm ({derived.Heading.Cells.First(c => SorptionWords.Meaning(c.Text) == SorptionColumn.Derived).Text}): it is left out and worked out anew.");
        var bodies = all.Sum(t => t.Body.Length);
        var used = curves.SelectMany(c => c.Rows.Select(r => (c.Table, r.Row))).Distinct().Count();
        return new(new RowCount(asked ? 0 : used, asked ? used : 0, 0, bodies - used), Columns(), measurements.ToImmutable())
        {
            HeadingLine = tables[0].Heading.Number,
            UnitsLine = tables[0].Units?.Number,
            Decimal = mark,
            DecimalReason = source.Talk.Answers.To("decimal") is null ? evidence.Reason : "as you answered",
            FirstRows = tables[0].Body,
            Settings = [.. settings.All.Select(s => $"{s.Name} {s.Written} (line {s.Row.ToString(CultureInfo.InvariantCulture)})")],
        };
    }

    private IEnumerable<GridRow> Above()
    {
        var inside = all.SelectMany(t => t.Body.Append(t.Heading).Append(t.Units).Append(t.Labels)).OfType<GridRow>().ToHashSet(ReferenceEqualityComparer.Instance);
        return source.Grid.Rows.Where(r => !r.IsBlank && !inside.Contains(r));
    }

    private bool IsData(SorptionTable table, GridRow row) => table.Series.Any(s => Number(row.At(s.Relative ?? s.Absolute!.Value)) is not null && Number(row.At(s.Amount)) is not null);

    private double? Number(Cell cell)
    {
        if (cell.IsBlank || cell.Kind is CellKind.Date or CellKind.Error or CellKind.FormulaWithoutValue)
            return null;
        return (CellText.Read(cell.Text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) as CellText.Number)?.Value ?? CifNumber.Of(cell.Text)?.Value;
    }

    private SorptionCurve Curve(SorptionTable table, SorptionSeries series)
    {
        var rows = ImmutableArray.CreateBuilder<SorptionRow>();
        var branch = series.Branch ?? table.Title;
        double? saturation = null;
        var odd = new List<int>();
        foreach (var row in table.Body)
        {
            var (relative, absolute) = (series.Relative is { } r ? Number(row.At(r)) : null, series.Absolute is { } a ? Number(row.At(a)) : null);
            saturation = series.Saturation is { } s ? Number(row.At(s)) ?? saturation : null;
            var amount = Number(row.At(series.Amount));
            if ((relative ?? absolute) is null && amount is null)
            {
                // "Desorption" on a line of its own: what follows is the other branch.
                if (row.Filled == 1 && SorptionWords.IsBranchLabel(row.Cells.First(c => !c.IsBlank).Text))
                    branch = SorptionWords.Branch(row.Cells.First(c => !c.IsBlank).Text);
                continue;
            }

            if ((series.Relative is null ? absolute : relative) is null || amount is null)
            {
                odd.Add(row.Number);
                continue;
            }

            var named = series.BranchColumn is { } b && !row.At(b).IsBlank ? SorptionWords.Branch(row.At(b).Text) : branch;
            rows.Add(new(row, relative, absolute, saturation, amount.Value, named));
        }

        if (odd.Count > 0)
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"{(odd.Count == 1 ? "Row" : "Rows")} {string.Join(", ", odd.Take(4).Select(o => o.ToString(CultureInfo.InvariantCulture)))}{(odd.Count > 4 ? " and more" : "")}: a pressure without an amount, or the reverse. Left out.", [.. odd.Select(o => "row " + o.ToString(CultureInfo.InvariantCulture))]);
        // A saturation pressure that is given now and then holds from the first time on, and for the rows before it.
        var known = rows.Select(r => r.Saturation).FirstOrDefault(s => s is not null);
        return new(table, series, [.. rows.Select(r => r with { Saturation = r.Saturation ?? known })]);
    }

    // p/p0 above 1 throughout is no p/p0: per cent, or a pressure.
    private string? RelativeUnit(List<SorptionCurve> curves, ref bool asked)
    {
        double[] values = [.. curves.SelectMany(c => c.Rows).Select(r => r.Relative).OfType<double>()];
        if (values.Length == 0 || values.Count(v => v > LargestRelative) <= Math.Max(StrayPoints, values.Length / 20))
            return values.Length == 0 ? null : "";
        var heading = curves[0].Table.Written(curves[0].Series.Relative!.Value);
        if (SorptionWords.Plain(heading).Contains('%', StringComparison.Ordinal) && values.Max() <= 101)
            return "%";
        var answer = source.Talk.Ask(source.Question("pressure"), Codes.Ambiguous, $"“{heading}” should lie between 0 and 1 and goes up to {Shown(values.Max())}. What are its numbers?", ["percent", "kPa", "mmHg", "mbar"], heading);
        source.Talk.Explain(source.Question("pressure"), ["p/p0 = number/100", "a pressure in kPa, to be divided by p0", "a pressure in mmHg, to be divided by p0", "a pressure in mbar, to be divided by p0"]);
        asked |= answer is null;
        return answer == "percent" ? "%" : answer;
    }

    // Two columns that say the same should agree: where they do not, one of them is in another unit or belongs to another run.
    private void Disagreeing(List<SorptionCurve> curves, string? relativeUnit)
    {
        if (relativeUnit is not ("" or "%"))
            return;
        var scale = relativeUnit == "%" ? 100 : 1;
        double[] ratios = [.. curves.SelectMany(c => c.Rows.Where(r => r is { Relative: > 0.02, Absolute: > 0, Saturation: > 0 }).Select(r => r.Absolute!.Value / r.Saturation!.Value / (r.Relative!.Value / scale)
            * ((PressureUnit.In(c.Table.Written(c.Series.Absolute!.Value))?.Kilopascal ?? 1) / (PressureUnit.In(c.Table.Written(c.Series.Saturation!.Value))?.Kilopascal ?? 1)))).Order()];
        if (ratios.Length > 0 && Math.Abs(ratios[ratios.Length / 2] - 1) > LargestDisagreement)
            source.Talk.Note(Codes.Ambiguous, Weight.Caution, $"p divided by p0 is {Shown(ratios[ratios.Length / 2])} times the p/p0 beside it: one of the columns is in another unit. p/p0 is used; check the file.");
    }

    // One saturation pressure for all rows, in the unit of the pressures; null where each row has its own or none is needed.
    private MeasuredSetting? SaturationSetting(List<SorptionCurve> curves, string? relativeUnit, ref bool asked)
    {
        var isAbsolute = relativeUnit is not (null or "" or "%");
        if ((!isAbsolute && curves.All(c => c.Series.Relative is not null)) || (!isAbsolute && curves.All(c => c.Series.Relative is not null || c.Rows.All(r => r.Saturation is not null))))
            return null;
        if (settings["p0"] is { Value: > 0 } stated)
            return stated;
        var unit = relativeUnit is { Length: > 0 } u && isAbsolute ? u : PressureName(curves[0]);
        if (unit is null)
        {
            unit = source.Talk.Ask(source.Question("pressure"), Codes.UnitMissing, $"The pressures under “{curves[0].Table.Written(curves[0].Series.Absolute!.Value)}” have no unit. Which one?", ["kPa", "mmHg", "mbar", "bar", "Pa"]);
            if (unit is null)
            {
                asked = true;
                return null;
            }
        }

        var usual = 101.325 / PressureUnit.In(unit)!.Kilopascal;
        var id = source.Question("value:p0");
        var answer = source.Talk.Ask(id, Codes.UnitMissing, $"No saturation pressure p0 stands in the file. What was it, in {unit}?", [usual.ToString("G6", CultureInfo.InvariantCulture)]);
        source.Talk.Explain(id, ["as at sea level; every p/p0 is wrong by as many per cent as p0 is"]);
        if (answer is null)
        {
            asked = true;
            return null;
        }

        return CellText.Read(answer, null) is CellText.Number { Value: > 0 } number ? new MeasuredSetting("p0", $"{answer} {unit}", number.Value, unit, 0) : throw Answers.Unknown(id, answer, $"a pressure above 0, in {unit}");
    }

    private string? PressureName(SorptionCurve curve)
        => curve.Series.Absolute is not { } column ? null : (PressureUnit.In(curve.Table.Written(column)) ?? (settings["unit-of-pressure"] is { } said ? PressureUnit.In(said.Written) : null))?.Name;

    private (AmountUnit Unit, bool IsOfSample)? UnitOfAmount(List<SorptionCurve> curves, MeasuredSetting? p0, string? relativeUnit, ref bool asked)
    {
        var curve = curves[0];
        var heading = curve.Table.Written(curve.Series.Amount);
        var unit = AmountUnit.In(heading) ?? (settings["unit-of-amount"] is { } said ? AmountUnit.In(said.Written) : null);
        // Any note may say it once for all: "adsorbed volume in cm3/g".
        unit ??= settings.All.Where(s => s.Name == "note").Select(s => AmountUnit.In(s.Written)).FirstOrDefault(u => u is { Per: AmountPer.Gram });
        if (unit is null)
        {
            var id = source.Question("amount-unit");
            var answer = source.Talk.Ask(id, Codes.UnitMissing, $"The amounts under “{heading}” have no unit. Which one?", [.. AmountUnit.Choices], heading);
            source.Talk.Explain(id, [.. AmountUnit.Choices.Select(c => Consequence(curves, AmountUnit.In(c)!, p0, relativeUnit, isOfSample: AmountUnit.In(c)!.Per == AmountPer.Sample))]);
            if (answer is null)
            {
                asked = true;
                return null;
            }

            unit = AmountUnit.In(answer)!;
            if (unit.Per == AmountPer.Sample)
                return WithMass(unit, ref asked);
        }

        if (unit is { Per: AmountPer.Gram })
        {
            if (Largest(curves) * unit.Mmol * Nitrogen.StpPerMmol > Nitrogen.LargestUptakeStp)
            {
                var id = source.Question("amount-unit");
                var answer = source.Talk.Ask(id, Codes.Ambiguous, $"“{heading}” goes up to {Shown(Largest(curves))}, more nitrogen than any known solid holds in {unit.Name}. Which unit is it?", [.. AmountUnit.Choices.Where(c => c != unit.Name)], heading);
                source.Talk.Explain(id, [.. AmountUnit.Choices.Where(c => c != unit.Name).Select(c => Consequence(curves, AmountUnit.In(c)!, p0, relativeUnit, isOfSample: AmountUnit.In(c)!.Per == AmountPer.Sample))]);
                asked |= answer is null;
                return answer is null ? null : AmountUnit.In(answer)! is { Per: AmountPer.Sample } bare ? WithMass(bare, ref asked) : (AmountUnit.In(answer)!, false);
            }

            if (!unit.SaysStp)
                source.Talk.Assume(source.Question("volume-is"), Codes.Ambiguous, $"“{heading}”: the volumes are taken as gas at 0 °C and 101.325 kPa (STP), as usual.", ["gas-stp"], heading);
            return (unit, false);
        }

        return PerWhat(curves, heading, unit, p0, relativeUnit, ref asked);
    }

    // "Volume adsorbed (cm3 STP)": many write it for cm3/g, others for all the powder in the cell.
    private (AmountUnit, bool)? PerWhat(List<SorptionCurve> curves, string heading, AmountUnit unit, MeasuredSetting? p0, string? relativeUnit, ref bool asked)
    {
        var id = source.Question("amount");
        var mass = settings.Mass;
        if (mass is { } m && Largest(curves) * unit.Mmol / m * Nitrogen.StpPerMmol > Nitrogen.LargestUptakeStp)
        {
            var assumed = source.Talk.Assume(id, Codes.Ambiguous, $"“{heading}” is per gram: for the whole sample of {Shown(m)} g it would be more nitrogen than any known solid holds.", [PerGram, WholeSample], heading);
            return assumed == PerGram ? (unit with { Per = AmountPer.Gram, Name = unit.Name + "/g" }, false) : WithMass(unit, ref asked);
        }

        var answer = source.Talk.Ask(id, Codes.Ambiguous, $"Is “{heading}” per gram of powder, or for the whole sample{(mass is { } g ? $" of {Shown(g)} g" : "")}?", [PerGram, WholeSample], heading);
        source.Talk.Explain(id, [Consequence(curves, unit, p0, relativeUnit, isOfSample: false), Consequence(curves, unit, p0, relativeUnit, isOfSample: true)]);
        if (answer is null)
        {
            asked = true;
            return null;
        }

        return answer == PerGram ? (unit with { Per = AmountPer.Gram, Name = unit.Name + "/g" }, false) : WithMass(unit, ref asked);
    }

    private (AmountUnit, bool)? WithMass(AmountUnit unit, ref bool asked)
    {
        if (settings.Mass is not null)
            return (unit, true);
        var id = source.Question("value:mass");
        var answer = source.Talk.Ask(id, Codes.UnitMissing, "The amounts are for the whole sample, and no mass stands in the file. What was the mass after degassing, in g?", []);
        if (answer is null)
        {
            asked = true;
            return null;
        }

        if (CellText.Read(answer, null) is not CellText.Number { Value: > 0 } number)
            throw Answers.Unknown(id, answer, "a mass above 0, in g");
        settings = settings.With(new MeasuredSetting("mass", answer + " g", number.Value, "g", 0));
        return (unit, true);
    }

    private static double Largest(List<SorptionCurve> curves) => curves.SelectMany(c => c.Rows).Max(r => r.Amount);

    private string Consequence(List<SorptionCurve> curves, AmountUnit unit, MeasuredSetting? p0, string? relativeUnit, bool isOfSample)
    {
        if (isOfSample && settings.Mass is null)
            return "the mass is then needed";
        var scale = unit.Mmol / (isOfSample ? settings.Mass!.Value : 1);
        var powder = curves.Where(c => c.Series.Powder == curves[0].Series.Powder).SelectMany(c => c.Rows).ToList();
        SorptionPoint[] points = [.. powder.Select(r => new SorptionPoint(X(r, p0, relativeUnit) ?? double.NaN, r.Amount * scale)).Where(p => double.IsFinite(p.X))];
        var up = SorptionBranches.ByTurn(points).Adsorption;
        var area = BetArea.Of(up) is { Chosen: { } chosen } ? chosen.Area : SorptionBranches.At(up, 0.3) is { } amount ? BetArea.SinglePoint(new(0.3, amount)) : (double?)null;
        return area is { } a ? $"BET area about {Shown(a)} m2/g" : $"up to {Shown(up.Length == 0 ? 0 : up[^1].Amount)} mmol/g";
    }

    private static double? X(SorptionRow row, MeasuredSetting? p0, string? relativeUnit)
        => relativeUnit is not null && row.Relative is { } r ? relativeUnit switch { "" => r, "%" => r / 100, _ => r * PressureUnit.In(relativeUnit)!.Kilopascal / Kilopascal(p0) }
            : row.Absolute is { } a ? row.Saturation is { } s ? a / s : p0 is { Value: { } v } ? a / v : null
            : null;

    private static double? Kilopascal(MeasuredSetting? p0) => p0 is { Value: { } v } && PressureUnit.In(p0.Unit) is { } unit ? v * unit.Kilopascal : null;

    private void Gas()
    {
        if (settings["adsorptive"] is { } gas)
        {
            if (!SorptionWords.IsNitrogen(gas.Written))
                source.Talk.Note(Codes.MeaningLost, Weight.Caution, $"The gas is {gas.Written}, not nitrogen: the isotherm is kept, and neither area nor pores are worked out of it.", gas.Written);
        }
        else if (!settings.All.Any(s => SorptionWords.IsNitrogen(s.Written)) && !SorptionWords.IsNitrogen(source.Talk.FileName + " " + source.Grid.Sheet + " " + string.Join(' ', tables.Select(t => t.Written(t.Series[0].Amount)))))
        {
            var answer = source.Talk.Assume(source.Question("gas"), Codes.Ambiguous, "Nothing names the gas: nitrogen at 77 K is taken, as usual.", ["nitrogen", "other"]);
            settings = settings.With(new MeasuredSetting("adsorptive", answer == "nitrogen" ? "nitrogen (assumed)" : "not nitrogen (answered)", null, "", 0));
        }
        else
        {
            settings = settings.With(new MeasuredSetting("adsorptive", "nitrogen", null, "", 0));
        }
    }

    private Measurement Measured(string powder, ImmutableArray<SorptionCurve> curves, (AmountUnit Unit, bool IsOfSample) amount, MeasuredSetting? p0, string? relativeUnit)
    {
        SorptionRow[] rows = [.. curves.SelectMany(c => c.Rows)];
        var (table, series) = (curves[0].Table, curves[0].Series);
        var columns = ImmutableArray.CreateBuilder<MeasuredColumn>();
        if (series.Relative is { } relative && relativeUnit is "" or "%")
            columns.Add(new(Relative, table.Written(relative), relativeUnit) { Numbers = [.. rows.Select(r => r.Relative)] });
        else if (series.Relative is { } named)
            columns.Add(new(Pressure, table.Written(named), relativeUnit!) { Numbers = [.. rows.Select(r => r.Relative)] });
        else
            columns.Add(new(Pressure, table.Written(series.Absolute!.Value), PressureName(curves[0]) ?? p0?.Unit ?? "") { Numbers = [.. rows.Select(r => r.Absolute)] });
        if (series.Saturation is { } saturation)
            columns.Add(new(Saturation, table.Written(saturation), (PressureUnit.In(table.Written(saturation)) ?? PressureUnit.In(PressureName(curves[0]) ?? ""))?.Name ?? "") { Numbers = [.. rows.Select(r => r.Saturation)] });
        columns.Add(new(Amount, table.Written(series.Amount), amount.Unit.Name) { Numbers = [.. rows.Select(r => (double?)r.Amount)] });
        if (rows.Any(r => r.Branch is not null))
            columns.Add(new(BranchColumn, series.BranchColumn is { } b ? table.Heading.At(b).Text : "", "") { Words = [.. rows.Select(r => r.Branch ?? "")] });
        ImmutableArray<MeasuredSetting> said = [.. settings.All, .. p0 is { Row: 0 } ? [p0] : Array.Empty<MeasuredSetting>(), new MeasuredSetting(AmountIs, amount.IsOfSample ? WholeSample : PerGram, null, "", 0)];
        return new("", NitrogenSorption.TechniqueName, powder, said, columns.ToImmutable(), source.At(table.Heading.Number, null));
    }

    private ImmutableArray<ColumnUnderstanding> Columns()
    {
        var shown = ImmutableArray.CreateBuilder<ColumnUnderstanding>();
        var table = tables[0];
        var width = table.Body.Select(r => r.Cells.Length).Append(table.Heading.Cells.Length).Max();
        for (var c = 0; c < width; c++)
        {
            ImmutableArray<string> examples = [.. table.Body.Select(r => r.At(c).Text).Where(t => t.Length > 0).Take(3)];
            var heading = table.Heading.At(c).Text is { Length: > 0 } h ? h : "column " + (c + 1).ToString(CultureInfo.InvariantCulture);
            if (examples.IsEmpty && table.Heading.At(c).IsBlank)
                continue;
            var (use, meaning, unit) = Holds(table, c);
            shown.Add(new(c, heading, use, null, unit, null, use == ColumnUse.LeftOut ? "Not part of an isotherm: it stays in the original only." : null, examples, []) { Measures = meaning });
        }

        return shown.ToImmutable();
    }

    private (ColumnUse Use, string? Meaning, string? Unit) Holds(SorptionTable table, int column)
    {
        foreach (var s in table.Series)
        {
            var of = (s.Branch ?? table.Title) is { } branch ? ", " + branch : "";
            if (s.Relative == column)
                return (ColumnUse.Measured, "relative pressure p/p0" + of, null);
            if (s.Amount == column)
                return (ColumnUse.Measured, "amount adsorbed" + of, (AmountUnit.In(table.Written(column)) ?? (settings["unit-of-amount"] is { } said ? AmountUnit.In(said.Written) : null))?.Name);
            if (s.Absolute == column)
                return (ColumnUse.Measured, s.Relative is null ? "pressure" + of : "pressure (p/p0 stands beside it)", PressureUnit.In(table.Written(column))?.Name ?? PressureName(new(table, s, [])));
            if (s.Saturation == column)
                return (ColumnUse.Measured, "saturation pressure p0", PressureUnit.In(table.Written(column))?.Name);
            if (s.BranchColumn == column)
                return (ColumnUse.Measured, "branch of the isotherm", null);
        }

        return (ColumnUse.LeftOut, null, null);
    }

    private static string Shown(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}

/// <summary>One curve as it stands in the file.</summary>
/// <param name="Table">Its table.</param>
/// <param name="Series">Its columns.</param>
/// <param name="Rows">Its rows with numbers.</param>
internal sealed record SorptionCurve(SorptionTable Table, SorptionSeries Series, ImmutableArray<SorptionRow> Rows);

/// <summary>One row of a curve, numbers as they stand.</summary>
/// <param name="Row">The row.</param>
/// <param name="Relative">p/p0, or null.</param>
/// <param name="Absolute">Pressure, or null.</param>
/// <param name="Saturation">Saturation pressure, or null.</param>
/// <param name="Amount">Amount.</param>
/// <param name="Branch">Branch as the file names it, or null.</param>
internal sealed record SorptionRow(GridRow Row, double? Relative, double? Absolute, double? Saturation, double Amount, string? Branch);
