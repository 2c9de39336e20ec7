using Holdfast.Statistics;

namespace Holdfast.Regeneration;

/// <summary>What the numbers of a reuse test allow to be said. Thresholds are common practice; they are fixed before the test, with its plan.</summary>
public static class CycleEvidence
{
    /// <summary>Cycles below which nothing is called reusable; common practice.</summary>
    public const int EnoughCycles = 5;

    /// <summary>Share of the first uptake that must be kept, unless the plan says otherwise; common practice.</summary>
    public const double DefaultRetention = 0.80;

    /// <summary>z of the later cycles' mean against the first: (mean − first)/(s·√(1 + 1/(n − 1))); no unit (rule R2).</summary>
    /// <param name="uptakes">Uptake of each cycle, the first one first; two or more.</param>
    /// <param name="sd">Standard deviation between vessels, same unit, above 0.</param>
    public static double RiseZ(IReadOnlyList<double> uptakes, double sd)
    {
        Values.Require(uptakes);
        ArgumentOutOfRangeException.ThrowIfLessThan(uptakes.Count, 2, nameof(uptakes));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sd);
        return (CentredSums.Mean([.. uptakes.Skip(1)]) - uptakes[0]) / (sd * Math.Sqrt(1 + 1.0 / (uptakes.Count - 1)));
    }

    /// <summary>True when later cycles lie so far above the first that the rise must be explained before it is enjoyed.</summary>
    /// <param name="z">See <see cref="RiseZ"/>; no unit.</param>
    public static bool MustBeExplained(double z) => z > 2;
}
