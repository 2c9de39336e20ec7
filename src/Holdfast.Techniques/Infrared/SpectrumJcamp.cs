using System.Globalization;
using System.Text;
using Holdfast.Infrared;
using Holdfast.Reports.Documents;
using Holdfast.Reports.HandOver;
using Holdfast.Studies;

namespace Holdfast.Techniques.Infrared;

/// <summary>A spectrum as JCAMP-DX 4.24: even steps with ordinates of up to nine decimals as whole numbers times a factor, which every reader knows; others in pairs with every digit. Nothing is rounded.</summary>
/// <remarks>R. S. McDonald and P. A. Wilks, Appl. Spectrosc. 42 (1988) 151: labels, XYDATA without packing, XYPOINTS.</remarks>
public sealed class SpectrumJcamp : IMeasurementFile
{
    /// <inheritdoc/>
    public string Technique => InfraredFiles.TechniqueName;

    /// <inheritdoc/>
    public string Format => "JCAMP-DX 4.24";

    /// <inheritdoc/>
    public DocumentFile? Of(Measurement measurement, Study study)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        ArgumentNullException.ThrowIfNull(study);
        if (measurement.Column(InfraredFiles.Wavenumber) is not { Numbers: { } x } axis || measurement.Column(InfraredFiles.Ordinate)?.Numbers is not { } y || measurement.Setting(InfraredFiles.Scale) is not { } said)
            return null;
        var scale = InfraredFiles.ScaleOf(said.Written);
        (double X, double Y)[] points = [.. x.Zip(y).Where(p => p.First is > 0 && p.Second is not null)
            .Select(p => (InfraredFiles.ToWavenumber(p.First!.Value, axis.Unit), scale == OrdinateScale.PercentTransmittance ? p.Second!.Value / 100 : p.Second!.Value))];
        if (points.Length == 0)
            return null;
        var text = new StringBuilder();
        Label("TITLE", measurement.Sample);
        Label("JCAMP-DX", "4.24");
        Label("DATA TYPE", "INFRARED SPECTRUM");
        Label("ORIGIN", $"{measurement.Id}, taken in from {measurement.Origin.FileName}");
        Label("OWNER", study.Details.GetValueOrDefault("author") is { Length: > 0 } author ? author : "not recorded");
        if (study.Invented)
            text.Append("$$ INVENTED DEMO DATA: no number here is a measurement.\n");
        Label("XUNITS", "1/CM");
        Label("YUNITS", scale == OrdinateScale.Absorbance ? "ABSORBANCE" : "TRANSMITTANCE");
        if (measurement.Setting(InfraredFiles.Resolution)?.Value is { } resolution)
            Label("RESOLUTION", NumberText.Of(resolution));
        if (measurement.Setting(InfraredFiles.Path) is { } path)
            Label("SAMPLING PROCEDURE", path.Written);
        Label("FIRSTX", NumberText.Of(points[0].X));
        Label("LASTX", NumberText.Of(points[^1].X));
        Label("MAXX", NumberText.Of(points.Max(p => p.X)));
        Label("MINX", NumberText.Of(points.Min(p => p.X)));
        Label("MAXY", NumberText.Of(points.Max(p => p.Y)));
        Label("MINY", NumberText.Of(points.Min(p => p.Y)));
        Label("XFACTOR", "1");
        var decimals = Decimals(points);
        Label("YFACTOR", decimals is { } places ? "1E-" + places.ToString(CultureInfo.InvariantCulture) : "1");
        Label("NPOINTS", points.Length.ToString(CultureInfo.InvariantCulture));
        Label("FIRSTY", NumberText.Of(points[0].Y));
        if (decimals is { } k)
        {
            Label("DELTAX", NumberText.Of((points[^1].X - points[0].X) / (points.Length - 1)));
            Label("XYDATA", "(X++(Y..Y))");
            foreach (var line in points.Chunk(PointsOfALine))
                text.Append(CultureInfo.InvariantCulture, $"{NumberText.Of(line[0].X)} {string.Join(' ', line.Select(p => Whole(p.Y, k).ToString("0", CultureInfo.InvariantCulture)))}\n");
        }
        else
        {
            Label("XYPOINTS", "(XY..XY)");
            foreach (var (wavenumber, ordinate) in points)
                text.Append(CultureInfo.InvariantCulture, $"{NumberText.Of(wavenumber)}, {NumberText.Of(ordinate)}\n");
        }

        Label("END", "");
        return new(measurement.Id + ".jdx", Encoding.UTF8.GetBytes(text.ToString()));

        void Label(string name, string value) => text.Append(CultureInfo.InvariantCulture, $"##{name}={NumberText.Line(value)}\n");
    }

    // Lines of the format hold 80 signs at most.
    private const int PointsOfALine = 6;
    private const int MostDecimals = 9;

    // Fewest decimals that hold every ordinate, where the abscissas are even steps; null where there are none.
    private static int? Decimals((double X, double Y)[] points)
    {
        if (points.Length < 2)
            return null;
        var step = (points[^1].X - points[0].X) / (points.Length - 1);
        if (step == 0 || points.Index().Any(p => Math.Abs(p.Item.X - points[0].X - p.Index * step) > 1e-6 * Math.Abs(step)))
            return null;
        for (var k = 0; k <= MostDecimals; k++)
        {
            if (points.All(p => Math.Abs(Whole(p.Y, k)) < int.MaxValue && Whole(p.Y, k) / Math.Pow(10, k) == p.Y))
                return k;
        }

        return null;
    }

    private static double Whole(double value, int decimals) => Math.Round(value * Math.Pow(10, decimals));
}
