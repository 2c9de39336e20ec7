using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
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

    private readonly MeasurementSource source;
    private readonly ImmutableArray<SorptionTable> all;
    private readonly ImmutableArray<SorptionTable> tables;
    private readonly DecimalMark? mark;
    private readonly DecimalEvidence evidence;
    private SorptionSettings settings;

    private readonly string? label;

    private SorptionReading(MeasurementSource source, string? label)
    {
        (this.source, this.label) = (source, label);
        var grid = source.Grid;
        var early = SorptionSettings.Of(grid.Rows.Where(r => r.Filled is > 0 and <= 2), null);
        all = SorptionTable.In(grid, early["unit-of-pressure"]?.Written);
        tables = [.. all.Where(t => !t.IsDerived)];
        var layout = new TableLayout(grid, [.. Above().Where(r => !r.IsBlank)], tables.IsEmpty ? null : tables[0].Heading, null, [.. tables.SelectMany(t => t.Body)]);
        evidence = DecimalEvidence.Of(layout, [.. tables.SelectMany(t => t.Series).SelectMany(s => new[] { s.Relative, s.Absolute, s.Saturation, s.Amount }).OfType<int>().Distinct()]);
        mark = evidence.Settle(source.Talk);
        settings = SorptionSettings.Of(Above().Concat(all.SelectMany(t => t.Body.Where(r => !IsData(t, r) && r.Cells.Any(c => c.Text.IndexOfAny([':', '=']) > 0)))), mark);
        if (source.File.Length > 1 && source.File.Count(NitrogenIsotherms.Holds) == 1)
        {
            foreach (var other in source.File.Where(g => !ReferenceEquals(g, grid)))
                settings = settings.Or(SorptionSettings.Of(other.Rows, mark));
        }
    }

    /// <summary>Reads a grid that was recognised.</summary>
    /// <param name="source">The grid and what must be known for it.</param>
    /// <param name="label">Name of the powder where the grid is one of several blocks, else null.</param>
    public static MeasurementDraft Of(MeasurementSource source, string? label) => new SorptionReading(source, label).Read();

    private MeasurementDraft Read()
    {
        if (tables.IsEmpty)
            return new BareColumns(source).Read();
        SorptionCurve[] found = [.. tables.SelectMany(t => t.Series.Select(s => Curve(t, s))).Where(c => c.Rows.Length > 0)];
        if (found.Length == 0)
        {
            source.Talk.Note(Codes.Unreadable, Weight.Stop, $"No row under “{tables[0].Heading.At(tables[0].Series[0].Amount).Text}” holds a pressure and an amount that can be read as numbers. Nothing of it is taken in.", "row " + tables[0].Heading.Number.ToString(CultureInfo.InvariantCulture));
            return new(new RowCount(0, 0, 0, all.Sum(t => t.Body.Length)), Columns(), []) { HeadingLine = tables[0].Heading.Number };
        }

        var questions = new SorptionQuestions(source, settings, found);
        settings = questions.Settings;
        var curves = questions.Curves;
        var asked = mark is null || questions.IsOpen;
        var measurements = ImmutableArray.CreateBuilder<Measurement>();
        string[] powders = [.. curves.Select(c => c.Series.Powder).OfType<string>().Distinct(StringComparer.Ordinal)];
        var masses = powders.Length > 1 ? MassesByName.Of(source, source.Grid.Rows.Where(r => r.Filled is 1 or 2), powders) : ImmutableDictionary<string, MeasuredSetting>.Empty;
        // Curves of one powder, adsorption and desorption side by side or in tables of their own, are one measurement.
        foreach (var group in curves.GroupBy(c => c.Series.Powder ?? "", StringComparer.Ordinal))
        {
            var stated = group.Key.Length > 0 ? group.Key : label ?? settings["sample"]?.Written;
            var name = PowderName.Settle(source, stated, group.Key.Length > 0 ? group.First().Table.Labels!.Number : settings["sample"]?.Row ?? 0, group.Key.Length > 0 ? group.Key : label);
            if (!asked && questions.Amount is { } amount)
                measurements.Add(Measured(name, [.. group], amount, questions, masses.GetValueOrDefault(group.Key)));
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
            Settings = [.. settings.All.Select(s => s.Row > 0 ? $"{s.Name} {s.Written} (line {s.Row.ToString(CultureInfo.InvariantCulture)})" : $"{s.Name} {s.Written}")],
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
        foreach (var row in OrderOfMeasuring.Of(source, table, Number))
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

            // A branch named on its first line holds until the next is named.
            if (series.BranchColumn is { } b && !row.At(b).IsBlank)
                branch = SorptionWords.Branch(row.At(b).Text);
            rows.Add(new(row, relative, absolute, saturation, amount.Value, branch) { Again = series.Again is { } again ? Number(row.At(again)) : null });
        }

        if (odd.Count > 0)
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"{(odd.Count == 1 ? "Row" : "Rows")} {string.Join(", ", odd.Take(4).Select(o => o.ToString(CultureInfo.InvariantCulture)))}{(odd.Count > 4 ? " and more" : "")}: a pressure without an amount, or the reverse. Left out.", [.. odd.Select(o => "row " + o.ToString(CultureInfo.InvariantCulture))]);
        // A saturation pressure that is given now and then holds from the first time on, and for the rows before it.
        var known = rows.Select(r => r.Saturation).FirstOrDefault(s => s is not null);
        return new(table, series, [.. rows.Select(r => r with { Saturation = r.Saturation ?? known })]);
    }

    private Measurement Measured(string powder, ImmutableArray<SorptionCurve> curves, (AmountUnit Unit, bool IsOfSample) amount, SorptionQuestions questions, MeasuredSetting? mass)
    {
        SorptionRow[] rows = [.. curves.SelectMany(c => c.Rows)];
        var (p0, relativeUnit, pressure) = (questions.Saturation, questions.Relative, questions.PressureName(curves[0]));
        var (table, series) = (curves[0].Table, curves[0].Series);
        var columns = ImmutableArray.CreateBuilder<MeasuredColumn>();
        if (series.Relative is { } relative && relativeUnit is "" or "%")
            columns.Add(new(Relative, table.Written(relative), relativeUnit) { Numbers = [.. rows.Select(r => r.Relative)] });
        else if (series.Relative is { } named)
            columns.Add(new(Pressure, table.Written(named), relativeUnit!) { Numbers = [.. rows.Select(r => r.Relative)] });
        else
            columns.Add(new(Pressure, table.Written(series.Absolute!.Value), pressure ?? p0?.Unit ?? "") { Numbers = [.. rows.Select(r => r.Absolute)] });
        if (series.Saturation is { } saturation)
            columns.Add(new(Saturation, table.Written(saturation), (PressureUnit.In(table.Written(saturation)) ?? PressureUnit.In(pressure ?? ""))?.Name ?? "") { Numbers = [.. rows.Select(r => r.Saturation)] });
        columns.Add(new(Amount, table.Written(series.Amount), amount.Unit.Name) { Numbers = [.. rows.Select(r => (double?)r.Amount)] });
        if (rows.Any(r => r.Branch is not null))
            columns.Add(new(BranchColumn, series.BranchColumn is { } b ? table.Heading.At(b).Text : "", "") { Words = [.. rows.Select(r => r.Branch ?? "")] });
        ImmutableArray<MeasuredSetting> said = [.. mass is null ? settings.All : settings.All.RemoveAll(s => s.Name == "mass").Add(mass), .. p0 is { Row: 0 } ? [p0] : Array.Empty<MeasuredSetting>(), new MeasuredSetting(AmountIs, amount.IsOfSample ? WholeSample : PerGram, null, "", 0)];
        return new("", NitrogenIsotherms.TechniqueName, powder, said, columns.ToImmutable(), source.At(table.Heading.Number, null));
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
                return (ColumnUse.Measured, s.Relative is null ? "pressure" + of : "pressure (p/p0 stands beside it)", (PressureUnit.In(table.Written(column)) ?? (settings["unit-of-pressure"] is { } of0 ? PressureUnit.In(of0.Written) : null))?.Name);
            if (s.Saturation == column)
                return (ColumnUse.Measured, "saturation pressure p0", PressureUnit.In(table.Written(column))?.Name);
            if (s.BranchColumn == column)
                return (ColumnUse.Measured, "branch of the isotherm", null);
        }

        return (ColumnUse.LeftOut, null, null);
    }
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
internal sealed record SorptionRow(GridRow Row, double? Relative, double? Absolute, double? Saturation, double Amount, string? Branch)
{
    /// <summary>The same amount as a second column has it, in a unit of its own; null without one.</summary>
    public double? Again { get; init; }
}
