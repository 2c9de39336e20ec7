using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Claims.Plans;
using Holdfast.Claims.Tests.Plans;
using Holdfast.Studies;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Pinned;

/// <summary>
/// A net against regression and nothing else: every number of whole studies and of small damaged ones, as a checksum of nine digits each. What is right stands in the other tests; here a difference is
/// either meant, and its author writes the file anew (HOLDFAST_PIN=1) and says why, or it is a fault.
/// </summary>
/// <param name="study">Name of the study; each is a class of its own, so that it can be asked alone.</param>
public abstract partial class PinnedNumberTests(string study)
{
    [Fact]
    public void Numbers_OfTheStudy_AreWhatTheyWere() => PinnedFile.Compare("numbers-" + study, study switch
    {
        "plans" => Plans(),
        "claims" => Claims(StrongStudy.Dossier).Concat(Claims(StrongReuseStudy.Dossier)),
        "strong" => EveryNumber.Summed(EveryNumber.Of(StrongStudy.Build()), 3),
        "strong-reuse" => EveryNumber.Summed(EveryNumber.Of(StrongReuseStudy.Build()), 3),
        _ => Odd(OddStudies.Whole[study]()),
    });

    // Every claim with each of its parameters missing, zero, doubled, halved and no number at all.
    private static IEnumerable<string> Claims(Dossier dossier)
    {
        foreach (var claim in dossier.Verdicts.Select(v => v.Claim))
        {
            foreach (var (name, words) in claim.Parameters)
            {
                string Times(double factor) => Number().Replace(words, m => Invariant($"{factor * double.Parse(m.Value, CultureInfo.InvariantCulture)}"));
                foreach (var other in new[] { null, Times(0), Times(2), Times(0.5), Times(-1), "elsewhere" })
                {
                    var changed = claim with { Parameters = other is null ? claim.Parameters.Remove(name) : claim.Parameters.SetItem(name, other) };
                    yield return $"{claim.Id}, {name} {other ?? "missing"}: {EveryNumber.Checksum(EveryNumber.Of(Defence.RuleNamed(claim.Rule)!.Judge(changed, dossier.Evidence), "verdict"))}";
                }
            }
        }
    }

    [GeneratedRegex(@"\d+(\.\d+)?", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Number();

    // Every claim alone as usual and all together; then each setting at twice its usual answer.
    private static IEnumerable<string> Plans()
    {
        string[] all = [.. PlanQuestion.All.Select(q => q.Rule)];
        string[] few = ["best-isotherm", "best-kinetic-model", "smallest-sufficient-dose", "not-precipitation", "spontaneous-and-endothermic", "reproducible"];
        var plans = all.Select(r => (Name: r, Plan: PlanWarningsTests.Plan([r])))
            .Append(("all", PlanWarningsTests.Plan(all)))
            .Append(("prices", PlanWarningsTests.Plan(few, [.. PlanSetting.All.Where(s => s.Name.StartsWith("price", StringComparison.Ordinal)).Select((s, i) => (s.Name, Invariant($"{i + 2}")))])))
            .Append(("no metal", PlanWarningsTests.Plan(null, few)))
            .Concat(PlanSetting.All.Where(s => s.Usual > 1).Select(s => (Invariant($"{s.Name} doubled"), PlanWarningsTests.Plan(few, (s.Name, Invariant($"{Math.Min(2 * s.Usual, s.Most)}"))))))
            .Concat(new[] { ("within-factor", "3"), ("pilot", "2"), ("pilot", "6"), ("vessels", "100"), ("sorbent", "3"), ("affinity", "3") }.Select(s => (Invariant($"{s}"), PlanWarningsTests.Plan(few, s))));
        foreach (var (name, plan) in plans)
            yield return $"{name}: {EveryNumber.Checksum(EveryNumber.Of(plan, "plan"))}";
    }

    private static IEnumerable<string> Odd(Study study)
        => EveryNumber.Summed(EveryNumber.Of(study), 3)
            .Concat(OddStudies.Damaged(study).Select(d => $"{d.Name}: {EveryNumber.Checksum(EveryNumber.Of(d.Study))}"));
}

public sealed class BedsNumberTests() : PinnedNumberTests("beds");

public sealed class CyclesNumberTests() : PinnedNumberTests("cycles");

public sealed class DosesNumberTests() : PinnedNumberTests("doses");

public sealed class ExchangeNumberTests() : PinnedNumberTests("exchange");

public sealed class MixturesNumberTests() : PinnedNumberTests("mixtures");

public sealed class PhNumberTests() : PinnedNumberTests("ph");

public sealed class RunNumberTests() : PinnedNumberTests("run");

public sealed class SensorNumberTests() : PinnedNumberTests("sensor");

public sealed class SpectraNumberTests() : PinnedNumberTests("spectra");

public sealed class WaterNumberTests() : PinnedNumberTests("water");

public sealed class ZeroChargeNumberTests() : PinnedNumberTests("zero-charge");

public sealed class StrongNumberTests() : PinnedNumberTests("strong");

public sealed class StrongReuseNumberTests() : PinnedNumberTests("strong-reuse");

public sealed class PlansNumberTests() : PinnedNumberTests("plans");

public sealed class ClaimsNumberTests() : PinnedNumberTests("claims");
