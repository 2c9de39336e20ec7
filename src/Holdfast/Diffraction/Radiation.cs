namespace Holdfast.Diffraction;

/// <summary>What a pattern was taken with: the K lines of an anode, or one wavelength.</summary>
/// <param name="Anode">Symbol of the anode, "Cu"; "" for a wavelength without one.</param>
/// <param name="Ka1">Wavelength of Kα1, or the only one, ångström.</param>
/// <param name="Ka2">Wavelength of Kα2, ångström; null when it is not in the beam or not known.</param>
/// <param name="Kb">Wavelength of Kβ, ångström, for ghosts; null when not known.</param>
/// <param name="Ratio">Height of a Kα2 line as a share of its Kα1 line, without unit; 0 without Kα2.</param>
public sealed record Radiation(string Anode, double Ka1, double? Ka2, double? Kb, double Ratio)
{
    /// <summary>Kα2 is half as strong as Kα1: two electrons against four (common practice).</summary>
    public const double UsualRatio = 0.5;

    /// <summary>Wavelength of W Lα1 in ångström (from memory): tungsten from the filament on the anode.</summary>
    public const double TungstenLa = 1.4764;

    private static readonly Radiation[] Known = Read();

    /// <summary>The anodes of laboratories, each with its doublet.</summary>
    public static IReadOnlyList<Radiation> All => Known;

    /// <summary>Weighted mean of the doublet, (2·Kα1 + Kα2)/3 for the usual ratio, ångström.</summary>
    public double Mean => Ka2 is { } second ? (Ka1 + Ratio * second) / (1 + Ratio) : Ka1;

    /// <summary>Name for a caption: "Cu Kα", "Co Kα1", "1.2345 Å" is the caller's matter.</summary>
    public string Name => Anode.Length == 0 ? "monochromatic" : Ka2 is null ? $"{Anode} Kα1" : $"{Anode} Kα";

    /// <summary>The doublet of an anode, or null when the table does not hold it.</summary>
    /// <param name="anode">Symbol, in any case: "Cu".</param>
    public static Radiation? Of(string anode) => Array.Find(Known, r => r.Anode.Equals(anode, StringComparison.OrdinalIgnoreCase));

    /// <summary>One wavelength without a partner: a synchrotron, neutrons, a tube behind a crystal that lets Kα1 alone pass.</summary>
    /// <param name="wavelength">Wavelength, ångström.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0.1 and 5 Å.</exception>
    public static Radiation Monochromatic(double wavelength)
        => IsPossible(wavelength) ? new("", wavelength, null, null, 0)
            : throw new ArgumentOutOfRangeException(nameof(wavelength), wavelength, "A wavelength for powder diffraction lies between 0.1 and 5 Å.");

    /// <summary>True for a wavelength that patterns of powders are taken with, 0.1 to 5 Å.</summary>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public static bool IsPossible(double wavelength) => wavelength is >= 0.1 and <= 5;

    /// <summary>The same without Kα2.</summary>
    public Radiation WithoutKa2() => this with { Ka2 = null, Ratio = 0 };

    /// <summary>
    /// The anode a stated wavelength belongs to: within 0.05 % of its Kα1, its mean or its old value in another length unit (20 ppm smaller),
    /// or null. The lines of two anodes lie more than 5 % apart.
    /// </summary>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public static Radiation? Near(double wavelength)
        => Array.Find(Known, r => Math.Abs(wavelength / r.Ka1 - 1) < 5e-4 || Math.Abs(wavelength / r.Mean - 1) < 5e-4);

    private static Radiation[] Read()
        => [.. TradeTable.Read(WavelengthTable.Table).GroupBy(r => r["element"], StringComparer.Ordinal).Select(g =>
        {
            double? Line(string line) => g.FirstOrDefault(r => r["line"] == line)?.Number("wavelength_angstrom");
            return new Radiation(g.Key, Line("Ka1")!.Value, Line("Ka2"), Line("Kb"), UsualRatio);
        })];
}
