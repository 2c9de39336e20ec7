using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.Documents;

/// <summary>Assumptions and findings, those of a kind in one line.</summary>
internal static class FindingSection
{
    private const int OneByOne = 2;

    /// <summary>The section.</summary>
    public static Section Of(Dossier dossier)
    {
        var evidence = dossier.Evidence;
        var all = evidence.Findings.Concat(evidence.Vessels.SelectMany(v => v.Findings)).Concat(StudyFigure.Fallen(dossier)).Concat(DerivedTrails.Of(evidence).Fallen)
            .DistinctBy(f => (f.Code, f.Sentence)).ToArray();
        var content = new List<Node>();
        if (all.Length == 0)
            content.Add(Prose.Paragraph("No finding was raised."));
        foreach (var weight in new[] { Weight.Stop, Weight.Caution, Weight.Note })
        {
            var some = all.Where(f => f.Weight == weight).ToArray();
            if (some.Length == 0)
                continue;
            content.Add(Prose.Heading(weight switch
            {
                Weight.Stop => "What cannot be used as it is",
                Weight.Caution => "Caveats and assumptions",
                _ => "Worth knowing",
            }));
            content.Add(Grouped(some));
        }

        return new("findings", "Assumptions and findings", content);
    }

    /// <summary>Findings as a list; three or more of one code become one line with a count and the first as an example.</summary>
    public static Element Grouped(IEnumerable<Finding> findings)
        => Prose.List(findings.DistinctBy(f => (f.Code, f.Sentence)).GroupBy(f => f.Code, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).SelectMany(Lines));

    private static IEnumerable<string> Lines(IGrouping<string, Finding> kind)
    {
        var all = kind.ToArray();
        if (all.Length <= OneByOne)
            return all.Select(f => $"{f.Sentence} ({f.Code})");
        var concerns = all.SelectMany(f => f.Concerns).Distinct(StringComparer.Ordinal).ToArray();
        var about = concerns.Length > 0 ? $" Concerns {InWords.Some(concerns, 6)}." : "";
        return [string.Create(CultureInfo.InvariantCulture, $"{all.Length} times ({kind.Key}), for example: {all[0].Sentence}{about}")];
    }
}
