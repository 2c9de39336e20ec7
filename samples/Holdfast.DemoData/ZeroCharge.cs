using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>Powder alone in sodium nitrate, 10 g/L, kept from air: the pH it was set to and the pH a day later.</summary>
/// <param name="Code">Code on the label.</param>
/// <param name="Salt">Sodium nitrate, mol/L.</param>
/// <param name="StartPh">pH at the start.</param>
/// <param name="EndPh">pH after 24 h.</param>
public sealed record ZeroCharge(string Code, double Salt, double StartPh, double EndPh)
{
    /// <summary>pH at which the invented surface carries no charge, at both levels of salt.</summary>
    public const double True = 7.2;

    private const double Noise = 0.05;

    /// <summary>
    /// The invented truth of final less start pH: towards 7.2 and nearly all the way close to it, less far where acid or base outweighs the surface.
    /// </summary>
    /// <param name="startPh">pH at the start.</param>
    /// <param name="share">Share of the way that is gone close to 7.2.</param>
    public static double Drift(double startPh, double share)
    {
        var away = startPh - True;
        return -share * away / (1 + Math.Pow(away / 4, 4));
    }

    /// <summary>Start pH 3 to 11 at two levels of salt, two vessels each, from one stream.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<ZeroCharge> Series(ulong seed)
    {
        var chance = new SeededStream(seed, "DRIFT");
        foreach (var (salt, share) in ((double, double)[])[(0.01, 0.85), (0.1, 0.95)])
        {
            for (var ph = 3; ph <= 11; ph++)
            {
                for (var r = 1; r <= 2; r++)
                    yield return new(Invariant($"ZC{(salt < 0.05 ? 'L' : 'H')}{ph:00}-{r}"), salt, ph, Math.Round(ph + Drift(ph, share) + Noise * chance.Normal(), 2));
            }
        }
    }
}
