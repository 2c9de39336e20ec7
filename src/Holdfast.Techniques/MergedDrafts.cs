using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques;

/// <summary>What the blocks of one grid would bring, together.</summary>
internal static class MergedDrafts
{
    /// <summary>One draft of several: the layout of the first, the measurements and settings of all.</summary>
    /// <param name="drafts">At least one, in the order of the file.</param>
    public static MeasurementDraft Of(IEnumerable<MeasurementDraft> drafts)
    {
        MeasurementDraft[] all = [.. drafts];
        return all is [var only] ? only : all[0] with
        {
            Rows = new(all.Sum(d => d.Rows.Ready), all.Sum(d => d.Rows.Undecided), all.Sum(d => d.Rows.Blank), all.Sum(d => d.Rows.LeftOut)),
            Measurements = [.. all.SelectMany(d => d.Measurements)],
            Settings = [.. all.SelectMany(d => d.Settings).Distinct()],
            Columns = [.. all.SelectMany(d => d.Columns).GroupBy(c => c.Index).Select(g => g.OrderBy(c => c.Use == ColumnUse.LeftOut ? 1 : 0).First()).OrderBy(c => c.Index)],
        };
    }
}
