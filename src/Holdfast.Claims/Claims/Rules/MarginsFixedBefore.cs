using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>"The margins were fixed before the data": each margin that a planned claim is judged by was fixed by an entry older than the first file. One chosen afterwards can be chosen to please.</summary>
/// <remarks>Asked of studies with a designed plan; elsewhere each verdict that used a margin says when it was fixed (<see cref="FixedMargin"/>).</remarks>
public sealed class MarginsFixedBefore : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "margins-fixed-before";

    /// <inheritdoc/>
    public string Wording => "The margins of the planned claims were fixed before the data.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return CarriedOut.Of(evidence).Series.IsEmpty || Names(evidence).Length == 0 ? [] : [Claim.Raised(Id)];
    }

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var names = Names(evidence);
        var study = evidence.Study;
        var decision = names.Length == 0
            ? Decision.Missing("No designed plan names a claim with a margin.")
            : Decide([.. names.Select(n => (n, study.Margins.FirstOrDefault(m => m.Name == n)?.Entry ?? 0))], study.Originals.IsEmpty ? null : study.Originals.Min(o => o.Entry), study.PlanFrozen?.Entry);
        return decision.On(claim, Phrase.Sentence(claim, Wording), $"margins {Phrase.Listed(names)}", CarriedOut.Of(evidence).Series.SelectMany(s => s.Counted).Select(v => v.Planned.Code));
    }

    /// <summary>Judges when margins were fixed.</summary>
    /// <param name="margins">Name of each, and the number of the entry that fixed it as it now stands; 0 for one that nobody fixed.</param>
    /// <param name="firstData">Number of the entry that took the first file in, or null.</param>
    /// <param name="frozen">Number of the entry that froze the plan, or null.</param>
    public static Decision Decide(IReadOnlyList<(string Name, long Entry)> margins, long? firstData, long? frozen)
    {
        ArgumentNullException.ThrowIfNull(margins);
        if (margins.Count == 0)
            return Decision.Missing("No claim of the plan has a margin.");
        string[] late = [.. margins.Where(m => m.Entry > firstData).Select(m => m.Name)];
        string[] nobody = [.. margins.Where(m => m.Entry == 0).Select(m => m.Name)];
        var ruling = late.Length > 0 ? Ruling.Contradicted : nobody.Length > 0 || firstData is null ? Ruling.NotShownYet : Ruling.Holds;
        var data = firstData is { } f ? $"the first file came with entry {Phrase.Number(f)}" : "no file was taken in yet";
        return new Decision(
            ruling,
            late.Length > 0 ? $"The margin{(late.Length > 1 ? "s" : "")} {Phrase.Listed(late)} stand{(late.Length > 1 ? "" : "s")} as fixed by a later entry: {data}."
                : nobody.Length > 0 ? $"Nobody fixed {Phrase.Listed(nobody)}: the default is used; {data}."
                : $"{Phrase.Listed(margins.Select(m => $"{m.Name} by entry {Phrase.Number(m.Entry)}"))} {(margins.Count > 1 ? "were" : "was")} fixed first; {data}.",
            "numbers of the entries that fixed each margin and took the first file in")
        {
            Numbers = [.. margins.Select(m => Deciding.Plain($"entry that fixed {m.Name}", m.Entry)), .. firstData is { } first ? [Deciding.Plain("entry of the first file", first)] : Array.Empty<Deciding>()],
            Warnings = frozen is null ? ["The plan was never frozen, so nothing but the order of entries speaks for it."] : frozen > firstData ? ["The plan was frozen after the first file had come."] : [],
            Next = new("Judge the claim once more on data that come after the margin: repeat the vessels that decide it.", null, [.. late.Concat(nobody)], "a margin counts for data that come after it"),
        };
    }

    private static string[] Names(Evidence evidence)
        => [.. evidence.Study.Designs.SelectMany(d => d.Questions).Select(q => q.Margin).OfType<string>().Distinct(StringComparer.Ordinal)];
}
