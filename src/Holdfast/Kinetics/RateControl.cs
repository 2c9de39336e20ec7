using Holdfast.Statistics;

namespace Holdfast.Kinetics;

/// <summary>
/// Which step is slow, by what changes the rate: diffusion inside a particle goes with 1/d² and does not feel the stirring; diffusion through the film
/// around it goes with 1/d and does.
/// </summary>
/// <remarks>
/// F. Helfferich, Ion Exchange (1962), chapter 6 (from memory): B = π²·D/r² inside a sphere (see <see cref="SphereDiffusion"/>), k = 3·k_f/r through a film. Exponents are
/// slopes of ln k on ln d, averaged over speeds; their errors are carried from those of the constants (G. W. Snedecor and W. G. Cochran, from memory).
/// </remarks>
public static class RateControl
{
    /// <summary>Exponent of the size where diffusion inside the particle controls; no unit.</summary>
    public const double Inside = 2;

    /// <summary>Exponent of the size where the film around the particle controls; no unit.</summary>
    public const double ThroughFilm = 1;

    private const double LargestFraction = 0.8;
    private const int FewestEarly = 5;

    /// <summary>n in k ∝ d^−n, no unit: mean over the speeds at which two sizes or more were run; null where none was.</summary>
    /// <param name="rates">Rate constants.</param>
    public static Estimate? SizeExponent(IReadOnlyList<RateAt> rates) => Slope(rates, r => r.Speed, r => r.Diameter, -1, "slope of ln k on ln d");

    /// <summary>Rate at the highest speed over that at the lowest, no unit: from the slope of ln k on ln speed, mean over the sizes; null where no size was run at two.</summary>
    /// <param name="rates">Rate constants.</param>
    public static Estimate? StirringRatio(IReadOnlyList<RateAt> rates)
    {
        if (Slope(rates, r => r.Diameter, r => r.Speed, 1, "slope of ln k on ln speed") is not { } slope)
            return null;
        var span = Math.Log(rates.Max(r => r.Speed) / rates.Min(r => r.Speed));
        return slope with { Value = Math.Exp(span * slope.Value), StandardError = span * slope.StandardError, Scale = Scale.Logarithmic };
    }

    /// <summary>
    /// Uptake at time 0 by q = c + a·√t + b·t over the uptakes below 80 % of the plateau, in their unit: the square-root law with the next term of the
    /// solution for spheres, 6·√(D·t/(π·r²)) − 3·D·t/r², which serves to 90 %. The bare line on √t is bent by that term and misses 0 even where pores control.
    /// </summary>
    /// <param name="time">Times, above 0, min.</param>
    /// <param name="uptake">Uptakes, one for each vessel.</param>
    /// <param name="plateau">Uptake at equilibrium, same unit, above 0.</param>
    /// <returns>c; null with fewer than five such vessels or three such times.</returns>
    public static Estimate? Intercept(IReadOnlyList<double> time, IReadOnlyList<double> uptake, double plateau)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(uptake);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(plateau);
        if (time.Count != uptake.Count)
            throw new ArgumentException($"{time.Count} times and {uptake.Count} uptakes.", nameof(uptake));

        // Whole times are taken or left: the cut falls on means, so that scatter does not choose the vessels.
        var early = time.Zip(uptake).GroupBy(p => p.First).Where(g => g.Key > 0 && g.Average(p => p.Second) < LargestFraction * plateau).ToArray();
        (double Time, double Uptake)[] points = [.. early.SelectMany(g => g)];
        return early.Length < 3 || points.Length < FewestEarly ? null
            : PolynomialFit.Of([.. points.Select(p => Math.Sqrt(p.Time))], [.. points.Select(p => p.Uptake)], degree: 2).Coefficient(0) is { StandardError: > 0 } c ? c : null;
    }

    // A slope is a sum of the logarithms with fixed weights, so its variance is the sum of theirs with the squares.
    private static Estimate? Slope(IReadOnlyList<RateAt> rates, Func<RateAt, double> apart, Func<RateAt, double> along, int sign, string method)
    {
        ArgumentNullException.ThrowIfNull(rates);
        if (rates.Any(r => !(r.Diameter > 0 && r.Speed > 0 && r.Rate > 0 && r.U > 0)))
            throw new ArgumentException("Diameters, speeds, rate constants and their errors are above 0.", nameof(rates));
        RateAt[][] groups = [.. rates.GroupBy(apart).Select(g => g.ToArray()).Where(g => g.Select(along).Distinct().Count() > 1)];
        if (groups.Length == 0)
            return null;
        var value = 0.0;
        var parts = new List<(double Variance, double DegreesOfFreedom)>();
        foreach (var group in groups)
        {
            double[] x = [.. group.Select(r => Math.Log(along(r)))];
            var mean = x.Average();
            var spread = x.Sum(v => (v - mean) * (v - mean));
            foreach (var (rate, at) in group.Zip(x))
            {
                var weight = sign * (at - mean) / spread / groups.Length;
                value += weight * Math.Log(rate.Rate);
                var u = weight * rate.U / rate.Rate;
                parts.Add((u * u, rate.DegreesOfFreedom));
            }
        }

        return new(method, value, Math.Sqrt(parts.Sum(p => p.Variance)), WelchSatterthwaite.Of([.. parts]), groups.Sum(g => g.Length));
    }
}

/// <summary>A rate constant at one size of the particles and one speed of stirring.</summary>
/// <param name="Diameter">Diameter of the particles, any one unit, above 0.</param>
/// <param name="Speed">Speed of stirring, any one unit, above 0.</param>
/// <param name="Rate">Rate constant, 1/min, above 0.</param>
/// <param name="U">Its standard error, 1/min.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of that.</param>
public sealed record RateAt(double Diameter, double Speed, double Rate, double U, double DegreesOfFreedom);
