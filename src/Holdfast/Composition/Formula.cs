using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>A chemical formula read into its elements: brackets, broken numbers, hydrates and charges included.</summary>
public sealed class Formula
{
    private readonly List<KeyValuePair<Element, double>> parts;

    internal Formula(string text, IEnumerable<KeyValuePair<Element, double>> parts, int charge)
    {
        Text = text;
        this.parts = [.. parts];
        Charge = charge;
        Measured mass = 0;
        foreach (var (element, count) in this.parts)
            mass += count * element.Weight!.Value;
        Mass = mass;
    }

    /// <summary>As written.</summary>
    public string Text { get; }

    /// <summary>Elements and how many atoms of each, in the order of first appearance.</summary>
    public IReadOnlyList<KeyValuePair<Element, double>> Parts => parts;

    /// <summary>Charge in elementary charges; the mass of the electrons is neglected.</summary>
    public int Charge { get; }

    /// <summary>Molar mass with the uncertainty of the atomic weights, g/mol.</summary>
    public Measured Mass { get; }

    /// <summary>Molar mass, g/mol.</summary>
    public double MolarMass => Mass.Value;

    /// <summary>Reads a formula as people write it: "CuSO4·5H2O", "Cu(NO3)2.2.5H2O", "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2", "SO4 2-", "Ni2+".</summary>
    /// <param name="text">The formula.</param>
    public static Outcome<Formula> Read(string? text) => FormulaReader.Read(text);

    /// <summary>The formula that a program names; for text from a user see <see cref="Read"/>.</summary>
    /// <param name="text">The formula.</param>
    /// <exception cref="ArgumentException">The text is no formula.</exception>
    public static Formula Parse(string text)
        => Read(text) is { Value: { } formula } ? formula : throw new ArgumentException($"'{text}' is not a formula that can be weighed.", nameof(text));

    /// <summary>Atoms of an element in one formula; 0 when it has none.</summary>
    /// <param name="symbol">"Ni".</param>
    public double Count(string symbol) => parts.FirstOrDefault(p => p.Key.Symbol == symbol).Value;

    /// <summary>Molar mass for one atom of an element, g/mol: 147.09 for chromium in K2Cr2O7.</summary>
    /// <param name="symbol">"Cr".</param>
    /// <exception cref="ArgumentException">The formula has none of it.</exception>
    public double MolarMassPer(string symbol)
        => Count(symbol) is > 0 and var count ? MolarMass / count : throw new ArgumentException($"{Text} has no {symbol}.", nameof(symbol));

    /// <summary>Mass fraction of an element; no unit. The weight's own uncertainty largely cancels, which the result carries.</summary>
    /// <param name="symbol">"Ni".</param>
    public Measured MassFraction(string symbol)
        => parts.FirstOrDefault(p => p.Key.Symbol == symbol) is { Key: { } element, Value: var count } ? count * element.Weight!.Value / Mass : 0;

    /// <inheritdoc/>
    public override string ToString() => Text;
}
