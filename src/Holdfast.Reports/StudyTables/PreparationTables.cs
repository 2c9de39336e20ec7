using System.Collections.Immutable;
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

    /// <summary>The reagents for a batch of product, and what does not grow with it.</summary>
    /// <param name="product">Formula of the product as typed.</param>
    /// <param name="make">Mass of product wanted, as typed: "25 g".</param>
    /// <param name="from">Reagents and the element that each brings: "Ca(NO3)2.4H2O" → "Ca".</param>
    /// <param name="purity">Purity of a reagent by its formula, as typed: "99 %".</param>
    /// <param name="excess">Excess of a reagent by its formula, as typed: "5 %".</param>
    /// <param name="yield">Yield expected, as typed.</param>
    /// <param name="was">Mass of the batch that the recipe is known from, as typed; null where none is.</param>
    /// <returns>The tables, or what is in the way.</returns>
    public static (ImmutableArray<Table> Tables, string? Trouble) Batch(
        string product, string make, IReadOnlyDictionary<string, string> from, IReadOnlyDictionary<string, string> purity, IReadOnlyDictionary<string, string> excess, string yield, string? was)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(purity);
        ArgumentNullException.ThrowIfNull(excess);
        if (Formula.Read((product ?? "").Trim()).Value is not { } made)
            return ([], $"“{product}” is no formula. Write what is made, as Ca10(PO4)6(OH)2.");
        if (In(make, "g") is not { } wanted)
            return ([], Asks("mass of product", make, "5 g"));
        if (In(yield, "%") is not { } expected || expected > 100)
            return ([], Asks("yield", yield, "84 %"));
        if (was is not null && In(was, "g") is null)
            return ([], Asks("mass of the earlier batch", was, "5 g"));
        if (from.Count == 0)
            return ([], "Name at least one reagent with the element that it brings, as Ca(NO3)2.4H2O=Ca.");
        if (purity.Keys.Concat(excess.Keys).FirstOrDefault(k => !from.ContainsKey(k)) is { } stranger)
            return ([], $"{stranger} is no reagent of this recipe: {string.Join(", ", from.Keys)} are.");
        var supplies = new List<Supply>();
        foreach (var (salt, element) in from)
        {
            if (Formula.Read(salt).Value is not { } formula)
                return ([], $"“{salt}” is no formula. Write the reagent with its water, as Ca(NO3)2.4H2O.");
            if (!(formula.Count(element) > 0 && made.Count(element) > 0))
                return ([], $"{element} is not in both {salt} and {made.Text}. Name the element that the reagent brings.");
            if (In(purity.GetValueOrDefault(salt, "100 %"), "%") is not { } pure || pure > 100)
                return ([], Asks("purity of " + salt, purity[salt], "99 %"));
            if (excess.GetValueOrDefault(salt) is { } typed && In(typed, "%") is null)
                return ([], Asks("excess of " + salt, typed, "5 %"));
            supplies.Add(new(formula, element, pure / 100, excess.GetValueOrDefault(salt) is { } more ? In(more, "%")!.Value / 100 : 0));
        }

        if (supplies.GroupBy(s => s.Element).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return ([], $"{twice.Key} is brought by {string.Join(" and ", twice.Select(s => s.Formula.Text))}: name one reagent for each element.");
        var recipe = Recipe.For(made, wanted, expected / 100, [.. supplies]);
        string[] unnamed = [.. made.Parts.Select(p => p.Key.Symbol).Where(e => e is not ("O" or "H") && supplies.All(s => s.Formula.Count(e) == 0))];
        return (
        [
            new(
                "batch", string.Create(CultureInfo.InvariantCulture, $"For {wanted:G6} g of {made.Text} at a yield of {expected:G4} %"),
                [new Column("reagent", "Reagent") { NamesRows = true }, new Column("brings", "Brings"), new Column("mass", "To weigh") { Unit = "g" }, new Column("amount", "Amount") { Unit = "mmol" }, new Column("excess", "Excess") { Unit = "%" }],
                [.. recipe.Reagents.Zip(supplies, (r, s) => Row.Of(r.Name, s.Element, new NumberCell(Math.Round(r.Mass.Value, 4)), new NumberCell(Math.Round(1000 * r.Amount.Value, 4)), new NumberCell(Math.Round(100 * s.Excess, 2)) { Decimals = 1 }))])
            {
                Notes =
                [
                    string.Create(CultureInfo.InvariantCulture, $"The masses are targets: weigh near them and write down what you weighed. At full yield they make {recipe.TheoreticalYield.Value:0.000} g."),
                    "Check the water of each hydrate and the purity on the bottle's certificate.",
                    .. unnamed.Length > 0 ? [$"No reagent brings {string.Join(", ", unnamed)}."] : Array.Empty<Figures.RichText>(),
                    "More than 100 % of the theoretical mass is water or salt, not yield.",
                ],
            },
            Growing(was is null ? null : wanted / In(was, "g")!.Value),
            CautionTable.Of(Caution.For(recipe)),
        ], null);
    }

    // Vessels alike in shape: length grows with the cube root of the volume. Common practice of the trade; what each step needs is seen on the bench.
    private static Table Growing(double? factor)
    {
        var side = factor is { } f ? Math.Cbrt(f) : (double?)null;
        string By(double? by, string words) => by is { } b ? string.Create(CultureInfo.InvariantCulture, $"{words} ({b:0.##} times)") : words;
        return new(
            "growing", factor is { } times ? string.Create(CultureInfo.InvariantCulture, $"What does not grow with the batch, {times:0.##} times as large") : "What does not grow with the batch",
            [new Column("step", "Step") { NamesRows = true }, new Column("keep", "Keep"), new Column("so", "So")],
            [
                Row.Of("reagents, solvent, base", "concentrations", By(factor, "all amounts grow with the batch")),
                Row.Of("addition", "amount a minute in each litre", By(factor, "the rate in mL/min grows with the batch, the time stays")),
                Row.Of("stirring", "speed of the stirrer's tip", By(1 / side, "turns a minute fall as the stirrer grows")),
                Row.Of("heating and cooling", "temperature of the liquid, not of the bath", By(1 / side, "surface for each litre falls: allow longer ramps, mind heat of reaction")),
                Row.Of("washing", "volume for each gram, and the rule by which it ends", "stop by conductivity, not by the number of washes"),
                Row.Of("drying", "thickness of the layer", "dry to constant mass, not by the clock"),
            ])
        { Notes = ["Common practice for vessels of one shape; try the larger batch once before it is relied on, and record what differed."] };
    }

    private static string Asks(string what, string? typed, string example) => $"“{typed}” is no {what}. Type it with its unit, for example {example}.";

    private static double? In(string? typed, string unit)
        => QuantityText.Read(typed).Value is { } quantity && quantity.Unit.IsConvertibleTo(Unit.Parse(unit)) && quantity.Unit.Convert(quantity.Value, Unit.Parse(unit)) is > 0 and < double.PositiveInfinity and var value ? value : null;
}
