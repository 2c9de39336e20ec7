using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Infrared;

/// <summary>What headings and lines of an infrared file say, in the languages of the bench.</summary>
internal static class OrdinateWords
{
    private const string Wavenumbers = "wavenumber* wellenzahl* golfgetal* vagtal* bolgetal* aaltoluku* vlnocet hullamszam* 波数 волновое";
    private const string Absorbances = "absorbance* abs absorb a extinktion extinction ext absorbanz absorption absorbancia absorbansi absorbans absorbancja assorbanza absorptie absorptivity absorbanci* ekstynkcja extincion extincao estinzione od 吸光度 吸收 поглощение оптическая";
    private const string Transmittances = "transmittance transmission trans transm t tr transmitancia transmissao transmittanz transmittanza trasmittanza transmitancja transmitansi gecirgenlik durchlassigkeit doorlaatbaarheid doorlating przepuszczaln* propustnost ateresztes genomslapp* lapaisy* 透过率 透射率 пропускание";
    private const string Others = "reflectance reflexion refl r kubelka munk km background";
    private const string NoSample = "background* hintergrund* untergrund* fondo* fond fundo sfondo tlo achtergrond* reference referenz leerkanal singlebeam";
    private const string ReflectedWords = "atr diamond diamant* diamante diament* zns znse";
    private const string TransmittedWords = "kbr pellet* pressling* presling* tablett* pastill* pastiglia pastylk* pastilha* transmission";
    private const string Indices = "no nr number index point punkt row line";

    /// <summary>True for a heading of wavenumbers.</summary>
    public static bool IsWavenumber(string heading)
    {
        var plain = FileWords.Plain(heading).Replace(" ", "", StringComparison.Ordinal);
        return plain.Contains("cm-1", StringComparison.Ordinal) || plain.Contains("cm^-1", StringComparison.Ordinal) || plain.Contains("1/cm", StringComparison.Ordinal) || plain.Contains("cm**-1", StringComparison.Ordinal)
            || MeasuredTable.Has(heading, Wavenumbers) || IsNumberOfWaves(heading);
    }

    /// <summary>True for a heading of ordinates.</summary>
    public static bool IsOrdinate(string heading) => StatedScale(heading, []) != Infrared.StatedScale.Nothing || MeasuredTable.Has(heading, Others);

    /// <summary>True for a column of the empty beam, which a spectrum was divided by already.</summary>
    public static bool IsOfNoSample(string heading) => MeasuredTable.Has(heading, NoSample);

    /// <summary>True for a column that counts rows.</summary>
    public static bool IsIndex(string heading) => MeasuredTable.Has(heading, Indices) || heading == "#";

    /// <summary>True for a line that speaks of infrared.</summary>
    public static bool IsInfrared(string line) => MeasuredTable.Has(line, "ftir ir infrared infrarot infrarouge infrarrojo infravermelho infrarosso infrarood drift") || line.Contains("FT-IR", StringComparison.OrdinalIgnoreCase);

    /// <summary>True for a line that speaks of Raman scattering, which is none.</summary>
    public static bool IsRaman(string line) => MeasuredTable.Has(line, "raman");

    /// <summary>What a heading says of the ordinate, or a line above the table where the heading says nothing.</summary>
    /// <param name="heading">Heading with its unit.</param>
    /// <param name="lines">Lines above the table.</param>
    public static StatedScale StatedScale(string heading, ImmutableArray<GridRow> lines)
    {
        if (Of(heading) is var own && own != Infrared.StatedScale.Nothing)
            return own;
        foreach (var line in lines)
        {
            // "YUNITS | TRANSMITTANCE", "y: %T"; a sentence in which the word occurs says less.
            if (line.Filled is 1 or 2 && line.Cells.Where(c => !c.IsBlank).Select(c => c.Text).ToArray() is var cells
                && (cells.Length == 2 ? MeasuredTable.Has(cells[0], "y yunits ordinate unit units einheit signal mode") : MeasuredTable.Has(cells[0], "y yunits ordinate"))
                && Of(cells[^1].Split(':', '=')[^1]) is var said && said != Infrared.StatedScale.Nothing)
                return said;
        }

        // "spectra as exported, %T", "absorbance" alone: nothing else is meant. "Transmission" may be how the light went.
        return lines.SelectMany(l => l.Cells).Where(c => !c.IsBlank).SelectMany(c => c.Text.Split([',', ';', ':'])).Select(t => t.Trim()).Where(t => t.Length > 0).Select(t => MeasuredTable.WordsOf(t) is [_] ? Of(t) : Infrared.StatedScale.Nothing)
            .FirstOrDefault(s => s is Infrared.StatedScale.Percent or Infrared.StatedScale.Absorbance);
    }

    /// <summary>What is left of a heading without words of the ordinate: the powder's name in a table of several spectra.</summary>
    public static string PowderIn(string heading)
    {
        string[] words = [.. heading.Split(' ', '_', '/', ',', ';', '(', ')', '[', ']').Where(w => w.Length > 0 && w is not ("%" or "%T" or "a.u." or "au") && Of(w) == Infrared.StatedScale.Nothing)];
        return string.Join(' ', words);
    }

    /// <summary>The resolution that a line states: beside the word, or as a small number of cm⁻¹ in a line of settings; null for none.</summary>
    public static double? ResolutionIn(string line)
    {
        if (MeasuredTable.Has(line, "resol* auflosung resolutie") && (FileWords.NumberBefore(line, "cm-1") ?? Last(line)) is > 0 and <= 64 and var stated)
            return stated;
        return FileWords.NumberBefore(line, "cm-1") is > 0 and <= 32 and var small ? small : null;
    }

    /// <summary>How the light went, as a line states it; null where it does not.</summary>
    public static string? PathIn(string line)
        => MeasuredTable.Has(line, ReflectedWords) ? InfraredFiles.Reflected
            : MeasuredTable.Has(line, TransmittedWords) ? "transmission" : null;

    private static StatedScale Of(string heading)
    {
        // The A of "scan A" counts the scans.
        if (RepeatWords.OnlyNumber(heading, _ => false))
            return Infrared.StatedScale.Nothing;
        // "%T" and "T%" have no letters beside the one.
        var percent = heading.Contains('%', StringComparison.Ordinal) || MeasuredTable.Has(heading, "percent prozent pourcent por porcentaje porcentagem percento procent");
        if (MeasuredTable.Has(heading, Transmittances))
            return percent ? Infrared.StatedScale.Percent : MeasuredTable.Has(heading, "fraction") ? Infrared.StatedScale.Fraction : Infrared.StatedScale.Transmittance;
        return !percent && (MeasuredTable.Has(heading, Absorbances) || FileWords.Plain(heading).Contains("log(1/", StringComparison.Ordinal)) ? Infrared.StatedScale.Absorbance : Infrared.StatedScale.Nothing;
    }

    // "nombre d'onde", "número de onda", "liczba falowa", "dalga sayısı", "bilangan gelombang": a number of waves, and no length of one.
    private static bool IsNumberOfWaves(string heading)
        => MeasuredTable.Has(heading, "onde onda ondas falowa dalga gelombang") && MeasuredTable.Has(heading, "nombre numero liczba sayisi bilangan");

    private static double? Last(string line)
    {
        var digits = new string([.. line.Reverse().SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(c => char.IsAsciiDigit(c) || c is '.').Reverse()]);
        return double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
    }
}

/// <summary>What a heading says of an ordinate.</summary>
internal enum StatedScale
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>Absorbance.</summary>
    Absorbance,

    /// <summary>Transmittance, percent or fraction not said.</summary>
    Transmittance,

    /// <summary>Transmittance in percent.</summary>
    Percent,

    /// <summary>Transmittance as a fraction.</summary>
    Fraction,
}
