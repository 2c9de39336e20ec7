using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Workbooks;

/// <summary>
/// The way from readings to q as live cells. A formula stands only where it gives the dossier's number; where a concentration came by another way, its value stands
/// there and the note says so.
/// </summary>
internal sealed class FollowedVessels
{
    private const string CalibrationSheet = "Calibration";
    private const string ReadingSheet = "Readings";
    private const string PortionSheet = "Portions";
    private const string VesselSheet = "Vessels";

    // Two ways through the same arithmetic differ in the last bits only.
    private const double Same = 1e-9;

    private readonly Line[] lines;
    private readonly List<(Reading Reading, int Row)> readings = [];
    private readonly List<Portion> portions = [];
    private readonly List<(Vessel Vessel, Portion[] Portions)> vessels = [];

    /// <summary>Sets every vessel's readings and portions in rows.</summary>
    /// <param name="evidence">The study worked out.</param>
    public FollowedVessels(Evidence evidence)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        lines = [.. evidence.Runs
            .SelectMany(r => new[] { (Run: r.Run.Id, r.Curve, IsBent: false), (Run: r.Run.Id, Curve: r.Curve?.Bent, IsBent: true) }).Where(l => l.Curve is not null)
            .Select((l, i) => new Line(l.Run, l.Curve!, l.IsBent, Named(l.Run + (l.IsBent ? "_bent" : ""), taken), BookSheet.FirstRow + i))];
        foreach (var vessel in evidence.Vessels)
        {
            var own = new List<Portion>();
            foreach (var group in (vessel.End?.Readings ?? []).Where(r => r.Value is not null).GroupBy(r => (r.Run, r.Portion, r.Dilution)).OrderBy(g => g.Min(r => r.Order)))
            {
                var from = BookSheet.FirstRow + readings.Count;
                readings.AddRange(group.Select((r, i) => (r, from + i)));
                var portion = new Portion(vessel.Code, [.. group], from, BookSheet.FirstRow + portions.Count, Array.Find(lines, l => l.Gives(group)));
                portions.Add(portion);
                own.Add(portion);
            }

            vessels.Add((vessel, [.. own]));
        }
    }

    /// <summary>The lines, a row each; their coefficients bear names.</summary>
    public BookSheet Calibrations() => new(
        CalibrationSheet, "The line of each run: reading against concentration",
        ["Run", "Shape", "Intercept", "Slope", "Curvature", "Concentrations times", "Up to", "Name of the slope"],
        ["", "", "reading", "reading per unit of concentration", "reading per square", "", "mg/L", ""],
        [.. lines.Select(l => (IReadOnlyList<BookCell>)
        [
            BookCell.Of(l.Run), BookCell.Of(l.Curve.Kind switch { CurveKind.Line => "straight line", CurveKind.LineThroughZero => "straight line through zero", _ => "quadratic" }),
            BookCell.Of(l.Coefficient(0)), BookCell.Of(l.Coefficient(1)), BookCell.Of(l.Coefficient(2)), BookCell.Of(l.Curve.Options.StandardScale.Value), BookCell.Of(l.Curve.Top), BookCell.Of("slope_" + l.Name),
        ])]);

    /// <summary>What the instrument showed, those of one portion one under the other.</summary>
    public BookSheet Readings() => new(
        ReadingSheet, "Readings behind the vessels, as the instrument gave them",
        ["Reading", "Sample", "Run", "Portion", "Dilution", "Signal", "Shown", "From"], ["", "", "", "", "", "", "as the signal", ""],
        [.. readings.Select(r => (IReadOnlyList<BookCell>)
        [
            BookCell.Of(r.Reading.Id), BookCell.Of(r.Reading.Sample), BookCell.Of(r.Reading.Run), BookCell.Of(r.Reading.Portion, 0), BookCell.Of(r.Reading.Dilution), BookCell.Of(r.Reading.Signal),
            BookCell.Of(r.Reading.Value), BookCell.Of(r.Reading.Origin.ToString()),
        ])]);

    /// <summary>Portions: mean reading, concentration on the line, times the dilution.</summary>
    public BookSheet Portions() => new(
        PortionSheet, "Portions that were read: mean reading to concentration",
        ["Sample", "Run", "Mean reading", "Dilution", "On the line", "In the vessel", "How"], ["", "", "as the signal", "", "mg/L", "mg/L", ""],
        [.. portions.Select(p => (IReadOnlyList<BookCell>)
        [
            BookCell.Of(p.Sample), BookCell.Of(p.Readings[0].Run),
            new FormulaCell($"AVERAGE({ReadingSheet}!{BookFile.Cell(6, p.From)}:{BookFile.Cell(6, p.From + p.Readings.Length - 1)})", p.Mean, 5),
            new FormulaCell($"{ReadingSheet}!{BookFile.Cell(4, p.From)}", p.Readings[0].Dilution, null),
            p.Formula is { } formula ? new FormulaCell(formula, p.OnLine!.Value, 4) : BookCell.Of(p.OnLine, 4),
            p.OnLine is { } found ? new FormulaCell($"{BookFile.Cell(4, p.Row)}*{BookFile.Cell(3, p.Row)}", found * p.Readings[0].Dilution, 4) : BookCell.Of(""),
            BookCell.Of(p.Line is { } line ? $"line of {line.Run}{(line.IsBent ? ", the quadratic over all standards" : "")}" : p.IsReported ? "the concentration as reported" : "no line"),
        ])]);

    /// <summary>Vessels: dose, removal, uptake and distribution coefficient from what stands before them in the row.</summary>
    public BookSheet Vessels()
    {
        var rows = new List<IReadOnlyList<BookCell>>();
        foreach (var (vessel, own) in vessels)
        {
            var row = BookSheet.FirstRow + rows.Count;
            string At(VesselColumn column) => BookFile.Cell((int)column, row);
            var (start, left, volume, mass) = (vessel.Start?.Value, vessel.End?.Value?.Value, vessel.Volume?.Value, vessel.Mass?.Value);
            var (c0, ce, v, m, d) = (At(VesselColumn.Start), At(VesselColumn.Left), At(VesselColumn.Volume), At(VesselColumn.Mass), At(VesselColumn.Dose));
            var whole = mass is not null && volume is not null;
            rows.Add(
            [
                BookCell.Of(vessel.Code), BookCell.Of(vessel.Sample.Series ?? ""), BookCell.Of(InWords.Of(vessel.Sample.Role)), BookCell.Of(vessel.IsStruck ? "struck" : ""),
                BookCell.Of(start, 3), BookCell.Of(vessel.Start?.U, 4), BookCell.Of(volume, 3), BookCell.Of(mass, 2),
                BookCell.Of(vessel.Sample.Number(BatchProperties.ContactTime)), BookCell.Of(vessel.Sample.Number(BatchProperties.StartPh)), BookCell.Of(vessel.Sample.Number(BatchProperties.EndPh)),
                Checked(own.Length == 0 ? null : Average(own), own.Length == 0 ? null : own.Average(p => p.InVessel ?? double.NaN), left, 4),
                BookCell.Of(vessel.End?.Value?.U, 4), BookCell.Of(vessel.End?.DetectionLimit, 4), BookCell.Of(vessel.End switch { { IsOnlyBelow: true } => "reported only as below the limit", { IsBelowDetection: true } => "below the detection limit", _ => "" }),
                Checked(whole ? $"{m}/{v}" : null, mass / volume, vessel.Dose?.Value, 3),
                Checked($"100*({c0}-{ce})/{c0}", 100 * (start - left) / start, vessel.Removal?.Value, 2),
                BookCell.Of(vessel.Removal?.U, 2),
                Checked(whole ? $"({c0}-{ce})*{v}/{m}" : $"({c0}-{ce})/{d}", whole ? (start - left) * volume / mass : (start - left) / vessel.Dose?.Value, vessel.Uptake?.Value, 3),
                BookCell.Of(vessel.Uptake?.U, 3),
                Checked(whole ? $"({c0}-{ce})/{ce}*{v}/{m}" : $"({c0}-{ce})/{ce}/{d}", whole ? (start - left) / left * volume / mass : (start - left) / left / vessel.Dose?.Value, vessel.Distribution?.Value, 4),
                BookCell.Of(vessel.Distribution?.U, 4),
            ]);
        }

        return new(
            VesselSheet, "Vessels, controls and other samples: q can be followed from cell to cell",
            ["Sample", "Series", "Role", "Struck", "C0", "u(C0)", "V", "m", "t", "pH at the start", "pH at the end", "Ce", "u(Ce)", "Detection limit", "Ce is", "D", "R", "u(R)", "q", "u(q)", "Kd", "u(Kd)"],
            ["", "", "", "", "mg/L", "mg/L", "mL", "mg", "min", "", "", "mg/L", "mg/L", "mg/L", "", "g/L", "%", "%", "mg/g", "mg/g", "L/g", "L/g"],
            rows);
    }

    /// <summary>Names of the coefficients and of the columns of vessels.</summary>
    public IReadOnlyList<BookName> Names()
    {
        var names = new List<BookName>();
        foreach (var line in lines)
        {
            names.Add(new("intercept_" + line.Name, CalibrationSheet, BookFile.Cell(2, line.Row)));
            names.Add(new("slope_" + line.Name, CalibrationSheet, BookFile.Cell(3, line.Row)));
            names.Add(new("curvature_" + line.Name, CalibrationSheet, BookFile.Cell(4, line.Row)));
            names.Add(new("scale_" + line.Name, CalibrationSheet, BookFile.Cell(5, line.Row)));
        }

        if (vessels.Count > 0)
        {
            names.AddRange(new[] { (VesselColumn.Start, "vessel_C0"), (VesselColumn.Volume, "vessel_V"), (VesselColumn.Mass, "vessel_m"), (VesselColumn.Left, "vessel_Ce"), (VesselColumn.Removal, "vessel_removal"), (VesselColumn.Uptake, "vessel_q") }
                .Select(n => new BookName(n.Item2, VesselSheet, BookFile.Cell((int)n.Item1, BookSheet.FirstRow), BookFile.Cell((int)n.Item1, BookSheet.FirstRow + vessels.Count - 1))));
        }

        return names;
    }

    private static string Average(Portion[] own)
        => $"AVERAGE({PortionSheet}!{BookFile.Cell(5, own[0].Row)}:{BookFile.Cell(5, own[^1].Row)})";

    // A formula where it gives the dossier's number, else that number alone.
    private static BookCell Checked(string? formula, double? gives, double? known, int decimals)
        => known is { } value && double.IsFinite(value) && formula is not null && gives is { } worked && Math.Abs(worked - value) <= Same * Math.Max(Math.Abs(value), Same)
            ? new FormulaCell(formula, value, decimals)
            : BookCell.Of(known, decimals);

    private static string Named(string run, HashSet<string> taken)
    {
        var name = string.Concat(run.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_'));
        for (var n = 2; !taken.Add(name); n++)
            name = string.Create(CultureInfo.InvariantCulture, $"{name}_{n}");
        return name;
    }

    // Places of the columns that formulas point to, in the order of the sheet.
    private enum VesselColumn
    {
        Start = 4,
        Volume = 6,
        Mass = 7,
        Left = 11,
        Dose = 15,
        Removal = 16,
        Uptake = 18,
    }

    private sealed record Line(string Run, CalibrationCurve Curve, bool IsBent, string Name, int Row)
    {
        public double Coefficient(int power) => power < Curve.Fit.Coefficients.Length ? Curve.Fit.Coefficients[power] : 0;

        public double At(double reading)
        {
            var (a, b, c) = (Coefficient(2), Coefficient(1), Coefficient(0));
            return (a == 0 ? (reading - c) / b : (-b + Math.Sqrt((b * b) - (4 * a * (c - reading)))) / (2 * a)) * Curve.Options.StandardScale.Value;
        }

        public string Formula(string reading) => Coefficient(2) == 0
            ? $"({reading}-intercept_{Name})/slope_{Name}*scale_{Name}"
            : $"(-slope_{Name}+SQRT(slope_{Name}^2-4*curvature_{Name}*(intercept_{Name}-{reading})))/(2*curvature_{Name})*scale_{Name}";

        // Which of a run's lines a portion was read on is seen from what it gave.
        public bool Gives(IEnumerable<Reading> group)
        {
            Reading[] all = [.. group];
            if (all[0].Run != Run || !SpectrometryProperties.IsCalibrated(all[0].Signal))
                return false;
            var mean = all.Average(r => r.Value!.Value);
            return Curve.Read("portion", [.. all.Select(r => r.Value!.Value)]).Signed is { } read && Math.Abs(read.Value - At(mean)) <= Same * Math.Max(Math.Abs(read.Value), Same);
        }
    }

    private sealed record Portion(string Sample, ImmutableArray<Reading> Readings, int From, int Row, Line? Line)
    {
        public double Mean { get; } = Readings.Average(r => r.Value!.Value);

        public bool IsReported => Readings[0].Signal == SpectrometryProperties.ReportedConcentration.Name;

        public double? OnLine => Line is { } line ? line.At(Mean) : IsReported ? Mean : null;

        public double? InVessel => OnLine * Readings[0].Dilution;

        public string? Formula => Line is { } line ? line.Formula(BookFile.Cell(2, Row)) : IsReported ? BookFile.Cell(2, Row) : null;
    }
}
