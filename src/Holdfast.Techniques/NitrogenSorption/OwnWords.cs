using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>What the lines of a file say of the powder itself, held against its numbers: the area that a summary gives, and a mass before and one after outgassing.</summary>
/// <param name="source">The grid and where questions go.</param>
/// <param name="settings">What the file states.</param>
internal sealed partial class OwnWords(MeasurementSource source, SorptionSettings settings)
{
    /// <summary>Name of a setting that holds a mass weighed after outgassing, beside the mass of the sample.</summary>
    public const string MassAfter = "mass-after-outgassing";

    // Areas by different windows and programs differ by less; a wrong unit changes them by more.
    private const double AlikeWithin = 1.3;

    // Outgassing that takes less than this off the mass is within what weighing and PortionU allow.
    private const double LossAllowed = 0.02;

    /// <summary>Asks where they contradict the amounts per gram.</summary>
    /// <param name="unit">Unit of the amounts.</param>
    /// <param name="curves">The curves of the file.</param>
    /// <param name="area">The area that follows from a unit, m²/g, or null.</param>
    /// <returns>The unit of the amounts; null while an answer is awaited.</returns>
    public AmountUnit? Settle(AmountUnit unit, IReadOnlyList<SorptionCurve> curves, Func<AmountUnit, double?> area)
        => curves.Select(c => c.Series.Powder).Distinct().Count() == 1 && OfMass() ? null : OfArea(unit, curves, area);

    private AmountUnit? OfArea(AmountUnit unit, IReadOnlyList<SorptionCurve> curves, Func<AmountUnit, double?> area)
    {
        // One powder, or it is not known whose area the summary gives.
        if (curves.Select(c => c.Series.Powder).Distinct().Count() > 1 || Stated() is not { } stated || area(unit) is not { } follows || Alike(stated.Value, follows))
            return unit;
        var heading = curves[0].Table.Written(curves[0].Series.Amount);
        var agreeing = AmountUnit.Choices.Select(c => AmountUnit.In(c)!).FirstOrDefault(c => c.Per == AmountPer.Gram && area(c) is { } other && Alike(other, stated.Value));
        var text = string.Create(CultureInfo.InvariantCulture, $"“{heading}” gives a BET area of {follows:G4} m2/g, but line {stated.Row} of the file says {stated.Value:G4} m2/g: they contradict each other by a factor of {Math.Max(follows / stated.Value, stated.Value / follows):G3}.")
            + (agreeing is null ? "" : $" They agree if the amounts are in {agreeing.Name}.");
        if (agreeing is null)
        {
            source.Talk.Note(Codes.Ambiguous, Weight.Caution, text + " Check the unit and the mass.", heading);
            return unit;
        }

        var id = source.Question("amount-unit");
        var answer = source.Talk.Ask(id, Codes.Ambiguous, text + " Which unit is it?", [agreeing.Name, unit.Name], heading);
        source.Talk.Explain(id, [string.Create(CultureInfo.InvariantCulture, $"BET area about {area(agreeing):G4} m2/g"), string.Create(CultureInfo.InvariantCulture, $"BET area about {follows:G4} m2/g")]);
        return answer is null ? null : AmountUnit.In(answer);
    }

    /// <summary>The mass as weighed in and the mass after outgassing, where a file gives both and the second can be the powder of the first; null elsewhere.</summary>
    /// <param name="settings">What the file states.</param>
    public static (MeasuredSetting Before, MeasuredSetting After)? MassesIn(SorptionSettings settings)
    {
        // A tube on the balance weighs more than its powder: only what can be the powder after outgassing counts.
        if (settings["mass"] is not { Value: > 0 } before || settings.Mass is not { } mass)
            return null;
        var after = settings.All.FirstOrDefault(s => s.Name == MassAfter && (SorptionSettings.Grams(s) ?? s.Value) is { } weighed && weighed < mass * (1 - LossAllowed) && weighed >= mass / 2);
        return after is null ? null : (before, after);
    }

    // True while it is asked about, or not to be kept.
    private bool OfMass()
    {
        if (MassesIn(settings) is { } both)
        {
            var share = settings.Mass!.Value / (SorptionSettings.Grams(both.After) ?? both.After.Value!.Value);
            return Asked(string.Create(CultureInfo.InvariantCulture, $"The file gives two masses: {both.Before.Written} (line {both.Before.Row}) and, after outgassing, {both.After.Written} (line {both.After.Row}), {100 * (1 - 1 / share):0.#} % less. Were the amounts divided by the mass after outgassing?"), both.After, share);
        }

        // Two masses of which nothing says what they are: of one powder only one can be right.
        MeasuredSetting[] masses = [.. settings.All.Where(s => s.Name == "mass" && SorptionSettings.Grams(s) > 0)];
        return Array.Find(masses, m => SorptionSettings.Grams(m) / SorptionSettings.Grams(masses[0]) is (< 1 - LossAllowed and >= 0.5) or (> 1 / (1 - LossAllowed) and <= 2)) is { } other
            && Asked(string.Create(CultureInfo.InvariantCulture, $"The file gives two masses: {masses[0].Written} (line {masses[0].Row}) and {other.Written} (line {other.Row}). Were the amounts divided by the second, the powder as it was measured?"), other, SorptionSettings.Grams(masses[0])!.Value / SorptionSettings.Grams(other)!.Value);
    }

    private bool Asked(string text, MeasuredSetting divided, double share)
    {
        var id = source.Question("mass");
        var answer = source.Talk.Ask(id, Codes.Ambiguous, text, ["take", "leave-out"], divided.Written);
        source.Talk.Explain(id, [$"per gram of {divided.Written}: the amounts as they stand", string.Create(CultureInfo.InvariantCulture, $"nothing is kept: multiply the amounts by {share:0.####} in the file first")]);
        return answer != "take";
    }

    private (double Value, int Row)? Stated()
    {
        foreach (var setting in settings.All)
        {
            var words = FileWords.Plain(setting.Name + " " + setting.Written + " " + setting.Unit);
            if (Area().IsMatch(words) && PerGram().IsMatch(words) && setting.Name != SorptionIsotherm.ReferenceArea && (setting.Value ?? Number(words)) is > 0 and var value)
                return (value, setting.Row);
        }

        return null;
    }

    // The number before the unit.
    private static double? Number(string words)
        => Before().Match(words) is { Success: true } m && double.TryParse(m.Groups["number"].Value.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;

    private static bool Alike(double a, double b) => Math.Max(a / b, b / a) <= AlikeWithin;

    [GeneratedRegex(@"(^|[^a-z])bet([^a-z]|$)|surface area|specific surface|superficie|surface specifique|oberflache|powierzchni|area specif|oppervlak", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Area();

    [GeneratedRegex(@"m2\s*(/\s*g|g-1|g\^-1|per g)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerGram();

    [GeneratedRegex(@"(^|[^\d.,])(?<number>\d+([.,]\d+)?)\s*m2", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Before();
}
