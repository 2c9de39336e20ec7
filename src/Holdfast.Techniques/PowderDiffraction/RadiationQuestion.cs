using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Settles the radiation of a scan: as the file says, asked when it says nothing, contradicts itself, or its lines split as those of another anode.</summary>
/// <param name="source">The grid.</param>
/// <param name="said">What its words say.</param>
internal sealed class RadiationQuestion(MeasurementSource source, RadiationSaid said)
{
    /// <summary>Radiations of laboratories, the usual ones first.</summary>
    public static readonly ImmutableArray<string> Usual = ["Cu Kα", "Cu Kα1", "Co Kα", "Co Kα1", "Mo Kα", "Mo Kα1", "Fe Kα", "Cr Kα", "Ag Kα"];

    private string Question => source.Question("unit:radiation");

    /// <summary>The radiation, or null while it is asked.</summary>
    /// <param name="axis">What the abscissa is.</param>
    /// <param name="x">Abscissa.</param>
    /// <param name="y">Intensity.</param>
    /// <param name="cell">The setting of the cell that was stated for the powder; empty for none.</param>
    public ScanRadiation? Settle(ScanAxis axis, IReadOnlyList<double?> x, IReadOnlyList<double?> y, ImmutableArray<MeasuredSetting> cell)
    {
        if (source.Talk.Answers.To(Question) is { } answer)
        {
            source.Talk.Ask(Question, Codes.UnitMissing, "The radiation of this scan.", Usual);
            return Answered(answer);
        }

        if (said.IsSilent)
        {
            Ask($"{source.Talk.FileName} does not say its radiation. Which tube, or which wavelength, was it?", x, y, Usual);
            return null;
        }

        ImmutableArray<string> byLength = [.. said.Wavelengths.Select(w => Radiation.Near(w)?.Anode ?? Second(w)).OfType<string>().Distinct()];
        if (said.Anodes.Length > 1 || byLength.Length > 1 || said.Anodes is [var anode] && byLength is [var other] && other != anode || said.Anodes is [_] && byLength.IsEmpty && !said.Wavelengths.IsEmpty)
        {
            ImmutableArray<string> named = [.. said.Anodes.Concat(byLength).Distinct().Select(a => a + " Kα")];
            Ask($"The file contradicts itself: {(said.Anodes.IsEmpty ? "" : $"it names {string.Join(" and ", said.Anodes)} and ")}the wavelength {string.Join(", ", said.Wavelengths.Select(w => w.ToString("0.0####", CultureInfo.InvariantCulture)))} Å. Which is right?", x, y, [.. named, .. Usual.Except(named)]);
            return null;
        }

        var symbol = said.Anodes.Concat(byLength).FirstOrDefault();
        if (symbol is null || Radiation.Of(symbol) is not { } known)
            return new(Radiation.Monochromatic(said.Wavelengths[0]), said.Wavelengths[0]);
        var radiation = said.OnlyFirst == true ? known.WithoutKa2() : known;
        double? stated = said.Wavelengths.IsEmpty ? null : said.Wavelengths[0];
        if (axis != ScanAxis.TwoTheta || Scan(x, y) is not { } scan)
            return new(radiation, stated);
        var held = cell is [var written] && ReferenceCell.Of(written.Written) is { } given ? new StatedCell(scan, radiation, given) : null;
        if (held is { SaysHalf: true } && source.Talk.Answers.To(source.Question("axis")) is null)
        {
            source.Talk.Ask(source.Question("axis"), Codes.Ambiguous, "No line of the column of angles, taken as 2theta, lies where the stated cell has planes; at twice the angle they all do. Is it θ?", ["θ", "2θ"]);
            source.Talk.Explain(source.Question("axis"), ["angles are doubled", "angles as they stand: the lines are of something else"]);
            return null;
        }

        if (held?.Other is { } fitting)
        {
            ImmutableArray<string> either = [fitting.Name, known.Name];
            Ask(string.Create(CultureInfo.InvariantCulture, $"The file says {known.Name}, wavelength {radiation.Ka1:0.0000} Å, but the lines do not lie where the stated cell has planes; with {fitting.Name} they do. Which tube was it?"), x, y, [.. either, .. Usual.Except(either)]);
            return null;
        }

        var split = LineSplitting.Of(scan, radiation);
        if (radiation.Ka2 is not null && said.OnlyFirst is null && (split.IsSingle || (said.NamesFirst && split is { IsDouble: false, Better: null })))
        {
            var why = split.IsSingle ? "The lines are single" : "The file names the first line only, and lines as broad as these cannot tell";
            radiation = source.Talk.Assume(source.Question("kα2"), Codes.Ambiguous, $"{why}: {known.Anode} Kα1 alone reached the detector.", ["Kα1", "Kα1 and Kα2"]) == "Kα1" ? known.WithoutKa2() : known;
        }
        else if (radiation.Ka2 is not null && split.Better is { } better)
        {
            ImmutableArray<string> two = [known.Name, better.Name];
            Ask($"The file says {known.Name}, but its lines split as those of {better.Name} do. Which is right?", x, y, [.. two, .. Usual.Except(two)]);
            return null;
        }

        return new(radiation, stated);
    }

    /// <summary>The radiation that an answer names.</summary>
    /// <param name="answer">The answer.</param>
    /// <exception cref="StudyException">It names none (HF-402).</exception>
    public static ScanRadiation Answered(string answer)
        => ScanRadiation.Named(answer) ?? throw new StudyException(Codes.Ambiguous, $"{answer} names no radiation that is known here. Write it like Cu Kα, Co Kα1, or as a wavelength: 1.5406 Å.");

    private static string? Second(double wavelength) => Radiation.All.FirstOrDefault(r => r.Ka2 is { } second && Math.Abs(wavelength / second - 1) < 2e-4)?.Anode;

    private static PowderScan? Scan(IReadOnlyList<double?> x, IReadOnlyList<double?> y) => PatternReading.Scan(x, y);

    // What follows from each answer: the spacing of the strongest line.
    private void Ask(string text, IReadOnlyList<double?> x, IReadOnlyList<double?> y, ImmutableArray<string> choices)
    {
        source.Talk.Ask(Question, Codes.UnitMissing, text, choices);
        var top = Enumerable.Range(0, y.Count).Where(i => x[i] is > 0 and < 170 && y[i] is not null).OrderByDescending(i => y[i]!.Value).FirstOrDefault(-1);
        if (top >= 0)
        {
            source.Talk.Explain(Question, [.. choices.Select(c => string.Create(CultureInfo.InvariantCulture,
                $"the strongest line, at {x[top]:0.00}°, has d = {Bragg.Spacing(x[top]!.Value, ScanRadiation.Named(c)!.Radiation.Ka1):0.000} Å"))]);
        }
    }
}
