using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;

namespace Holdfast.Techniques.Infrared;

/// <summary>Each infrared spectrum as absorbance over falling wavenumbers, with its strongest bands named and the stretches of air and water marked.</summary>
internal sealed class InfraredFigure : IStudyFigure
{
    private const int BandsNamed = 8;

    // Names closer than this share of the range lie on each other.
    private const double Apart = 0.05;

    public int Place => 6;

    public IEnumerable<Figure> Of(Dossier dossier)
        => InfraredStudy.Of(dossier.Evidence).Spectra.Where(s => s.Spectrum is not null).Select(s => One(s, dossier));

    private static Figure One(MeasuredSpectrum spectrum, Dossier dossier)
    {
        var measured = spectrum.Spectrum!;
        var named = new List<NamedBand>();
        foreach (var band in spectrum.Bands.OrderByDescending(b => b.Band.Prominence))
        {
            if (named.Count < BandsNamed && named.TrueForAll(n => Math.Abs(n.Band.Wavenumber - band.Band.Wavenumber) > Apart * (measured.Wavenumbers[^1] - measured.Wavenumbers[0])))
                named.Add(band);
        }

        var co2 = Holdfast.Infrared.AirBands.CarbonDioxide;
        return new(
            StudyFigure.Id("infrared", spectrum.Name), $"Infrared spectrum of {spectrum.Name}",
            $"{named.Count} of {spectrum.Bands.Length} bands are named by their wavenumber; a band is consistent with several groups and identifies none by itself.",
            [
                new Panel(new Axis("wavenumber", "cm^-1", "wavenumber") { Reversed = true }, new Axis("A", null, "absorbance"),
                [
                    .. measured.Covers(co2.Low, co2.High) ? [new Zone(AxisName.X, co2.Low, co2.High, "CO2 of the air")] : Array.Empty<Layer>(),
                    new Trace([.. measured.Wavenumbers.Zip(measured.Absorbances)]),
                    .. named.Select(b => new Annotation(b.Band.Wavenumber, b.Band.Absorbance, b.Band.Wavenumber.ToString("F0", CultureInfo.InvariantCulture))),
                ]),
            ])
        {
            Notes = [$"As measured, {(measured.Given == Holdfast.Infrared.OrdinateScale.Absorbance ? "in absorbance" : "turned from transmittance into absorbance")}; nothing smoothed, no baseline taken off. {(spectrum.Path is { } path ? "Measured by " + path : "Path of the light not recorded")}."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
