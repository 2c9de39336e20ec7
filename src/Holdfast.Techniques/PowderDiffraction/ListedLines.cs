using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Lines that came as a list, without the pattern they were found in.</summary>
internal static class ListedLines
{
    /// <summary>True for a list of lines, of the powder or of a known phase.</summary>
    /// <param name="measurement">Any measurement.</param>
    public static bool Are(Measurement measurement) => measurement.Setting(ScanNames.List) is not null;

    /// <summary>True for the lines of a known phase.</summary>
    /// <param name="measurement">Any measurement.</param>
    public static bool IsReference(Measurement measurement) => measurement.Setting(ScanNames.List)?.Written == ScanNames.Reference;

    /// <summary>The lines as a phase should show them, widest spacing first.</summary>
    /// <param name="measurement">A list.</param>
    public static ImmutableArray<ReferenceLine> AsReference(Measurement measurement)
    {
        var rows = Rows(measurement).OrderByDescending(r => r.Spacing).ToArray();
        var top = rows.Select(r => r.Intensity).Max();
        return [.. rows.Select(r => new ReferenceLine(r.Planes, r.Spacing, top is > 0 && r.Intensity is { } i ? 100 * i / top : null))];
    }

    /// <summary>The lines as measured ones: without an uncertainty, since a list gives none, and each as sure as its author was.</summary>
    /// <param name="measurement">A list.</param>
    /// <param name="radiation">Its radiation.</param>
    public static ImmutableArray<FittedLine> AsMeasured(Measurement measurement, Radiation radiation)
        => [.. Rows(measurement).Select(r => (Row: r, At: r.TwoTheta ?? Bragg.TwoTheta(r.Spacing, radiation.Ka1))).Where(r => r.At is not null).OrderBy(r => r.At)
            .Select(r => new FittedLine(r.At!.Value, 0, Bragg.Spacing(r.At.Value, radiation.Ka1), 0, r.Row.Intensity ?? 0, r.Row.Width ?? 0, 0, double.NaN, (r.Row.Intensity ?? 0) * Math.Max(r.Row.Width ?? 0, 1), 0, double.PositiveInfinity, double.NaN, LineDoubts.None))];

    /// <summary>Indices as they are written: "1 0 4", "(104)", "-1 1 0"; null for other words.</summary>
    /// <param name="text">The words.</param>
    public static Miller? Planes(string text)
    {
        string[] parts = [.. text.Trim(' ', '(', ')', '[', ']', '{', '}').Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries)];
        // Single digits may stand together.
        if (parts is [{ Length: 3 } digits] && digits.All(char.IsAsciiDigit))
            parts = [.. digits.Select(d => d.ToString())];
        int?[] indices = [.. parts.Select(p => int.TryParse(p, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var index) ? index : (int?)null)];
        return indices is [int h, int k, int l] && (h, k, l) != default && Math.Max(Math.Abs(h), Math.Max(Math.Abs(k), Math.Abs(l))) <= HighestIndex ? new(h, k, l) : null;
    }

    // Lines of laboratory patterns have no higher ones (common practice).
    private const int HighestIndex = 40;

    private static IEnumerable<(double? TwoTheta, double Spacing, double? Intensity, double? Width, Miller? Planes)> Rows(Measurement measurement)
    {
        var wavelength = ScanRadiation.Of(measurement)?.Ka1;
        var angles = measurement.Column(ScanNames.TwoTheta)?.Numbers;
        var spacings = measurement.Column(ScanNames.Spacing)?.Numbers;
        var intensities = measurement.Column(ScanNames.Counts)?.Numbers;
        var widths = measurement.Column(ScanNames.Width)?.Numbers;
        var planes = measurement.Column(ScanNames.Planes)?.Words;
        for (var i = 0; i < (angles ?? spacings)!.Value.Length; i++)
        {
            var at = angles?[i];
            var d = spacings?[i] ?? (at is { } x && wavelength is { } w ? Bragg.Spacing(x, w) : null);
            if (d is { } spacing)
                yield return (at, spacing, intensities?[i], widths?[i], planes is { } p ? Planes(p[i]) : null);
        }
    }
}
