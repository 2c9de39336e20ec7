using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Scaleup;

/// <summary>One stirred tank: all sorbent leaves in equilibrium with the outlet, and therefore poorly loaded.</summary>
public static class SingleStage
{
    /// <summary>Sorbent per volume that brings the inlet down to the target, (C_in − C_t)/q(C_t), with the isotherm's covariance carried through.</summary>
    /// <param name="isotherm">A rising isotherm.</param>
    /// <param name="p">Its parameters, in the card's order.</param>
    /// <param name="inlet">Inlet concentration, in the isotherm's unit.</param>
    /// <param name="target">Target concentration, in the same unit, above 0 and below the inlet.</param>
    /// <returns>Dose, in (unit of C)/(unit of q): g/L for mg/L and mg/g.</returns>
    public static Measured Dose(Model isotherm, ReadOnlySpan<Measured> p, Measured inlet, double target)
    {
        Stages.Require(isotherm, inlet, target);
        return (inlet - target) / isotherm.Value((Measured)target, p);
    }

    /// <summary>Dose that no number of counter-current stages can undercut while the isotherm is concave, (C_in − C_t)/q(C_in).</summary>
    /// <param name="isotherm">A rising, concave isotherm.</param>
    /// <param name="p">Its parameters, in the card's order.</param>
    /// <param name="inlet">Inlet concentration, in the isotherm's unit.</param>
    /// <param name="target">Target concentration, in the same unit, above 0 and below the inlet.</param>
    /// <returns>Dose, in (unit of C)/(unit of q).</returns>
    public static Measured Floor(Model isotherm, ReadOnlySpan<Measured> p, Measured inlet, double target)
    {
        Stages.Require(isotherm, inlet, target);
        return (inlet - target) / isotherm.Value(inlet, p);
    }
}
