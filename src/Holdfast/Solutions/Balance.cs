using Holdfast.Amounts;

namespace Holdfast.Solutions;

/// <summary>A balance and what it adds to the uncertainty of a mass.</summary>
/// <remarks>
/// Linearity is a rectangular limit counted twice, for tare and gross (Eurachem/CITAC QUAM A2: ± 0.15 mg gives 0.12 mg, printed 0.13 from a
/// rounded 0.09), and one source for all weighings on the balance; repeatability is new each time.
/// </remarks>
/// <param name="Name">"analytical balance 0.1 mg".</param>
/// <param name="Resolution">One step of the display, g.</param>
/// <param name="Linearity">Limit of the linearity, ± g.</param>
/// <param name="Repeatability">Standard deviation of repeated weighings, g.</param>
/// <param name="Status">How the figures are known.</param>
public sealed record Balance(string Name, double Resolution, double Linearity, double Repeatability, string Status)
{
    /// <summary>Typical balances, for a start; the certificate of the real one wins.</summary>
    public static IReadOnlyList<Balance> Typical { get; } =
    [
        .. TradeTable.Read(BalanceLimits.Table).Select(r => new Balance(
            r["name"], r.Number("resolution_g")!.Value, r.Number("linearity_g")!.Value, r.Number("repeatability_g")!.Value, $"{r["source"]}; {r["status"]}")),
    ];

    /// <summary>One net mass, g, with its two sources.</summary>
    /// <param name="id">Stable identity of the balance.</param>
    /// <param name="act">Stable identity of the weighing: "V-12".</param>
    /// <param name="mass">Net mass as read, g.</param>
    public Measured Weigh(string id, string act, double mass)
        => Measured.From(mass, new Source($"{id}:linearity", $"balance {id}, linearity", Math.Sqrt(2) * TypeB.Rectangular(Linearity), Unit: "g"))
            + Measured.From(0, new Source($"{id}:{act}", $"balance {id}, weighing of {act}", Repeatability, Evaluation: Evaluation.Repetition, Unit: "g"));
}
