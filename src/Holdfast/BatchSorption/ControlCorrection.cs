using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>What the sorbent-free control says about a vessel: the loss that is not sorption, and the uptake worked out in three ways (rule B3).</summary>
/// <param name="Loss">Share of the start concentration lost in the control, (C0 − Cc)/C0; no unit.</param>
/// <param name="Upper">Uptake from the start concentration, as if the control had lost nothing, mg/g.</param>
/// <param name="Lower">Uptake from the control, as if the wall held as much beside a sorbent, mg/g.</param>
/// <param name="WallProportional">Uptake when the wall holds a share of what is dissolved, so that less is lost beside a sorbent, mg/g.</param>
public sealed record ControlCorrection(Measured Loss, Measured Upper, Measured Lower, Measured WallProportional)
{
    /// <summary>A smaller loss is not corrected for, unless the control is known better than that; common practice.</summary>
    public const double LossWorthCorrecting = 0.05;

    /// <summary>True when the loss exceeds 5 % and twice its uncertainty: correct, and find out why, before anything else.</summary>
    public bool MustCorrect => Loss.Value > Math.Max(LossWorthCorrecting, 2 * Loss.U);

    /// <summary>True when upper and lower bound differ by more than the uptake's uncertainty: show both.</summary>
    public bool BoundsDiffer => Upper.Value - Lower.Value > Upper.U;

    /// <summary>Reads a vessel against its control.</summary>
    /// <param name="c0">Start concentration, mg/L, above 0.</param>
    /// <param name="control">Concentration in the sorbent-free control at the end, mg/L, above 0.</param>
    /// <param name="c">Concentration in the vessel at the end, mg/L.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    public static ControlCorrection Of(Measured c0, Measured control, Measured c, Measured volume, Measured mass)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(c0.Value, nameof(c0));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(control.Value, nameof(control));
        return new(
            BatchQuantities.RemovedShare(c0, control),
            BatchQuantities.Uptake(c0, c, volume, mass),
            BatchQuantities.Uptake(control, c, volume, mass),
            UptakeBesideWall(c0, control, c, volume, mass));
    }

    /// <summary>Uptake with a wall loss in proportion to the dissolved concentration, q = (C0 − C·C0/Cc)·V/m, mg/g.</summary>
    /// <remarks>The wall holds (C0/Cc − 1) times what is dissolved beside it; in the vessel that is C·(C0/Cc − 1).</remarks>
    /// <param name="c0">Start concentration, mg/L.</param>
    /// <param name="control">Concentration in the sorbent-free control at the end, mg/L, not 0.</param>
    /// <param name="c">Concentration in the vessel at the end, mg/L.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    public static T UptakeBesideWall<T>(T c0, T control, T c, T volume, T mass) where T : struct, IReal<T>
        => (c0 - c * (c0 / control)) * volume / mass;
}
