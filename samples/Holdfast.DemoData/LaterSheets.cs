namespace Holdfast.DemoData;

/// <summary>What the student did later, at the bench and at the spectrometer: rates at more temperatures, packed beds, the point of zero charge.</summary>
public static class LaterSheets
{
    private const string Invented = "invented demo data";
    private const string Material = "EHA-2";
    private const string Water = "0.01 mol/L NaNO3";

    /// <summary>The files.</summary>
    /// <param name="study">The invented study.</param>
    /// <param name="calibration">Name of the run whose line the later runs use.</param>
    public static IEnumerable<DemoFile> Of(InventedStudy study, string calibration)
    {
        ArgumentNullException.ThrowIfNull(study);
        yield return SpectrometerRun.Following("aas-run5", "2026-03-09", calibration, study.Rates).ToText(".csv", Dialect.Comma);
        yield return Rates(study);
        yield return Beds(study);
        yield return ZeroCharges(study);
    }

    private static DemoFile Rates(InventedStudy study) => DemoFile.Text("warm-cold.csv",
    [
        "sample,series,role,sorbent batch,material,C0 (mg/L),V (mL),m (mg),t (min),pH start,pH end,temperature (°C),water,remark",
        .. study.Rates.Select(v => Dialect.Comma.Line(
            v.Code, v.Series, v.Role, "B1", Material, v.C0, v.Volume, v.Mass, v.Minutes, v.StartPh, v.EndPh, v.Celsius, v.Matrix, Invented)),
    ]);

    private static DemoFile Beds(InventedStudy study) => DemoFile.Text("beds.csv",
    [
        "sample,series,role,sorbent batch,material,C0 (mg/L),time on stream (min),outlet concentration (mg/L),u(outlet concentration) (mg/L),bed depth (cm),bed mass (g),"
            + "flow (mL/min),velocity (cm/min),held liquid (mL),pH start,temperature (°C),water,remark",
        .. study.Outlets.Select(p => Dialect.Comma.Line(
            p.Code, p.Bed.Name, "outlet", "L1", Material, PackedBed.Inlet, p.Minutes, p.Concentration, p.U, p.Bed.Depth, p.Bed.Mass,
            PackedBed.Flow, PackedBed.Velocity, p.Bed.Held, 6, 25, Water, Invented)),
    ]);

    private static DemoFile ZeroCharges(InventedStudy study) => DemoFile.Text("zero-charge.csv",
    [
        "sample,series,role,sorbent batch,material,ionic strength (mol/L),V (mL),m (mg),t (min),pH start,pH end,temperature (°C),water,remark",
        .. study.ZeroCharges.Select(z => Dialect.Comma.Line(
            z.Code, "DRIFT", "sorbent blank", "L1", Material, z.Salt, 10, 100, 1440, z.StartPh, z.EndPh, 25, z.Salt < 0.05 ? Water : "0.1 mol/L NaNO3", Invented)),
    ]);
}
