using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Heating;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.HeatingCurves;

/// <summary>Heating curves: mass against temperature, as a balance in a furnace writes them.</summary>
public sealed partial class HeatingFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "heating-curve";

    /// <summary>Columns of a measurement.</summary>
    internal const string Temperature = "temperature", Mass = "mass";

    /// <summary>Settings of a measurement: mass at the start, what flowed over it, how fast it was heated.</summary>
    internal const string Start = "mass at the start", Gas = "gas", Rate = "heating rate";

    // Less is a drying oven, not a curve.
    private const double LeastSpan = 100;

    // Furnaces of laboratories, °C.
    private const double Coldest = -20, Hottest = 1700;

    private const string TemperatureWords = "t temp temperature temperatur* temperatura temperatuur sample_temp probentemperatur ts sicaklik teplota lampotila 温度 температура";
    private const string MassWords = "m mass masse massa masa weight gewicht poids peso waga kutle hmotnost vikt tg tga 质量 重量 масса вес";

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "heating curve";

    /// <inheritdoc/>
    public string Reads => "mass in mg, g or % against temperature in °C or K, as CSV, text or XLSX";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return Columns(grid) is { } found ? Recognition.Certain($"'{found.Table.Says(found.Mass)}' against '{found.Table.Says(found.Temperature)}'") : Recognition.None;
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var (table, t, m, kelvin, unit) = Columns(source.Grid)!.Value;
        var evidence = table.Marks([t, m]);
        var mark = evidence.Settle(source.Talk);
        var powder = FileWords.Powder(source, [.. table.Preamble, .. table.Below]);
        var settings = Settings(table, mark).ToImmutableArray();
        var columns = Enumerable.Range(0, table.Width).Select(c => c == t ? table.Shown(c, ColumnUse.Measured, "temperature", kelvin ? "K" : "°C", null) : c == m ? table.Shown(c, ColumnUse.Measured, "mass", unit, null)
            : table.Shown(c, ColumnUse.LeftOut, null, null, "Neither temperature nor mass: it stays in the original.")).ToImmutableArray();
        ImmutableArray<Measurement> measured = [];
        if (mark is not null)
        {
            ImmutableArray<double?> temperatures = table.Numbers(t, mark), masses = table.Numbers(m, mark);
            int[] rows = [.. Enumerable.Range(0, masses.Length).Where(i => temperatures[i] is not null && masses[i] is not null)];
            measured =
            [
                new("", TechniqueName, powder, settings,
                    [new(Temperature, table.Named(t), kelvin ? "K" : "°C") { Numbers = [.. rows.Select(i => temperatures[i])] }, new(Mass, table.Named(m), unit) { Numbers = [.. rows.Select(i => masses[i])] }],
                    source.At(table.Body[0].Number, null)),
            ];
        }

        return new(new RowCount(measured.IsEmpty ? 0 : table.Body.Length, measured.IsEmpty ? table.Body.Length : 0, table.Blank, table.Below.Length), columns, measured)
        {
            HeadingLine = table.HeadingLine,
            UnitsLine = table.Units?.Number,
            Decimal = mark,
            DecimalReason = evidence.Reason,
            Settings = [.. settings.Select(s => $"{s.Name} {s.Written} (line {s.Row.ToString(CultureInfo.InvariantCulture)})")],
            FirstRows = table.Body,
        };
    }

    // Temperatures that rise over more than a drying oven, and beside them masses that do not grow tenfold.
    private static (MeasuredTable Table, int Temperature, int Mass, bool Kelvin, string Unit)? Columns(Grid grid)
    {
        if (MeasuredTable.Of(grid, 2) is not { Heading: not null } table || table.Body.Length < HeatingCurve.FewestPoints)
            return null;
        (int Column, bool Kelvin)? temperature = null;
        (int Column, string Unit)? mass = null;
        for (var c = 0; c < table.Width; c++)
        {
            if (!table.IsNumeric(c))
                continue;
            var says = table.Says(c);
            var kelvin = KelvinUnit().IsMatch(says);
            if (temperature is null && (CelsiusUnit().IsMatch(says) || kelvin && MeasuredTable.Has(says, TemperatureWords)) && Rises(table, c, kelvin ? 273 : 0))
                temperature = (c, kelvin);
            else if (mass is null && MeasuredTable.Has(says, MassWords) && UnitOfMass(table, c) is { } unit)
                mass = (c, unit);
        }

        return temperature is { } x && mass is { } y ? (table, x.Column, y.Column, x.Kelvin, y.Unit) : null;
    }

    private static bool Rises(MeasuredTable table, int column, double zero)
    {
        double[] numbers = [.. table.Numbers(column, table.Marks([column]).Mark ?? DecimalMark.Point).OfType<double>().Select(v => v - zero)];
        return numbers.Length >= HeatingCurve.FewestPoints && numbers.Min() >= Coldest && numbers.Max() <= Hottest && numbers.Max() - numbers[0] >= LeastSpan && Enumerable.Range(1, numbers.Length - 1).Count(i => numbers[i] >= numbers[i - 1]) >= 0.8 * (numbers.Length - 1);
    }

    private static string? UnitOfMass(MeasuredTable table, int column)
        => table.UnitOf(column) is { IsOne: false } unit ? unit.IsConvertibleTo(Unit.Parse("mg")) ? unit.Plain : null : table.Says(column).Contains('%', StringComparison.Ordinal) ? "%" : null;

    // "nawazka: 18,463 mg", "air 50 mL/min, 10 K/min": a mass with its unit, a rate, a gas.
    private static IEnumerable<MeasuredSetting> Settings(MeasuredTable table, DecimalMark? mark)
    {
        foreach (var (row, text) in table.Preamble.SelectMany(r => r.Cells.Where(c => !c.IsBlank).Select(c => (r.Number, c.Text))))
        {
            if (StartMass().Match(text) is { Success: true } mass && CellText.Read(mass.Groups["n"].Value, mark) is CellText.Number { Value: > 0 } number)
                yield return new(Start, mass.Value, Unit.Parse(mass.Groups["u"].Value).Convert(number.Value, Unit.Parse("mg")), "mg", row);
            if (PerMinute().Match(text) is { Success: true } rate && CellText.Read(rate.Groups["n"].Value, mark) is CellText.Number { Value: > 0 } kelvin)
                yield return new(Rate, rate.Value, kelvin.Value, "K/min", row);
            if (GasWord().Match(FileWords.Plain(text)) is { Success: true } gas)
                yield return new(Gas, gas.Groups["g"].Value, null, "", row);
        }
    }

    [GeneratedRegex(@"°\s*C|\bdeg\w*\s*C\b|\bC\)|\[C\]|/\s*C$", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex CelsiusUnit();

    [GeneratedRegex(@"[\[(/ ]K[\])]?$", RegexOptions.NonBacktracking)]
    private static partial Regex KelvinUnit();

    [GeneratedRegex(@"(?<n>\d+([.,]\d+)?)\s*(?<u>mg|g)(\W|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex StartMass();

    [GeneratedRegex(@"(?<n>\d+([.,]\d+)?)\s*(K|°C|°)\s*(/\s*min|min-1)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerMinute();

    [GeneratedRegex(@"(^|[^a-z])(?<g>air|luft|aire|aria|ar sintetico|powietrze|lucht|hava|vzduch|nitrogen|stickstoff|azote|nitrogeno|azoto|azot|stikstof|dusik|argon|helium|oxygen|sauerstoff|oxygene|oxigeno|o2|n2)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex GasWord();
}
