namespace Holdfast.Claims;

/// <summary>
/// By how many units of AICc one curve must lead another before anything is said. Noise alone lets some rival lead the true curve by so much in about one study of twenty, more
/// with few points and more parameters.
/// </summary>
/// <remarks>
/// Simulated: <c>bench/Holdfast.Verdicts distances</c> (300 studies a row, every isotherm that is comparable a rival). The leads that chance exceeds in 5 % of studies were
/// 0.6 to 4.4 for true curves of one and two parameters, and 9.9, 5.6, 6.3, 4.5, 3.4 for Sips with 8, 12, 18, 24 and 36 points. 4 is also where a rival begins to have
/// considerably less support (Burnham and Anderson).
/// </remarks>
public static class AiccDistance
{
    /// <summary>Parameters from which few points need a larger distance.</summary>
    public const int ManyParameters = 3;

    /// <summary>Distances by the points they hold up to; the last holds for all more.</summary>
    private static readonly (int Below, double Distance)[] ForMany = [(12, 10), (24, 6.5), (int.MaxValue, 5)];

    /// <summary>Units of AICc that decide about curves of one or two parameters.</summary>
    public const double ForFew = 4;

    /// <summary>Units of AICc that decide about a curve.</summary>
    /// <param name="n">Points.</param>
    /// <param name="parameters">Parameters of the curve that is claimed.</param>
    public static double Of(int n, int parameters) => parameters < ManyParameters ? ForFew : ForMany.First(d => n < d.Below).Distance;
}
