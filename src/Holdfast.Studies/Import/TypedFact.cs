using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>
/// A fact typed into a cell: numbers are in the unit of the property, or in the one typed behind them, with a point or a comma where only one reading is
/// possible.
/// </summary>
public static class TypedFact
{
    private static readonly Origin Bench = new(null, "typed at the bench", null, 0, null);

    /// <summary>The fact as its cell shows it; "" where nothing is recorded.</summary>
    /// <param name="fact">The fact, or null.</param>
    public static string Shown(Fact? fact) => fact switch
    {
        null => "",
        { Value: { } value } => value.ToString("R", CultureInfo.InvariantCulture),
        { Below: { } below } => "<" + below.ToString("R", CultureInfo.InvariantCulture),
        { Words: { } words } => words,
        _ => fact.Written,
    };

    /// <summary>The fact that was typed, or null with what is wrong with it.</summary>
    /// <param name="sample">Code of the sample, for the message.</param>
    /// <param name="property">Which fact.</param>
    /// <param name="typed">What was typed.</param>
    /// <param name="trouble">What is wrong and what to do; "" when nothing is.</param>
    /// <param name="analyte">Element that is taken up, for units that need its molar mass; null when not said.</param>
    public static Fact? Read(string sample, Property property, string typed, out string trouble, string? analyte = null)
    {
        ArgumentNullException.ThrowIfNull(property);
        trouble = "";
        var text = (typed ?? "").Trim();
        var unit = property.Unit.Length == 0 ? "" : " " + property.Unit;
        var origin = Bench with { Column = property.Title };
        if (text.Length == 0)
        {
            trouble = $"A recorded value is not blanked. Type the right {property.Title}, or strike {sample}.";
            return null;
        }

        if (property.Holds == Holds.Words)
            return new Fact(property.Name, null, null, null, text, text, origin);
        switch (CellText.Read(text, null))
        {
            case CellText.Number number when Plausible.Doubt(property, number.Value, out var impossible) is { } doubt && impossible:
                trouble = $"{text}{unit} is {doubt}, which {property.Title} cannot be. Type the right value.";
                return null;
            case CellText.Number number:
                return new Fact(property.Name, number.Value, null, null, null, text + unit, origin);
            case CellText.Censored { Side: CensoredSide.Below, Limit: { } limit }:
                return new Fact(property.Name, null, null, limit, null, text + unit, origin);
            case CellText.NotANumber when InItsUnit(property, text, analyte, out var why) is { } stated:
                trouble = why;
                return trouble.Length > 0 ? null
                    : Plausible.Doubt(property, stated.Value, out var cannotBe) is { } words && cannotBe ? Refused($"{text} is {words}, which {property.Title} cannot be. Type the right value.", out trouble)
                    : new Fact(property.Name, stated.Value, null, null, null, stated.Written, origin);
            default:
                trouble = $"“{text}” is no single number. Type {property.Title}{(unit.Length == 0 ? "" : " in" + unit)}, for example 20.1; 1,234 could be two numbers.";
                return null;
        }
    }
    // "10 mL", "25 °C": null where no number with a unit stands there.
    private static (double Value, string Written)? InItsUnit(Property property, string text, string? analyte, out string trouble)
    {
        trouble = "";
        if (QuantityText.Read(text) is not { Value: { } quantity } || quantity.Unit.IsOne)
            return null;
        if (UnitBridge.Between(new UnitText.Known(quantity.Unit, quantity.Basis), property, analyte)?.Convert(quantity.Value) is { } value)
            return (value, text);
        trouble = property.Unit.Length == 0 ? $"{property.Title} has no unit. Type the number alone."
            : $"“{text}” cannot be turned into {property.Unit}. Type {property.Title} in {property.Unit}{(analyte is null ? ", or say which metal the study is about" : "")}.";
        return (0, text);
    }

    private static Fact? Refused(string sentence, out string trouble)
    {
        trouble = sentence;
        return null;
    }
}
