using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Claims;

/// <summary>A claim with what it is about, ready to be judged.</summary>
/// <param name="Id">Short address: "equilibrium-120-kin-20".</param>
/// <param name="Rule">Id of the rule that judges it.</param>
/// <param name="Parameters">By name, as written: series "KIN-20", time "120 min".</param>
/// <param name="Wording">The author's words, or null.</param>
/// <param name="Stated">True when the author stated it; false when Holdfast raises it because the data invite it.</param>
public sealed record Claim(string Id, string Rule, ImmutableSortedDictionary<string, string> Parameters, string? Wording, bool Stated)
{
    /// <summary>A claim that Holdfast raises itself: because the data invite it, or because another claim stands on it.</summary>
    /// <param name="rule">Id of the rule that judges it.</param>
    /// <param name="parameters">What it is about; a null is left out.</param>
    public static Claim Raised(string rule, params ReadOnlySpan<(string Name, string? Words)> parameters)
    {
        var kept = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (name, words) in parameters)
        {
            if (!string.IsNullOrWhiteSpace(words))
                kept[name] = words;
        }

        var id = string.Join('-', kept.Values.Prepend(rule).Select(Slug).Where(s => s.Length > 0));
        return new(id, rule, kept.ToImmutable(), null, Stated: false);
    }

    /// <summary>A parameter's words, or null when it was not given.</summary>
    /// <param name="name">Name of the parameter.</param>
    public string? Words(string name) => Parameters.GetValueOrDefault(name);

    /// <summary>A parameter's leading number ("120 min" gives 120), or null when it was not given or does not start with a number.</summary>
    /// <param name="name">Name of the parameter.</param>
    public double? Number(string name)
    {
        if (Parameters.GetValueOrDefault(name) is not { } text)
            return null;
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or '-' or '+' or 'e' or 'E'))
            end++;
        while (end > 0 && !char.IsAsciiDigit(text[end - 1]))
            end--;
        return double.TryParse(text.AsSpan(0, end), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : null;
    }

    /// <summary>
    /// A parameter's amount in the unit a rule works in: "2 h" is 120 in min, "20 µg/L" is 0.02 in mg/L, a bare number is taken in that unit. Null when it was
    /// not given, is no number, or its unit is of another kind.
    /// </summary>
    /// <param name="name">Name of the parameter.</param>
    /// <param name="unit">The unit wanted.</param>
    public double? In(string name, string unit)
    {
        if (Words(name) is not { } words)
            return null;
        if (QuantityText.Read(words).Value is { } quantity)
            return quantity.Unit.IsConvertibleTo(Unit.Parse(unit)) ? quantity.Unit.Convert(quantity.Value, Unit.Parse(unit)) : null;
        return CellText.Read(words.Trim(), null) is CellText.Number bare ? bare.Value : null;
    }

    // Letters of any script: a series named in another one keeps an address of its own.
    private static string Slug(string words)
        => string.Join('-', string.Concat(words.Select(c => char.IsLetterOrDigit(c) || c == '.' ? char.ToLowerInvariant(c) : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
