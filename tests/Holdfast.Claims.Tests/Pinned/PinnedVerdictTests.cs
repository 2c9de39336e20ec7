using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Claims.Tests.Claims;
using Holdfast.Verdicts;

namespace Holdfast.Claims.Tests.Pinned;

/// <summary>
/// What the program says today of whole studies, word for word and number for number, so that no change of a limit, a comparison or a sign goes unseen. That it is
/// right is the business of the other tests; here a difference is either meant, and its author writes the file anew (HOLDFAST_PIN=1) and explains it, or it is a fault.
/// </summary>
public sealed class PinnedVerdictTests
{
    private static readonly ImmutableSortedDictionary<string, Func<IEnumerable<string>>> Pinned = new Dictionary<string, Func<IEnumerable<string>>>
    {
        ["demo"] = () => Said(DemoStudy.Dossier),
        ["strong"] = () => Said(StrongStudy.Dossier),
        ["strong-reuse"] = () => Said(StrongReuseStudy.Dossier),
        ["samples"] = () => RuleSamples.All.SelectMany(s => Said(s.Rule, s.Decision.Gated, s.Decision.Reason, s.Decision.Numbers, s.Decision.Gates, s.Decision.Warnings, s.Decision.Questions, s.Decision.Next)),
        // How each rule rules on simulated studies whose truth is known, on both sides of its margin: the first few of those that docs/verdicts.md counts.
        ["drawn"] = () => NumberConditions.All().Select(c => Counted(c, 12)),
        ["simulated"] = () => StudyConditions.All().Select(c => Counted(c, 1)),
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static TheoryData<string> Names => [.. Pinned.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Said_OfTheStudy_IsWhatWasSaidBefore(string name) => PinnedFile.Compare(name, Pinned[name]());

    private static IEnumerable<string> Said(Dossier dossier)
        => dossier.Verdicts.SelectMany(v => Said(v.Claim.Id, v.Ruling, v.Reason, v.Numbers, v.Gates, v.Warnings, v.Questions, v.Next).Append("  scope " + v.Scope));

    private static IEnumerable<string> Said(
        string id, Ruling ruling, string reason, ImmutableArray<Deciding> numbers, ImmutableArray<Gate> gates, ImmutableArray<string> warnings, ImmutableArray<Question> questions, NextExperiment? next)
    {
        yield return $"{id}: {ruling}. {reason}";
        foreach (var n in numbers)
            yield return $"  {n.Name} {Digits(n.Value)} [{Digits(n.Low)}, {Digits(n.High)}] {n.Unit} u {Digits(n.U)} {n.Note}";
        foreach (var gate in gates)
            yield return $"  {(gate.Passed ? "met" : "failed")}: {gate.Name}. {gate.Sentence}";
        foreach (var warning in warnings)
            yield return "  caveat " + warning;
        if (!questions.IsEmpty)
            yield return "  asked " + string.Join(", ", questions.Select(q => q.Code));
        if (next is not null)
            yield return $"  next {next.Sentence} ({next.Basis}: {string.Join(", ", next.Settings)})";
    }

    private static string Counted(Condition condition, int seeds)
    {
        var count = Enumerable.Range(1, seeds).Aggregate(default(Count), (c, seed) => c.With(condition.Judge((ulong)seed)));
        return new StringBuilder().Append(CultureInfo.InvariantCulture, $"{condition.Rule}, {condition.Name}: holds {count.Holds}, not shown yet {count.Open}, contradicted {count.Contradicted}").ToString();
    }

    // Six digits: enough to see a change of a formula, few enough not to see the order of a sum.
    private static string Digits(double? value) => value?.ToString("G6", CultureInfo.InvariantCulture) ?? "none";
}
