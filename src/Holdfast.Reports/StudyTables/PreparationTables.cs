using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Reports.Tables;
using Holdfast.Safety;
using Holdfast.Solutions;

namespace Holdfast.Reports.StudyTables;

/// <summary>Preparations worked out from what was typed: ways to dilute, and the salt for a stock.</summary>
public static class PreparationTables
{
    // Steps of a usual analytical balance, g; below a thousand of them it spoils the stock itself.
    private const double Resolution = 0.0001;

    /// <summary>Ways from a stock to a target, best first.</summary>
    /// <param name="from">Concentration of the stock as typed: "1000 mg/L".</param>
    /// <param name="to">Concentration wanted, as typed.</param>
    /// <param name="make">Volume needed, as typed: "50 mL".</param>
    /// <returns>The table, or what is in the way.</returns>
    public static (Table? Table, string? Trouble) Dilution(string from, string to, string make)
    {
        if (In(from, "mg/L") is not { } stock)
            return (null, Asks("concentration of the stock", from, "1000 mg/L"));
        if (In(to, "mg/L") is not { } target)
            return (null, Asks("concentration wanted", to, "40 mg/L"));
        if (In(make, "mL") is not { } volume)
            return (null, Asks("volume", make, "50 mL"));
        var ways = DilutionPlan.Ways(stock, target, volume, VolumetricWare.All);
        return ways.Value is { } found
            ? (new(
                "dilution", string.Create(CultureInfo.InvariantCulture, $"From {stock:G6} to {target:G6} mg/L, at least {volume:G6} mL"),
                [new Column("how", "How") { NamesRows = true }, new Column("made", "Gives") { Unit = "mg/L" }, new Column("stock", "Stock used") { Unit = "mL" }],
                [.. found.Select(w => Row.Of(string.Join("; then ", w.Instructions), new MeasuredCell(w.Concentration.Value, w.Concentration.U), new NumberCell(Math.Round(w.StockVolume, 3))))])
            { Notes = ["The uncertainty is that of pipettes and flasks of class A; that of the stock comes on top."] }, null)
            : (null, ways.Findings[0].Sentence);
    }

    /// <summary>The salt to weigh for a stock.</summary>
    /// <param name="salt">Formula of the salt as typed, its water included: "Ni(NO3)2.6H2O".</param>
    /// <param name="element">Symbol of the element that is counted.</param>
    /// <param name="to">Concentration wanted, as typed.</param>
    /// <param name="make">Volume, as typed.</param>
    /// <param name="purity">Purity as typed: "99 %".</param>
    /// <returns>The table, or what is in the way.</returns>
    public static (Table? Table, string? Trouble) Stock(string salt, string element, string to, string make, string purity)
    {
        if (Formula.Read((salt ?? "").Trim()).Value is not { } formula)
            return (null, $"“{salt}” is no formula. Write the salt with its water, as Ni(NO3)2.6H2O.");
        if (!(formula.Count(element) > 0))
            return (null, $"{formula.Text} holds no {(string.IsNullOrEmpty(element) ? "metal that was named" : element)}. Name the element that is counted, as Ni.");
        if (In(to, "mg/L") is not { } concentration)
            return (null, Asks("concentration wanted", to, "1000 mg/L"));
        if (In(make, "L") is not { } volume)
            return (null, Asks("volume", make, "250 mL"));
        if (In(purity, "%") is not { } percent || percent > 100)
            return (null, Asks("purity", purity, "99 %"));
        var mass = Solutions.Stock.MassNeeded<Number>(concentration, volume, formula.MassFraction(element).Value, percent / 100).Value;
        return (new(
            "stock", string.Create(CultureInfo.InvariantCulture, $"{volume * 1000:G6} mL of {concentration:G6} mg of {element} in each litre, from {formula.Text}"),
            [new Column("what", "What") { NamesRows = true }, new Column("amount", "Amount"), new Column("unit", "Unit")],
            [
                Row.Of("salt to weigh", new NumberCell(Math.Round(mass, 5)), "g"),
                Row.Of(element + " in the pure salt", new NumberCell(Math.Round(100 * formula.MassFraction(element).Value, 3)), "%"),
            ])
        {
            Notes =
            [
                "The mass is a target: weigh near it and write down what you weighed. Check the water of the salt and its purity on the bottle's certificate.",
                .. Solutions.Stock.IsTooLittle(mass, Resolution) ? ["So little is weighed that a balance of 0.1 mg spoils the stock: make more of it, or a stronger one."] : Array.Empty<Figures.RichText>(),
                .. Caution.For(formula.Text).Select(c => (Figures.RichText)$"{c.Class}: {c.Advice}"),
                Caution.Reservation,
            ],
        }, null);
    }

    private static string Asks(string what, string? typed, string example) => $"“{typed}” is no {what}. Type it with its unit, for example {example}.";

    private static double? In(string? typed, string unit)
        => QuantityText.Read(typed).Value is { } quantity && quantity.Unit.IsConvertibleTo(Unit.Parse(unit)) && quantity.Unit.Convert(quantity.Value, Unit.Parse(unit)) is > 0 and < double.PositiveInfinity and var value ? value : null;
}
