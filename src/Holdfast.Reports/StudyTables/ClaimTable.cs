using Holdfast.Claims;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Claims with their verdicts, deciding numbers and the experiment that would settle them.</summary>
public static class ClaimTable
{
    /// <summary>One row a verdict.</summary>
    /// <param name="verdicts">Judged claims.</param>
    public static Table Of(IReadOnlyList<Verdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        return new Table(
            "claims",
            "Claims, judged against the data",
            [
                new Column("claim", "Claim") { NamesRows = true },
                new Column("verdict", "Verdict"),
                new Column("reason", "Why"),
                new Column("numbers", "Deciding numbers"),
                new Column("scope", "Scope"),
                new Column("next", "What would settle it"),
                new Column("id", "Address"),
            ],
            [.. verdicts.Select(v => Row.Of(
                v.Sentence, InWords.Of(v.Ruling), v.Reason, string.Join("; ", v.Numbers.Select(InWords.Of)), v.Scope ?? "", v.Next?.Sentence ?? "", v.Claim.Id))]);
    }
}
