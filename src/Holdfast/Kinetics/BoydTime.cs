using System.Runtime.Intrinsics;
using Holdfast.Amounts;

namespace Holdfast.Kinetics;

/// <summary>
/// B·t from the fraction of final uptake, for the plot of B·t on t: straight through the origin speaks for diffusion in the particle, a
/// curve or an intercept for film or mixed control. It shows neither. F must rest on a measured final uptake, and above F = 0.95 it is noise.
/// </summary>
/// <remarks>G. E. Boyd, A. W. Adamson and L. S. Myers 1947; D. Reichenberg 1953 (both from memory).</remarks>
public static class BoydTime
{
    /// <summary>B·t that gives F exactly, by inverting <see cref="SphereDiffusion.Fraction"/>.</summary>
    /// <param name="fraction">F, from 0 to below 1.</param>
    public static double Exact(double fraction)
    {
        Check(fraction);
        if (fraction == 0)
            return 0;
        var bt = Reichenberg(fraction);
        for (var step = 0; step < 50; step++)
        {
            var f = SphereDiffusion.Fraction(new Slopes(bt / (Math.PI * Math.PI), Vector256.Create(1 / (Math.PI * Math.PI), 0, 0, 0)));
            var next = bt - (f.Value - fraction) / f[0];
            if (next <= 0)
                next = bt / 2;
            if (Math.Abs(next - bt) <= 1e-15 * bt)
                return next;
            bt = next;
        }

        return bt;
    }

    /// <summary>Reichenberg's two formulas joined at F = 0.85, where they are off by 0.07 % and −0.3 %.</summary>
    /// <param name="fraction">F, from 0 to below 1.</param>
    public static double Reichenberg(double fraction)
    {
        Check(fraction);
        return fraction <= 0.85 ? Early(fraction) : Late(fraction);
    }

    /// <summary>(√π − √(π − π²·F/3))², good to 0.07 % at F = 0.85 and better below; it ends at F = 3/π.</summary>
    /// <param name="fraction">F, from 0 to 3/π.</param>
    public static double Early(double fraction)
    {
        if (!(fraction >= 0 && fraction <= 3 / Math.PI))
            throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "The early formula holds from 0 to 3/π.");
        var root = Math.Sqrt(Math.PI - Math.PI * Math.PI * fraction / 3);

        // √π − root without cancellation.
        var difference = Math.PI * Math.PI * fraction / 3 / (Math.Sqrt(Math.PI) + root);
        return difference * difference;
    }

    /// <summary>−0.4977 − ln(1 − F), off by −0.3 % at F = 0.85 and better above.</summary>
    /// <param name="fraction">F, from 0 to below 1.</param>
    public static double Late(double fraction)
    {
        Check(fraction);
        return -0.4977 - Math.Log(1 - fraction);
    }

    private static void Check(double fraction)
    {
        if (!(fraction >= 0 && fraction < 1))
            throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "The fraction of final uptake lies from 0 to below 1.");
    }
}
