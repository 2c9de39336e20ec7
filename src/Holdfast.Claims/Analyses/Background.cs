using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Speciation;

namespace Holdfast.Claims.Analyses;

/// <summary>What the background of a vessel means for activities: its ionic strength, and whether chloride is in it.</summary>
/// <param name="IonicStrength">Ionic strength, mol/L.</param>
/// <param name="Assumed">True when it was not recorded as a 1:1 salt and the usual 0.01 mol/L is taken.</param>
/// <param name="HoldsChloride">True when chloride is named, or the water is a natural one that holds some.</param>
public sealed partial record Background(double IonicStrength, bool Assumed, bool HoldsChloride)
{
    /// <summary>Taken where nothing was recorded, mol/L: a usual background; common practice.</summary>
    public const double Usual = 0.01;

    /// <summary>The background that words like "0.01 mol/L NaNO3" name.</summary>
    /// <param name="matrix">The water as recorded, or null.</param>
    public static Background Of(string? matrix)
    {
        var words = matrix ?? "";
        var chloride = Chloride().IsMatch(words);
        var salt = Salt().Match(words);
        if (salt.Success && QuantityText.Read(words[..salt.Index].Trim()).Value is { } amount && amount.Unit.IsConvertibleTo(Molar)
            && amount.Unit.Convert(amount.Value, Molar) is var strength && strength is >= 0 and <= Davies.Highest)
            return new(strength, false, chloride);
        return new(Usual, true, chloride);
    }

    private static Unit Molar { get; } = Unit.Parse("mol/L");

    [GeneratedRegex("(Na|K|Li|NH4)(NO3|Cl|ClO4|Br)\\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Salt();

    [GeneratedRegex("Cl([^O]|$)|chloride|\\bHCl|tap|sea|river|lake|ground|well|waste|effluent|brine", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Chloride();
}
