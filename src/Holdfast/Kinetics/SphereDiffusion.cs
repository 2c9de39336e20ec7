using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Diffusion into spheres whose surface stays at one concentration: q = qe·F(B·t) with B = π²·D/r².</summary>
/// <remarks>J. Crank, The Mathematics of Diffusion, 2nd ed. 1975, equations 6.20 and 6.22 (from memory; checked against 40-digit sums).</remarks>
public readonly struct SphereDiffusion : ICurve<SphereDiffusion>
{
    // Below this D·t/r² the short-time form is exact to e^−100, above it twenty terms of the series are.
    private const double Short = 0.01;

    public static ModelCard Card { get; } = new(
        "Diffusion into spheres",
        "q = qe·(1 − (6/π²)·Σ exp(−n²·B·t)/n²)",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("B", Kind.PerX, "1/{x}", "π²·D/r²", Above: 0),
        ],
        "J. Crank, The Mathematics of Diffusion, 2nd ed. 1975, eq. 6.20, from memory",
        "Constant concentration at the surface: where more than about 10 % of the solute is removed, B is overstated, tenfold at 80 % removal. "
            + "D = B·r²/π² needs a particle radius; for aggregates give B only. A close fit does not show that pores control.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        => x.Value == 0 ? 0 : p[0] * Fraction(p[1] * x / (Math.PI * Math.PI));

    /// <summary>Fraction F of the final uptake.</summary>
    /// <param name="time">D·t/r², without unit, 0 or above.</param>
    public static T Fraction<T>(T time) where T : struct, IReal<T>
    {
        if (time.Value == 0)
            return 0;
        if (time.Value < Short)
            return 6 * T.Sqrt(time / Math.PI) - 3 * time;
        T sum = 0;
        for (var n = 1; n * n * time.Value < 5; n++)
            sum += T.Exp(-n * n * Math.PI * Math.PI * time) / ((double)n * n);
        return 1 - 6 / (Math.PI * Math.PI) * sum;
    }

    /// <summary>Vermeulen's approximation √(1 − exp(−B·t)), −7 to +3 % of <see cref="Fraction"/>. For comparison with older work only.</summary>
    /// <remarks>T. Vermeulen 1953, from memory.</remarks>
    /// <param name="time">D·t/r², without unit.</param>
    public static T Vermeulen<T>(T time) where T : struct, IReal<T> => T.Sqrt(-T.ExpM1(-Math.PI * Math.PI * time));
}
