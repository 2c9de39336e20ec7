using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>What is and what is not shown: by verdict, by shared gap, and what would settle the rest.</summary>
internal static class DiscussionSection
{
    /// <summary>The section.</summary>
    /// <param name="claims">The claims with their numbers.</param>
    /// <param name="numbering">Sets tables.</param>
    public static Section Of(ClaimList claims, Numbering numbering)
    {
        Verdict[] all = [.. claims.All.SelectMany(c => c.Verdicts)];
        var content = new List<Node>();
        if (all.Length == 0)
            return new("discussion", "What is shown and what is not", [Prose.Paragraph("There is nothing to discuss before the first claim.")]);
        Add(Ruling.Holds, n => $"Shown, within the scope given with each: {n}.");
        Add(Ruling.Contradicted, n => $"The data speak against {n}. None of them may be written as it stands.");
        Add(Ruling.NotShownYet, n => $"Not decided by these data: {n}. This is no judgement on whether they are true.");
        if (Gaps(claims) is { Rows.Count: > 0 } gaps)
            content.Add(numbering.Table(gaps));
        if (Settling(claims) is { Rows.Count: > 0 } settling)
            content.Add(numbering.Table(settling));
        string[] caveats = [.. Caveats(all, claims)];
        if (caveats.Length > 0)
            content.AddRange([Prose.Heading("Caveats"), Prose.List(caveats)]);
        return new("discussion", "What is shown and what is not", content);

        void Add(Ruling ruling, Func<string, string> say)
        {
            if (all.Where(v => v.Ruling == ruling).ToArray() is { Length: > 0 } some)
                content.Add(Prose.Paragraph(say(claims.Named(some))));
        }
    }

    private static Table Gaps(ClaimList claims)
        => new(
            "gaps",
            "Gaps that claims share, and what would close each",
            [new Column("gap", "Not shown") { NamesRows = true }, new Column("claims", "Claims that stand on it"), new Column("next", "What would close it")],
            [.. claims.Gaps.SelectMany(same => same.Select((g, i) => Row.Of(
                g.Sentence, i == 0 ? claims.Numbers(g.Claims) : "the same", g.Grounds.Select(v => v.Next?.Sentence).OfType<string>().FirstOrDefault() ?? "see the record")))]);

    private static Table Settling(ClaimList claims)
        => new(
            "settling",
            "Experiments that would settle single claims",
            [new Column("claim", "Claim") { NamesRows = true }, new Column("experiment", "Experiment"), new Column("vessels", "Vessels")],
            [.. claims.All.Where(c => c.Ruling == Ruling.NotShownYet && c.Verdicts[0].Claim.Stated && c.Verdicts[0].Next is not null).GroupBy(c => c.Verdicts[0].Next!.Sentence, StringComparer.Ordinal)
                .Select(g => Row.Of(
                    InWords.Listed(g.Select(c => c.Number.ToString(CultureInfo.InvariantCulture))), g.Key,
                    g.First().Verdicts[0].Next!.Vessels is { } vessels ? new NumberCell(vessels) { Decimals = 0 } : "none"))]);

    // Each said once, with all claims it concerns; what gaps say already is not said again, and what is contradicted needs no caveat.
    private static IEnumerable<string> Caveats(Verdict[] all, ClaimList claims)
    {
        var caveats = all.Where(v => v.Claim.Stated && v.Ruling != Ruling.Contradicted)
            .SelectMany(v => v.Warnings.Where(w => !w.StartsWith(Defence.StandsOn, StringComparison.Ordinal)).Select(w => (Verdict: v, Warning: w)))
            .GroupBy(p => p.Warning, StringComparer.Ordinal).OrderByDescending(g => g.Count()).ToArray();
        bool IsMargin(string warning) => warning.EndsWith(MarginKind.LeftToDefault, StringComparison.Ordinal);
        string[] margins = [.. caveats.Where(g => IsMargin(g.Key)).Select(g => $"{g.Key[..^MarginKind.LeftToDefault.Length].TrimEnd().Replace("The ", "the ", StringComparison.Ordinal)} for {claims.Named(g.Select(p => p.Verdict))}")];
        return margins.Take(1).Select(_ => $"Margins left at their defaults, since nobody fixed them before the data were seen: {string.Join("; ", margins)}.")
            .Concat(caveats.Where(g => !IsMargin(g.Key)).Select(g => $"{g.Key} ({claims.Named(g.Select(p => p.Verdict))})"));
    }
}
