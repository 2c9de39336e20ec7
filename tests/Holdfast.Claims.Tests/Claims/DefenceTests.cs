using System.Collections.Immutable;
using CsCheck;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims;

public sealed class DefenceTests
{
    private static readonly Vessel Clean = Made.Vessel("K-1", "KIN", 20, 19.9, 2, role: SampleRole.Control);

    private static Evidence Kinetics(params Vessel[] controls)
        => Made.Evidence([Made.Series("KIN", BatchProperties.ContactTime, [Level(60, 5.90, 6.02, 5.95), Level(120, 5.92, 6.05, 5.98), Level(240, 6.02, 6.10, 5.95)], controls)]);

    private static (double, Vessel[]) Level(double time, params double[] uptakes)
        => (time, [.. uptakes.Select((q, i) => Made.Vessel(Invariant($"V-{time}-{i}"), "KIN", 20, 20 - 2 * q, 2, time))]);

    private static Evidence With(Evidence evidence, string rule, params (string, string)[] parameters)
        => evidence with
        {
            Study = evidence.Study with
            {
                Claims = [.. evidence.Study.Claims, new StatedClaim($"{rule}-{evidence.Study.Claims.Length}", rule, parameters.ToImmutableSortedDictionary(p => p.Item1, p => p.Item2, StringComparer.Ordinal), null, 1, default)],
            },
        };

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Verdict Equilibrium(Evidence evidence) => Defence.Of(With(evidence, "equilibrium-reached", ("series", "KIN"), ("time", "120 min")))[0];

    [Fact]
    public void Defence_GroundContradicted_CapsAtNotShownYet()
    {
        var clean = Equilibrium(Kinetics(Clean));
        Assert.Equal(Ruling.Holds, clean.Ruling);
        var dirty = Equilibrium(Kinetics(Made.Vessel("K-1", "KIN", 20, 12, 2, role: SampleRole.Control)));
        Assert.Equal(Ruling.NotShownYet, dirty.Ruling);
        Assert.Null(dirty.Scope);
        Assert.Contains("Controls without sorbent", dirty.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Defence_GroundTestedAndNotShownYet_WarnsAndLeavesTheRuling()
    {
        var verdict = Equilibrium(Kinetics(Made.Vessel("K-1", "KIN", 40, 39.9, 2, role: SampleRole.Control)));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Assert.Contains(verdict.Warnings, w => w.Contains("not shown yet", StringComparison.Ordinal));
        // The same grounds as verdicts of their own, for whoever tells them once.
        Assert.NotEmpty(verdict.OpenGrounds);
        Assert.All(verdict.OpenGrounds, g => Assert.NotEqual(Ruling.Holds, g.Ruling));
        Assert.All(verdict.OpenGrounds.Where(g => g.Ruling == Ruling.NotShownYet && !g.IsUntested), g => Assert.Contains(verdict.Warnings, w => w.Contains(g.Sentence.TrimEnd('.'), StringComparison.Ordinal)));
    }

    // No control without sorbent in the whole study: nobody looked for a leak, and one makes right claims look wrong as easily as wrong ones right.
    [Theory]
    [InlineData(120, Ruling.Holds)]
    [InlineData(30, Ruling.Contradicted)]
    public void Defence_GroundThatNothingTested_CapsBothWays(double time, Ruling tested)
    {
        Evidence With30(params Vessel[] controls) => Made.Evidence([Made.Series("KIN", BatchProperties.ContactTime, [Level(30, 3.90, 4.02, 3.95), Level(120, 5.92, 6.05, 5.98), Level(240, 6.02, 6.10, 5.95)], controls)]);
        Verdict At(Evidence evidence) => Defence.Of(With(evidence, "equilibrium-reached", ("series", "KIN"), ("time", Invariant($"{time} min"))), null)[0];
        Assert.Equal(tested, At(With30(Clean)).Ruling);
        var untested = At(With30());
        Assert.Equal(Ruling.NotShownYet, untested.Ruling);
        Assert.Contains("which nothing tested", untested.Reason, StringComparison.Ordinal);
    }

    // A control speaks of every vessel at its start concentration and pH, under whatever name it is filed.
    [Theory]
    [InlineData(20, 6, 12, Ruling.NotShownYet)] // leaks there
    [InlineData(20, 6, 19.9, Ruling.Holds)]
    [InlineData(20.9, 6.2, 12, Ruling.NotShownYet)] // the same setting within what pipettes and electrodes do
    [InlineData(20, 9, 12, Ruling.NotShownYet)] // another pH: nothing was tested at this one
    public void Defence_ControlOfAnotherSeries_ReachesEverySeriesAtItsConcentration(double start, double ph, double left, Ruling expected)
    {
        var own = Kinetics().Series[0];
        var other = Made.Series("OTHER", null, [], Made.Vessel("O-1", "OTHER", start, left * start / 20, 2, role: SampleRole.Control, startPh: ph));
        Assert.Equal(expected, Equilibrium(Made.Evidence([own, other])).Ruling);
    }

    [Fact]
    public void Defence_OneStatedClaim_SilencesItsRuleInItsSeriesOnly()
    {
        var two = Made.Evidence([Kinetics(Clean).Series[0], Made.Series("KIN-2", BatchProperties.ContactTime, [Level(61, 5.90, 6.02), Level(121, 5.92, 6.05), Level(241, 6.02, 6.10)])]);
        var judged = Defence.Of(With(two, "equilibrium-reached", ("series", "KIN"), ("time", "120 min"))).Where(v => v.Claim.Rule == "equilibrium-reached").ToArray();
        Assert.Equal(["KIN", "KIN-2"], judged.Select(v => v.Claim.Words("series")));
        var everywhere = Defence.Of(With(two, "equilibrium-reached", ("time", "120 min"))).Where(v => v.Claim.Rule == "equilibrium-reached");
        Assert.Single(everywhere);
    }

    [Fact]
    public void Defence_MassBalanceContradicted_WarnsOnly()
        => Assert.False(Defence.RuleNamed("mass-balance") is { CapsDependents: true });

    [Fact]
    public void Defence_RulingHangsOnAStrike_IsNotShownYet()
    {
        var struck = Kinetics(Clean);
        var whole = Made.Evidence([Made.Series("KIN", BatchProperties.ContactTime, [Level(60, 5.90, 6.02, 5.95), Level(120, 5.92, 6.05, 5.98), Level(240, 6.02, 6.10, 5.95, 7.9)], Clean)]);
        struck = With(struck with { Study = struck.Study with { Strikes = [new Strike("V-240-3", "looked too high", 7, default, "the author")] } }, "equilibrium-reached", ("series", "KIN"), ("time", "120 min"));
        Assert.Equal(Ruling.Holds, Defence.Of(struck, null)[0].Ruling);
        var verdict = Defence.Of(struck, whole)[0];
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains("looked too high", verdict.Reason, StringComparison.Ordinal);
        Assert.NotNull(verdict.Next);
    }

    [Fact]
    public void Defence_StrikeThatChangesNothing_LeavesTheRuling()
    {
        var evidence = Kinetics(Clean);
        evidence = With(evidence with { Study = evidence.Study with { Strikes = [new Strike("V-9", "spilled", 7, default, "the author")] } }, "equilibrium-reached", ("series", "KIN"), ("time", "120 min"));
        Assert.Equal(Ruling.Holds, Defence.Of(evidence, Kinetics(Clean))[0].Ruling);
    }

    [Theory]
    [InlineData(0, "default")]
    [InlineData(3, "after data had been taken in")]
    public void Margin_NotFixedBeforehand_IsLabelled(long entry, string label)
    {
        var evidence = Kinetics(Clean);
        var study = evidence.Study with
        {
            Originals = [new Original("00", "file.csv", 1, 2, default)],
            Margins = entry == 0 ? [] : [new Margin("plateau", -5, 5, "%", entry)],
        };
        Assert.Contains(Equilibrium(evidence with { Study = study }).Warnings, w => w.Contains(label, StringComparison.Ordinal));
        var beforehand = study with { Margins = [new Margin("plateau", -5, 5, "%", 1)] };
        Assert.DoesNotContain(Equilibrium(evidence with { Study = beforehand }).Warnings, w => w.Contains("margin", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(-0.2, 0.2, "mg/g")] // another kind of unit
    [InlineData(5, -5, "%")] // the wrong way round
    public void Margin_ThatCannotServe_GivesWayToTheDefaultAndSaysSo(double low, double high, string unit)
    {
        var evidence = Kinetics(Clean);
        var verdict = Equilibrium(evidence with { Study = evidence.Study with { Margins = [new Margin("plateau", low, high, unit, 1)] } });
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Assert.Contains(verdict.Warnings, w => w.Contains("cannot serve", StringComparison.Ordinal));
    }

    [Fact]
    public void Margin_Narrower_MakesTheSameDataNotShown()
    {
        var evidence = Kinetics(Clean);
        var narrow = evidence.Study with { Margins = [new Margin("plateau", -1, 1, "%", 1)] };
        Assert.Equal(Ruling.NotShownYet, Equilibrium(evidence with { Study = narrow }).Ruling);
    }

    [Fact]
    public void Defence_UnknownRule_IsNotShownAndNamesTheRules()
    {
        var verdict = Defence.Of(With(Kinetics(Clean), "made-of-gold"))[0];
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains("equilibrium-reached", verdict.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Defence_EmptyStudy_JudgesWhatIsStatedAndInvitesNothing()
    {
        var empty = Made.Evidence([]);
        Assert.Empty(Defence.Of(empty));
        foreach (var rule in Defence.Rules)
            empty = With(empty, rule.Id);
        Assert.All(Defence.Of(empty), v => Assert.Equal(Ruling.NotShownYet, v.Ruling));
    }

    // Every rule answers whatever is missing: random sparse vessels, series without levels, odd parameters.
    [Fact]
    public void Rules_SparseEvidence_AlwaysGiveAVerdict()
    {
        var vessel =
            from start in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.1, 100])
            from share in Gen.OneOf(Gen.Const(0.0), Gen.Const(1.0), Gen.Double[-0.2, 1.2])
            from dose in Gen.Double[0.1, 5]
            from time in Gen.OneOf(Gen.Const(0.0), Gen.Double[1, 2000])
            from control in Gen.Int[0, 4]
            from ph in Gen.OneOf(Gen.Const(-1.0), Gen.Double[2, 10])
            select (start, share, dose, time, control: control == 0, ph);
        Property?[] varied = [null, BatchProperties.ContactTime, BatchProperties.InitialConcentration, BatchProperties.Dose, BatchProperties.StartPh];
        string?[] words = [null, "KIN", "S-0", "120 min", "0.02 mg/L", "-3", "Langmuir", "pseudo-first-order", "many", "20"];
        var parameters = (from name in OneOf("series", "time", "dose", "limit", "model", "rival", "capacity", "to", "run", "against", "c0", "published", "at", "concentration")
                          from word in OneOf(words)
                          select (name, word)).Array[0, 6];
        var standards = (from x in OneOf(0.0, 1.0, 2.0, 4.0) from y in Gen.Double[-0.1, 1] select (x, y)).Array[0, 8];
        (from vessels in vessel.Array[0, 14]
         from kind in OneOf(varied)
         from stated in parameters
         from readings in standards
         from blanks in Gen.Double[-0.01, 0.01].Array[0, 4]
         select (vessels, kind, stated, readings, blanks)).Sample(
            s =>
            {
                var made = s.vessels.Select((v, i) => Made.Vessel(
                    Invariant($"V-{i}"), "S-0", v.start, v.start * (1 - v.share), v.dose, v.time, v.ph < 0 ? null : v.ph, role: v.control ? SampleRole.Control : SampleRole.Vessel)).ToArray();
                var levels = made.Where(v => v.Sample.Role == SampleRole.Vessel)
                    .GroupBy(v => s.kind is { } p ? Math.Round(v.Sample.Number(p) ?? 0) : 0)
                    .Select(g => (g.Key, g.ToArray()));
                var evidence = Made.Evidence(
                    [Made.Series("S-0", s.kind, levels, [.. made.Where(v => v.Sample.Role == SampleRole.Control)])],
                    [Made.Run("S-0", s.readings, s.blanks)]);
                foreach (var rule in Defence.Rules)
                {
                    var claim = Made.Claim(rule.Id, [.. s.stated.DistinctBy(p => p.name)]);
                    var verdict = rule.Judge(claim, evidence);
                    Assert.NotEmpty(verdict.Reason);
                    Assert.NotEmpty(verdict.Sentence);
                    Assert.All(rule.StandsOn(claim, evidence), g => Assert.NotNull(Defence.RuleNamed(g.Rule)));
                }

                _ = Defence.Of(evidence, null);
            },
            iter: 300, seed: "0000Kt1mFKZ3");
    }
}
