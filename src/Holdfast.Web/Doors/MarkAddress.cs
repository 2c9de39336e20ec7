using Holdfast.Claims.Analyses;
using Holdfast.Reports.Trails;

namespace Holdfast.Web.Doors;

/// <summary>Where a mark of a figure leads: to the trail of the number it shows, or to the reading, measurement or sample it stands for.</summary>
internal static class MarkAddress
{
    /// <summary>The page behind a mark, or null when its id is none of the study.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="id">Id of the mark: code of a sample, or a reading's.</param>
    public static string? Of(Evidence evidence, string id)
        => NumberTrail.OfSample(evidence, id) is { } trail ? TrailAddress.Of(trail.Address)
            : evidence.Study.Reading(id) is not null ? "/readings/" + Uri.EscapeDataString(id)
            : evidence.Study.Measurement(id) is not null ? "/measurements/" + Uri.EscapeDataString(id)
            : evidence.Study.Mark(id) is { } mark ? "/measurements/" + Uri.EscapeDataString(mark.Measurement)
            : evidence.Study.Sample(id) is not null ? "/samples/" + Uri.EscapeDataString(id)
            : null;
}
