using Holdfast.Statistics;

namespace Holdfast.DemoData;

/// <summary>
/// The spectra behind the signals of the invented sensor: two bands of europium on a sloping scatter. Each is drawn with the noise of its points
/// and then stretched so that the five points around 616 nm, less the liquid alone, have the vessel's signal as their mean.
/// </summary>
public static class EmissionSheet
{
    private const int First = 580, Last = 640, Read = 616, Neighbours = 2;
    private const double PointNoise = 0.004;
    private static readonly (double At, double Height, double Sd)[] Bands = [(592, 0.34, 4.2), (616, 1.00, 4.6), (625, 0.10, 6.0)];

    /// <summary>One wide table: wavelengths, the liquid alone, ten blanks, then the vessels in the order in which they were read.</summary>
    /// <param name="sensor">The invented sensor.</param>
    /// <param name="seed">Seed of the study.</param>
    public static DemoFile Of(Sensor sensor, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(sensor);
        SensorVessel[] vessels = [.. sensor.Blanks, .. sensor.Quenching];
        var chance = new SeededStream(seed, "FLUOR-SPECTRA");
        double[] wavelengths = [.. Enumerable.Range(First, Last - First + 1).Select(w => (double)w)];
        double[] liquid = [.. wavelengths.Select(w => Scatter(w) + 0.3 * chance.Normal())];
        double[][] spectra = [.. vessels.Select(v => Scan(v.Read, wavelengths, liquid, chance))];
        return DemoFile.Text("fluor-spectra.csv",
        [
            "Remark,INVENTED demo data: nothing was measured",
            "Instrument,spectrofluorometer (invented)",
            "Excitation,394 nm",
            "Slits,5 nm for excitation and emission",
            "Detector range,10000",
            Dialect.Comma.Line(["emission wavelength (nm)", "solvent", .. vessels.Select(v => v.Code)]),
            .. wavelengths.Select((w, i) => Dialect.Comma.Line([w, liquid[i], .. spectra.Select(s => (object)s[i])])),
        ]);
    }

    private static double[] Scan(double signal, double[] wavelengths, double[] liquid, SeededStream chance)
    {
        double[] band = [.. wavelengths.Select(w => Bands.Sum(b => b.Height * Math.Exp(-(w - b.At) * (w - b.At) / (2 * b.Sd * b.Sd))) * (1 + PointNoise * chance.Normal()))];
        var mean = band.Skip(Read - First - Neighbours).Take(2 * Neighbours + 1).Average();
        return [.. band.Zip(liquid, (b, s) => s + signal / mean * b)];
    }

    // Scatter of the exciting light falls away towards the red.
    private static double Scatter(double wavelength) => 12 - 0.08 * (wavelength - First);
}
