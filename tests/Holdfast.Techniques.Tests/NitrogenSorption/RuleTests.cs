using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Statistics;
using Holdfast.Studies.History;
using Holdfast.Techniques.NitrogenSorption;
using static Holdfast.Techniques.Tests.NitrogenSorption.InventedIsotherm;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

public class RuleTests
{
    private static readonly PoreEvidence Sound = new(10, 9.4, 10.6, 8, "IV(a)", "H1", true, 20, 0.98, true);

    private static Estimate Of(double area, double u, int n = 2, double dof = double.PositiveInfinity) => new("", area, u, dof, n);

    // handbook characterisation 1.8 and reference/characterisation/sorption: 520 ± 11 against 455 ± 12 differ (z −3.99), against 501 ± 12 they do not (z −1.17).
    [Theory, InlineData(455, Ruling.Holds), InlineData(501, Ruling.NotShownYet), InlineData(560, Ruling.Contradicted)]
    public void Area_OfWorkedExamples_IsRuledAsTheirDifferenceSays(double doped, Ruling ruling)
        => Assert.Equal(ruling, AreaDecreased.Decide(Of(doped, 12), Of(520, 11), true, true, null, 0).Gated);

    // Both sides of "the interval leaves out 0": 1.96 standard uncertainties.
    [Theory, InlineData(97.228, Ruling.Holds), InlineData(97.2283, Ruling.NotShownYet)]
    public void Area_AtTheEdgeOfItsInterval_Turns(double doped, Ruling ruling)
        => Assert.Equal(ruling, AreaDecreased.Decide(Of(doped, 1), Of(100, 1), true, true, null, 0).Gated);

    [Theory, InlineData(AreaDecreased.Limits.Portions, Ruling.Holds), InlineData(AreaDecreased.Limits.Portions - 1, Ruling.NotShownYet)]
    public void Area_WithFewerPortions_IsNotShown(int portions, Ruling ruling)
        => Assert.Equal(ruling, AreaDecreased.Decide(Of(90, 1, portions), Of(100, 1, 5), true, true, null, 0).Gated);

    [Theory, InlineData(true, true, Ruling.Holds), InlineData(false, true, Ruling.NotShownYet), InlineData(null, true, Ruling.NotShownYet), InlineData(true, false, Ruling.NotShownYet)]
    public void Area_WithAnotherOutgassingOrNoMass_IsNotShown(bool? same, bool masses, Ruling ruling)
        => Assert.Equal(ruling, AreaDecreased.Decide(Of(90, 1), Of(100, 1), same, masses, null, 0).Gated);

    // A difference that was said beforehand not to matter: wholly inside it is no decrease.
    [Theory, InlineData(3, Ruling.Holds), InlineData(10, Ruling.Contradicted)]
    public void Area_InsideWhatDoesNotMatter_IsContradicted(double noMatter, Ruling ruling)
        => Assert.Equal(ruling, AreaDecreased.Decide(Of(96, 1), Of(100, 1), true, true, noMatter, 0).Gated);

    [Fact]
    public void Area_OfOneRun_CountsThreePerCentAtLeast()
    {
        var verdict = Judge(Study(("A parent", 1.0), ("A doped", 0.93)), "area-decreased", ("powder", "A doped"), ("parent", "A parent"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.All(verdict.Numbers.Take(2), n => Assert.InRange(n.U!.Value / n.Value, AreaDecreased.Limits.OfOne - 1e-9, AreaDecreased.Limits.OfOne * 1.2));
        Assert.Contains(verdict.Questions, q => q.Code == "Q07");
    }

    // Four portions of each, 15 % apart, degassed alike: it holds; what was added weighs with it; a strike that decides is told.
    [Fact]
    public void Area_OfFourPortionsEach_HoldsAndCountsWhatWasAdded()
    {
        (string, double)[] portions = [.. new[] { 0.995, 1.004, 1.01, 0.99 }.SelectMany(f => new[] { ("A parent", f), ("A doped", 0.85 * f) })];
        var study = Study(portions);
        var verdict = Judge(study, "area-decreased", ("powder", "A doped"), ("parent", "A parent"));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Assert.Equal(0.85 * Area, verdict.Numbers[0].Value, 0.01 * Area);
        Assert.Equal(8, verdict.Data.Length);
        Assert.NotEqual(Ruling.Holds, Judge(study, "area-decreased", ("powder", "A doped"), ("parent", "A parent"), ("added", "15 %")).Ruling);
        var figure = Reports.StudyFigures.ClaimFigure.Of(verdict, study, Reports.StudyFigures.StudyFigure.All(Dossier.Of(study)));
        Assert.StartsWith("nitrogen-isotherm", figure?.Id, StringComparison.Ordinal);
    }

    [Fact]
    public void Area_OfAPowderNobodyMeasured_IsMissing()
        => Assert.Contains("There is no isotherm of B", Judge(Study(("A parent", 1)), "area-decreased", ("powder", "B"), ("parent", "A parent")).Reason, StringComparison.Ordinal);

    [Fact]
    public void Claims_OfAParentAndItsDopedPowder_AreInvited()
    {
        var evidence = Claims.Analyses.Evidence.Of(Study(("A parent", 1), ("A doped", 0.9), ("Z", 1)));
        Assert.Equal(["area-decreased-a-parent-a-doped"], new AreaDecreased().Invited(evidence).Select(c => c.Id));
        Assert.Contains(new PoreSize().Invited(evidence), c => c.Words("powder") == "A parent");
    }

    [Fact]
    public void Pores_AtThePeakOfASoundIsotherm_Hold() => Assert.Equal(Ruling.Holds, PoreSize.Decide(10, Sound).Gated);

    // Both sides: 10 % of the peak, outside its step.
    [Theory, InlineData(10.99, Ruling.Holds), InlineData(11.01, Ruling.NotShownYet)]
    public void Pores_AsFarFromThePeak_Turn(double size, Ruling ruling) => Assert.Equal(ruling, PoreSize.Decide(size, Sound).Gated);

    [Theory, InlineData(PoreSize.Limits.SmallestMesopore - 0.01, Ruling.Contradicted), InlineData(PoreSize.Limits.SmallestMesopore, Ruling.NotShownYet)]
    public void Pores_BelowTheSmallestMesopore_AreContradicted(double size, Ruling ruling) => Assert.Equal(ruling, PoreSize.Decide(size, Sound).Gated);

    // A peak at 3.4 to 4.0 nm on desorption alone is the closing of the loop.
    [Theory, InlineData(3.39, Ruling.NotShownYet), InlineData(3.4, Ruling.Contradicted), InlineData(4.0, Ruling.Contradicted), InlineData(4.01, Ruling.NotShownYet)]
    public void Pores_OfTheClosingLoop_AreContradicted(double peak, Ruling ruling) => Assert.Equal(ruling, PoreSize.Decide(peak, Sound with { Desorption = peak }).Gated);

    [Theory, InlineData(PoreSize.Limits.PointsInLoop, 0.95, Ruling.Holds), InlineData(PoreSize.Limits.PointsInLoop - 1, 0.95, Ruling.NotShownYet), InlineData(PoreSize.Limits.PointsInLoop, 0.949, Ruling.NotShownYet)]
    public void Pores_WithTooFewPointsOrTooLowATop_AreNotShown(int points, double top, Ruling ruling) => Assert.Equal(ruling, PoreSize.Decide(10, Sound with { Points = points, Top = top }).Gated);

    [Theory, InlineData(5, "H1", Ruling.Holds), InlineData(4.99, "H1", Ruling.NotShownYet), InlineData(8, null, Ruling.NotShownYet), InlineData(9.2, null, Ruling.Holds)]
    public void Pores_WhoseBranchesDiffer_NeedALoopThatExplainsIt(double desorption, string? loop, Ruling ruling) => Assert.Equal(ruling, PoreSize.Decide(10, Sound with { Desorption = desorption, Loop = loop }).Gated);

    [Fact]
    public void Pores_OfAnotherType_OrWithAreasApart_AreNotShown()
    {
        Assert.Equal(Ruling.NotShownYet, PoreSize.Decide(10, Sound with { IsMesoporous = false, Type = "II" }).Gated);
        Assert.Equal(Ruling.NotShownYet, PoreSize.Decide(10, Sound with { AreasAgree = false }).Gated);
        Assert.Equal(Ruling.NotShownYet, PoreSize.Decide(10, Sound with { Desorption = null }).Gated);
    }

    [Fact]
    public void Pores_ByDesorptionAlone_AreMissing() => Assert.Contains("Only the desorption branch", PoreSize.Decide(4, Sound with { Adsorption = null, Desorption = 3.8 }).Reason, StringComparison.Ordinal);

    // A struck isotherm feeds nothing.
    [Fact]
    public void Strike_OfAMeasurement_TakesItOutOfThePowder()
    {
        var study = Study(("A", 1), ("A", 0.5));
        Assert.Equal(0.75 * Area, SorptionStudy.Of(Claims.Analyses.Evidence.Of(study)).Powders[0].Area!.Value.Value, 0.01 * Area);
        study = Fold.After(study, new Struck("M-0002", "leak"), study.Version + 1, DateTimeOffset.UnixEpoch, "Ada");
        Assert.Equal(Area, SorptionStudy.Of(Claims.Analyses.Evidence.Of(study)).Powders[0].Area!.Value.Value, 0.01 * Area);
    }

    internal static Studies.Study Study(params (string Powder, double Scale)[] portions)
        => portions.Select((p, i) => (p.Powder, p.Scale, i)).Aggregate(new Studies.Study { Title = "invented", Analyte = "Ni", Invented = true }, (study, p) =>
        {
            var taken = Taken.Text($"{p.i}.csv", $"Sample,{p.Powder}\nMass,0.1 g\nDegassing,120 °C 6 h\nGas,N2\np/p0,n (mmol/g)\n" + Lines(Stacked, nScale: p.Scale));
            var one = Assert.Single(taken.Study.Measurements) with { Id = FormattableString.Invariant($"M-{p.i + 1:0000}") };
            return Fold.After(study, new TakenIn { Measurements = [one] }, study.Version + 1, DateTimeOffset.UnixEpoch, "Ada") with { Version = study.Version + 1 };
        });

    private static Verdict Judge(Studies.Study study, string rule, params (string Name, string Words)[] parameters)
        => Defence.RuleNamed(rule)!.Judge(new Claim("it", rule, parameters.ToImmutableSortedDictionary(p => p.Name, p => p.Words, StringComparer.Ordinal), null, Stated: true), Claims.Analyses.Evidence.Of(study));
}
