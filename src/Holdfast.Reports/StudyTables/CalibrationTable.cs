using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Calibration lines, their limits and what check standards gave.</summary>
public static class CalibrationTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["na"] = "does not apply",
        ["nd"] = "cannot be tested with these standards",
        ["nl"] = "the definition gives no interval of its own",
        ["off"] = "the reading lies off the line",
    };

    /// <summary>One row a run that has a line of its own.</summary>
    /// <param name="runs">Calibrated runs.</param>
    /// <param name="forFiles">True for p values with every digit, as data files want.</param>
    public static Table Of(IEnumerable<CalibratedRun> runs, bool forFiles = false)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return new Table(
            "calibration",
            "Calibration lines",
            [
                new Column("run", "Run") { NamesRows = true },
                new Column("shape", "Shape"),
                new Column("levels", "Levels"),
                new Column("readings", "Readings"),
                new Column("top", "Up to") { Unit = "mg/L" },
                new Column("slope", "Slope") { Unit = "L/mg" },
                new Column("intercept", "Intercept"),
                new Column("s", RichText.Parse("*s*")) { Spoken = "residual standard deviation" },
                new Column("mandel_p", RichText.Parse("Mandel *p*")),
                new Column("lack_of_fit_p", RichText.Parse("lack of fit *p*")),
                new Column("blanks", "Blanks"),
            ],
            [.. runs.Where(r => r is { Curve: not null, BorrowedFrom: null }).Select(r => One(r, r.Curve!, forFiles))],
            Codes)
        {
            Notes = ["Slope and intercept ± standard uncertainty, absorbance against mg/L. Mandel's test is judged at 0.01, lack of fit at 0.05."],
        };
    }

    /// <summary>One row a definition of a limit and run.</summary>
    /// <param name="runs">Calibrated runs.</param>
    public static Table Limits(IEnumerable<CalibratedRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return new Table(
            "limits",
            "Limits of detection and quantification, each with its definition",
            [
                new Column("definition", "Definition") { NamesRows = true },
                new Column("run", "Run"),
                new Column("limit", "Limit") { Unit = "mg/L" },
                new Column("low", "95 % from") { Unit = "mg/L" },
                new Column("high", "to") { Unit = "mg/L" },
                new Column("n", RichText.Parse("*n*")) { Spoken = "readings behind it" },
                new Column("used", "Used here for"),
            ],
            [.. runs.Where(r => r is { Curve: not null, BorrowedFrom: null }).SelectMany(r => r.Curve!.Limits.All.Select(l => One(r, r.Curve!.Limits, l)))],
            Codes)
        {
            Notes = ["In the solution that was read, before dilution. s₀: standard deviation of n₀ blanks; b: slope; the interval follows from the chi-square scatter of that standard deviation."],
        };
    }

    /// <summary>One row a check standard; null when none was read.</summary>
    /// <param name="runs">Calibrated runs.</param>
    public static Table? Checks(IEnumerable<CalibratedRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        Row[] rows = [.. runs.SelectMany(r => r.Checks.Select(c => Row.Of(
            c.Code,
            r.Run.Id,
            new NumberCell(c.Order) { Decimals = 0 },
            new NumberCell(c.Known),
            c.Found is { } found ? MeasuredCell.Of(found) : new MissingCell("off"),
            c.Recovery is { } recovery ? new NumberCell(recovery) { Decimals = 1 } : new MissingCell("off"))))];
        return rows.Length == 0 ? null : new Table(
            "checks",
            "Check standards",
            [
                new Column("check", "Check standard") { NamesRows = true },
                new Column("run", "Run"),
                new Column("order", "Place in the run"),
                new Column("known", "Known") { Unit = "mg/L" },
                new Column("found", "Found") { Unit = "mg/L" },
                new Column("recovery", "Recovery") { Unit = "%" },
            ],
            rows,
            Codes)
        {
            Notes = ["Found ± standard uncertainty."],
        };
    }

    private static Row One(CalibratedRun run, CalibrationCurve curve, bool forFiles) => Row.Of(
        run.Run.Id,
        Shape(curve.Kind),
        new NumberCell(curve.Standards.Select(s => s.Level).Distinct().Count()) { Decimals = 0 },
        new NumberCell(curve.Standards.Count) { Decimals = 0 },
        new NumberCell(curve.Top),
        Coefficient(curve, 1),
        Coefficient(curve, 0),
        new NumberCell(curve.Fit.ResidualSd) { Decimals = curve.Fit.ResidualSd > 0 ? Math.Clamp(RoundedNumber.DecimalsFor(curve.Fit.ResidualSd), 0, 8) : 0 },
        P(curve.Linearity.Mandel, forFiles),
        P(curve.Linearity.LackOfFit, forFiles),
        new NumberCell(run.Blanks.Length) { Decimals = 0 });

    private static Row One(CalibratedRun run, DetectionLimits limits, DetectionLimit limit) => Row.Of(
        limit.Formula,
        run.Run.Id,
        limit.Interval is { } i ? new NumberCell(limit.Value) { Decimals = Places(i.Half) } : new NumberCell(limit.Value),
        limit.Interval is { } low ? new NumberCell(low.Low) { Decimals = Places(low.Half) } : new MissingCell("nl"),
        limit.Interval is { } high ? new NumberCell(high.High) { Decimals = Places(high.Half) } : new MissingCell("nl"),
        new NumberCell(limit.N) { Decimals = 0 },
        limit == limits.Detection ? "detection limit" : limit == limits.Quantification ? "limit of quantification" : limit == limits.Critical ? "critical value" : "comparison only");

    private static Cell Coefficient(CalibrationCurve curve, int power)
        => power == 0 && curve.Fit.ThroughOrigin ? new MissingCell("na")
            : curve.Fit.Coefficient(power) is { } c && double.IsFinite(c.StandardError) ? new MeasuredCell(c.Value, c.StandardError)
            : new NumberCell(curve.Fit.Coefficients[power]);

    private static Cell P(Statistics.FTest? test, bool forFiles)
        => test is not { P: var p } || !double.IsFinite(p) ? new MissingCell("nd") : p < 0.001 && !forFiles ? "< 0.001" : new NumberCell(p) { Decimals = 3 };

    private static int Places(double u) => u > 0 ? Math.Clamp(RoundedNumber.DecimalsFor(u), 0, 8) : 4;

    private static string Shape(CurveKind kind) => kind switch
    {
        CurveKind.Line => "straight line",
        CurveKind.LineThroughZero => "straight line through zero",
        _ => "quadratic",
    };
}
