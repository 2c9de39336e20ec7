using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>A fact typed into a cell: numbers are in the unit of the property, with a point or a comma where only one reading is possible.</summary>
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
    public static Fact? Read(string sample, Property property, string typed, out string trouble)
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
            default:
                trouble = $"“{text}” is no single number. Type {property.Title}{(unit.Length == 0 ? "" : " in" + unit)}, for example 20.1; 1,234 could be two numbers.";
                return null;
        }
    }
}
