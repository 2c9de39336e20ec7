using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Solutions;

/// <summary>A piece of glassware or a pipette with the limits that its standard allows.</summary>
/// <remarks>
/// Limits of class A after ISO 1042 (flasks), ISO 648 (one-mark pipettes), ISO 385 (burettes), ISO 4788 (cylinders) and ISO 8655-2 (piston
/// pipettes). <see cref="Status"/> says for each row whether it was seen or comes from memory; show it.
/// </remarks>
/// <param name="Kind">What it is.</param>
/// <param name="Nominal">Nominal volume, mL.</param>
/// <param name="Tolerance">Systematic limit, ± mL.</param>
/// <param name="Repeatability">Limit of the random standard deviation, mL; null where the standard gives none.</param>
/// <param name="Standard">The standard.</param>
/// <param name="Status">How the limits are known.</param>
public sealed record VolumetricWare(WareKind Kind, double Nominal, double Tolerance, double? Repeatability, string Standard, string Status)
{
    /// <summary>Volume expansion of water, 1/K, near 20 °C (Eurachem/CITAC QUAM, from memory).</summary>
    public const double WaterExpansion = 2.1e-4;

    /// <summary>A piston pipette set below this share of its nominal volume is not planned with; common practice.</summary>
    public const double LowestSetting = 0.35;

    /// <summary>All ware of class A and all piston pipettes.</summary>
    public static IReadOnlyList<VolumetricWare> All { get; } =
    [
        .. TradeTable.Read(VolumetricLimits.Table).Select(r => new VolumetricWare(
            r["kind"] switch
            {
                "flask" => WareKind.Flask,
                "pipette" => WareKind.Pipette,
                "burette" => WareKind.Burette,
                "cylinder" => WareKind.Cylinder,
                _ => WareKind.PistonPipette,
            },
            r.Number("nominal_mL")!.Value, r.Number("tolerance_mL")!.Value, r.Number("repeatability_mL"), r["standard"], r["status"])),
    ];

    /// <summary>The ware of a kind and nominal volume, or null.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="nominal">Nominal volume, mL.</param>
    public static VolumetricWare? Find(WareKind kind, double nominal) => All.FirstOrDefault(w => w.Kind == kind && w.Nominal.Equals(nominal));

    /// <summary>The same ware in class B: twice the tolerance.</summary>
    public VolumetricWare ClassB => this with { Tolerance = 2 * Tolerance };

    /// <summary>True when a volume can be set or is the mark.</summary>
    /// <param name="volume">Volume, mL.</param>
    public bool CanGive(double volume) => Kind switch
    {
        WareKind.PistonPipette => volume >= LowestSetting * Nominal && volume <= Nominal,
        WareKind.Burette or WareKind.Cylinder => volume > 0 && volume <= Nominal,
        _ => volume.Equals(Nominal),
    };

    /// <summary>One volume taken with it, mL: its tolerance is one source in everything it measures, its repeatability a new one each time.</summary>
    /// <remarks>Tolerance: triangular for glass, as values near the mark are likelier; rectangular for a piston pipette, whose limit is absolute at every setting.</remarks>
    /// <param name="id">Stable identity of this piece.</param>
    /// <param name="act">Stable identity of this act, for example "D-5 step 1".</param>
    /// <param name="volume">Volume set, mL; null for the mark.</param>
    /// <param name="repeatability">The user's own standard deviation, mL; null for the limit of the standard.</param>
    public Measured Take(string id, string act, double? volume = null, double? repeatability = null)
    {
        var set = volume ?? Nominal;
        if (!(set > 0 && set <= Nominal))
            throw new ArgumentOutOfRangeException(nameof(volume), set, "The volume lies above 0 and at most at the nominal volume.");
        var shape = Kind == WareKind.PistonPipette ? Shape.Rectangular : Shape.Triangular;
        var name = string.Create(CultureInfo.InvariantCulture, $"{Word} {id}, {Nominal} mL");
        var taken = Measured.From(set, TypeB.Tolerance($"{id}:tolerance", $"{name}, tolerance", Tolerance, shape, "mL"));
        if ((repeatability ?? Repeatability) is { } sd and > 0)
            taken += Measured.From(0, new Source($"{id}:{act}", $"{name}, filling for {act}", sd, Evaluation: Evaluation.Repetition, Unit: "mL"));
        return taken;
    }

    /// <summary>The volume's change with a room that is not at 20 °C, mL, to be added to a volume compared with a certified one.</summary>
    /// <remarks>Within one room flask and pipette change alike and it cancels: then leave it out.</remarks>
    /// <param name="id">Stable identity of the room and day.</param>
    /// <param name="volume">Volume, mL.</param>
    /// <param name="halfRange">Half the range of temperature, K.</param>
    public static Measured Expansion(string id, double volume, double halfRange)
        => Measured.From(0, TypeB.Tolerance($"{id}:temperature", $"temperature of {id}", volume * WaterExpansion * halfRange, unit: "mL"));

    private string Word => Kind switch
    {
        WareKind.Flask => "flask",
        WareKind.Pipette => "pipette",
        WareKind.Burette => "burette",
        WareKind.Cylinder => "cylinder",
        _ => "piston pipette",
    };
}

/// <summary>Kinds of volumetric ware.</summary>
public enum WareKind
{
    /// <summary>One-mark flask.</summary>
    Flask,

    /// <summary>One-mark pipette.</summary>
    Pipette,

    /// <summary>Burette.</summary>
    Burette,

    /// <summary>Measuring cylinder.</summary>
    Cylinder,

    /// <summary>Air-displacement piston pipette.</summary>
    PistonPipette,
}
