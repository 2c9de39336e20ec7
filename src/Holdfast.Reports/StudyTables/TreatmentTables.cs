using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.StudyTables;

/// <summary>Doses in stages, and runs through beds.</summary>
internal static class TreatmentTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nr"] = "something it needs is not recorded",
        ["nb"] = "the outlet never reached 5 % of the inlet",
        ["nd"] = "the curve did not settle",
    };

    /// <summary>One row a water and limit.</summary>
    public static Table Stages(StagePlans plans)
        => new(
            "stages",
            "Sorbent for one cubic metre, by the isotherm",
            [
                new Column("water", "Water") { NamesRows = true },
                new Column("inlet", "Inlet") { Unit = "mg/L" },
                new Column("limit", "Limit") { Unit = "mg/L" },
                new Column("single", "One stage") { Unit = "kg/m^3" },
                new Column("cross", "Two, fresh in each") { Unit = "kg/m^3" },
                new Column("counter", "Two, against the water") { Unit = "kg/m^3" },
                new Column("floor", "Floor of many stages") { Unit = "kg/m^3" },
            ],
            [.. plans.Plans.Select(p => Row.Of(
                p.Water, new NumberCell(p.Stages.Inlet.Value), new NumberCell(p.Stages.Target),
                Wide(p.Stages.Single, "m1", TreatmentNumbers.Name(p)), Wide(p.Stages.Cross.Total, "m2-fresh", TreatmentNumbers.Name(p)), Wide(p.Stages.Counter.Dose, "m2-counter", TreatmentNumbers.Name(p)),
                Wide(p.Stages.Floor, "m-floor", TreatmentNumbers.Name(p))))])
        {
            Notes =
            [
                "± is the 95 % uncertainty from the parameters of the isotherm with their covariance. 1 kg/m³ is 1 g/L.",
                "A plan, not a measurement: the isotherm’s water, pH and temperature, and equilibrium in every stage.",
            ],
        };

    /// <summary>One row a run.</summary>
    public static Table Beds(ColumnStudy study)
        => new(
            "beds",
            "Runs through a bed",
            [
                new Column("run", "Run") { NamesRows = true },
                new Column("depth", "Depth") { Unit = "cm" },
                new Column("flow", "Flow") { Unit = "mL/min" },
                new Column("inlet", "Inlet") { Unit = "mg/L" },
                new Column("break_time", "Break at 5 %") { Unit = "min" },
                new Column("total", "Total time") { Unit = "min" },
                new Column("unused", "Unused length") { Unit = "cm" },
                new Column("capacity", "Capacity by integration") { Unit = "mg/g" },
                new Column("k", RichText.Parse("*k*")) { Unit = "min^-1", Spoken = "steepness of the logistic" },
                new Column("tau", RichText.Parse("*τ*")) { Unit = "min", Spoken = "time at half of the inlet" },
            ],
            [.. study.Runs.Select(One)],
            Codes)
        {
            Notes =
            [
                "Times by the trapezium rule and straight interpolation; ± is the 95 % uncertainty from the outlet readings where they came with one, for k and τ the standard error of the fit.",
                "k and τ are fitted once. Thomas’s, Yoon and Nelson’s and Bohart and Adams’s constants are these two in other letters: k/C₀ = k_Th = k_BA, τ = q₀m/(C₀Q) = N₀Z/(C₀U).",
            ],
        };

    private static Row One(BedRun run) => Row.Of(
        run.Name,
        Known(run.Depth),
        Known(run.Flow),
        new NumberCell(run.Inlet),
        run.BreakTime is { } end ? Wide(end, "tb", run.Name) : new MissingCell("nb"),
        Wide(run.TotalTime, "tt", run.Name),
        run.UnusedLength is { } length ? Wide(length, "LUB", run.Name) : new MissingCell(run.BreakTime is null ? "nb" : "nr"),
        run.Capacity is { } capacity ? Wide(capacity, "qb", run.Name) : new MissingCell("nr"),
        Fitted(run.Curve, 0, "k:" + run.Name),
        Fitted(run.Curve, 1, "tau:" + run.Name));

    private static Cell Known(double? value)
    {
        if (value is { } known)
            return new NumberCell(known);
        return new MissingCell("nr");
    }

    private static Cell Fitted(FitResult fit, int parameter, string address)
    {
        if (!fit.IsFit)
            return new MissingCell("nd");
        var p = fit.Parameters[parameter];
        return p.StandardError is { } se ? new MeasuredCell(p.Value, se) { Address = address } : new NumberCell(p.Value) { Address = address };
    }

    private static Cell Wide(Measured value, string kind, string of)
    {
        if (value.U > 0)
            return new MeasuredCell(value.Value, ExpandedUncertainty.Of(value).U) { Address = $"{kind}:{of}" };
        return new NumberCell(value.Value) { Address = $"{kind}:{of}" };
    }
}
