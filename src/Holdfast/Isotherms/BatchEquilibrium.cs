using System.Runtime.Intrinsics;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>
/// What a closed vessel comes to: the concentration Ce at which the isotherm and the mass balance C0 − Ce = s·q(Ce) agree, s being the dose.
/// Predicting Ce from C0, mass and volume has one measured response and no error shared by both axes.
/// </summary>
public static class BatchEquilibrium
{
    /// <summary>Equilibrium concentration for a Langmuir isotherm, in closed form.</summary>
    /// <remarks>
    /// The positive root of K·Ce² + b·Ce − C0 = 0 with b = 1 + s·K·qm − K·C0, taken from the side that does not cancel: for b &gt; 0 as
    /// 2·C0/(b + √(b² + 4·K·C0)), otherwise as (√(b² + 4·K·C0) − b)/(2K).
    /// </remarks>
    /// <param name="c0">Starting concentration, 0 or above.</param>
    /// <param name="dose">Sorbent per volume, in the unit that makes dose·q a concentration.</param>
    /// <param name="qm">Capacity, in the unit of uptake.</param>
    /// <param name="k">Affinity, one over the unit of concentration.</param>
    public static T Langmuir<T>(T c0, T dose, T qm, T k) where T : struct, IReal<T>
    {
        var b = 1 + dose * k * qm - k * c0;
        var root = T.Sqrt(b * b + 4 * k * c0);
        return b.Value > 0 ? 2 * c0 / (b + root) : (root - b) / (2 * k);
    }

    /// <summary>Equilibrium concentration for any rising isotherm, with the slopes or the uncertainty of everything that went in.</summary>
    /// <remarks>
    /// The root is bracketed on [0, C0] in plain numbers; one Newton step from it in the caller's number type then carries first-order slopes
    /// exactly, by the theorem on implicit functions.
    /// </remarks>
    /// <param name="c0">Starting concentration, 0 or above, in the isotherm's unit.</param>
    /// <param name="dose">Sorbent per volume, above 0, in the unit that makes dose·q a concentration.</param>
    /// <param name="p">Parameters of the isotherm, in its card's order.</param>
    public static T Concentration<TCurve, T>(T c0, T dose, ReadOnlySpan<T> p)
        where TCurve : struct, ICurve<TCurve>
        where T : struct, IReal<T>
    {
        if (c0.Value < 0 || double.IsNaN(c0.Value))
            throw new ArgumentOutOfRangeException(nameof(c0), c0.Value, "The starting concentration is 0 or above.");
        if (!(dose.Value > 0))
            throw new ArgumentOutOfRangeException(nameof(dose), dose.Value, "The dose is above 0.");
        Span<Slopes> plain = stackalloc Slopes[p.Length];
        for (var i = 0; i < p.Length; i++)
            plain[i] = p[i].Value;
        var (root, slope) = Solve<TCurve>(c0.Value, dose.Value, plain);
        var balance = root + dose * TCurve.Value<T>(root, p) - c0;
        return root - balance / (1 + dose.Value * slope);
    }

    /// <summary>Equilibrium concentration and dq/dC there. Newton inside a shrinking bracket: the balance rises with C for every rising isotherm.</summary>
    private static (double Root, double Slope) Solve<TCurve>(double c0, double dose, ReadOnlySpan<Slopes> p) where TCurve : struct, ICurve<TCurve>
    {
        double low = 0, high = c0;
        var c = c0 / (1 + dose);
        for (var step = 0; ; step++)
        {
            var q = TCurve.Value(new Slopes(c, Vector256.Create(1.0, 0, 0, 0)), p);
            var balance = c + dose * q.Value - c0;
            if (balance > 0)
                high = c;
            else
                low = c;
            var next = c - balance / (1 + dose * q[0]);
            if (!(next > low && next < high))
                next = low > 0 ? Math.Sqrt(low) * Math.Sqrt(high) : high / 16;
            if (balance == 0 || Math.Abs(next - c) <= 4e-16 * c || step == 400 || high <= 1e-300)
                return (c, q[0]);
            c = next;
        }
    }
}
