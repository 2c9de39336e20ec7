using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Diffraction;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>What the words above a scan say of its radiation.</summary>
/// <param name="Anodes">Anodes named, each once.</param>
/// <param name="Wavelengths">Wavelengths stated, ångström, in order.</param>
/// <param name="OnlyFirst">True when Kα1 alone is said to be in the beam; false when both lines are named; null when it is left open.</param>
/// <param name="NamesFirst">True when Kα1 is named and nothing of a second line.</param>
/// <param name="Row">First row that says something; 0 for none.</param>
/// <param name="Written">That row.</param>
internal sealed partial record RadiationSaid(ImmutableArray<string> Anodes, ImmutableArray<double> Wavelengths, bool? OnlyFirst, bool NamesFirst, int Row, string Written)
{
    // Whole words, or a chromium tube would stand in every monochromator.
    private static readonly (Regex Word, string Symbol)[] Names =
    [.. new (string Words, string Symbol)[]
    {
        ("copper|kupfer|cuivre|cobre|rame|koper|mied(z|ź)|miedzi", "Cu"), ("cobalt|kobalt|cobalto|kobaltu", "Co"), (@"molybd\w*|molibd\w*", "Mo"),
        ("iron|eisen|fer|hierro|ferro|żelazo|ijzer", "Fe"), ("chromium|chrom|chrome|cromo|chroom", "Cr"), ("silver|silber|argent|plata|prata|argento|zilver|srebro", "Ag"),
    }.Select(n => (new Regex($@"(^|\P{{L}})({n.Words})(\P{{L}}|strahl|anode|r(ö|oe)hr|$)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking), n.Symbol))];

    /// <summary>True when nothing is said.</summary>
    public bool IsSilent => Anodes.IsEmpty && Wavelengths.IsEmpty;

    /// <summary>Reads the lines above a scan.</summary>
    /// <param name="lines">Rows with their numbers.</param>
    public static RadiationSaid In(IEnumerable<(int Row, string Text)> lines)
    {
        var anodes = new List<string>();
        var wavelengths = new List<double>();
        bool? only = null;
        var first = false;
        var (row, written) = (0, "");
        foreach (var (number, said) in lines)
        {
            // "K alfa", as it is spelled in the south and in Poland.
            var text = said.Replace("alfa", "alpha", StringComparison.OrdinalIgnoreCase);
            var before = anodes.Count + wavelengths.Count;
            anodes.AddRange(AnodesIn(text).Except(anodes).ToList());
            wavelengths.AddRange(WavelengthsIn(text).Select(w => Math.Round(w, 6)).Except(wavelengths).ToList());
            if (OnlyKa1().IsMatch(text))
                only = true;
            else if (only is null && (Both().IsMatch(text) || wavelengths.Exists(IsSecond)))
                only = false;
            first |= First().IsMatch(text);
            if (row == 0 && anodes.Count + wavelengths.Count > before)
                (row, written) = (number, said);
        }

        return new([.. anodes], [.. wavelengths], only, first && only is null, row, written);
    }

    private static IEnumerable<string> AnodesIn(string text)
    {
        foreach (Match m in BesideK().Matches(text))
            yield return Symbol(m.Groups["symbol"].Value);
        foreach (var symbol in NamesBesideK(text))
            yield return symbol;
        if (!Tube().IsMatch(text))
            yield break;
        // "Anode,Co", "Tube: copper": the symbol must stand by itself on a line about the tube.
        foreach (Match m in Alone().Matches(text))
            yield return Symbol(m.Groups["symbol"].Value);
        foreach (var (word, symbol) in Names)
        {
            if (word.IsMatch(text))
                yield return symbol;
        }
    }

    // "Kupfer, K alpha", "K alpha del rame": the metal in words right before its line or right behind it.
    private static IEnumerable<string> NamesBesideK(string text)
        => BareK().Matches(text).SelectMany(k => Names.Where(n => n.Word.IsMatch(Before().Match(text[..k.Index]).Value) || n.Word.IsMatch(Behind().Match(text[(k.Index + k.Length)..]).Value)).Select(n => n.Symbol));

    private static string Symbol(string written) => $"{char.ToUpperInvariant(written[0])}{char.ToLowerInvariant(written[1])}";

    // A number with a unit of length, or on a line about the wavelength; a decimal comma reads as well.
    private static IEnumerable<double> WavelengthsIn(string text)
    {
        var about = AboutWavelength().IsMatch(text);
        var unit = Angstrom().IsMatch(text) ? 1 : Nanometre().IsMatch(text) ? 10.0 : 0;
        if (!about && (unit == 0 || !(BesideK().IsMatch(text) || Tube().IsMatch(text) || NamesBesideK(text).Any())))
            yield break;
        foreach (Match m in Decimal().Matches(text))
        {
            var number = double.Parse(m.Value.Replace(',', '.'), CultureInfo.InvariantCulture);
            // Without a unit, a wavelength below 0.3 is in nm: no laboratory uses harder rays (common practice).
            var angstrom = unit > 0 ? number * unit : number < 0.3 ? number * 10 : number;
            if (angstrom is >= 0.3 and <= 2.6 && (Radiation.Near(angstrom) is not null || IsSecond(angstrom) || about && m.Value.Length >= 5 || about && !text.Contains("ratio", StringComparison.OrdinalIgnoreCase)))
                yield return angstrom;
        }
    }

    private static bool IsSecond(double wavelength) => Radiation.All.Any(r => r.Ka2 is { } second && Math.Abs(wavelength / second - 1) < 5e-4);

    [GeneratedRegex(@"(?<![A-Za-z])(?<symbol>Cu|Co|Mo|Fe|Cr|Ag|CU|CO|MO|FE|CR|AG|cu|co|mo)[\s\-_]*K[\s\-_]*(α|a|alpha|Α|β|b|beta|\\a)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex BesideK();

    [GeneratedRegex(@"(?<![A-Za-z])k[\s\-_]*(α|alpha)[\s\-_]*[12]?", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex BareK();

    [GeneratedRegex(@"\p{L}+[^\p{L}\d]*$", RegexOptions.None, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Before();

    [GeneratedRegex(@"^[^\p{L}\d]*((du|de|del|di|della|von|van|of|do|od)\s+)?\p{L}+", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Behind();

    [GeneratedRegex(@"anode|anoda|anodo|anticat|tube|tubo|target|radiation|strahlung|rayonnement|radia[cç]|radiaz|straling|promieniow|lamp|(?<![a-z])(buis|rura|rör|tüp|trubice)(?![a-z])|x[- ]?ray source|source|quelle|r(ö|oe)hre|анод|излучение|靶", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Tube();

    [GeneratedRegex(@"(?<![A-Za-z0-9\-])(?<symbol>Cu|Co|Mo|Fe|Cr|Ag|CU|CO|MO|FE|CR|AG)(?![A-Za-z0-9\-])", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Alone();

    [GeneratedRegex(@"wave\s*-?length|lambda|λ|wellenl|longueur d.onde|longitud de onda|lunghezza d.onda|comprimento de onda|golflengte|d(ł|l)ugo(ś|s)(ć|c) fali|våglängd|vlnová délka|dalga boyu|длина волны|波长|(?<=(^|[^\p{L}])((cu|co|mo|fe|cr|ag)[\s\-_]*)?)k[\s\-_]*(alpha|α|a)[\s\-_]*[12]\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex AboutWavelength();

    [GeneratedRegex(@"\d\s*(Å|Å|A(?![a-z])|angstr|ångstr)|\((Å|Å|A|angstr\w*)\)|\[(Å|Å|A|angstr\w*)\]|angstr", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Angstrom();

    [GeneratedRegex(@"\d\s*nm|[\[(]nm[\])]|,\s*nm", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Nanometre();

    [GeneratedRegex(@"(?<![\d.,])\d[.,]\d{2,}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Decimal();

    [GeneratedRegex(@"(?<=(^|[^\p{L}])((cu|co|mo|fe|cr|ag)[\s\-_]*)?)k[\s\-_]*(alpha|α|a)[\s\-_]*1\W*(only|nur|seul|allein|pure|monochrom)|(only|pure|strictly|monochromated|monochromatic)\W*((cu|co|mo|fe|cr|ag)[\s\-_]*)?k[\s\-_]*(alpha|α|a)[\s\-_]*1|no\W*k[\s\-_]*(alpha|α|a)[\s\-_]*2|k[\s\-_]*(alpha|α|a)[\s\-_]*2\W*(stripped|removed|none)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex OnlyKa1();

    [GeneratedRegex(@"(?<=(^|[^\p{L}])((cu|co|mo|fe|cr|ag)[\s\-_]*)?)k[\s\-_]*(alpha|α|a)[\s\-_]*[1₁](?!\d|[.,]\d{3})", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex First();

    [GeneratedRegex(@"(?<=(^|[^\p{L}])((cu|co|mo|fe|cr|ag)[\s\-_]*)?)k[\s\-_]*(alpha|α|a)[\s\-_]*1\W{0,3}(\+|and|/|,|&|und|et|y)?\W{0,3}(2|k[\s\-_]*(alpha|α|a)[\s\-_]*2)|k[\s\-_]*(alpha|α|a)(?![a-z])(?![\s\-_]*[1-9](?![.,]\d{3}))|ratio|1[.,]5443|1[.,]5444", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Both();
}
