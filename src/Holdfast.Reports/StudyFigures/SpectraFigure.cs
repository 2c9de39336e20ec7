using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Spectra of a quenching series as they were read, with the window of the intensity; the lowest, the middle and the highest level are labelled.</summary>
internal sealed class SpectraFigure : IStudyFigure
{
    public int Place => 99;

    public IEnumerable<Figure> Of(Dossier dossier)
        => EmissionStudy.Of(dossier.Evidence) is { Window: not null } emission
            ? Sensing.Of(dossier.Evidence).Series.Where(s => s.Samples.Any(v => v.Spectra is not null)).Select(s => One(s, emission, dossier))
            : [];

    private static Figure One(SensorSeries series, EmissionStudy emission, Dossier dossier)
    {
        var samples = series.Samples.Where(s => s.Spectra is not null).ToArray();
        double[] levels = [.. samples.Select(s => s.Quencher).Distinct().Order()];
        double[] named = [.. new[] { levels[0], levels[levels.Length / 2], levels[^1] }.Distinct()];
        var labelled = named.Select(q => samples.First(s => s.Quencher.Equals(q))).ToArray();
        var others = samples.Except(labelled).SelectMany(Points).Select(p => (Layer)new Trace(p));
        var window = emission.Window!;
        var excited = emission.Excitation is { } light ? $"excited at {InWords.Setting(light, "nm")}" : "exciting wavelength not recorded";
        var runs = labelled.Select(s => dossier.Evidence.Study.Runs.First(r => r.Id == s.Run)).ToArray();
        var slits = runs.Select(r => r.Detail("Slits", "Slit", "Slit width")).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        return new Figure(
            StudyFigure.Id("spectra", series.Name), $"Emission spectra, series {series.Name}",
            $"{InWords.Count(samples.Length, "spectrum", "spectra")} between {InWords.Span(levels, "µmol/L")} of quencher. In the window the intensity falls from {InWords.Plain(samples.Max(s => s.Raw))} to {InWords.Plain(samples.Min(s => s.Raw))}.",
            [
                new Panel(new Axis("λ", "nm", "wavelength of emission"), new Axis("I", null, "intensity as read") { Min = 0 },
                [
                    new Zone(AxisName.X, window.From, window.To, "window"),
                    .. others,
                    .. labelled.SelectMany((s, i) => Points(s).Take(1).Select(p => new Trace(p) { Slot = i + 1, Label = RichText.Literal(InWords.Plain(s.Quencher, "µmol/L")) })),
                ]),
            ])
        {
            Caption = $"Emission spectra of series {series.Name}, {excited}, slits {(slits.Length > 0 ? InWords.Listed(slits) : "not recorded")}.",
            Notes =
            [
                $"As read, nothing smoothed, {(labelled[0].Spectra!.Solvent is null ? "scatter not taken off" : "the liquid alone not yet taken off")}; read {(series.IsInRisingOrder ? "in rising order of levels" : series.IsOrderKnown ? "in mixed order of levels" : "in an order that is not known")}. Window: {emission.WindowFrom}.",
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    private static IEnumerable<IReadOnlyList<(double X, double Y)>> Points(SensorSample sample)
        => sample.Spectra!.Spectra.Select(s => (IReadOnlyList<(double, double)>)[.. s.Wavelengths.Zip(s.Intensities)]);
}
