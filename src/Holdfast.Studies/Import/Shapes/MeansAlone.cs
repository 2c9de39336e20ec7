using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Tables whose rows are means and no vessels: rows called "average" alone, or her summary of vessels that were read elsewhere, level by level.</summary>
internal static class MeansAlone
{
    private const int FewestOfAGroup = 2, LongestEnding = 3;
    private static readonly ImmutableArray<Property> Results = [SpectrometryProperties.ReportedConcentration, BatchProperties.ReportedUptake, BatchProperties.ReportedRemoval, BatchProperties.ReportedRemaining];

    /// <summary>True where a table is one and is left out, which is said.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="study">The study before it.</param>
    /// <param name="read">Codes, as <see cref="CodeIndex.Loosen"/> gives them, of what was read in the drop.</param>
    /// <param name="talk">Where it is said.</param>
    public static bool AreLeftOut(TableLayout layout, Study study, IReadOnlySet<string> read, Dialogue talk)
    {
        var rows = layout.Body.Where(r => !r.IsBlank).ToList();
        if (rows.Count == 0)
            return false;
        var name = layout.Grid.Sheet ?? talk.FileName;
        if (rows.TrueForAll(r => Footer.IsSummary(r.At(0).Text)))
        {
            talk.Note(Codes.MeaningLost, Weight.Note, $"{name} holds means alone ({rows[0].At(0).Text} and so on) and no sample: left out.", name);
            return true;
        }

        List<string> labels = [.. rows.Select(r => r.Cells.First(c => !c.IsBlank).Text)];
        return read.Count > 0 && AreOfGroups(layout, rows, labels, study, read)
            && talk.Assume("means:" + name, Codes.MeaningLost, $"{name} holds means of several vessels ({labels[0]} and so on) that were read elsewhere, and no vessel of its own: left out.", ["leave-out", "take"], name) == "leave-out";
    }

    // Results of rows that nobody read, weighed or filled.
    private static bool AreOfGroups(TableLayout layout, List<GridRow> rows, List<string> labels, Study study, IReadOnlySet<string> read)
    {
        var headings = Columns.ReadHeadings(layout);
        var meant = headings.Select(TableKinds.Meant).ToList();
        if (!meant.Exists(p => p is not null && Results.Contains(p)) || meant.Exists(p => p == BatchProperties.Mass || p == BatchProperties.Volume || p is { IsSignal: true } && p != SpectrometryProperties.ReportedConcentration))
            return false;
        var known = new CodeIndex(study.Samples.Select(s => s.Code));
        if (labels.Exists(l => read.Contains(CodeIndex.Loosen(l)) || known.Find(l).Count > 0))
            return false;
        return labels.TrueForAll(l => CodeIndex.Loosen(l) is { Length: > 0 } stem && read.Count(c => IsOf(stem, c)) >= FewestOfAGroup)
            || (headings.Where((_, i) => meant[i] is { } p && Results.Contains(p)).All(h => h.Has(HeadingWord.Mean)) && CountSeveral(headings, rows, read.Count));
    }

    // "P-05a" and "P-05b" are of "P-05"; "P-050" is not.
    private static bool IsOf(string stem, string code)
        => code.Length > stem.Length && code.Length <= stem.Length + LongestEnding && code.StartsWith(stem, StringComparison.Ordinal) && !(char.IsAsciiDigit(stem[^1]) && char.IsAsciiDigit(code[stem.Length]));

    // "n" is two or more in every row, and no more vessels in all than were read: it counts vessels, and not how often each was read.
    private static bool CountSeveral(ImmutableArray<HeadingReading> headings, List<GridRow> rows, int read)
    {
        var place = headings.ToList().FindIndex(h => h.Tokens is ["n"] || (h.Has(HeadingWord.Sample) && h.HasAny(HeadingWord.Total, HeadingWord.Position)));
        List<int> counts = place < 0 ? [] : [.. rows.Select(r => int.TryParse(r.At(place).Text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0)];
        return counts.Count > 0 && counts.TrueForAll(n => n >= FewestOfAGroup) && counts.Sum() <= read;
    }
}
