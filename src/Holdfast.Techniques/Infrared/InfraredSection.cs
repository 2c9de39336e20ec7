using System.Globalization;
using Holdfast.Claims;
using Holdfast.Infrared;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Techniques.Infrared;

/// <summary>Infrared spectra: their bands, what each may be, and what must be said of them.</summary>
internal sealed class InfraredSection : IResultSection
{
    private const int PossibilitiesNamed = 3;
    private const int BandsListed = 20;

    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["–"] = "no group of the table absorbs there" };

    /// <inheritdoc/>
    public int Place => 6;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var study = InfraredStudy.Of(dossier.Evidence);
        if (study.Spectra.IsEmpty)
            return null;
        var content = new List<Node>
        {
            Prose.Paragraph("A band is consistent with every group whose range holds it; infrared alone identifies none. Groups whose other strong bands are missing stand behind."),
        };
        content.AddRange(StudyFigure.Of<InfraredFigure>(dossier).Concat(StudyFigure.Of<MixingFigure>(dossier)).Select(f => (Node)numbering.Figure(f)));
        foreach (var spectrum in study.Spectra)
        {
            content.Add(Prose.Heading(spectrum.Name));
            if (spectrum.Spectrum is { } measured)
            {
                content.Add(Prose.Paragraph(Words(spectrum, measured)));
                content.Add(numbering.Table(() => Bands(spectrum)));
                content.AddRange(Prose.Trails("Trails of the bands", spectrum.Bands.OrderByDescending(b => b.Band.Prominence).Take(BandsListed).Select(b => (b.Band.Wavenumber.ToString("F0", CultureInfo.InvariantCulture), InfraredNumbers.Address(spectrum, b))), numbering));
            }

            if (!spectrum.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(spectrum.Findings));
        }

        return new("infrared", "Infrared spectra", content);
    }

    /// <summary>The bands of one spectrum.</summary>
    /// <param name="spectrum">The spectrum.</param>
    internal static Table Bands(MeasuredSpectrum spectrum)
    {
        var listed = spectrum.Bands.OrderByDescending(b => b.Band.Prominence).Take(BandsListed).OrderByDescending(b => b.Band.Wavenumber).ToArray();
        return new(
            StudyFigure.Id("infrared-bands", spectrum.Name), $"Bands of {spectrum.Name}",
            [
                new Column("wavenumber", "Wavenumber") { Unit = "cm^-1" }, Column.Of("absorbance", "A", null, "absorbance at the top"), new Column("width", "Width") { Unit = "cm^-1", Spoken = "width at half prominence" },
                new Column("consistent", "Consistent with"), new Column("also", "May also be"),
            ],
            [.. listed.Select(b => Row.Of(
                new MeasuredCell(b.Band.Wavenumber, b.Band.U) { Address = InfraredNumbers.Address(spectrum, b) }, new NumberCell(b.Band.Absorbance), new NumberCell(Math.Round(b.Band.Width)),
                b.Possibilities.IsEmpty ? new MissingCell("–") : string.Join("; ", b.Possibilities.Take(PossibilitiesNamed).Select(Said)), string.Join("; ", b.Air.Select(a => a.Says).Distinct(StringComparer.Ordinal))))],
            Codes)
        {
            Notes =
            [
                $"± standard uncertainty: the largest of a quarter of the resolution, a step over √12 and the parabola's own. Bands from {InWords.Plain(BandSearch.LeastProminence)} standard deviations of the noise{(listed.Length < spectrum.Bands.Length ? $"; the {listed.Length.ToString(CultureInfo.InvariantCulture)} most prominent of {spectrum.Bands.Length.ToString(CultureInfo.InvariantCulture)}" : "")}.",
                .. spectrum.Bands.Any(b => b.Band.IsFlattened) ? ["Bands above an absorbance of " + InWords.Plain(InfraredSpectrum.FlattenedAbove) + " are flattened: no heights are compared there."] : Array.Empty<Holdfast.Reports.Figures.RichText>(),
            ],
        };
    }

    private static string Said(GroupPossibility possibility)
        => $"{possibility.Range.Group}, {possibility.Range.Vibration}" + (possibility.IsWeakened ? $" (its {possibility.Missing[0].Vibration} is not seen)" : "");

    private static string Words(MeasuredSpectrum spectrum, InfraredSpectrum measured)
        => $"{InWords.Count(measured.Wavenumbers.Count, "point")} from {InWords.Plain(measured.Wavenumbers[^1])} to {InWords.Plain(measured.Wavenumbers[0], "cm⁻¹")}, every {InWords.Plain(measured.Step, "cm⁻¹")}; "
            + $"resolution {(measured.Resolution is { } stated ? InWords.Plain(stated, "cm⁻¹") : Prose.NotRecorded)}; {spectrum.Path ?? "path of the light " + Prose.NotRecorded}; noise {InWords.Plain(measured.Noise)} in absorbance. "
            + $"A shift below {InWords.Plain(measured.Limit, "cm⁻¹")} cannot be said."
            + (measured.IsReflected ? $" By total reflection the depth grows with the wavelength ({InWords.Plain(TotalReflection.Depth(1000)!.Value, "µm")} at 1000 cm⁻¹ for diamond): bands at low wavenumbers look too strong, and strong ones move down. It is not compared with transmission." : "");
}
