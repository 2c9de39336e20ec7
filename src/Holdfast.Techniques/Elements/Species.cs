using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Elements;

/// <summary>What a row or column of a table stands for: an element, or the oxide that its amount is reckoned as.</summary>
/// <param name="Element">The element, in an oxide the one beside oxygen.</param>
/// <param name="Oxide">The oxide, or null for the element itself.</param>
internal sealed record Species(Element Element, Formula? Oxide)
{
    // Gases, water and carbon dioxide are losses in a table of oxides, and no part of the powder's metals.
    private static readonly HashSet<string> NoOxides = new("H He C N O F Ne Cl Ar Br Kr I Xe Rn".Split(' '), StringComparer.Ordinal);

    /// <summary>As it is kept with a measurement: "Co", "La2O3".</summary>
    public string Symbol => Oxide?.Text ?? Element.Symbol;

    /// <summary>The one that was kept with a measurement; null for none with an atomic weight.</summary>
    /// <param name="symbol">"Co", "La2O3".</param>
    public static Species? Find(string symbol) => (Element.Find(symbol) is { } element ? new Species(element, null) : OxideIn(symbol)) is { Element.AtomicWeight: not null } known ? known : null;

    /// <summary>Mass of the element in a mass of what was written.</summary>
    /// <param name="mass">Any unit.</param>
    public Measured MassOf(Measured mass) => Oxide is null ? mass : mass * Oxide.MassFraction(Element.Symbol);

    /// <summary>Atoms of the element in moles of what was written.</summary>
    /// <param name="moles">Any scale.</param>
    public Measured AtomsOf(Measured moles) => Oxide is null ? moles : moles * Oxide.Count(Element.Symbol);

    /// <summary>What a cell of a column stands for: "Co", "Co K", "CoK", "Co-Kα", "cobalt", "CoO"; a letter alone only where nothing else stands beside it.</summary>
    /// <param name="cell">The cell.</param>
    public static Species? In(Cell cell)
        => cell.Kind != CellKind.Text || cell.IsBlank || cell.Text.Length > 24 ? null
            : Symbolised(cell.Text) is { } element ? new(element, null)
            : OxideIn(cell.Text) ?? (cell.Text.Length > 3 && !cell.Text.Any(char.IsDigit) && ElementNames.Find(cell.Text) is { } named ? new Species(named, null) : null);

    /// <summary>What a heading stands for: "Co", "Co (wt%)", "Zn_at%", "Ca / mg/g", "Zn K wt%", "La2O3 (%)".</summary>
    /// <param name="text">The heading.</param>
    /// <param name="isAmount">Whether the rest of it says an amount.</param>
    public static Species? Headed(string text, Func<string, bool> isAmount)
    {
        var end = 0;
        while (end < text.Length && char.IsAsciiLetter(text[end]))
            end++;
        if (end == 0)
            return null;
        var oxide = OxideIn(text);
        if (oxide is null && end < text.Length && char.IsDigit(text[end]))
            return null;
        if (oxide is not null)
            end = Token(text).Length;
        var element = oxide is not null ? null : Element.Find(text[..end]) ?? (end > 3 ? ElementNames.Find(text[..end]) : null);
        var rest = text[end..].Trim(' ', '_', '-', '/', ',', '(', ')', '[', ']');
        return rest.Length > 0 && !IsLine(rest) && !isAmount(rest) ? null : oxide ?? (element is null ? null : new(element, null));
    }

    /// <summary>True for the name of an X-ray line: "K", "Lα", "(Ka1)".</summary>
    /// <param name="text">A cell, or what stands behind a symbol.</param>
    public static bool IsLine(string text)
    {
        var line = text.Trim(' ', '-', '_', '(', ')');
        return line.Length is > 0 and <= 4 && line[0] is 'K' or 'L' or 'M' && line[1..].All(c => c is 'α' or 'β' or 'a' or 'b' or '1' or '2' or ' ');
    }

    private static Element? Symbolised(string text)
    {
        if (Element.Find(text) is { } plain)
            return plain;
        if (text.Length == 2 && char.IsUpper(text[1]) && text[1] is not ('K' or 'L' or 'M') && Element.Find(text[0] + text[1..].ToLowerInvariant()) is { } shouted)
            return shouted;
        foreach (var length in new[] { 2, 1 })
        {
            if (text.Length > length && Element.Find(text[..length]) is { } start && IsLine(text[length..]))
                return start;
        }

        return null;
    }

    // "La2O3", "La₂O₃ (%)", "Fe2O3*", and "SIO2" as machines shout it. One element beside oxygen, whole numbers of both.
    private static Species? OxideIn(string text)
    {
        var token = Token(text);
        if (token.Length is < 2 or > 8 || token.IndexOf('O', 1) < 0)
            return null;
        if (Read(token) is { } oxide)
            return oxide;
        var letters = token.TakeWhile(char.IsAsciiLetterUpper).Count();
        return letters >= 2 && token.All(c => char.IsAsciiLetterUpper(c) || char.IsDigit(c)) ? Read(token[0] + char.ToLowerInvariant(token[1]).ToString() + token[2..]) : null;
    }

    private static Species? Read(string token)
        => Formula.Read(token).Value is { Charge: 0, Parts: [{ Key: var metal, Value: var count }, { Key.Symbol: "O", Value: var oxygen }] } formula
            && !NoOxides.Contains(metal.Symbol) && count == Math.Floor(count) && oxygen == Math.Floor(oxygen) ? new(metal, formula) : null;

    private static string Token(string text)
    {
        var end = text.IndexOfAny([' ', '(', '[', '/', '_', ',', '*', '-']);
        return end < 0 ? text : text[..end];
    }
}
