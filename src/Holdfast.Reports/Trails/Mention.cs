using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.Trails;

/// <summary>A place in a study where words that somebody looks for occur.</summary>
/// <param name="Kind">"claim", "figure", "sample", "reading", "file" or "planned work".</param>
/// <param name="Id">Its address within its kind: a claim's id, a sample's code.</param>
/// <param name="Words">What it says, in a line.</param>
public sealed record Mention(string Kind, string Id, string Words)
{
    /// <summary>Every place where all of the words occur, in any order and case: claims and figures first, then samples, readings, files and planned work.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="figures">Its figures.</param>
    /// <param name="wanted">The words, separated by spaces; none find nothing.</param>
    public static ImmutableArray<Mention> Of(Dossier dossier, IEnumerable<Figure> figures, string wanted)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        ArgumentNullException.ThrowIfNull(figures);
        ArgumentNullException.ThrowIfNull(wanted);
        var words = wanted.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
            return [];
        var study = dossier.Evidence.Study;
        IEnumerable<(Mention Mention, string Text)> all =
        [
            .. dossier.Verdicts.Select(v => (new Mention("claim", v.Claim.Id, $"{v.Sentence} {InWords.Of(v.Ruling)}."), $"{v.Claim.Id} {v.Reason}")),
            .. figures.Select(f => (new Mention("figure", f.Id, f.Title), f.Alt)),
            .. study.Samples.Select(s => (new Mention("sample", s.Code, Facts(s)), "")),
            .. study.Readings.Select(r => (new Mention("reading", r.Id, $"{r.Written} of {r.Sample}, {r.Run}"), "")),
            .. study.Originals.Select(o => (new Mention("file", o.Sha256, o.FileName), o.Sha256)),
            .. study.Plan.Select(p => (new Mention("planned work", p.Id, p.Work), p.Claim ?? "")),
        ];
        return [.. all.Where(m => words.All(w => Has(m.Mention.Words, w) || Has(m.Mention.Id, w) || Has(m.Text, w))).Select(m => m.Mention)];
    }

    private static bool Has(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static string Facts(Sample sample)
        => string.Join(", ", sample.Facts.Values.Select(f => $"{Property.Named(f.Property)?.Title ?? f.Property} {f.Written}").Prepend(InWords.Of(sample.Role)));
}
