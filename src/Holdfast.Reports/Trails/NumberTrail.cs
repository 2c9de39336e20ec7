using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Trails;

/// <summary>A number with its formula, its inputs and where each of them was read.</summary>
/// <param name="Address">Its short address: "q:V-12".</param>
/// <param name="Name">What it is: "uptake of V-12".</param>
/// <param name="Value">The number.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Formula">The formula in one line.</param>
/// <param name="Inputs">The inputs, in the order of the formula.</param>
/// <param name="Readings">The readings at its end.</param>
public sealed record NumberTrail(
    string Address, string Name, Measured Value, string Unit, string Formula, ImmutableArray<TrailInput> Inputs, ImmutableArray<Reading> Readings)
{
    /// <summary>Codes of the samples it rests on.</summary>
    public ImmutableArray<string> Samples { get; init; } = [];

    /// <summary>The fit or line that made it, with its points; null where a formula alone did.</summary>
    public TrailFit? Fit { get; init; }

    /// <summary>
    /// The same number with the uncertainty that its inputs alone carry in, where <see cref="Value"/> has the scatter about a line instead; null where
    /// the two are one.
    /// </summary>
    public Measured? Carried { get; init; }

    /// <summary>Where its uncertainty comes from; sources of one fit only mean something together, so that a derived number has one row for each fit.</summary>
    public Budget Budget => Fit is null && Carried is null ? Budget.BySource(Value) : Budget.ByGroup(Carried ?? Value);

    /// <summary>The trail of an address, or null when there is no such number.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="address">"q:", "R:", "Ce:", "C0:", "D:" or "Kd:" and a sample code; of a sensor "F:" or "E:"; or that of a derived number, see <see cref="DerivedTrails"/>.</param>
    public static NumberTrail? Of(Evidence evidence, string address)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(address);
        var cut = address.IndexOf(':', StringComparison.Ordinal);
        if (cut < 0)
            return null;
        if (evidence.Vessels.FirstOrDefault(v => string.Equals(v.Code, address[(cut + 1)..], StringComparison.Ordinal)) is not { } vessel)
        {
            return SensorTrail.Of(evidence, address[..cut], address[(cut + 1)..]) is { } sensor
                ? sensor with { Samples = [address[(cut + 1)..]] }
                : DerivedTrails.Of(evidence, address);
        }

        return address[..cut] switch
        {
            "q" => One(vessel, address, "uptake", vessel.Uptake, "mg/g", "q = (C0 − Ce)·V/m", Start(vessel), Left(vessel, evidence), Volume(vessel), Mass(vessel)),
            "R" => One(vessel, address, "removal", vessel.Removal, "%", "R = 100·(C0 − Ce)/C0", Start(vessel), Left(vessel, evidence)),
            "Kd" => One(vessel, address, "distribution coefficient", vessel.Distribution, "L/g", "Kd = (C0 − Ce)/Ce·V/m", Start(vessel), Left(vessel, evidence), Volume(vessel), Mass(vessel)),
            "D" => One(vessel, address, "dose", vessel.Dose, "g/L", "D = m/V", Mass(vessel), Volume(vessel)),
            "C0" => One(vessel, address, "concentration at the start", vessel.Start, "mg/L", "as recorded, or the mean of the start solution's readings", Start(vessel)),
            "Ce" => One(vessel, address, "concentration left", vessel.End?.Value, "mg/L", "Ce = d·x, x read back on the calibration curve", Left(vessel, evidence)),
            _ => null,
        };
    }

    /// <summary>The trail of what a sample was read for: its uptake, its signal, or the concentration left; null when none is known.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="code">The sample's code.</param>
    public static NumberTrail? OfSample(Evidence evidence, string code)
        => Of(evidence, "q:" + code) ?? Of(evidence, "F:" + code) ?? Of(evidence, "Ce:" + code);

    /// <summary>In one line, for a footnote: "q:V-12 = 8.05 ± 0.31 mg/g ← aas-run1.csv, rows 30 to 32".</summary>
    public string Line()
    {
        var expanded = ExpandedUncertainty.Of(Value);
        return $"{Address} = {InWords.Raised(RoundedNumber.Shown(Value.Value, expanded.U).PlusMinus)} {Unit}".TrimEnd() + (Readings.IsEmpty ? "" : " ← " + string.Join("; ", Cells));
    }

    /// <summary>The cells at its end, one entry for each file: "aas-run1.csv, rows 30 to 32, 36".</summary>
    public IEnumerable<string> Cells
        => Readings.GroupBy(r => r.Origin.FileName, StringComparer.Ordinal).Select(g => $"{g.Key}, {Rows([.. g.Select(r => r.Origin.Row).Where(r => r > 0).Distinct().Order()])}".TrimEnd(',', ' '));

    private static string Rows(int[] rows)
    {
        var spans = new List<string>();
        for (int from = 0, to; from < rows.Length; from = to + 1)
        {
            for (to = from; to + 1 < rows.Length && rows[to + 1] == rows[to] + 1;)
                to++;
            spans.Add(from == to ? string.Create(CultureInfo.InvariantCulture, $"{rows[from]}") : string.Create(CultureInfo.InvariantCulture, $"{rows[from]} to {rows[to]}"));
        }

        return rows.Length == 0 ? "" : (rows.Length == 1 ? "row " : "rows ") + string.Join(", ", spans);
    }

    /// <summary>In words: value, formula, inputs, shares of the variance, readings.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        var expanded = ExpandedUncertainty.Of(Value);
        text.Append(CultureInfo.InvariantCulture, $"{Name}: {Address} = ");
        text.Append(Value.U > 0
            ? string.Create(CultureInfo.InvariantCulture, $"{RoundedNumber.Of(Value.Value, expanded.U).PlusMinus} {Unit} (95 %, k = {expanded.K:0.##})")
            : $"{RoundedNumber.WithoutUncertainty(Value.Value).PlusMinus} {Unit} (no uncertainty: none of its inputs has one)");
        text.Append('\n').Append("formula    ").Append(Formula).Append('\n');
        foreach (var input in Inputs)
        {
            text.Append(CultureInfo.InvariantCulture, $"input      {input.Symbol,-3} {RoundedNumber.Shown(input.Value.Value, input.Value.U)} {input.Unit}  <- {input.From}{(input.Trail is null ? "" : ", trail " + input.Trail)}\n");
        }

        if (Carried is { } carried)
            text.Append(CultureInfo.InvariantCulture, $"carried in ± {RoundedNumber.WithoutUncertainty(carried.U, significant: 2).PlusMinus} {Unit} (standard uncertainty) by the inputs alone; the shares are of it\n");
        foreach (var row in Budget.Rows)
            text.Append(CultureInfo.InvariantCulture, $"variance   {row.Share,5:0.0} %  {row.Name}{(row.RecordedIn is null ? "" : " <- " + row.RecordedIn)}\n");
        if (Fit is { } fit)
        {
            text.Append("fit        ").Append(fit.How).Append('\n');
            foreach (var point in fit.Points)
                text.Append(CultureInfo.InvariantCulture, $"point      {point.Name}  {fit.X} {InWords.Plain(point.X)}, {fit.Y} {InWords.Plain(point.Y)}, fitted {InWords.Plain(point.Fitted)}{(point.Trail is null ? "" : "  <- trail " + point.Trail)}\n");
            foreach (var cells in Cells)
                text.Append("readings   ").Append(cells).Append('\n');
            return text.ToString().TrimEnd('\n');
        }

        foreach (var reading in Readings)
            text.Append(CultureInfo.InvariantCulture, $"reading    {reading.Id}  {reading.Written}{(reading.Dilution == 1 ? "" : $" at dilution {reading.Dilution:R}")}  <- {reading.Origin}\n");
        return text.ToString().TrimEnd('\n');
    }

    private static NumberTrail? One(Vessel vessel, string address, string what, Measured? value, string unit, string formula, params TrailInput?[] inputs)
        => value is { } known
            ? new NumberTrail(address, $"{what} of {vessel.Code}", known, unit, formula, [.. inputs.OfType<TrailInput>()], vessel.End?.Readings ?? []) { Samples = [vessel.Code] }
            : null;

    private static TrailInput? Start(Vessel vessel)
        => vessel.Start is { } value ? new("C0", value, "mg/L", Recorded(vessel, BatchProperties.InitialConcentration) ?? "start solution as read") : null;

    private static TrailInput? Volume(Vessel vessel)
        => vessel.Volume is { } value ? new("V", value, "mL", Recorded(vessel, BatchProperties.Volume) ?? "not recorded") : null;

    private static TrailInput? Mass(Vessel vessel)
        => vessel.Mass is { } value ? new("m", value, "mg", Recorded(vessel, BatchProperties.Mass) ?? "not recorded") : null;

    private static TrailInput? Left(Vessel vessel, Evidence evidence)
    {
        if (vessel.End is not { Value: { } value } end)
            return null;
        var runs = end.Readings.Select(r => r.Run).Distinct(StringComparer.Ordinal).ToArray();
        var lenders = evidence.Runs.Where(r => runs.Contains(r.Run.Id) && r.Curve is not null).Select(r => r.BorrowedFrom ?? r.Run.Id).Distinct(StringComparer.Ordinal);
        return new("Ce", value, "mg/L", string.Create(CultureInfo.InvariantCulture,
            $"{end.Readings.Length} readings in {string.Join(", ", runs)}, calibration {string.Join(", ", lenders)}"));
    }

    private static string? Recorded(Vessel vessel, Property property) => vessel.Sample.Fact(property)?.Origin.ToString();
}

/// <summary>One input of a number.</summary>
/// <param name="Symbol">Its symbol in the formula.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="From">Where it was recorded or read.</param>
/// <param name="Trail">Address of its own trail, where it has one; null where it has none.</param>
public sealed record TrailInput(string Symbol, Measured Value, string Unit, string From, string? Trail = null);
