using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Linear plots, shown once for each family of curves, and what they cannot say.</summary>
internal static class LinearText
{
    /// <summary>Heading, sentences and one table, for the series with the most vessels; nothing when no plot can be drawn.</summary>
    /// <param name="all">Every fitted series of the family.</param>
    /// <param name="kind">Begins the id of the table.</param>
    /// <param name="numbering">Numbers of tables.</param>
    /// <param name="trap">What is known against a plot of this family; null for nothing beyond the general.</param>
    public static IEnumerable<Node> Of(IReadOnlyCollection<FittedSeries> all, string kind, Numbering numbering, string? trap)
    {
        var shown = all.OrderByDescending(f => f.Series.Vessels.Count())
            .Select(f => LinearFormTable.Of($"{kind}-{LevelTable.Id(f.Series.Name)}-linear", $"Linear plots of {f.Series.Name}, for display only, beside the direct fit", f))
            .FirstOrDefault(t => t is not null);
        if (shown is null)
            yield break;
        yield return Prose.Heading("Linear plots, for display only");
        yield return Prose.Paragraph("Rearranging a curve into a line changes the weight of each point and often puts the same reading on both axes. The table shows how far the constants of such lines lie from those of the direct fit; none of them is used."
            + (all.Count > 1 ? " The tables for data files hold the other series." : ""));
        if (trap is not null)
            yield return Prose.Paragraph(trap);
        yield return numbering.Table(shown);
    }
}
