using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Composition;

/// <summary>Names of the elements that are taken out of water and of those that come along, in English, German, French, Spanish, Portuguese and Italian, the common ones also in Dutch, Polish, Czech, Swedish, Turkish and Indonesian.</summary>
/// <remarks>Common names of the languages; accents are left out.</remarks>
public static partial class ElementNames
{
    private static readonly (string Symbol, string Names)[] Entries =
    [
        ("Ag", "silver silber argent plata prata argento zilver srebro stribro gumus perak"), ("Al", "aluminium aluminum aluminio alluminio glin hlinik"), ("As", "arsenic arsen arsenico arsenio arseen"),
        ("Au", "gold or oro ouro goud zloto zlato guld altin"), ("B", "boron bor bore boro"), ("Ba", "barium bario baryum"), ("Be", "beryllium berilio berillio"), ("Bi", "bismuth bismut wismut bismuto"),
        ("Ca", "calcium kalzium calcio"), ("Cd", "cadmium kadmium cadmio kadm kadmiyum"), ("Ce", "cerium cer cerio"), ("Co", "cobalt kobalt cobalto"),
        ("Cr", "chromium chrom chrome cromo chroom krom"), ("Cs", "caesium cesium casium cesio"), ("Cu", "copper kupfer cuivre cobre rame koper miedz koppar bakir tembaga"), ("Eu", "europium europio"),
        ("Fe", "iron eisen fer hierro ferro ijzer zelazo zelezo jarn demir besi"), ("Ga", "gallium galio gallio"), ("Gd", "gadolinium gadolinio"), ("Ge", "germanium germanio"), ("Dy", "dysprosium disprosio"), ("Hg", "mercury quecksilber mercure mercurio kwik rtec rtut kvicksilver civa raksa"), ("In", "indium indio"),
        ("K", "potassium kalium potasio potassio"), ("La", "lanthanum lanthan lanthane lantano lantanio"), ("Li", "lithium litio"), ("Mg", "magnesium magnesio"),
        ("Mn", "manganese mangan manganeso manganes mangaan"), ("Mo", "molybdenum molybdan molybdene molibdeno"), ("Na", "sodium natrium sodio"), ("Nd", "neodymium neodym neodimio"),
        ("Ni", "nickel niquel nichel nikkel nikiel nikl nikel"), ("P", "phosphorus phosphor phosphore fosforo"), ("Pb", "lead blei plomb plomo chumbo piombo lood olow olovo bly kursun timbal"), ("Pd", "palladium paladio palladio"),
        ("Pt", "platinum platin platine platino platina"), ("Rb", "rubidium rubidio"), ("Sb", "antimony antimon antimoine antimonio antymon"), ("Sc", "scandium escandio scandio"), ("Se", "selenium selen selenio"), ("Si", "silicon silicium silizium silicio"), ("Sm", "samarium samario"), ("Sn", "tin zinn etain estano estanho stagno cyna tenn kalay"),
        ("Sr", "strontium estroncio stronzio"), ("Tb", "terbium terbio"), ("Th", "thorium torio"), ("Ti", "titanium titan titane titanio"), ("Tl", "thallium talio tallio"), ("U", "uranium uran uranio"),
        ("V", "vanadium vanadin vanadio"), ("Y", "yttrium itrio ittrio"), ("Yb", "ytterbium iterbio itterbio"), ("Zn", "zinc zink cinc zinco cynk zinek cinko"), ("Zr", "zirconium zirkonium circonio zirconio"),
    ];

    private static readonly FrozenDictionary<string, string> ByName = Entries
        .SelectMany(e => e.Names.Split(' ').Select(n => (Name: n, e.Symbol)))
        .DistinctBy(x => x.Name)
        .ToFrozenDictionary(x => x.Name, x => x.Symbol, StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Symbols = Entries.Select(e => e.Symbol).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The symbol of the element that a word names, by its symbol ("Pb", "Pb2+", "Pb(II)") or its name; null for none.</summary>
    /// <param name="word">A word; a symbol counts only with its capitals.</param>
    public static string? SymbolOf(string? word)
    {
        if (string.IsNullOrWhiteSpace(word))
            return null;
        var trimmed = word.Trim();
        if (ByName.TryGetValue(trimmed, out var symbol))
            return symbol;
        var letters = new string([.. trimmed.TakeWhile(char.IsAsciiLetter)]);
        return Symbols.Contains(letters) && trimmed[letters.Length..].All(c => !char.IsLetter(c) || c is 'I' or 'V') ? letters : null;
    }

    /// <summary>The English name of an element of the list, or its symbol.</summary>
    /// <param name="symbol">The symbol.</param>
    public static string NameOf(string symbol) => Array.Find(Entries, e => e.Symbol == symbol) is { Names: { } names } ? names.Split(' ')[0] : symbol;

    /// <summary>
    /// The element that somebody typed, or null: any symbol and any English name, and the names of the list. Case, accents, a charge and an oxidation state
    /// do not matter: "Pb2+", "lead(II)", "Plomb", "PB".
    /// </summary>
    /// <param name="words">Symbol or name.</param>
    public static Element? Find(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var bare = Charge().Replace(words.Trim(), "").Trim();
        var plain = string.Concat(bare.Normalize(NormalizationForm.FormD).Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark));
        return Element.Find(bare)
            ?? Element.All.FirstOrDefault(e => string.Equals(e.Name, plain, StringComparison.OrdinalIgnoreCase))
            ?? (ByName.TryGetValue(plain, out var symbol) ? Element.Find(symbol) : null)
            ?? (bare.Length is 1 or 2 ? Element.All.FirstOrDefault(e => string.Equals(e.Symbol, bare, StringComparison.OrdinalIgnoreCase)) : null);
    }

    [GeneratedRegex(@"\s*(?:\(\s*[IV0]+\s*\)|\(?\d*[+⁺]\)?|\(?\d*[-−⁻]\)?|[²³⁴⁵⁶]?[⁺⁻])$", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Charge();
}
