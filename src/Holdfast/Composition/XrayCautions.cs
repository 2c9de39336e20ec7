using System.Globalization;

namespace Holdfast.Composition;

/// <summary>What an X-ray analysis in the microscope cannot say, read from the table itself.</summary>
/// <remarks>
/// Overlapping lines and levels from memory; relative uncertainties of standardless work are common practice; errors from −90 to +150 % were found for it
/// (D. E. Newbury, 1995).
/// </remarks>
public static class XrayCautions
{
    /// <summary>Below this an element is hardly told from nothing without its peak; mass percent (common practice).</summary>
    public const double Doubtful = 1;

    /// <summary>Relative uncertainty of standardless work that a comparison with a formula allows for; no unit.</summary>
    public const double StandardlessExpanded = 0.25;

    private const double TotalWithin = 0.06;

    private static readonly (string Line, string Other, string Name)[] Overlaps =
    [
        ("S", "Pb", "S K and Pb M"), ("S", "Mo", "S K and Mo L"), ("Pb", "Mo", "Pb M and Mo L"), ("Ti", "Ba", "Ti K and Ba L"), ("P", "Zr", "P K and Zr L"),
        ("Na", "Zn", "Na K and Zn L"), ("As", "Pb", "As K and Pb L"), ("Si", "W", "Si K and W M"),
    ];

    /// <summary>Usual relative standard uncertainty of a standardless mass percent; no unit.</summary>
    /// <param name="massPercent">Mass percent.</param>
    public static double RelativeU(double massPercent) => massPercent >= 10 ? 0.05 : massPercent >= 1 ? 0.2 : 0.5;

    /// <summary>True for a total so near to 100 that it was made so.</summary>
    /// <param name="total">Sum of the percentages as written.</param>
    public static bool IsNormalised(double total) => Math.Abs(total - 100) <= TotalWithin;

    /// <summary>Remarks about a table of mass percent.</summary>
    /// <param name="massPercent">Elements with their mass percent as written.</param>
    /// <param name="alsoExpected">Elements of the formula: an overlap with one of them counts too.</param>
    public static IReadOnlyList<Finding> Of(IReadOnlyList<KeyValuePair<Element, double>> massPercent, IEnumerable<Element>? alsoExpected = null)
    {
        ArgumentNullException.ThrowIfNull(massPercent);
        var findings = new List<Finding>();
        if (IsNormalised(massPercent.Sum(p => p.Value)))
            findings.Add(Say(Weight.Caution, $"Normalised to 100 %: the total says nothing about missing elements (hydrogen is never seen). Compare ratios, and write down the total before normalising."));
        string[] low = [.. massPercent.Where(p => p.Value is > 0 and < Doubtful).Select(p => p.Key.Symbol)];
        if (low.Length > 0)
            findings.Add(Say(Weight.Caution, $"{string.Join(", ", low)} below {Doubtful} wt%: near the detection limit, known to about half of itself. Show its peak, or dissolve and measure."));
        HashSet<string> present = [.. massPercent.Select(p => p.Key.Symbol), .. (alsoExpected ?? []).Select(e => e.Symbol)];
        foreach (var (line, other, name) in Overlaps.Where(o => present.Contains(o.Line) && present.Contains(o.Other)))
            findings.Add(Say(Weight.Caution, $"{name} lie on each other: the shares of {line} and {other} may be mixed up. Check with other lines, or dissolve and measure."));
        string[] light = [.. massPercent.Where(p => p.Key.Symbol is "C" or "N" or "O").Select(p => p.Key.Symbol)];
        if (light.Length > 0)
            findings.Add(Say(Weight.Note, $"{string.Join(", ", light)}: light elements are absorbed and come from tape and coating too. Use ratios of the heavier ones."));
        return findings;
    }

    private static Finding Say(Weight weight, FormattableString words) => Finding.Of("HF-760", weight, words.ToString(CultureInfo.InvariantCulture));
}
