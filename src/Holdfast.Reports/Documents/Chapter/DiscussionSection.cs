using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>What the verdicts mean together: how to read them, the caveats that several claims share, and what the data raise beside the claims.</summary>
internal static class DiscussionSection
{
    private const string Title = "What is shown and what is not";

    /// <summary>The section.</summary>
    /// <param name="claims">The claims with their numbers.</param>
    /// <param name="numbering">Sets tables.</param>
    public static Section Of(ClaimList claims, Numbering numbering)
    {
        if (claims.All.IsEmpty)
            return new("discussion", Title, [Prose.Paragraph("There is nothing to discuss before the first claim.")]);
        var content = new List<Node>();
        if (claims.All.Any(c => c.Verdicts[0].Claim.Stated))
            content.Add(Prose.Paragraph("What holds is shown within the scope given with each claim. What is contradicted may not be written as it stands. What is not shown yet may be true: these data do not decide it, and the results name the next experiment."));
        string[] caveats = [.. Caveats(claims)];
        if (caveats.Length > 0)
            content.AddRange([Prose.Heading("Caveats that claims share"), Prose.List(caveats)]);
        if (Raised(claims) is { Rows.Count: > 0 } raised)
            content.Add(numbering.Table(raised));
        return new("discussion", Title, content);
    }

    private static Table Raised(ClaimList claims)
        => new(
            "claims",
            "What else the data raise and do not show; what else holds stands in the record",
            [new Column("claim", "Claim that nobody stated") { NamesRows = true }, new Column("verdict", "Verdict")],
            [.. claims.All.Where(c => !c.Verdicts[0].Claim.Stated && c.Ruling != Ruling.Holds).Select(c => Row.Of(c.Sentence, InWords.Of(c.Ruling)))]);

    private static IEnumerable<string> Caveats(ClaimList claims)
    {
        var caveats = claims.SharedCaveats.ToArray();
        string[] margins = [.. caveats.Where(c => ClaimList.IsMargin(c.Sentence)).Select(c => $"{c.Sentence[..^MarginKind.LeftToDefault.Length].TrimEnd().Replace("The ", "the ", StringComparison.Ordinal)} for {claims.Named(c.Claims)}")];
        return margins.Take(1).Select(_ => $"Margins left at their defaults, since nobody fixed them before the data were seen: {string.Join("; ", margins)}.")
            .Concat(caveats.Where(c => !ClaimList.IsMargin(c.Sentence)).Select(c => $"{SentenceCase.Of(claims.Named(c.Claims))}: {c.Sentence}"));
    }
}
