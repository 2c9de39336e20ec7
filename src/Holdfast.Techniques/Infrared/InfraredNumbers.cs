using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.Infrared;

/// <summary>Positions of bands: "band:HAp-KBr@1041".</summary>
internal sealed class InfraredNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
        => InfraredStudy.Of(evidence).Spectra.Where(s => s.Spectrum is not null).SelectMany(s => s.Bands.DistinctBy(b => Address(s, b), StringComparer.Ordinal).Select(b => One(s, b)));

    /// <summary>Address of the position of a band.</summary>
    /// <param name="spectrum">Its spectrum.</param>
    /// <param name="band">The band.</param>
    public static string Address(MeasuredSpectrum spectrum, NamedBand band) => $"band:{spectrum.Name}@{band.Band.Wavenumber.ToString("F0", CultureInfo.InvariantCulture)}";

    private static NumberTrail One(MeasuredSpectrum spectrum, NamedBand band)
    {
        var (address, measured, b) = (Address(spectrum, band), spectrum.Spectrum!, band.Band);
        return new(
            address, $"band of {spectrum.Name}", Measured.From(b.Wavenumber, new Source(address, "resolution, step and noise at the top of the band", b.U, Unit: "cm^-1")), "cm^-1",
            "highest point of a parabola through the upper fifth of the band",
            [
                new("A", b.Absorbance, "", $"{spectrum.Measurement.Id}, {spectrum.Measurement.Origin}"),
                new("step", measured.Step, "cm^-1", spectrum.Measurement.Origin.ToString()),
                .. measured.Resolution is { } resolution ? [new TrailInput("resolution", resolution, "cm^-1", spectrum.Measurement.Setting(InfraredFiles.Resolution)?.Written ?? "as stated")] : Array.Empty<TrailInput>(),
                new("noise", measured.Noise, "", "scatter in a quiet region of the same spectrum"),
            ],
            []);
    }
}
