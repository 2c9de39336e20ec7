using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>Uptake along a series of liquid samples taken from one vessel while the solid stays behind (rule B7).</summary>
/// <remarks>
/// Step by step q_i = q_(i−1) + (C_(i−1) − C_i)·V_(i−1)/m, the volume shrinking by what was taken. A well-mixed suspension that is
/// withdrawn takes liquid and solid in proportion and needs none of this: there V/m stays.
/// </remarks>
public static class Aliquots
{
    /// <summary>Less liquid than this share of the vessel may be withdrawn without correction; common practice.</summary>
    public const double ShareWithoutCorrection = 0.05;

    /// <summary>Uptake at each sample, mg/g, what was withdrawn before it taken into account.</summary>
    /// <param name="c0">Start concentration, mg/L.</param>
    /// <param name="concentrations">Concentration of each sample in order of time, mg/L.</param>
    /// <param name="withdrawn">Volume of each sample, L.</param>
    /// <param name="volume">Volume at the start, L.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    /// <exception cref="ArgumentException">Numbers of samples differ, or more is withdrawn before the last sample than was there.</exception>
    public static IReadOnlyList<T> Uptake<T>(T c0, ReadOnlySpan<T> concentrations, ReadOnlySpan<T> withdrawn, T volume, T mass) where T : struct, IReal<T>
    {
        if (concentrations.Length != withdrawn.Length)
            throw new ArgumentException($"{concentrations.Length} concentrations, {withdrawn.Length} volumes.", nameof(withdrawn));
        var uptakes = new T[concentrations.Length];
        T before = c0, uptake = 0, left = volume;
        for (var i = 0; i < uptakes.Length; i++)
        {
            if (!(left.Value > 0))
                throw new ArgumentException("More liquid is withdrawn than the vessel held.", nameof(withdrawn));
            uptake += (before - concentrations[i]) * left / mass;
            uptakes[i] = uptake;
            before = concentrations[i];
            left -= withdrawn[i];
        }

        return uptakes;
    }

    /// <summary>Share of the liquid withdrawn by all samples together; no unit.</summary>
    /// <param name="withdrawn">Volume of each sample, L.</param>
    /// <param name="volume">Volume at the start, L, above 0.</param>
    public static double Share(ReadOnlySpan<double> withdrawn, double volume)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        var sum = 0.0;
        foreach (var v in withdrawn)
            sum += v;
        return sum / volume;
    }

    /// <summary>True when so much is withdrawn that an uptake without correction is wrong.</summary>
    /// <param name="share">Share of the liquid withdrawn, 0 to 1.</param>
    public static bool MustCorrect(double share) => share > ShareWithoutCorrection;
}
