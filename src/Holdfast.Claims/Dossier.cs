using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims;

/// <summary>
/// The study worked out: quantities, findings and verdicts. A pure function of the study, so that no number shown can be stale.
/// </summary>
/// <param name="Evidence">Quantities and findings.</param>
/// <param name="Verdicts">Judged claims: the author's in her order, then those the data invite.</param>
public sealed record Dossier(Evidence Evidence, ImmutableArray<Verdict> Verdicts)
{
    /// <summary>Works a study out.</summary>
    /// <param name="study">Any study, also an empty one.</param>
    public static Dossier Of(Study study)
    {
        var evidence = Evidence.Of(study);
        return new(evidence, Defence.Of(evidence));
    }
}
