using System.Collections.Immutable;

namespace Holdfast.Claims.Plans;

/// <summary>Something that is asked before a plan is worked out, with a usual answer for who does not know it yet.</summary>
/// <param name="Name">Name of the option: "capacity".</param>
/// <param name="Asks">What is asked, in words.</param>
/// <param name="Unit">Unit the answer is in; "" for a bare number.</param>
/// <param name="Usual">Taken where nothing is said.</param>
/// <param name="Least">Least answer that makes sense.</param>
/// <param name="Most">Largest answer that makes sense.</param>
public sealed record PlanSetting(string Name, string Asks, string Unit, double Usual, double Least, double Most)
{
    /// <summary>Langmuir's capacity; its default is the worked example of the design tables.</summary>
    public static PlanSetting Capacity { get; } = new("capacity", "capacity you suppose", "mg/g", 20, 0.01, 5000);

    /// <summary>Langmuir's affinity.</summary>
    public static PlanSetting Affinity { get; } = new("affinity", "Langmuir affinity you suppose", "L/mg", 0.1, 1e-6, 1e4);

    /// <summary>How well the affinity is known.</summary>
    public static PlanSetting WithinFactor { get; } = new("within-factor", "factor within which the affinity is known (1: take it as it is)", "", 1, 1, 10);

    /// <summary>Half-time of the uptake.</summary>
    public static PlanSetting HalfTime { get; } = new("half-time", "time to half the uptake you suppose", "min", 15, 0.1, 10_000);

    /// <summary>Start concentration of series in which it is not varied.</summary>
    public static PlanSetting Concentration { get; } = new("concentration", "start concentration where it is not varied", "mg/L", 20, 1e-4, 1e5);

    /// <summary>Highest start concentration to be prepared.</summary>
    public static PlanSetting Highest { get; } = new("highest", "highest start concentration you can prepare", "mg/L", 150, 1e-3, 1e5);

    /// <summary>Dose of series in which it is not varied.</summary>
    public static PlanSetting Dose { get; } = new("dose", "sorbent dose where it is not varied", "g/L", 2, 1e-3, 1000);

    /// <summary>Liquid in a vessel.</summary>
    public static PlanSetting Volume { get; } = new("volume", "liquid in each vessel", "mL", 25, 0.1, 10_000);

    /// <summary>pH at the start.</summary>
    public static PlanSetting Ph { get; } = new("ph", "pH at the start", "", 6, 0, 14);

    /// <summary>How far the sorbent raises the pH.</summary>
    public static PlanSetting PhRise { get; } = new("ph-rise", "rise of pH you suppose until the end", "", 0.5, 0, 8);

    /// <summary>Temperature.</summary>
    public static PlanSetting Temperature { get; } = new("temperature", "temperature", "K", 298.15, 273, 373);

    /// <summary>Contact time of series in which it is not varied.</summary>
    public static PlanSetting Time { get; } = new("time", "contact time where it is not varied, and the time by which equilibrium is claimed", "min", 120, 1, 100_000);

    /// <summary>Scatter between vessels.</summary>
    public static PlanSetting Scatter { get; } = new("scatter", "standard deviation of one vessel, as a share of its uptake", "%", 3, 0.05, 100);

    /// <summary>Error of a concentration read, in proportion.</summary>
    public static PlanSetting ReadingShare { get; } = new("reading-share", "standard uncertainty of a concentration that was diluted and read, as a share of it", "%", 2, 0, 50);

    /// <summary>Error of a concentration read, whatever its size.</summary>
    public static PlanSetting ReadingFloor { get; } = new("reading-floor", "standard uncertainty of a concentration, however small", "mg/L", 0.05, 0, 1e4);

    /// <summary>Error of the metal filled in.</summary>
    public static PlanSetting Filling { get; } = new("filling", "standard uncertainty of the metal filled into a vessel, as a share of it", "%", 1, 0, 50);

    /// <summary>How many pilot vessels stand behind the scatter.</summary>
    public static PlanSetting Pilot { get; } = new("pilot", "vessels the scatter was found from (0: supposed); its upper 80 % bound is then planned with", "", 0, 0, 1000);

    /// <summary>Enthalpy that is to be seen.</summary>
    public static PlanSetting Enthalpy { get; } = new("enthalpy", "enthalpy of uptake that is to be seen, without its sign", "kJ/mol", 20, 0.1, 500);

    /// <summary>Highest calibration standard.</summary>
    public static PlanSetting TopStandard { get; } = new("top-standard", "highest calibration standard", "mg/L", 4, 1e-4, 1e5);

    /// <summary>Quantification limit.</summary>
    public static PlanSetting Quantification { get; } = new("quantification-limit", "lowest concentration you can read", "mg/L", 0.05, 1e-6, 1e4);

    /// <summary>Stock solution.</summary>
    public static PlanSetting Stock { get; } = new("stock", "concentration of the stock solution", "mg/L", 1000, 1e-3, 1e6);

    /// <summary>Sorbent at hand.</summary>
    public static PlanSetting Sorbent { get; } = new("sorbent", "sorbent at hand (0: not said)", "g", 0, 0, 1e6);

    /// <summary>Batches of the sorbent at hand.</summary>
    public static PlanSetting Batches { get; } = new("batches", "separate batches of the sorbent at hand", "", 3, 1, 50);

    /// <summary>Most vessels that can be run.</summary>
    public static PlanSetting Vessels { get; } = new("vessels", "vessels you can run in all (0: as many as it takes)", "", 0, 0, 10_000);

    /// <summary>Vessels in a block.</summary>
    public static PlanSetting PerDay { get; } = new("per-day", "vessels you can run in a day", "", 24, 1, 1000);

    /// <summary>Beginning of the day.</summary>
    public static PlanSetting Begin { get; } = new("begin", "hour at which a day's first vessel is started", "", 9, 0, 23);

    /// <summary>Hands needed to start a vessel.</summary>
    public static PlanSetting Starting { get; } = new("starting", "minutes that starting a vessel takes", "min", 2, 1, 60);

    /// <summary>Hands needed to stop a vessel.</summary>
    public static PlanSetting Stopping { get; } = new("stopping", "minutes that stopping and separating a vessel takes", "min", 3, 1, 60);

    /// <summary>Seconds for a reading.</summary>
    public static PlanSetting SecondsEach { get; } = new("seconds-each", "seconds that one reading takes", "s", 12, 1, 3600);

    /// <summary>Price of the sorbent.</summary>
    public static PlanSetting PriceSorbent { get; } = new("price-sorbent", "price of a gram of sorbent", "per g", 0, 0, 1e9);

    /// <summary>Price of the salt.</summary>
    public static PlanSetting PriceSalt { get; } = new("price-salt", "price of a gram of the metal's salt", "per g", 0, 0, 1e9);

    /// <summary>Price of the instrument.</summary>
    public static PlanSetting PriceInstrument { get; } = new("price-instrument", "price of an hour at the instrument", "per h", 0, 0, 1e9);

    /// <summary>Price of what a vessel uses up.</summary>
    public static PlanSetting PriceVessel { get; } = new("price-vessel", "price of what one vessel uses up: tube, filter, tip", "each", 0, 0, 1e9);

    /// <summary>Price of waste.</summary>
    public static PlanSetting PriceWaste { get; } = new("price-waste", "price of a litre of waste", "per L", 0, 0, 1e9);

    /// <summary>All of them, in the order they are asked.</summary>
    public static ImmutableArray<PlanSetting> All { get; } =
    [
        Vessels, Capacity, Affinity, WithinFactor, HalfTime, Scatter, Pilot, ReadingShare, ReadingFloor, Filling, Enthalpy, Concentration, Highest, Dose, Volume, Ph, PhRise, Temperature, Time, TopStandard,
        Quantification, Stock, Sorbent, Batches, PerDay, Begin, Starting, Stopping, SecondsEach, PriceSorbent, PriceSalt, PriceInstrument, PriceVessel, PriceWaste,
    ];
}
