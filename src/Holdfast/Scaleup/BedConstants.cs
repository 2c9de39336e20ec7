using Holdfast.Amounts;

namespace Holdfast.Scaleup;

/// <summary>What k and τ of the <see cref="BreakthroughLogistic"/> become under the names of the trade, and what they allow to be said.</summary>
/// <remarks>kYN = kTh·C0; τ = q0·m/(C0·Q) = N0·Z/(C0·U).</remarks>
public static class BedConstants
{
    /// <summary>C/C0 at the start beyond which column constants are not determined.</summary>
    public const double MostAtStart = 0.01;

    /// <summary>C/C0 that a run must reach; common practice.</summary>
    public const double RunUntil = 0.9;

    /// <summary>Thomas's rate constant, also that of Bohart and Adams: k/C0, L/(mg min).</summary>
    /// <param name="k">Steepness, 1/min.</param>
    /// <param name="c0">Inlet concentration, mg/L.</param>
    public static T Rate<T>(T k, T c0) where T : struct, IReal<T> => k / c0;

    /// <summary>Thomas's capacity q0 = τ·C0·Q/m, mg/g.</summary>
    /// <param name="tau">Time at half, min.</param>
    /// <param name="c0">Inlet concentration, mg/L.</param>
    /// <param name="flow">Flow, L/min.</param>
    /// <param name="mass">Mass of dry sorbent in the bed, g.</param>
    public static T Capacity<T>(T tau, T c0, T flow, T mass) where T : struct, IReal<T> => tau * c0 * flow / mass;

    /// <summary>Bohart and Adams's capacity N0 = τ·C0·U/Z, mg per litre of bed.</summary>
    /// <param name="tau">Time at half, min.</param>
    /// <param name="c0">Inlet concentration, mg/L.</param>
    /// <param name="velocity">Superficial velocity, cm/min.</param>
    /// <param name="depth">Bed depth, cm.</param>
    public static T CapacityPerBed<T>(T tau, T c0, T velocity, T depth) where T : struct, IReal<T> => tau * c0 * velocity / depth;

    /// <summary>Time at which C/C0 reaches a share, τ − ln(1/share − 1)/k, min. Below 0 the bed never held it.</summary>
    /// <param name="share">C/C0, between 0 and 1.</param>
    /// <param name="k">Steepness, 1/min.</param>
    /// <param name="tau">Time at half, min.</param>
    public static T TimeAt<T>(double share, T k, T tau) where T : struct, IReal<T>
    {
        if (!(share > 0 && share < 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "C/C0 lies between 0 and 1.");
        return tau - Math.Log(1 / share - 1) / k;
    }

    /// <summary>Empty-bed contact time Z/U, min.</summary>
    /// <param name="depth">Bed depth, cm.</param>
    /// <param name="velocity">Superficial velocity, cm/min.</param>
    public static T EmptyBedContact<T>(T depth, T velocity) where T : struct, IReal<T> => depth / velocity;

    /// <summary>C/C0 that the logistic gives at t = 0; no unit.</summary>
    /// <param name="k">Steepness, 1/min.</param>
    /// <param name="tau">Time at half, min.</param>
    public static double AtStart(double k, double tau) => 1 / (1 + Math.Exp(k * tau));

    /// <summary>Whether column constants are determined: near 0 at the start, and run far enough (rule E3).</summary>
    /// <param name="atStart">C/C0 that the curve gives at t = 0; no unit.</param>
    /// <param name="lastRatio">Highest C/C0 reached; no unit.</param>
    public static Ruling Determined(double atStart, double lastRatio = 1)
        => atStart > MostAtStart || lastRatio < RunUntil ? Ruling.NotShownYet : Ruling.Holds;
}
