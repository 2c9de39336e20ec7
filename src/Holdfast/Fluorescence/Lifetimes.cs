using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>
/// Lifetimes tell dynamic from static quenching: a collision shortens the lifetime as much as it dims the light (τ0/τ = F0/F); a complex that
/// never lights up leaves the lifetime alone (τ0/τ = 1).
/// </summary>
/// <remarks>J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 8 (from memory). Lost excitation light also leaves the lifetime alone.</remarks>
/// <param name="Ratio">Lifetime constant over intensity constant: 1 when dynamic, 0 when static; no unit.</param>
/// <param name="Z">Difference of the two constants in its standard errors; no unit.</param>
public sealed record Lifetimes(Estimate Ratio, double Z)
{
    /// <summary>Compares the two constants.</summary>
    /// <param name="intensity">Slope of F0/F, or K fitted to F, one over the unit of Q; not 0.</param>
    /// <param name="lifetime">Slope of τ0/τ, or K fitted to τ, same unit.</param>
    public static Lifetimes Of(Estimate intensity, Estimate lifetime)
    {
        ArgumentNullException.ThrowIfNull(intensity);
        ArgumentNullException.ThrowIfNull(lifetime);
        return new(Statistics.Ratio.Of(lifetime, intensity) with { Method = "lifetime constant over intensity constant, first order" }, Statistics.Ratio.Deviations(lifetime, intensity));
    }

    /// <summary>Mean lifetime of a decay with several components for the comparison with intensities: Σ a·τ / Σ a, in the unit of the lifetimes.</summary>
    /// <param name="amplitudes">Amplitudes at time 0, any unit, with a sum above 0.</param>
    /// <param name="lifetimes">Lifetimes, as many, in one unit.</param>
    /// <exception cref="ArgumentException">Lengths differ, or the amplitudes do not sum to more than 0.</exception>
    public static double AmplitudeWeighted(IReadOnlyList<double> amplitudes, IReadOnlyList<double> lifetimes)
    {
        ArgumentNullException.ThrowIfNull(amplitudes);
        ArgumentNullException.ThrowIfNull(lifetimes);
        if (amplitudes.Count != lifetimes.Count || !(amplitudes.Sum() > 0))
            throw new ArgumentException("Amplitudes and lifetimes come in pairs, and the amplitudes sum to more than 0.", nameof(amplitudes));
        return amplitudes.Zip(lifetimes, (a, t) => a * t).Sum() / amplitudes.Sum();
    }
}
