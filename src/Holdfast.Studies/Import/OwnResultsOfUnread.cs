using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Her own removal and uptake of a vessel whose end concentration lies below the limit or was not found: the rest was taken for zero there, so that they are bounds and no results.</summary>
internal static class OwnResultsOfUnread
{
    /// <summary>Keeps them in the original only, and says so.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, TableSource source)
    {
        ImmutableArray<string> own = [BatchProperties.ReportedRemoval.Name, BatchProperties.ReportedRemaining.Name, BatchProperties.ReportedUptake.Name];
        var unread = rows.Where(r => !r.IsLeftOut && own.Any(r.Facts.ContainsKey) && r.Signals.Exists(s => s.Column.Property == SpectrometryProperties.ReportedConcentration)
            && r.Signals.TrueForAll(s => s.Readout.Value is null && (s.Readout.Below is not null || s.Readout.Why is not null))).ToList();
        if (unread.Count == 0)
            return;
        foreach (var row in unread)
            row.Facts = own.Aggregate(row.Facts, (f, name) => f.Remove(name));
        source.Talk.Note(Codes.OddCell, Weight.Note, $"{string.Join(", ", unread.Take(6).Select(r => r.Written))}: the end concentration is below the limit or was not found, so the removal and uptake written beside it are bounds. They stay in the original and are no results.", [.. unread.Select(r => r.Written)]);
    }
}
