using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Every vessel, series by series.</summary>
internal static class AppendixSection
{
    /// <summary>The section; null without vessels.</summary>
    public static Section? Of(Dossier dossier, Numbering numbering)
    {
        var groups = dossier.Evidence.Vessels.GroupBy(v => v.Sample.Series ?? "", StringComparer.Ordinal).ToArray();
        return groups.Length == 0 ? null : new("appendix", "Appendix: every vessel",
        [
            .. groups.Select(g => numbering.Table(() => VesselTable.Of(
                "vessels-" + LevelTable.Id(g.Key.Length == 0 ? "others" : g.Key),
                g.Key.Length == 0 ? "Samples outside any series" : $"Vessels of series {g.Key}",
                g, dossier.Evidence))),
        ]);
    }
}
