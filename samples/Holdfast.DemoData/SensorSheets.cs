namespace Holdfast.DemoData;

/// <summary>The sensing sheets of the invented study, and what the student wants to write about the sensor.</summary>
public static class SensorSheets
{
    private const string Invented = "invented demo data";

    private static readonly string[] Instrument =
    [
        "Remark,INVENTED demo data: nothing was measured",
        "Instrument,spectrofluorometer (invented)",
        "Excitation,394 nm",
        "Emission,616 nm",
    ];

    /// <summary>The files.</summary>
    /// <param name="sensor">The invented sensor.</param>
    public static IEnumerable<DemoFile> Of(Sensor sensor)
    {
        ArgumentNullException.ThrowIfNull(sensor);
        yield return Signals("fluor.csv", [.. sensor.Blanks, .. sensor.Quenching]);
        yield return DemoFile.Text("fluor-drift.csv",
        [
            .. Instrument,
            "sample,series,role,quencher (µmol/L),exposure (min),F (a.u.),dispersion (g/L),water,remark",
            .. sensor.Drift.Select(v => Dialect.Comma.Line(v.Code, v.Series, v.Role, v.Quencher, v.Minutes, v.Read, Sensor.Dispersion, v.Matrix, Invented)),
        ]);
        yield return DemoFile.Text("lifetimes.csv",
        [
            .. Instrument,
            "sample,series,role,quencher (µmol/L),A_ex,A_em,lifetime (ms),dispersion (g/L),water,remark",
            .. sensor.Lifetimes.Select(v => Dialect.Comma.Line(v.Code, v.Series, v.Role, v.Quencher, v.Excitation, v.Emission, v.Read, Sensor.Dispersion, v.Matrix, Invented)),
        ]);
        yield return DemoFile.Text("interference.csv",
        [
            .. Instrument,
            "sample,series,role,quencher (µmol/L),other ion,other ion concentration (µmol/L),A_ex,A_em,F (a.u.),dispersion (g/L),water,remark",
            .. sensor.Interference.Select(v => Dialect.Comma.Line(
                v.Code, v.Series, v.Role, v.Quencher, v.Ion, v.IonConcentration, v.Excitation, v.Emission, v.Read, Sensor.Dispersion, v.Matrix, Invented)),
        ]);
        yield return DemoFile.Text("spikes.csv",
        [
            "sample,series,role,added (µmol/L),found (µmol/L),dispersion (g/L),water,remark",
            .. sensor.Spikes.Select(v => Dialect.Comma.Line(v.Code, v.Series, v.Role, v.Added, v.Read, Sensor.Dispersion, v.Matrix, Invented)),
        ]);
        yield return Claims();
    }

    private static DemoFile Signals(string name, IEnumerable<SensorVessel> vessels) => DemoFile.Text(name,
    [
        .. Instrument,
        "sample,series,role,quencher (µmol/L),F (a.u.),dispersion (g/L),water,remark",
        .. vessels.Select(v => Dialect.Comma.Line(v.Code, v.Series, v.Role, v.Quencher, v.Read, Sensor.Dispersion, v.Matrix, Invented)),
    ]);

    private static DemoFile Claims() => DemoFile.Text("claims-sensing.csv",
    [
        "claim,series,to,limit,mechanism,wording,remark",
        Claim("sensor-linear", "FLUOR", "40 µmol/L", null, null, "The sensor is linear to 40 µmol/L."),
        Claim("sensor-linear", "FLUOR", "80 µmol/L", null, null, "The sensor is linear to 80 µmol/L."),
        Claim("sensor-detection-limit", "FLUOR", "40 µmol/L", "0.020 mg/L", null, "The sensor reaches the drinking-water value."),
        Claim("quenching-mechanism", "FLUOR", null, null, "static", "Quenching is static, since kq lies below 1e10 L/(mol s)."),
        Claim("works-in-water", "SPIKE-roof", null, null, null, "The sensor works in roof water."),
        Claim("works-in-water", "SPIKE-rinse", null, null, null, "The sensor works in rinse water."),
    ]);

    private static string Claim(string rule, string series, string? to, string? limit, string? mechanism, string wording)
        => Dialect.Comma.Line(rule, series, to, limit, mechanism, wording, Invented);
}
