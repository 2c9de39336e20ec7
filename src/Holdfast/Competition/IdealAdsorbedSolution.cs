using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Competition;

/// <summary>
/// Two solutes that mix ideally on the surface, each with a Langmuir isotherm of its own: C_i = x_i·C_i⁰(π), Σx_i = 1, 1/q = Σx_i/q_i⁰, at one spreading
/// pressure π = qm_i·ln(1 + K_i·C_i⁰). It needs isotherms that are right at low concentration.
/// </summary>
/// <remarks>A. L. Myers and J. M. Prausnitz, AIChE J. 11 (1965) 121; for solutes C. J. Radke and J. M. Prausnitz 1972 (both from memory).</remarks>
public static class IdealAdsorbedSolution
{
    /// <summary>Uptakes of both solutes.</summary>
    /// <param name="firstCapacity">qm of the first, mmol/g, above 0.</param>
    /// <param name="firstAffinity">K of the first, L/mmol, above 0.</param>
    /// <param name="firstC">Concentration of the first, mmol/L, 0 or above.</param>
    /// <param name="secondCapacity">qm of the second, mmol/g, above 0.</param>
    /// <param name="secondAffinity">K of the second, L/mmol, above 0.</param>
    /// <param name="secondC">Concentration of the second, mmol/L, 0 or above.</param>
    /// <remarks>The root is found in plain numbers; one Newton step in the caller's number type then carries uncertainty to first order.</remarks>
    public static MixedUptake<T> Uptakes<T>(T firstCapacity, T firstAffinity, T firstC, T secondCapacity, T secondAffinity, T secondC) where T : struct, IReal<T>
    {
        foreach (var (value, name) in new[]
        {
            (firstCapacity.Value, nameof(firstCapacity)), (firstAffinity.Value, nameof(firstAffinity)),
            (secondCapacity.Value, nameof(secondCapacity)), (secondAffinity.Value, nameof(secondAffinity)),
        })
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(value, name);
        ArgumentOutOfRangeException.ThrowIfNegative(firstC.Value, nameof(firstC));
        ArgumentOutOfRangeException.ThrowIfNegative(secondC.Value, nameof(secondC));
        T a = firstAffinity * firstC, b = secondAffinity * secondC;
        if (a.Value == 0 && b.Value == 0)
            return new(0, 0, 0);
        if (b.Value == 0)
            return new(firstCapacity * a / (1 + a), 0, firstCapacity * T.LogP1(a));
        if (a.Value == 0)
            return new(0, secondCapacity * b / (1 + b), secondCapacity * T.LogP1(b));

        // ln of a/(e^(π/q1) − 1) + b/(e^(π/q2) − 1), which falls all the way, is 0 at the spreading pressure. The pressure lies above the larger single one.
        double q1 = firstCapacity.Value, q2 = secondCapacity.Value;
        var low = Math.Max(q1 * Elementary.LogP1(a.Value), q2 * Elementary.LogP1(b.Value));
        var root = Root.Of(p => Math.Log(a.Value / Elementary.ExpM1(p / q1) + b.Value / Elementary.ExpM1(p / q2)), low, 2 * low);
        var excess = a / T.ExpM1(root / firstCapacity) + b / T.ExpM1(root / secondCapacity) - 1;
        var pressure = root - excess / Slope(a.Value, q1, b.Value, q2, root);
        T x1 = a / T.ExpM1(pressure / firstCapacity), x2 = b / T.ExpM1(pressure / secondCapacity);
        T alone1 = -firstCapacity * T.ExpM1(-(pressure / firstCapacity)), alone2 = -secondCapacity * T.ExpM1(-(pressure / secondCapacity));
        var total = 1 / (x1 / alone1 + x2 / alone2);
        return new(x1 * total, x2 * total, pressure);
    }

    private static double Slope(double a, double q1, double b, double q2, double p)
    {
        // a·e^(p/q)/(q·(e^(p/q) − 1)²), written so that a large exponent gives 0 and not infinity over infinity.
        return -a / (q1 * Elementary.ExpM1(p / q1)) / -Elementary.ExpM1(-p / q1) - b / (q2 * Elementary.ExpM1(p / q2)) / -Elementary.ExpM1(-p / q2);
    }
}

/// <summary>What each of two solutes comes to beside the other.</summary>
/// <param name="First">Uptake of the first, mmol/g.</param>
/// <param name="Second">Uptake of the second, mmol/g.</param>
/// <param name="SpreadingPressure">Reduced spreading pressure π·A/(RT), mmol/g.</param>
public readonly record struct MixedUptake<T>(T First, T Second, T SpreadingPressure) where T : struct, IReal<T>;
