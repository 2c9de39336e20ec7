using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>Mass percent of an element as found beside what a formula asks for.</summary>
/// <param name="Element">The element.</param>
/// <param name="Found">Mass percent found, with its uncertainty.</param>
/// <param name="Calculated">Mass percent of the formula.</param>
/// <param name="Tolerance">Largest difference that counts as agreement, mass percent.</param>
public sealed record FoundAgainstCalculated(Element Element, Measured Found, Measured Calculated, double Tolerance)
{
    /// <summary>Journals ask that carbon, hydrogen and nitrogen by combustion agree within this; mass percent, absolute (common practice).</summary>
    public const double Combustion = 0.4;

    private const double CoverageFactor = 2;

    /// <summary>Found less calculated, mass percent.</summary>
    public double Difference => Found.Value - Calculated.Value;

    /// <summary>True when they agree.</summary>
    public bool Agrees => Math.Abs(Difference) <= Tolerance;

    /// <summary>Compares combustion results: 0.4 % absolute, whatever the element.</summary>
    /// <param name="found">Elements with the mass percent found.</param>
    /// <param name="formula">The formula.</param>
    public static IReadOnlyList<FoundAgainstCalculated> ByCombustion(IReadOnlyList<KeyValuePair<Element, Measured>> found, Formula formula)
        => Compare(found, formula, _ => Combustion);

    /// <summary>Compares results with an uncertainty of their own: twice the combined standard uncertainty.</summary>
    /// <param name="found">Elements with the mass percent found.</param>
    /// <param name="formula">The formula.</param>
    public static IReadOnlyList<FoundAgainstCalculated> ByUncertainty(IReadOnlyList<KeyValuePair<Element, Measured>> found, Formula formula)
        => Compare(found, formula, u => CoverageFactor * u);

    private static List<FoundAgainstCalculated> Compare(IReadOnlyList<KeyValuePair<Element, Measured>> found, Formula formula, Func<double, double> tolerance)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(formula);
        return [.. found.Select(f =>
        {
            var calculated = 100 * formula.MassFraction(f.Key.Symbol);
            return new FoundAgainstCalculated(f.Key, f.Value, calculated, tolerance((f.Value - calculated).U));
        })];
    }
}
