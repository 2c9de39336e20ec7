using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Composition;

namespace Holdfast.Studies.Import.Headings;

/// <summary>A heading taken apart: what it names, in which words of the bench, and what it says about the unit.</summary>
/// <param name="Text">As written.</param>
/// <param name="Name">Without the unit.</param>
/// <param name="Unit">What heading, line of units or a note above say about the unit.</param>
/// <param name="Tokens">Its words in lower case, without accents and unit.</param>
/// <param name="Words">What they stand for.</param>
internal sealed record HeadingReading(string Text, string Name, UnitText Unit, ImmutableArray<string> Tokens, ImmutableHashSet<HeadingWord> Words)
{
    // Spellings of units that are words of a language, or too short for a heading that may hold anything.
    private static readonly ImmutableDictionary<string, string> Spelled = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["std"] = "h",
        ["stdn"] = "h",
        ["stunde"] = "h",
        ["stunden"] = "h",
        ["heure"] = "h",
        ["heures"] = "h",
        ["hora"] = "h",
        ["horas"] = "h",
        ["ora"] = "h",
        ["ore"] = "h",
        ["minute"] = "min",
        ["minuten"] = "min",
        ["minutos"] = "min",
        ["minuto"] = "min",
        ["minuti"] = "min",
        ["menit"] = "min",
        ["jam"] = "h",
        ["hari"] = "d",
        ["dk"] = "min",
        ["dakika"] = "min",
        ["minut"] = "min",
        ["minuty"] = "min",
        ["sa"] = "h",
        ["saat"] = "h",
        ["godz"] = "h",
        ["godzina"] = "h",
        ["godziny"] = "h",
        ["uur"] = "h",
        ["uren"] = "h",
        ["u"] = "h",
        ["hod"] = "h",
        ["tim"] = "h",
        ["timmar"] = "h",
        ["gun"] = "d",
        ["dagen"] = "d",
        ["dag"] = "d",
        ["jour"] = "d",
        ["dia"] = "d",
        ["giorno"] = "d",
        ["dzien"] = "d",
        ["doba"] = "d",
        ["den"] = "d",
        ["dni"] = "d",
        ["tage"] = "d",
        ["tag"] = "d",
        ["jours"] = "d",
        ["dias"] = "d",
        ["giorni"] = "d",
        ["sek"] = "s",
        ["sekunden"] = "s",
        ["gramm"] = "g",
        ["gramos"] = "g",
        ["gramas"] = "g",
        ["grammi"] = "g",
        ["grammes"] = "g",
        ["milligramm"] = "mg",
        ["mgl"] = "mg/L",
        ["ugl"] = "ug/L",
        ["gl"] = "g/L",
        ["mgg"] = "mg/g",
        ["mgperl"] = "mg/L",
        ["mgl1"] = "mg/L",
        ["ugl1"] = "ug/L",
        ["gl1"] = "g/L",
        ["mgg1"] = "mg/g",
        ["mmoll1"] = "mmol/L",
        ["umoll1"] = "umol/L",
        ["percent"] = "%",
        ["pct"] = "%",
        ["prozent"] = "%",
        ["pourcent"] = "%",
        ["porcentaje"] = "%",
        ["porcentagem"] = "%",
        ["percento"] = "%",
        ["procent"] = "%",
        ["degc"] = "degC",
        ["celsius"] = "degC",
        ["gradc"] = "degC",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    // Spans of time, counted: one hour alone may be one of the day, and "ore" may be rock.
    private static readonly HashSet<string> Hours = new("hours hrs minutes mins seconds days stunden stdn minuten sekunden heures minutes horas minutos minuti uren timmar minuter godziny minuty dakika".Split(' '), StringComparer.Ordinal);

    /// <summary>The heading's letters and digits in lower case: how properties list their headings.</summary>
    public string Key { get; } = HeadingWords.Key(Name);

    /// <summary>True when the heading holds this word.</summary>
    public bool Has(HeadingWord word) => Words.Contains(word);

    /// <summary>True when the heading holds one of these words.</summary>
    public bool HasAny(params ReadOnlySpan<HeadingWord> words)
    {
        foreach (var word in words)
        {
            if (Words.Contains(word))
                return true;
        }

        return false;
    }

    /// <summary>Symbol of an element that the heading names: "Pb (µg/L)", "Lead", "Ni 231.604"; null for none.</summary>
    public string? Element { get; } = ElementIn(Name);

    /// <summary>True when the heading names this element, also one whose symbol is a word or a single letter.</summary>
    /// <param name="symbol">The symbol, or null.</param>
    public bool Names(string? symbol) => symbol is not null
        && (Element == symbol || Name.Split([' ', '_', '[', ']', '(', ')', ',', '/', '-', ':', '.'], StringSplitOptions.RemoveEmptyEntries).Contains(symbol, IsOnlyASymbol(symbol) ? StringComparer.OrdinalIgnoreCase : StringComparer.Ordinal));

    // "cu" can only be copper; "in", "as", "co" and "ce" are words and symbols of other things.
    private static bool IsOnlyASymbol(string symbol) => symbol.Length == 2 && symbol is not ("In" or "As" or "Co" or "Ce" or "At" or "No" or "Be" or "He" or "Am" or "Es" or "Si" or "Se" or "La" or "Re");

    /// <summary>Takes a heading apart.</summary>
    /// <param name="text">The heading.</param>
    /// <param name="unitLine">The cell of the line of units below it, or null.</param>
    public static HeadingReading Of(string text, string? unitLine = null)
    {
        var written = text;
        // What stands behind a unit in brackets is a remark: "after (µg/L), mean ± s".
        if (text.IndexOf(')', StringComparison.Ordinal) is > 0 and var close && close < text.Length - 1 && text.IndexOf('(', StringComparison.Ordinal) is >= 0 and var open && open < close
            && UnitOf(text[(open + 1)..close]) is UnitText.Known { Unit.IsOne: false } && text[(close + 1)..].TrimStart() is [',' or ';', ..] rest)
            text = text[..(close + 1)] + (Lexicon.Of(rest).Contains(HeadingWord.Spread) && !rest.Contains('±', StringComparison.Ordinal) ? " sd" : "");
        // "Ce / mg/L (mean ± SD, n = 3)": how it was averaged is no part of the name.
        if (text.LastIndexOf('(') is > 0 and var last && text.EndsWith(')') && UnitOf(text[last..]) is UnitText.Unknown && (text[last..].Contains('±', StringComparison.Ordinal) || text[last..].Contains("n =", StringComparison.Ordinal) || text[last..].Contains("n=", StringComparison.Ordinal)))
            text = text[..last].TrimEnd();
        // "mg/L" over the standards: a unit alone, and nothing called mg.
        if (text.Contains('/', StringComparison.Ordinal) && UnitOf(text) is UnitText.Known alone && UnitKinds.Of(alone) is UnitKind.Concentration or UnitKind.Loading)
            return new(written, "", alone, [], []);
        var header = Header.Read(text);
        var (name, unit) = (header.Name, header.Unit);
        if (WholeQuotient(text) is { } whole)
            (name, unit) = whole;
        else if (unit is not UnitText.Known || name.Length == 0)
            (name, unit) = Tail(text) ?? Bracket(text) ?? (name, unit);
        if (unit is UnitText.Absent)
            (name, unit) = Leading(text) ?? (name, unit);
        if (unit is UnitText.Unknown odd && UnitOf(odd.Text) is UnitText.Known { Unit.IsOne: true } one)
            unit = one;
        // "start conc in mg/L": the "in" belongs to the unit, and is no direction.
        if (unit is UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous && name.Split(' ') is [_, .., "in" or "en" or "em"] && text.IndexOfAny(['(', '[']) < 0)
            name = name[..^2].TrimEnd();
        if (unit is UnitText.Absent or UnitText.Unknown && unitLine is { Length: > 0 })
            unit = UnitOf(unitLine);
        // "c(Gl.)" over mg/l: where a line of units states one, a word that merely may be a unit is none.
        else if (header.Unit is not UnitText.Known && unit is UnitText.Known loose && unitLine is { Length: > 0 } && UnitOf(unitLine) is UnitText.Known { Unit.IsOne: false } stated && !loose.Unit.HasSameScale(stated.Unit))
            unit = stated;
        var tokens = Lexicon.Tokens(name);
        var words = Lexicon.Of(tokens);
        // "Co in", "out at": a direction counts as before and after where it stands last or first, not within a sentence.
        if (tokens.Length is > 1 and <= 4)
        {
            if (tokens[^1] is "in" or "ein" || tokens[0] is "in" or "into")
                words = words.Add(HeadingWord.Start);
            else if (tokens[^1] is "out" or "aus" || tokens[0] is "out")
                words = words.Add(HeadingWord.End);
        }

        // "Hours on the shaker", "minutes of contact": the word in front, or behind, is the unit.
        if (unit is UnitText.Absent && tokens.Length is > 1 and <= 5 && (Hours.Contains(tokens[0]) ? tokens[0] : Hours.Contains(tokens[^1]) ? tokens[^1] : null) is { } counted && UnitOf(counted) is UnitText.Known inWords)
            return new(written, name, inWords, tokens, words.Add(HeadingWord.Time));
        // "hours" says what it is and in which unit.
        if (unit is UnitText.Absent && tokens.Length == 1 && (tokens[0].Length > 3 || tokens[0] is "hrs" or "mins" or "hr" or "min" or "h") && UnitOf(tokens[0]) is UnitText.Known { Unit.IsOne: false } itself && UnitKinds.Of(itself) == UnitKind.Time)
            return new(written, name, itself, tokens, words.Add(HeadingWord.Time));
        return new(written, name, unit, tokens, words);
    }

    /// <summary>What a text that is meant to be a unit says, words of several languages included.</summary>
    /// <param name="text">"mg/L", "Std.", "(min)", "en %".</param>
    public static UnitText UnitOf(string text)
    {
        var plain = text.Trim().Trim('(', ')', '[', ']', '.').Trim();
        foreach (var opening in new[] { "in ", "en ", "em " })
        {
            if (plain.StartsWith(opening, StringComparison.OrdinalIgnoreCase))
                plain = plain[opening.Length..].Trim();
        }

        if (plain is "0-1" or "0..1" or "0–1" or "0 to 1" or "fraction" or "frac")
            return new UnitText.Known(Amounts.Unit.One);
        var read = Amounts.Unit.Read(plain);
        if (read is UnitText.Known or UnitText.Absent)
            return read;
        return Spelled.TryGetValue(string.Concat(Lexicon.Tokens(plain)), out var spelled) ? Amounts.Unit.Read(spelled) : read;
    }

    // "dosage in g/L", "dose g/L": the last word is one unit, and its stroke parts no name from a unit.
    private static (string Name, UnitText Unit)? WholeQuotient(string text)
    {
        var at = text.LastIndexOf(' ');
        return at > 0 && text.IndexOf('/', at) is > 0 and var stroke && stroke > at + 1 && stroke < text.Length - 1 && text.IndexOfAny(['(', '['], at) < 0
            && UnitOf(text[(at + 1)..]) is UnitText.Known { Unit.IsOne: false } unit ? (text[..at].TrimEnd(' ', '/', ','), unit) : null;
    }

    // "mg powder", "% of Cd still in the water", "mL" alone: the unit comes first.
    private static (string Name, UnitText Unit)? Leading(string text)
    {
        if (UnitOf(text) is UnitText.Known { Unit.IsOne: false } whole && text.Length > 1 && UnitKinds.Of(whole) is UnitKind.Mass or UnitKind.Volume or UnitKind.Concentration or UnitKind.Share or UnitKind.Loading)
            return ("", whole);
        var at = text.IndexOf(' ', StringComparison.Ordinal);
        if (at <= 0 || text[..at] is not { } first || (first.Length == 1 && first is not ("%" or "g" or "L" or "h")) || UnitOf(first) is not UnitText.Known { Unit.IsOne: false } unit)
            return null;
        var rest = text[at..].Trim();
        var words = Lexicon.Of(rest);
        return UnitKinds.Of(unit) switch
        {
            UnitKind.Other => null,
            // "h shaken", "min contact": "h of measurement" is something else.
            UnitKind.Time => words.Overlaps([HeadingWord.Contact, HeadingWord.Time]) ? (rest, unit) : null,
            // "g of iron sand": whatever it is, it was weighed.
            UnitKind.Mass when rest.Split(' ') is ["of" or "de" or "di" or "von", _, ..] and var parts => (string.Join(' ', parts[1..]), unit),
            _ => words.IsEmpty ? null : (rest, unit),
        };
    }

    // "mass_g", "c0_mg_l", "removal_percent", "time h": the last words are the unit, once what stands before them means something.
    private static (string Name, UnitText Unit)? Tail(string text)
    {
        var parts = text.Split([' ', '_'], StringSplitOptions.RemoveEmptyEntries);
        var snake = text.Contains('_', StringComparison.Ordinal);
        for (var count = Math.Min(3, parts.Length - 1); count >= 1; count--)
        {
            var tail = parts[^count..];
            if (tail.Any(t => t.Any(c => c is '(' or '[' or ')' or ']')))
                continue;
            var name = string.Join(snake ? "_" : " ", parts[..^count]);
            if ((Lexicon.Of(name).IsEmpty && ElementIn(name) is null) || tail[0] is "in" or "en" or "em" or "std" or "Std" or "STD")
                continue;
            string[] spellings = count == 2 && !tail.Contains("per") ? [$"{tail[0]}/{tail[1]}", string.Join(' ', tail)] : [string.Join(' ', tail)];
            foreach (var spelling in spellings)
            {
                if (UnitOf(count == 1 && spelling is "l" ? "L" : count == 1 && snake && spelling is "c" ? "degC" : spelling) is (UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) and var unit && UnitKinds.Of(unit) is not UnitKind.Other)
                    return (name, unit);
            }
        }

        return null;
    }

    // A bracket or what stands behind a comma, a stroke or "in", with a unit in words: "Zeit [Std]", "Zeit, Stunden".
    private static (string Name, UnitText Unit)? Bracket(string text)
    {
        foreach (var mark in new[] { "(", "[", ", ", " / ", "/", " in ", " en ", " em " })
        {
            var at = text.LastIndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at > 0 && UnitOf(text[(at + mark.Length)..]) is (UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) and var unit)
                return (text[..at].Trim(), unit);
        }

        return null;
    }

    private static string? ElementIn(string name)
    {
        foreach (var part in name.Split([' ', '_', '[', ']', '(', ')', ',', '/', '-', ':'], StringSplitOptions.RemoveEmptyEntries))
        {
            var symbol = ElementNames.SymbolOf(part) ?? (part.Length > 3 ? ElementNames.SymbolOf(Lexicon.Plain(part)) : null);
            // "In" and "or" are words before they are metals.
            if (symbol is not null && (part.Length > 3 || (char.IsUpper(part[0]) && part is not ("In" or "As" or "V" or "C" or "K" or "P" or "B" or "U" or "Or"))))
                return symbol;
        }

        return null;
    }
}
