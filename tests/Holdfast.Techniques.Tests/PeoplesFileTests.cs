using Holdfast.Studies.Import;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests;

/// <summary>
/// Invented files as people have them, each with what a careful reader does and the true quantities: characterisation/files of HOLDFAST_REFERENCE, and the
/// sets of reference/characterisation/cases, which were written by somebody who had not seen the reader. Made with fixed seeds from stated truths.
/// </summary>
public class PeoplesFileTests
{
    /// <summary>The sets of the project, then the shared one, each with the cases that are not read yet.</summary>
    public static TheoryData<string, string[]> Sets => new()
    {
        { "first", [] },
        { "second", [] },
        { "third", [] },
        { "fourth", [] },
        // c19: waters of a formula that nobody states, which is not offered.
        { "fifth", ["c19"] },
        { "sixth", [] },
        { "seventh", [] },
        { "eighth", [] },
        { "shared", [] },
    };

    [Theory, MemberData(nameof(Sets))]
    public void Set_IsReadAsACarefulReaderWould(string set, string[] notYet)
    {
        var cases = PowderFileCase.In(set == "shared" ? Repository.Verbatim("characterisation", "files") : Repository.Path("reference", "characterisation", "cases", set)).Select(c => c.Run()).ToList();
        Assert.NotEmpty(cases);
        Assert.Equal(notYet, cases.Where(c => !c.Meets).Select(c => c.Name));
        Assert.DoesNotContain(cases, c => c.Class.StartsWith("WRONG", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("s10-percent-under-absorbance", "BT-2.csv", "Absorbance", "transmittance")]
    [InlineData("s12-columns-swapped", "CZ-10.csv", "Weight %", "swapped")]
    [InlineData("s14-one-length-tenfold", "grains.csv", "57", "318.0")]
    public void File_ThatMayBeWrong_IsAskedAbout(string folder, string file, string where, string what)
    {
        var understood = Of(folder, file);
        Assert.True(understood.NeedsDecision);
        Assert.Empty(understood.Measurements());
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Contains(where, question.Text, StringComparison.Ordinal);
        Assert.Contains(what, question.Text, StringComparison.Ordinal);
        Assert.Equal(question.Choices.Length, question.Consequences.Length);
        var answered = Of(folder, file, Answers.None.With(question.Id, question.Choices[0]));
        Assert.False(answered.NeedsDecision, answered.Said());
        Assert.NotEmpty(answered.Measurements());
    }

    private static Understanding Of(string folder, string file, Answers? answers = null)
        => Reading.Of(file, File.ReadAllBytes(Repository.Verbatim("characterisation", "files", folder, "files", file)), answers);
}
