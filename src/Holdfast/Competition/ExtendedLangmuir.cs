using Holdfast.Amounts;

namespace Holdfast.Competition;

/// <summary>
/// Two solutes on the sites of one Langmuir surface: q_i = qm_i·K_i·C_i/(1 + ΣK_j·C_j). Consistent with thermodynamics only for equal capacities (by amount);
/// where they differ by more than 10 % use <see cref="IdealAdsorbedSolution"/> (rule P5).
/// </summary>
/// <remarks>J. A. V. Butler and C. Ockrent 1930 (from memory).</remarks>
public static class ExtendedLangmuir
{
    /// <summary>Uptake of the first solute beside the second, in the unit of <paramref name="capacity"/>.</summary>
    /// <param name="capacity">qm of the first, mmol/g.</param>
    /// <param name="affinity">K of the first, L/mmol.</param>
    /// <param name="c">Concentration of the first, mmol/L.</param>
    /// <param name="rivalAffinity">K of the second, L/mmol.</param>
    /// <param name="rivalC">Concentration of the second, mmol/L.</param>
    public static T Uptake<T>(T capacity, T affinity, T c, T rivalAffinity, T rivalC) where T : struct, IReal<T>
    {
        var filled = affinity * c;
        return capacity * filled / (1 + filled + rivalAffinity * rivalC);
    }
}
