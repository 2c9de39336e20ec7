namespace Holdfast.Infrared;

/// <summary>One row of the correlation table: a vibration of a group and where it absorbs.</summary>
/// <param name="Group">The group: "phosphate".</param>
/// <param name="Vibration">The vibration: "P-O stretch (nu3)".</param>
/// <param name="Low">Lower end, cm⁻¹.</param>
/// <param name="High">Upper end, cm⁻¹.</param>
/// <param name="Strength">How strong it usually is, in words.</param>
/// <param name="IsBroad">True when only a broad band fits.</param>
/// <param name="Note">What to know about it.</param>
/// <param name="Source">Code of the source; see the table.</param>
public sealed record GroupRange(string Group, string Vibration, double Low, double High, string Strength, bool IsBroad, string Note, string Source)
{
    private const double BroadFrom = 60;

    /// <summary>All rows.</summary>
    public static IReadOnlyList<GroupRange> All { get; } =
        [.. TradeTable.Read(GroupTable.Table).Select(r => new GroupRange(
            r["group"], r["vibration"], r.Number("low")!.Value, r.Number("high")!.Value, r["strength"], r["broad"].Length > 0, r["note"], r["source"]))];

    /// <summary>True for a vibration that must be seen where the group is there.</summary>
    public bool IsStrong => Strength is "strong" or "very strong";

    /// <summary>True when a band may be this vibration: inside the range widened by its uncertainty, and broad where only a broad one fits.</summary>
    /// <param name="band">The band.</param>
    public bool Fits(Band band)
    {
        ArgumentNullException.ThrowIfNull(band);
        return band.Wavenumber >= Low - band.U && band.Wavenumber <= High + band.U && (!IsBroad || IsBroadBand(band));
    }

    /// <summary>True for a band as broad as those of hydrogen-bonded groups.</summary>
    /// <param name="band">The band.</param>
    internal static bool IsBroadBand(Band band) => band.Width >= BroadFrom;
}
