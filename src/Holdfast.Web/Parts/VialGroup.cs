using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.Properties;

namespace Holdfast.Web.Parts;

/// <summary>Vials that are shown together: a series, those of none, or what serves the instrument. A page of all vials grows with the study; one of a group does not.</summary>
/// <param name="Id">How the address names it.</param>
/// <param name="Title">Its name, for the choice.</param>
/// <param name="Samples">Its vials, in the order of the study.</param>
internal sealed record VialGroup(string Id, string Title, ImmutableArray<Sample> Samples)
{
    /// <summary>So many vials are shown at once without a choice.</summary>
    internal const int MostAtOnce = 150;

    /// <summary>The group of everything.</summary>
    internal const string All = "all";

    private const string None = "none", OfInstrument = "instrument", SeriesId = "series:";

    /// <summary>All groups of a study; everything first where it is few, last where it is many.</summary>
    /// <param name="study">The study.</param>
    public static ImmutableArray<VialGroup> Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        // What is filled and shaken stands first, what serves the instrument after it.
        var filled = study.Samples.Where(SampleSelection.IsFilled).ToLookup(s => s.Words(SampleProperties.Series) ?? "", StringComparer.Ordinal);
        ImmutableArray<Sample> others = [.. study.Samples.Where(s => !SampleSelection.IsFilled(s))];
        var all = new VialGroup(All, "all", [.. study.Samples.OrderBy(s => !SampleSelection.IsFilled(s))]);
        ImmutableArray<VialGroup> parts =
        [
            .. filled.Where(g => g.Key.Length > 0).Select(g => new VialGroup(SeriesId + g.Key, g.Key, [.. g])),
            .. filled[""].Any() ? [new VialGroup(None, "of no series", [.. filled[""]])] : Array.Empty<VialGroup>(),
            .. others.IsEmpty ? Array.Empty<VialGroup>() : [new VialGroup(OfInstrument, "standards, blanks and start solutions", others)],
        ];
        return study.Samples.Length <= MostAtOnce || parts.Length < 2 ? [all, .. parts.Length < 2 ? [] : parts] : [.. parts, all];
    }

    /// <summary>The group that an address names, or the first.</summary>
    /// <param name="groups">All groups.</param>
    /// <param name="id">What the address says, or null.</param>
    public static VialGroup Chosen(ImmutableArray<VialGroup> groups, string? id) => groups.FirstOrDefault(g => string.Equals(g.Id, id, StringComparison.Ordinal)) ?? groups[0];
}
