using Holdfast.Amounts;

namespace Holdfast.Kinetics;

/// <summary>
/// Transfer through the liquid film around the particles: dC/dt = −kf·A·(C − Cs). The test for it is the stirring speed, not the curve.
/// </summary>
/// <remarks>Mass-transfer balance of a stirred vessel, common practice; the first-order rate is derived here from a straight isotherm.</remarks>
public static class FilmDiffusion
{
    /// <summary>Outer area of the particles per volume of liquid, A = 3·s/(r·ρ) for spheres.</summary>
    /// <param name="dose">Sorbent per volume of liquid, kg/m³ (the same number as g/L).</param>
    /// <param name="radius">Particle radius, m.</param>
    /// <param name="density">Density of the particle with its pores, kg/m³.</param>
    public static T OuterArea<T>(T dose, T radius, T density) where T : struct, IReal<T> => 3 * dose / (radius * density);

    /// <summary>First-order rate constant for a straight isotherm: k1 = kf·A·(1 + 1/(s·Kd)).</summary>
    /// <param name="kf">Film coefficient, length per time.</param>
    /// <param name="area">Outer area per volume, one over the same length.</param>
    /// <param name="dose">Sorbent per volume.</param>
    /// <param name="kd">Distribution coefficient, so that dose·kd is a pure number.</param>
    public static T FirstOrderRate<T>(T kf, T area, T dose, T kd) where T : struct, IReal<T> => kf * area * (1 + 1 / (dose * kd));

    /// <summary>Film coefficient from the early slope of ln(C/C0) on time, which is −kf·A while the surface is still bare.</summary>
    /// <param name="earlySlope">Slope of ln(C/C0), one over time, below 0.</param>
    /// <param name="area">Outer area per volume, one over a length.</param>
    public static T Coefficient<T>(T earlySlope, T area) where T : struct, IReal<T> => -earlySlope / area;

    /// <summary>Biot number kf·r·C0/(ρ·Ds·q0): above about 50 the particle controls, below about 1 the film (from memory).</summary>
    /// <param name="kf">Film coefficient, m/s.</param>
    /// <param name="radius">Particle radius, m.</param>
    /// <param name="c0">Starting concentration, kg/m³.</param>
    /// <param name="density">Density of the particle, kg/m³.</param>
    /// <param name="surfaceDiffusivity">Ds, m²/s.</param>
    /// <param name="q0">Uptake in equilibrium with C0, kg/kg.</param>
    public static T Biot<T>(T kf, T radius, T c0, T density, T surfaceDiffusivity, T q0) where T : struct, IReal<T>
        => kf * radius * c0 / (density * surfaceDiffusivity * q0);
}
