using Holdfast.Composition;

namespace Holdfast.Solutions;

/// <summary>Whether a stated mass makes the stated concentration with the stated salt, or rather with another one from the shelf.</summary>
/// <remarks>It flags and never corrects: the user says which bottle it was, and the record keeps both.</remarks>
/// <param name="Stated">The salt as stated.</param>
/// <param name="ImpliedMolarMass">Molar mass for each atom of the metal that mass, volume and concentration imply, g/mol.</param>
/// <param name="Z">ln(implied/stated) over the relative uncertainty.</param>
/// <param name="Nearest">Salt of the same metal that comes closest, or null when none is listed.</param>
/// <param name="ZNearest">|z| of the nearest salt; null without one.</param>
/// <param name="Fit">Holds: the stated salt fits. Contradicted: another fits better. Not shown: none fits, look for a slip.</param>
/// <param name="Slip">A slip that would explain it, in words; null when none is recognised.</param>
public sealed record SaltCheck(Formula Stated, double ImpliedMolarMass, double Z, Formula? Nearest, double? ZNearest, Ruling Fit, string? Slip)
{
    /// <summary>A stated salt further off than this many relative uncertainties does not fit.</summary>
    public const double FarOff = 3;

    /// <summary>Another salt is proposed only when it is this close, in relative uncertainties.</summary>
    public const double Close = 1;

    /// <summary>Weighing, flask and rounding of the stated figures together are taken for at least this; share.</summary>
    public const double LeastRelativeU = 0.01;

    private static readonly (string Metal, Formula Salt)[] Shelf =
        [.. TradeTable.Read(SaltShelf.Table).Select(r => (r["metal"], Formula.Parse(r["salt"])))];

    /// <summary>Salts of a metal that are looked through.</summary>
    /// <param name="metal">Symbol of the metal.</param>
    public static IReadOnlyList<Formula> SaltsOf(string metal) => [.. Shelf.Where(s => s.Metal == metal).Select(s => s.Salt)];

    /// <summary>Checks a recipe for a stock.</summary>
    /// <param name="stated">The salt as stated.</param>
    /// <param name="metal">Symbol of the metal whose concentration is stated.</param>
    /// <param name="mass">Mass weighed, g, above 0.</param>
    /// <param name="volume">Volume, L, above 0.</param>
    /// <param name="concentration">Stated concentration, mg of metal in each litre, above 0.</param>
    /// <param name="purity">Mass fraction of pure salt, no unit, above 0.</param>
    /// <param name="relativeU">Relative uncertainty of mass over volume and concentration, rounding of the stated figures included.</param>
    /// <exception cref="ArgumentException">The stated salt has none of the metal.</exception>
    public static SaltCheck Of(
        Formula stated, string metal, double mass, double volume, double concentration, double purity = 1, double relativeU = LeastRelativeU)
    {
        ArgumentNullException.ThrowIfNull(stated);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(concentration);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(purity);
        var perMetal = stated.MolarMassPer(metal);
        var weight = Element.Find(metal)!.AtomicWeight!.Value;
        var implied = 1000 * mass * purity * weight / (volume * concentration);
        var u = Math.Max(relativeU, LeastRelativeU);
        double Z(double molarMass) => Math.Log(implied / molarMass) / u;

        var nearest = SaltsOf(metal).MinBy(s => Math.Abs(Z(s.MolarMassPer(metal))));
        var zNearest = nearest is null ? (double?)null : Math.Abs(Z(nearest.MolarMassPer(metal)));
        var fit = Math.Abs(Z(perMetal)) <= FarOff ? Ruling.Holds : zNearest <= Close ? Ruling.Contradicted : Ruling.NotShownYet;
        var slip = fit == Ruling.NotShownYet ? SlipOf(implied / perMetal, weight / perMetal, u) : null;
        return new(stated, implied, Z(perMetal), nearest, zNearest, fit, slip);
    }

    private static string? SlipOf(double ratio, double massFraction, double u)
    {
        (double Factor, string Words)[] slips =
        [
            (10, "ten times too much was weighed, or a tenth of the volume is stated"),
            (0.1, "a tenth was weighed, or ten times the volume is stated"),
            (1000, "milligrams and grams, or millilitres and litres, were mixed up"),
            (0.001, "milligrams and grams, or millilitres and litres, were mixed up"),
            (massFraction, "the concentration counts the salt, not the metal"),
        ];
        return slips.FirstOrDefault(s => Math.Abs(Math.Log(ratio / s.Factor)) <= FarOff * u).Words;
    }
}
