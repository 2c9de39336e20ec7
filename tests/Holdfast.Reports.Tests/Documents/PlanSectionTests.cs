using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Reports.Documents;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>The section on plan and deviations, in the record and in the chapter: planned against done, amendments with reasons, accepted warnings.</summary>
public class PlanSectionTests
{
    private static readonly DateTimeOffset Day = new(2026, 5, 12, 9, 30, 0, TimeSpan.Zero);

    [Fact]
    public void Html_OfAFrozenPlan_NamesWhatWasPlannedDoneAndChanged()
    {
        var dossier = Dossier.Of(Study());
        var record = ReportPage.Read(StudyReport.Html(dossier)).Words();
        Assert.Contains("Plan and margins were frozen on 12 May 2026 by Ada, fingerprint " + dossier.Evidence.Study.PlanFrozen!.Sha256, record, StringComparison.Ordinal);
        Assert.Contains("70.0 mg weighed for 50.0 mg", record.Replace("70 mg", "70.0 mg", StringComparison.Ordinal).Replace("50 mg", "50.0 mg", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Reason: the balance drifts.", record, StringComparison.Ordinal);
        Assert.Contains("Accepted: no other day is free.", record, StringComparison.Ordinal);

        var chapter = ReportPage.Read(StudyChapter.Of(dossier).Html()).Words();
        Assert.Contains("Plan and deviations", chapter, StringComparison.Ordinal);
        Assert.Contains("1 vessel deviated from the plan", chapter, StringComparison.Ordinal);
        Assert.Contains("the balance drifts", chapter, StringComparison.Ordinal);
        Assert.DoesNotContain("weighed for", chapter, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_WithoutAPlan_HasNoSuchSection()
        => Assert.DoesNotContain("Plan and deviations", ReportPage.Read(StudyReport.Html(Dossier.Of(SmallStudy.Of(5)))).Words(), StringComparison.Ordinal);

    private static Study Study()
    {
        var begun = new Daybook([]).With(Day, "Ada", new StudyBegun("invented", "Ni", true));
        var basis = PlanBasis.Of(Evidence.Of(begun.Study), new Dictionary<string, string> { ["begin"] = "18" }).Basis!;
        var plan = PlanDesign.Of(begun.Study, PlanQuestion.Read(["equilibrium-reached"]).Questions, basis, 1589, 2026);
        Assert.NotEmpty(plan.Warnings);
        begun = begun.With(Day, "Ada", plan.Entry(plan.Warnings.ToDictionary(w => w.Name, _ => "no other day is free")));
        foreach (var change in PlanFreezing.Of(begun.Study, new Dictionary<string, string>()))
            begun = begun.With(Day, "Ada", change);
        begun = begun.With(Day.AddDays(1), "Ada", new Amended("the balance drifts")).With(Day.AddDays(1), "Ada", new MarginFixed("plateau", -6, 6, "%"));
        var mass = new Fact("mass", 70, null, null, null, "70", new Origin(null, "typed", null, 0, null));
        var vessel = begun.Study.Samples.First(s => s.Role == SampleRole.Vessel);
        var first = vessel with { Facts = vessel.Facts.SetItem("mass", mass) };
        Assert.Equal(50, plan.Vessels.Single(v => v.Code == first.Code).Mass);
        return begun.Study with { Samples = [.. begun.Study.Samples.Select(s => s.Code == first.Code ? first : s)] };
    }
}
