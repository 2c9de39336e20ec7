namespace Holdfast.Calibration;

/// <summary>A line of flame atomic absorption and what it usually gives. The range depends on the instrument: the user's own linear range wins.</summary>
/// <remarks>
/// After US methods for chemical analysis of water (1979): range and sensitivity of Zn (289.1) and Pb (239.1) checked on a public
/// method index; all other rows from memory.
/// </remarks>
/// <param name="Element">Symbol of the element.</param>
/// <param name="WavelengthNm">Wavelength, nm.</param>
/// <param name="Flame">Gases.</param>
/// <param name="RangeLow">Lower end of the usual working range, mg/L.</param>
/// <param name="RangeHigh">Upper end of the usual working range, mg/L.</param>
/// <param name="Characteristic">Concentration that absorbs 1 % (A = 0.0044), mg/L.</param>
/// <param name="Detection">Usual detection limit, mg/L.</param>
/// <param name="IsChecked">True when range and characteristic concentration were checked on a printed source.</param>
public sealed record FlameLine(
    string Element, double WavelengthNm, string Flame, double RangeLow, double RangeHigh, double Characteristic, double Detection, bool IsChecked = false)
{
    /// <summary>Absorbance of 1 % absorption, −lg 0.99 rounded as the trade does; no unit.</summary>
    public const double OnePercentAbsorbance = 0.0044;

    private const string Air = "air-acetylene";
    private const string Nitrous = "nitrous oxide-acetylene";

    /// <summary>The table, one main line for each element.</summary>
    public static IReadOnlyList<FlameLine> All { get; } =
    [
        new("Zn", 213.9, Air, 0.05, 1.0, 0.02, 0.005, IsChecked: true),
        new("Pb", 283.3, Air, 1, 20, 0.5, 0.1, IsChecked: true),
        new("Cd", 228.8, Air, 0.05, 2, 0.025, 0.005),
        new("Cu", 324.7, Air, 0.2, 5, 0.1, 0.02),
        new("Ni", 232.0, Air, 0.3, 5, 0.15, 0.04),
        new("Co", 240.7, Air, 0.5, 5, 0.2, 0.05),
        new("Cr", 357.9, Nitrous + " or rich " + Air, 0.5, 10, 0.25, 0.05),
        new("Mn", 279.5, Air, 0.1, 3, 0.05, 0.01),
        new("Fe", 248.3, Air, 0.3, 5, 0.12, 0.03),
        new("Ag", 328.1, Air, 0.1, 4, 0.06, 0.01),
        new("Al", 309.3, Nitrous, 5, 50, 1, 0.1),
        new("Ca", 422.7, Nitrous + " or air with lanthanum", 0.2, 7, 0.08, 0.01),
        new("Mg", 285.2, Air, 0.02, 0.5, 0.007, 0.001),
        new("Na", 589.0, Air, 0.03, 1, 0.015, 0.002),
        new("K", 766.5, Air, 0.1, 2, 0.04, 0.01),
    ];

    /// <summary>The main line of an element, or null when the table has none.</summary>
    /// <param name="element">Symbol, for example "Ni".</param>
    public static FlameLine? Of(string element) => All.FirstOrDefault(l => string.Equals(l.Element, element, StringComparison.Ordinal));
}
