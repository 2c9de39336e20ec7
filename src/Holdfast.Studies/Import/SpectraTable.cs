using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>
/// Whole spectra of emission: a first column of wavelengths, then a column for each sample, headed by its code. A file of one spectrum, such as
/// JCAMP-DX, names its sample in its title or in its own name. Each spectrum becomes one reading.
/// </summary>
internal static partial class SpectraTable
{
    private const int FewestPoints = 5;
    private static readonly Unit Nanometre = Unit.Parse("nm");

    private static readonly FrozenSet<string> Wavelengths = new[]
    {
        "wavelength", "emissionwavelength", "wavelengthem", "wavelengthofemission", "lambda", "λ", "lambdaem", "λem", "wl", "nm",
    }.ToFrozenSet(StringComparer.Ordinal);

    private static readonly FrozenSet<string> Absorption = new[] { "absorbance", "abs", "a", "transmittance", "transmission", "t", "reflectance", "r", "extinction" }.ToFrozenSet(StringComparer.Ordinal);
    private static readonly string[] OfLight = ["emission", "fluoresc", "fluoresz", "luminesc", "lumineszenz", "excitation", "excitacion", "excitacao", "eccitazione", "anregung", "emision", "emissao", "emissione", "emisja"];
    private static readonly string[] NamesSample = ["sample", "samplename", "samplecode", "title"];

    /// <summary>True when the first column holds wavelengths and no other holds sample codes or is what an absorption spectrometer writes.</summary>
    public static bool Is(TableLayout layout)
    {
        if (layout.Heading is null || layout.Headings.Length < 2 || layout.Body.Length < FewestPoints)
            return false;
        var first = Header.Read(layout.Headings[0]);
        string[] others = [.. layout.Headings.Skip(1).Select(h => HeadingWords.Key(Header.Read(h).Name))];
        return Wavelengths.Contains(HeadingWords.Key(first.Name))
            && (UnitOf(layout) is UnitText.Absent || (UnitOf(layout) is UnitText.Known known && known.Unit.IsConvertibleTo(Nanometre)))
            && !others.Any(o => Properties.SampleProperties.Code.Headings.Contains(o)) && !others.All(Absorption.Contains);
    }

    /// <summary>Understands one.</summary>
    /// <param name="source">The table.</param>
    /// <param name="mark">The decimal mark, or null while it is open.</param>
    public static Draft Understand(TableSource source, DecimalMark? mark)
    {
        var layout = source.Layout;
        var unit = SettleUnit(source);
        var axis = new Column(0, layout.Headings[0], ColumnUse.Position, null, unit ?? Nanometre, unit is null ? "Its unit must be chosen." : "Wavelengths; kept in nm.");
        var wavelengths = layout.Body.Select(r => axis.Read(r.At(0), r.Number, mark).Value is { } value ? (unit ?? Nanometre).Convert(value, Nanometre) : (double?)null).ToArray();
        var isLight = IsOfLight(source);
        var columns = Enumerable.Range(1, layout.Headings.Length - 1).Where(i => layout.Body.Any(r => !r.At(i).IsBlank))
            .Select(i => new Column(i, layout.Headings[i], ColumnUse.Signal, FluorescenceProperties.Emission, null, null)).ToImmutableArray();
        var rows = columns.Select(c => new SampleRow(layout.Heading!, Named(source, c, columns.Length))).ToList();
        if (Turn(layout, wavelengths) is { } turn)
        {
            source.Talk.Note(Codes.OddCell, Weight.Stop, $"Row {Ordinal.Text(turn)}: the wavelength repeats or turns back, so no spectrum is read. Export one scan in one direction.", "row " + Ordinal.Text(turn));
            rows.ForEach(r => r.IsLeftOut = true);
        }

        foreach (var row in rows)
        {
            row.IsUndecided |= unit is null || isLight is null;
            row.IsLeftOut |= isLight is false;
        }

        new SampleNames(source, columns).Settle(rows);
        var spectra = rows.Zip(columns, (r, c) => (Row: r, Column: c, Points: Points(layout, wavelengths, c, mark))).ToList();
        foreach (var (row, column, points) in spectra.Where(s => !s.Row.IsLeftOut && s.Points.Length < FewestPoints))
        {
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"{column.Heading} holds {Ordinal.Text(points.Length)} points; a spectrum needs five. It is left out.", row.Written);
            row.IsLeftOut = true;
        }

        var used = spectra.Where(s => s.Row is { IsLeftOut: false, Code: not null }).ToList();
        var gaps = used.Where(s => s.Points.Length < wavelengths.Count(w => w is not null)).Select(s => s.Row.Code!).ToArray();
        if (gaps.Length > 0)
            source.Talk.Note(Codes.OddCell, Weight.Caution, $"Cells without a number are gaps in {string.Join(", ", gaps.Take(4))}{(gaps.Length > 4 ? $" and {Ordinal.Text(gaps.Length - 4)} more" : "")}: a gap in the window leaves no intensity.", gaps);
        Repeated(source, used);
        var kept = used.Where(s => !s.Row.IsLeftOut).ToList();
        var (undecided, left) = (rows.Count(r => r is { IsUndecided: true, IsLeftOut: false }), rows.Count(r => r.IsLeftOut));
        var id = RunReadings.RunId(source, source.Stem);
        return new Draft(new RowCount(rows.Count - undecided - left, undecided, 0, left) { OfSpectra = true }, [axis.Understood(), .. columns.Select(c => c.Understood())], new TakenIn
        {
            Samples = SampleFacts.Of([.. kept.Select(s => s.Row)], source),
            Runs = kept.Count == 0 ? [] : [new Run(id, FluorescenceProperties.Emission.Name, layout.Details, source.At(0, null))],
            Readings = [.. kept.Select((s, i) => Reading(source, s.Row, s.Column, s.Points, id, i + 1))],
        });
    }

    private static UnitText UnitOf(TableLayout layout)
        => Header.Read(layout.Headings[0]).Unit is UnitText.Absent && layout.Units is { } line ? Unit.Read(line.At(0).Text) : Header.Read(layout.Headings[0]).Unit;

    private static Unit? SettleUnit(TableSource source)
    {
        var name = Header.Read(source.Layout.Headings[0]).Name;
        if (UnitOf(source.Layout) is UnitText.Known known)
            return known.Unit;
        if (string.Equals(HeadingWords.Key(name), "nm", StringComparison.Ordinal))
            return Nanometre;
        var answer = source.Talk.Ask("unit:" + name, Codes.UnitMissing, $"{name} has no unit. Which one are the wavelengths in?", ["nm", "µm"], name);
        return answer is null ? null
            : Unit.Read(answer) is UnitText.Known { Unit: var unit } && unit.IsConvertibleTo(Nanometre) ? unit
            : throw Answers.Unknown("unit:" + name, answer, "a unit of wavelength: nm or µm");
    }

    // A scan over wavelength may be anything; where neither file nor headings speak of emitted light, she says so.
    private static bool? IsOfLight(TableSource source)
    {
        var layout = source.Layout;
        var said = layout.Details.SelectMany(d => new[] { d.Key, d.Value }).Concat(layout.Headings.Take(1)).Concat(layout.Notes.Lines);
        if (said.Any(s => Array.Exists(OfLight, w => Lexicon.Plain(s).Contains(w, StringComparison.OrdinalIgnoreCase)) || ExcitedAt().IsMatch(s))
            || (layout.Headings.Length == 2 && IsIntensity(layout.Headings[1])))
            return true;
        return source.Talk.Ask("spectra", Codes.Ambiguous, "Nothing in this file says what was read over wavelength. Are these spectra of emission? Others are not kept.", ["emission", "leave-out"]) switch
        {
            null => null,
            "emission" => true,
            "leave-out" => false,
            var other => throw new ArgumentException($"The spectra are emission or leave-out, not {other}.", nameof(source)),
        };
    }

    // "ex 394 nm, em 616 nm"
    [GeneratedRegex(@"\b(exc?|λ ?ex|em|λ ?em)[. ]*[:=]?\s*[2-9]\d\d\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex ExcitedAt();

    private static bool IsIntensity(string heading) => HeadingWords.Properties(HeadingWords.Key(Header.Read(heading).Name)).Contains(FluorescenceProperties.Intensity);

    // The whole heading first: "A/1" may be a code. One spectrum under a word for intensity is named by its title or its file, whichever is a sample's.
    private static string Named(TableSource source, Column column, int spectra)
    {
        var codes = new CodeIndex(source.Known.Keys);
        if (spectra == 1 && IsIntensity(column.Heading))
        {
            var title = source.Layout.Details.FirstOrDefault(d => NamesSample.Contains(HeadingWords.Key(d.Key)) && d.Value.Length > 0).Value;
            string[] names = [.. new[] { title, source.Stem }.OfType<string>()];
            return (names.FirstOrDefault(n => codes.Find(n).Count > 0) ?? names[0]).Normalize();
        }

        var header = Header.Read(column.Heading);
        return (codes.Find(column.Heading).Count == 0 && header.Unit is UnitText.Known && header.Name.Length > 0 ? header.Name : column.Heading).Normalize();
    }

    private static int? Turn(TableLayout layout, double?[] wavelengths)
    {
        var known = layout.Body.Zip(wavelengths, (r, w) => (r.Number, Wavelength: w)).Where(p => p.Wavelength is not null).ToArray();
        var way = known.Length < 2 ? 0 : Math.Sign(known[1].Wavelength!.Value - known[0].Wavelength!.Value);
        for (var i = 1; i < known.Length; i++)
        {
            if (!(known[i].Wavelength > 0) || way == 0 || Math.Sign(known[i].Wavelength!.Value - known[i - 1].Wavelength!.Value) != way)
                return known[i].Number;
        }

        return null;
    }

    private static ImmutableArray<(double Wavelength, double Intensity)> Points(TableLayout layout, double?[] wavelengths, Column column, DecimalMark? mark)
        => [.. layout.Body.Zip(wavelengths, (r, w) => (Wavelength: w, Intensity: w is null ? null : column.Read(r.At(column.Index), r.Number, mark).Value))
            .Where(p => p is { Wavelength: not null, Intensity: not null }).Select(p => (p.Wavelength!.Value, p.Intensity!.Value))];

    private static void Repeated(TableSource source, List<(SampleRow Row, Column Column, ImmutableArray<(double, double Intensity)> Points)> used)
    {
        var alike = used.Where(s => source.Study.Readings.Any(r => string.Equals(r.Sample, s.Row.Code, StringComparison.Ordinal)
            && r.Spectrum is { } earlier && earlier.Intensities.SequenceEqual(s.Points.Select(p => p.Intensity)))).ToList();
        if (alike.Count == 0)
            return;
        var answer = source.Talk.Ask("overlap", Codes.Duplicate, (alike.Count == 1 ? "1 sample has the same spectrum" : $"{Ordinal.Text(alike.Count)} samples have the same spectra")
            + $" as in an earlier file ({string.Join(", ", alike.Take(4).Select(s => s.Row.Code))}). Leave those out, or take them as read twice?", ["leave-out", "take"], [.. alike.Select(s => s.Row.Code!)]);
        foreach (var (row, _, _) in alike)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    private static Reading Reading(TableSource source, SampleRow row, Column column, ImmutableArray<(double Wavelength, double Intensity)> points, string run, int order)
    {
        var spectrum = new Spectrum([.. points.Select(p => p.Wavelength)], [.. points.Select(p => p.Intensity)]);
        return new Reading("R-" + (source.Study.ReadingsEver + order).ToString("0000", CultureInfo.InvariantCulture), row.Code!, run, order,
            FluorescenceProperties.Emission.Name, null, null, 1, 1, spectrum.ToString(), source.At(0, column.Heading))
        {
            Spectrum = spectrum,
        };
    }
}
