using System.Collections.Immutable;

namespace Holdfast.DemoData;

/// <summary>
/// The invented study: a powder that was never made takes nickel out of water. Every number follows from the seed; none is a
/// measurement.
/// </summary>
public sealed record InventedStudy
{
    /// <summary>The seed, chosen so that the weaknesses of such a study show.</summary>
    public const ulong Seed = 1589;

    /// <summary>Calibration standards and blanks.</summary>
    public required Standards Standards { get; init; }

    /// <summary>The isotherm at 25 °C and the doses.</summary>
    public required ImmutableArray<Vessel> IsothermAndDoses { get; init; }

    /// <summary>Uptake against time.</summary>
    public required ImmutableArray<Vessel> ContactTimes { get; init; }

    /// <summary>Short isotherms at three temperatures.</summary>
    public required ImmutableArray<Vessel> Temperatures { get; init; }

    /// <summary>Start pH with its controls, and the two real waters.</summary>
    public required ImmutableArray<Vessel> AcidityAndWaters { get; init; }

    /// <summary>Loaded powder that was dissolved.</summary>
    public required ImmutableArray<DigestedSolid> Digests { get; init; }

    /// <summary>Sorption and elution cycles.</summary>
    public required ImmutableArray<Cycle> Cycles { get; init; }

    /// <summary>Calcium in the liquid.</summary>
    public required ImmutableArray<CalciumReading> Calcium { get; init; }

    /// <summary>Pairs of metals.</summary>
    public required ImmutableArray<Mixture> Mixtures { get; init; }

    /// <summary>Uptake against time at three more temperatures.</summary>
    public required ImmutableArray<Vessel> Rates { get; init; }

    /// <summary>Portions of the outlets of packed beds.</summary>
    public required ImmutableArray<BedPortion> Outlets { get; init; }

    /// <summary>Powder alone in salt at several start pH.</summary>
    public required ImmutableArray<ZeroCharge> ZeroCharges { get; init; }

    /// <summary>The powder as a sensor.</summary>
    public required Sensor Sensor { get; init; }

    /// <summary>Every vessel of the vessel sheet that the spectrometer read, in the order of its runs.</summary>
    public IEnumerable<Vessel> ReadVessels => [.. IsothermAndDoses, .. ContactTimes, .. Temperatures, .. AcidityAndWaters];

    /// <summary>Draws the whole study.</summary>
    public static InventedStudy FromSeed()
    {
        var standards = Standards.Read(Seed);
        var batch = new BatchSeries(Seed, standards.Line);
        return new()
        {
            Standards = standards,
            IsothermAndDoses = [.. batch.Isotherm(), .. batch.Doses()],
            ContactTimes = [.. batch.ContactTimes()],
            Temperatures = [.. batch.Temperatures()],
            AcidityAndWaters = [.. batch.AcidityLevels(), .. batch.AcidityControls(), .. batch.Waters()],
            Digests = [.. DigestedSolid.Series(Seed)],
            Cycles = [.. Cycle.Series(Seed)],
            Calcium = [.. CalciumReading.PowderAlone(Seed), .. CalciumReading.Exchanged(Seed)],
            Mixtures = [.. Mixture.Series(Seed)],
            Rates = [.. RateSeries.Of(Seed, standards.Line)],
            Outlets = [.. PackedBed.All.SelectMany(b => b.Portions(Seed))],
            ZeroCharges = [.. ZeroCharge.Series(Seed)],
            Sensor = Sensor.Read(Seed),
        };
    }
}
