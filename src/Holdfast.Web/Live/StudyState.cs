using Holdfast.Claims;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Web.Live;

/// <summary>What every page shows at one moment. A page never mixes two of them.</summary>
/// <param name="Daybook">The history.</param>
/// <param name="Dossier">The study worked out, or null while that is going on: no page shows a number of an earlier state.</param>
/// <param name="Kept">When the last entry of this sitting was safely on the disk; null before the first.</param>
/// <param name="Trouble">What was not kept, or could not be worked out; null when all is well.</param>
public sealed record StudyState(Daybook Daybook, Dossier? Dossier, DateTimeOffset? Kept, string? Trouble)
{
    /// <summary>Figures and tables of <see cref="Dossier"/>; null while that is worked out.</summary>
    public Drawn? Drawn { get; init; }

    /// <summary>The study.</summary>
    public Study Study => Daybook.Study;
}
