using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyTables;

/// <summary>Vessels with what went in, what was read and what follows from it.</summary>
public static class VesselTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["np"] = "does not apply: removal is of vessels with powder, loss of controls without",
        ["nr"] = "not recorded",
        ["nw"] = "not worked out, because something it needs is missing",
    };

    /// <summary>One row a vessel; struck ones keep their row.</summary>
    /// <param name="name">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="vessels">The vessels.</param>
    /// <param name="evidence">The study worked out: it tells which vessels stand on a check standard that failed.</param>
    public static Table Of(string name, string caption, IEnumerable<Vessel> vessels, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(vessels);
        var withLoss = vessels.Any(v => v.Sample.Role == SampleRole.Control);
        Row[] rows = [.. vessels.Select(v => One(v, withLoss) with { Doubtful = FailedCheck.Of(evidence).Any(c => c.Samples.Contains(v.Code)) })];
        var failed = FailedCheck.Of(evidence).Where(c => vessels.Any(v => c.Samples.Contains(v.Code)));
        return new Table(
            name,
            caption,
            [
                new Column("sample", "Sample") { NamesRows = true },
                new Column("series", "Series"),
                new Column("role", "Role"),
                Column.Of("c0", "C_0", "mg/L", "concentration at the start"),
                Column.Of("v", "V", "mL", "volume of liquid"),
                Column.Of("m", "m", "mg", "mass of sorbent"),
                Column.Of("t", "t", "min", "contact time"),
                Column.Of("ph_start", "pH_0", null, "pH at the start"),
                Column.Of("ph_end", "pH_e", null, "pH at the end"),
                Column.Of("ce", "C_e", "mg/L", "concentration left"),
                Column.Of("removal", "R", "%", "removal"),
                .. withLoss ? [Column.Of("loss", "L", "%", "lost from a control, which holds no powder")] : Array.Empty<Column>(),
                Column.Of("q", "q", "mg/g", "uptake"),
                Column.Of("kd", "K_d", "L/g", "distribution coefficient"),
            ],
            rows,
            Codes)
        {
            Notes = ["± is the standard uncertainty, k = 1. One row is one vessel.", .. failed.Select(c => (RichText)("†: " + c.Sentence))],
        };
    }

    // What goes from a control without powder is a loss, and no removal by it.
    private static Row One(Vessel vessel, bool withLoss)
        => new(
        [
            vessel.Code,
            vessel.Sample.Series ?? "",
            InWords.Of(vessel.Sample.Role),
            Recorded(vessel.Start),
            Recorded(vessel.Volume),
            Recorded(vessel.Mass),
            Recorded(vessel, BatchProperties.ContactTime),
            Recorded(vessel, BatchProperties.StartPh),
            Recorded(vessel, BatchProperties.EndPh),
            Left(vessel),
            vessel.Sample.Role == SampleRole.Control ? new MissingCell("np") : vessel.LeastRemoval is { } least ? new TextCell(MoreThan(least)) { Address = "R:" + vessel.Code } : Worked(vessel.Removal, "R:" + vessel.Code),
            .. withLoss ? [vessel.Sample.Role == SampleRole.Control ? Worked(vessel.Removal, "R:" + vessel.Code) : new MissingCell("np")] : Array.Empty<Cell>(),
            vessel.UptakeRange is { } range ? new TextCell(RoundedNumber.Interval(range.Low, range.High)) { Address = "q:" + vessel.Code } : Worked(vessel.Uptake, "q:" + vessel.Code),
            Worked(vessel.Distribution, "Kd:" + vessel.Code),
        ])
        {
            Struck = vessel.IsStruck,
        };

    // What a binary fraction may lack of the decimal one that it stands for.
    private const double Binary = 1e-9;

    // Digits as far as the limit itself moves the removal, rounded down: never more than was shown.
    private static string MoreThan(double least)
    {
        var decimals = Math.Clamp(RoundedNumber.DecimalsFor(100 - least), 0, 8);
        var scale = Math.Pow(10, decimals);
        return "> " + RoundedNumber.Fixed(Math.Floor((least * scale) + Binary) / scale, decimals);
    }

    private static Cell Left(Vessel vessel)
    {
        Cell cell = vessel.End switch
        {
            { IsBelowDetection: true, DetectionLimit: { } limit } end => new CensoredCell(CensoredSide.Below, limit, end.IsOnlyBelow ? null : "LOD"),
            { Value: { } value } => MeasuredCell.Of(value),
            _ => new MissingCell("nw"),
        };
        return cell is MissingCell ? cell : cell with { Address = "Ce:" + vessel.Code };
    }

    private static Cell Worked(Measured? value, string address)
    {
        Cell cell = value is { } known ? MeasuredCell.Of(known) : new MissingCell("nw");
        return cell is MissingCell ? cell : cell with { Address = address };
    }

    private static Cell Recorded(Measured? value) => value is { } known ? MeasuredCell.Of(known) : new MissingCell("nr");

    private static Cell Recorded(Vessel vessel, Property property)
        => vessel.Sample.Number(property) is { } value ? new NumberCell(value) : new MissingCell("nr");
}
