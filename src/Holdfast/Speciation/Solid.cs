namespace Holdfast.Speciation;

/// <summary>A solid that a metal can form: solid + n H+ = M + water (+ carbonate), 25 °C, zero ionic strength.</summary>
/// <param name="Metal">The ion: "Ni", "Fe(III)".</param>
/// <param name="Name">Its name: "Ni(OH)2 fresh".</param>
/// <param name="Kind">How it forms.</param>
/// <param name="Metals">Metal ions in a formula unit.</param>
/// <param name="Protons">Protons that dissolve a formula unit.</param>
/// <param name="Carbonates">Carbonate ions in a formula unit.</param>
/// <param name="LgKs">lg of the constant.</param>
/// <param name="U">Standard uncertainty of the lg.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="Status">How it is known: seen, or "from memory".</param>
public sealed record Solid(
    string Metal, string Name, SolidKind Kind, int Metals, int Protons, int Carbonates, double LgKs, double U, string Source, string Status)
{
    /// <summary>All solids of the table.</summary>
    public static IReadOnlyList<Solid> All { get; } =
    [
        .. TradeTable.Read(SolidTable.Table).Select(r => new Solid(
            r["metal"], r["solid"],
            r["kind"] switch { "aged" => SolidKind.Aged, "fresh" => SolidKind.Fresh, "carbonate" => SolidKind.Carbonate, _ => SolidKind.Intermediate },
            (int)r.Number("n_M")!.Value, (int)r.Number("n_H")!.Value, (int)r.Number("n_CO3")!.Value,
            r.Number("lg_star_Ks")!.Value, r.Number("u")!.Value, r["source"], r["status"])),
    ];

    /// <summary>True when the constant was not seen in print for this table.</summary>
    public bool IsFromMemory => Status.Contains("from memory", StringComparison.Ordinal);

    /// <summary>lg of the conventional solubility product with hydroxide: lg [M][OH]^n (and carbonate), per formula unit; no unit.</summary>
    public double LgProduct => LgKs - Protons * CarbonateConstants.PKw;

    /// <summary>Saturation index, lg of the ion product over the constant; above 0 the solid can form.</summary>
    /// <param name="lgMetal">lg activity of the free ion.</param>
    /// <param name="ph">pH.</param>
    /// <param name="lgCarbonate">lg activity of carbonate; null where there is none. A carbonate then has no index and negative infinity is returned.</param>
    public double Index(double lgMetal, double ph, double? lgCarbonate)
        => Carbonates > 0 && lgCarbonate is null
            ? double.NegativeInfinity
            : Metals * lgMetal + Protons * ph + Carbonates * (lgCarbonate ?? 0) - LgKs;
}

/// <summary>How a solid forms.</summary>
public enum SolidKind
{
    /// <summary>Forms within minutes.</summary>
    Fresh,

    /// <summary>Forms within hours to days.</summary>
    Intermediate,

    /// <summary>Forms within days to years, by ageing.</summary>
    Aged,

    /// <summary>Needs carbonate, from the air or added.</summary>
    Carbonate,
}
