using Holdfast.Amounts;
using Holdfast.Isotherms;

namespace Holdfast.Kinetics;

/// <summary>
/// Langmuir's rate law dq/dt = ka·C·(qm − q) − (ka/K)·q in a closed vessel, C = C0 − s·q. Its exact solution is the mixed-order curve with
/// f2 = coverage × fraction removed: one mechanism looks first order at low coverage or removal and second order when both are high.
/// </summary>
/// <remarks>
/// The right side is ka·s·(q − qe)·(q − q2), with qe·q2 = qm·C0/s; partial fractions give the curve. Derived here and held against numerical
/// integration (reference/sorption/langmuir-kinetics.csv).
/// </remarks>
public static class LangmuirKinetics
{
    /// <summary>The parameters qe, k and f2 of the mixed-order curve.</summary>
    /// <param name="c0">Starting concentration, above 0.</param>
    /// <param name="dose">Sorbent per volume, above 0.</param>
    /// <param name="qm">Langmuir capacity, in the unit of uptake.</param>
    /// <param name="affinity">Langmuir affinity K, one over concentration.</param>
    /// <param name="ka">Rate constant of uptake, one over concentration and time.</param>
    public static (T Qe, T K, T F2) MixedOrder<T>(T c0, T dose, T qm, T affinity, T ka) where T : struct, IReal<T>
    {
        var ce = BatchEquilibrium.Langmuir(c0, dose, qm, affinity);
        var qe = qm * Langmuir.Coverage(affinity, ce);
        var other = c0 * qm / (dose * qe);
        return (qe, ka * dose * (other - qe), qe / other);
    }
}
