using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A measurement as a pattern over 2θ.</summary>
internal static class PatternReading
{
    /// <summary>The pattern, or null when the columns make none: too few readings, angles that do not rise.</summary>
    /// <param name="measurement">A scan.</param>
    /// <param name="wavelength">Wavelength for spacings and scattering vectors, ångström.</param>
    public static PowderScan? Scan(Measurement measurement, double wavelength)
    {
        var counts = measurement.Column(ScanNames.Counts)?.Numbers;
        if (counts is null)
            return null;
        if (measurement.Column(ScanNames.TwoTheta)?.Numbers is { } angles)
            return Scan(angles, counts.Value);
        if (measurement.Column(ScanNames.Theta)?.Numbers is { } halves)
            return Scan([.. halves.Select(t => 2 * t)], counts.Value);
        if (measurement.Column(ScanNames.Spacing) is { Numbers: { } spacings } d)
            return Scan([.. spacings.Select(s => s is > 0 ? Bragg.TwoTheta(s.Value * (d.Unit == "nm" ? 10 : 1), wavelength) : null)], counts.Value);
        if (measurement.Column(ScanNames.Q) is { Numbers: { } vectors } q)
            return Scan([.. vectors.Select(v => v is > 0 ? Bragg.TwoTheta(2 * Math.PI / (v.Value / (q.Unit == "1/nm" ? 10 : 1)), wavelength) : null)], counts.Value);
        return null;
    }

    /// <summary>The pattern of two columns; rows without both numbers and repeated angles are left out.</summary>
    /// <param name="x">2θ, degrees, rising or falling.</param>
    /// <param name="y">Intensities.</param>
    public static PowderScan? Scan(IReadOnlyList<double?> x, IReadOnlyList<double?> y)
    {
        var points = Enumerable.Range(0, Math.Min(x.Count, y.Count)).Where(i => x[i] is > -20 and < 180 && y[i] is { } c && double.IsFinite(c))
            .Select(i => (X: x[i]!.Value, Y: y[i]!.Value)).OrderBy(p => p.X).DistinctBy(p => p.X).ToArray();
        return points.Length < PowderScan.FewestReadings ? null : new([.. points.Select(p => p.X)], [.. points.Select(p => p.Y)]);
    }
}
