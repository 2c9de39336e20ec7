using MathNet.Numerics;

namespace Holdfast.Kinetics;

/// <summary>
/// Diffusion into spheres from a bath whose concentration falls, with a straight isotherm. With α = V/(m·Kd) the bath ends with the share
/// α/(1 + α) of the solute.
/// </summary>
/// <remarks>J. Crank, The Mathematics of Diffusion, 2nd ed. 1975, equations 6.30 and 6.35 (from memory; checked against 40-digit sums).</remarks>
public static class LimitedBath
{
    // Below this D·t/r² the series needs thousands of terms and the short-time form is good to 1e-7 and better.
    private const double Short = 1e-7;

    /// <summary>α = V/(m·Kd): what the liquid holds over what the particles hold at equilibrium.</summary>
    /// <param name="dose">Sorbent per volume, in the unit that makes dose·Kd a pure number.</param>
    /// <param name="kd">Distribution coefficient: slope of the straight isotherm.</param>
    public static double Alpha(double dose, double kd) => 1 / (dose * kd);

    /// <summary>Fraction of the solute removed in the end, 1/(1 + α).</summary>
    /// <param name="alpha">α, without unit.</param>
    public static double FinalRemoval(double alpha) => 1 / (1 + alpha);

    /// <summary>Fraction F of the final uptake: 1 − Σ 6α(α + 1)·exp(−x²·D·t/r²)/(9 + 9α + x²α²).</summary>
    /// <param name="alpha">α, above 0, without unit.</param>
    /// <param name="time">D·t/r², 0 or above, without unit.</param>
    public static double Fraction(double alpha, double time)
    {
        if (!(alpha > 0))
            throw new ArgumentOutOfRangeException(nameof(alpha), alpha, "α is above 0.");
        if (!(time >= 0))
            throw new ArgumentOutOfRangeException(nameof(time), time, "D·t/r² is 0 or above.");
        if (time < Short)
            return EarlyFraction(alpha, time);
        var sum = 0.0;
        for (var n = 1; ; n++)
        {
            var x = Root(alpha, n);
            var term = 6 * alpha * (alpha + 1) * Math.Exp(-x * x * time) / (9 + 9 * alpha + x * x * alpha * alpha);
            sum += term;
            if (x * x * time > 40 || term < 1e-18 * sum)
                return 1 - sum;
        }
    }

    /// <summary>The n-th positive root of tan x = 3x/(3 + αx²); it lies between nπ and (n + ½)π.</summary>
    /// <param name="alpha">α, above 0, without unit.</param>
    /// <param name="n">Which root, from 1.</param>
    public static double Root(double alpha, int n)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 1);

        // x = nπ + arctan(3x/(3 + αx²)) contracts: the right side's slope is below 1 and falls as 1/x².
        var x = (n + 0.25) * Math.PI;
        for (var step = 0; step < 200; step++)
        {
            var next = n * Math.PI + Math.Atan(3 * x / (3 + alpha * x * x));
            var moved = Math.Abs(next - x);
            x = next;
            if (moved <= 2e-16 * x)
                break;
        }

        return x;
    }

    // Crank's form for small times, after P. C. Carman and R. A. W. Haul 1954.
    private static double EarlyFraction(double alpha, double time)
    {
        var plus = (Math.Sqrt(1 + 4 * alpha / 3) + 1) / 2;
        var minus = plus - 1;
        var root = Math.Sqrt(time);
        return (1 + alpha) * (1
            - plus / (plus + minus) * ScaledErfc(3 * plus / alpha * root)
            - minus / (plus + minus) * ScaledErfc(-3 * minus / alpha * root));
    }

    // exp(z²)·erfc(z)
    private static double ScaledErfc(double z)
        => z < 20 ? Math.Exp(z * z) * SpecialFunctions.Erfc(z) : (1 - 1 / (2 * z * z)) / (z * Math.Sqrt(Math.PI));
}
