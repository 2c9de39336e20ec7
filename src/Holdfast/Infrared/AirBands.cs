namespace Holdfast.Infrared;

/// <summary>A stretch of wavenumbers in which something else than the powder is seen in almost every spectrum.</summary>
/// <param name="Name">What is seen there: "water".</param>
/// <param name="Low">Lower end, cm⁻¹.</param>
/// <param name="High">Upper end, cm⁻¹.</param>
/// <param name="Says">What a band there may be, as a remark.</param>
public sealed record AirBands(string Name, double Low, double High, string Says)
{
    private const double NarrowerThan = 12;

    /// <summary>The strong band of carbon dioxide.</summary>
    public static AirBands CarbonDioxide { get; } = new("carbon dioxide", 2300, 2380, "carbon dioxide of the air, no band of the powder");

    /// <summary>All stretches that every spectrum is looked at for (common practice; from memory).</summary>
    public static IReadOnlyList<AirBands> All { get; } =
    [
        CarbonDioxide,
        new("carbon dioxide", 660, 676, "carbon dioxide of the air where it is narrow"),
        new("water", 3200, 3600, "also water on the powder or in the pellet: proves no hydroxyl"),
        new("water", 1600, 1660, "also the bending of water: proves nothing about the powder"),
        new("grease", 2850, 2960, "also grease or solvent left over"),
    ];

    // Lines of water vapour stand close together where the bends and stretches of water are, each a few cm⁻¹ wide.
    private static readonly AirBands[] Vapour =
    [
        new("water vapour", 1350, 1900, "narrow: perhaps water vapour in the beam"),
        new("water vapour", 3500, 3950, "narrow: perhaps water vapour in the beam"),
    ];

    /// <summary>What else than the powder a band may be; empty when nothing is known.</summary>
    /// <param name="band">The band.</param>
    public static IReadOnlyList<AirBands> For(Band band)
    {
        ArgumentNullException.ThrowIfNull(band);
        return [.. All.Concat(band.Width < NarrowerThan ? Vapour : []).Where(r => r.Touches(band.Wavenumber - band.U, band.Wavenumber + band.U))];
    }

    /// <summary>True when a range has a part in common with this stretch.</summary>
    /// <param name="low">Lower end, cm⁻¹.</param>
    /// <param name="high">Upper end, cm⁻¹.</param>
    public bool Touches(double low, double high) => low <= High && high >= Low;
}
