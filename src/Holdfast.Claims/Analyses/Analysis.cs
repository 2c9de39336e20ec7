using System.Runtime.CompilerServices;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// What one area of work finds in a study beyond the vessels: worked out when first asked for and kept with the evidence it came from. A new area
/// declares one of these in a file of its own; <see cref="Evidence"/> does not know it.
/// </summary>
/// <typeparam name="TFound">What is found.</typeparam>
/// <param name="work">Works it out: a pure function of the evidence.</param>
public sealed class Analysis<TFound>(Func<Evidence, TFound> work) where TFound : class
{
    private readonly ConditionalWeakTable<Evidence, TFound> known = [];

    /// <summary>What is found; the same object for the same evidence.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public TFound Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return known.GetValue(evidence, e => work(e));
    }
}
