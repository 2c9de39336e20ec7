using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Sources;

/// <summary>Where the curves and constants that a document uses come from, each as the program itself names its source.</summary>
internal static class SourceList
{
    /// <summary>A line a curve or group of constants; none where none is used.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="everyCurve">True for every curve that was fitted, false for the best of each series.</param>
    public static IReadOnlyList<Node> Of(Dossier dossier, bool everyCurve)
    {
        var evidence = dossier.Evidence;
        var fits = evidence.Kinetics.Concat(evidence.Isotherms).SelectMany(f => everyCurve ? f.Fits : f.Best is { } best ? [best] : Enumerable.Empty<FitResult>())
            .Concat(Sensing.Of(evidence).Series.SelectMany(s => everyCurve ? s.Fits : s.Best is { } best ? [best] : Enumerable.Empty<FitResult>()));
        var curves = fits.Select(f => f.Card).DistinctBy(c => c.Name, StringComparer.Ordinal).OrderBy(c => c.Name, StringComparer.Ordinal).Select(c => (c.Name, c.Source));
        var solids = PrecipitationGuard.Of(evidence) is { Vials.IsEmpty: false } guard
            ? guard.Ions.SelectMany(i => i.Solids).GroupBy(s => s.Source, StringComparer.Ordinal).Select(g => ($"Solubility of {StudyTables.InWords.Listed(g.Select(s => s.Name))}", g.Key + (g.All(s => s.IsFromMemory) ? ", from memory" : "")))
            : [];
        Node[] lines = [.. curves.Concat(solids).Select(l => (Node)Html.Element("li", l.Item1 + ": ", Cite(l.Item2), "."))];
        return lines.Length == 0 ? [] : [Prose.Heading("Sources of curves and constants"), Html.Element("ul", lines)];
    }

    /// <summary>Every source that the pieces cite, once each, in the order in which they are cited first.</summary>
    /// <param name="pieces">The whole document.</param>
    public static IReadOnlyList<CitedSource> In(IEnumerable<Node> pieces)
        => [.. pieces.SelectMany(Tree.All).Where(e => e.Name == "cite").Select(e => CitedSource.Read(e.Words)).DistinctBy(s => s.Key, StringComparer.Ordinal)];

    private static Node Cite(string words) => CitedSource.Read(words) is { IsPublished: true } source ? Html.Element("cite", [("data-source", source.Key)], words) : words;
}
