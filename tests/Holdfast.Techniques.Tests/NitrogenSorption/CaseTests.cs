using System.Text.Json;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

/// <summary>Files as people bring them, with true quantities: the folder "characterisation" of HOLDFAST_REFERENCE, whose README says how each was made. Invented.</summary>
public class CaseTests
{
    // The trap: a plausible reading is wrong, so nothing is worked out before it is answered.
    [Fact]
    public void Case_VolumeOfTheSample_IsAskedAndThenRight()
    {
        var folder = Repository.Verbatim("characterisation", "files", "s05-volume-of-the-sample");
        var files = Directory.GetFiles(Path.Combine(folder, "files"));
        var asked = Taken.Paths(files);
        var question = Assert.Single(asked.Open);
        Assert.Contains("per gram", question.Text, StringComparison.Ordinal);
        Assert.Empty(asked.Study.Measurements);
        var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json"))).RootElement.GetProperty("truth").GetProperty("after_the_answer");
        Agree.Relative(0.01, truth.GetProperty("bet_area").GetDouble(), SorptionStudy.Of(Taken.Paths(files, ("amount", "whole-sample")).Evidence).Isotherms[0].Area!.Value.Value);
    }

    // s02: the first point lies at p/p0 1.013; it is dropped with a word.
    [Fact]
    public void Case_WithAStrayPoint_DropsItWithAWord()
    {
        var taken = Taken.Paths(Directory.EnumerateFiles(Path.Combine(Repository.Verbatim("characterisation", "files", "s02-four-columns-comma"), "files")));
        Assert.Contains(SorptionStudy.Of(taken.Evidence).Isotherms[0].Findings, f => f.Sentence == "1 point is left out: p/p0 is not between 0 and 1.");
    }

    // Eight measured isotherms as AIF, the amounts in four units, one of them a bare "cc".
    [Theory, InlineData("isotherm-a"), InlineData("isotherm-c"), InlineData("isotherm-d"), InlineData("isotherm-e"), InlineData("isotherm-g"), InlineData("isotherm-h"), InlineData("dut-67"), InlineData("dut-75")]
    public void Aif_OfAMeasuredIsotherm_GivesTheAreaOfAnotherProgram(string name)
    {
        var taken = Taken.Paths([Repository.Verbatim("characterisation", "sorption", "isotherms", name + ".aif")]);
        Assert.Empty(taken.Open);
        var one = Assert.Single(SorptionStudy.Of(taken.Evidence).Isotherms);
        var known = JsonDocument.Parse(File.ReadAllText(Repository.Verbatim("characterisation", "sorption", "isotherms-expected.json"))).RootElement.GetProperty(name).GetProperty("bet").GetProperty("min_points_5");
        if (known.TryGetProperty("chosen", out var chosen))
            Agree.Relative(1e-4, chosen.GetProperty("area_m2_per_g").GetDouble(), one.Bet!.Chosen!.Area);
        else
            Assert.Null(one.Area);
    }
}
