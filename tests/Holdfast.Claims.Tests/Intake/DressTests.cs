using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Intake;

/// <summary>What a sheet means does not hang on its separator, its decimal mark, its encoding, on titles and empty columns, or on how units are written.</summary>
public class DressTests
{
    /// <summary>Names of the appearances.</summary>
    public static TheoryData<string> Names => [.. Dress.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Case_InAnotherDress_IsUnderstoodAlike(string name)
    {
        // Plain words and units: what a careful reader understands without a question.
        string[] sets = ["first", "second", "fifth"];
        var cases = sets.SelectMany(s => IntakeCase.In(Repository.Path("reference", "intake-cases", s)))
            .Where(c => c.Human == "understands" && c.Files.All(f => !f.EndsWith(".xlsx", StringComparison.Ordinal))).ToList();
        Assert.True(cases.Count > 15);
        var outcomes = cases.Select(c => c.Run(dress: Dress.All[name])).ToList();
        Assert.DoesNotContain(outcomes, o => o.Wrong.Length > 0);
        var lost = outcomes.Where(o => !o.Meets).Select(o => o.ToString()).ToList();
        Assert.True(lost.Count == 0, string.Join('\n', lost));
    }
}
