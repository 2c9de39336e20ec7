using Holdfast.Statistics;

namespace Holdfast.Regeneration;

/// <summary>What the numbers of a reuse test allow to be said. Thresholds are common practice; they are fixed before the test, with its plan.</summary>
public static class CycleEvidence
{
    /// <summary>Cycles below which nothing is called reusable; common practice.</summary>
    public const int EnoughCycles = 5;

    /// <summary>Share of the first uptake that must be kept, unless the plan says otherwise; common practice.</summary>
    public const double DefaultRetention = 0.80;

    /// <summary>Eluted share from which a cycle counts as regenerated; common practice.</summary>
    public const double RegeneratedFrom = 0.90;

    /// <summary>Eluted share beyond which more came off than was on; common practice.</summary>
    public const double MoreThanWasOn = 1.05;

    /// <summary>Mass lost per cycle beyond which uptake on the first mass misleads; common practice.</summary>
    public const double MassLossPerCycle = 0.02;

    /// <summary>Whether a sorbent is reusable: enough cycles, and the lower 95 % bound of the share kept at or above the threshold (rule R1).</summary>
    /// <param name="cycles">Cycles measured.</param>
    /// <param name="lowerBound">Lower one-sided 95 % bound of last uptake over first; no unit.</param>
    /// <param name="threshold">Share to be kept, fixed beforehand; no unit.</param>
    public static Standing Reusable(int cycles, double lowerBound, double threshold = DefaultRetention)
        => cycles >= EnoughCycles && lowerBound >= threshold ? Standing.Holds : Standing.NotShown;

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

    /// <summary>Whether a cycle regenerated the sorbent, by the eluate: removal alone never shows it (rule R3).</summary>
    /// <param name="elutedShare">Eluted over what was on the solid; null when the eluate was not analysed; no unit.</param>
    public static Standing Regenerated(double? elutedShare) => elutedShare switch
    {
        null or < RegeneratedFrom => Standing.NotShown,
        > MoreThanWasOn => Standing.Contradicted,
        _ => Standing.Holds,
    };

    /// <summary>Whether a fall in uptake may be read as lost capacity: the mass present must be known, or lose 2 % a cycle at most (rule R4).</summary>
    /// <param name="massLossPerCycle">Share of mass lost per cycle; null when the mass was not weighed again; no unit.</param>
    /// <param name="massIsCorrectedFor">True when uptakes are on the mass present.</param>
    public static Standing LossIsCapacity(double? massLossPerCycle, bool massIsCorrectedFor)
        => massLossPerCycle is null || (massLossPerCycle > MassLossPerCycle && !massIsCorrectedFor) ? Standing.NotShown : Standing.Holds;
}
