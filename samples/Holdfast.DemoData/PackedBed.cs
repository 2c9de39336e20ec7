using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>A small column of pressed and sieved granules of the powder, through which nickel solution runs downwards.</summary>
/// <param name="Name">Name of the run: its series.</param>
/// <param name="Depth">Depth of the bed, cm.</param>
/// <param name="Mass">Dry powder in it, g.</param>
/// <param name="Held">Liquid in bed and tubes, mL.</param>
/// <param name="Times">When a portion of the outlet was taken, min.</param>
public sealed record PackedBed(string Name, double Depth, double Mass, double Held, double[] Times)
{
    /// <summary>Inlet concentration, mg/L.</summary>
    public const double Inlet = 20;

    /// <summary>Flow, mL/min.</summary>
    public const double Flow = 2;

    /// <summary>Superficial velocity in a tube of 10 mm inner diameter, cm/min.</summary>
    public const double Velocity = 2.546;

    private const double Rate = 0.0010;

    /// <summary>Three depths, the middle one packed twice; the deepest run was stopped at the end of its day.</summary>
    public static IReadOnlyList<PackedBed> All { get; } =
    [
        new("BED-2", 2, 0.95, 1.7, [30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330, 360, 420, 480, 540]),
        new("BED-4a", 4, 1.90, 2.7, [120, 240, 300, 360, 400, 440, 480, 520, 560, 600, 640, 680, 720, 780, 840]),
        new("BED-4b", 4, 1.92, 2.7, [120, 240, 300, 360, 400, 440, 480, 520, 560, 600, 640, 680, 720, 780, 840]),
        new("BED-6", 6, 2.84, 3.6, [240, 480, 600, 660, 700, 740, 780, 820, 860, 900]),
    ];

    /// <summary>
    /// Minutes until the outlet is at half of the inlet: what the isotherm holds at the inlet concentration, and the liquid that fills the bed, over what
    /// flows in each minute.
    /// </summary>
    public double Half => (Sorption.Uptake(Inlet) * Mass + Inlet * Held / 1000) / (Inlet * Flow / 1000);

    /// <summary>True concentration in the outlet, mg/L: the logistic with a rate constant of 0.0010 L/(mg min).</summary>
    /// <param name="minutes">Time since the water first entered, min.</param>
    public double Outlet(double minutes) => Inlet / (1 + Math.Exp(Rate * Inlet * (Half - minutes)));

    /// <summary>The portions as the student's sheet holds them: 2 % of the concentration and 0.01 mg/L, added as squares, are noise and stated uncertainty.</summary>
    /// <param name="seed">Seed of the study.</param>
    public IEnumerable<BedPortion> Portions(ulong seed)
    {
        var chance = new SeededStream(seed, Name);
        foreach (var minutes in Times)
        {
            var c = Outlet(minutes);
            var u = Math.Sqrt(0.01 * 0.01 + 0.02 * c * (0.02 * c));
            yield return new(this, Invariant($"{Name}-{minutes:000}"), minutes, c + u * chance.Normal(), u);
        }
    }
}

/// <summary>One portion of an outlet.</summary>
/// <param name="Bed">The bed it ran through.</param>
/// <param name="Code">Code on the label.</param>
/// <param name="Minutes">Time since the water first entered, min.</param>
/// <param name="Concentration">Concentration, mg/L.</param>
/// <param name="U">Its standard uncertainty, mg/L.</param>
public sealed record BedPortion(PackedBed Bed, string Code, double Minutes, double Concentration, double U);
