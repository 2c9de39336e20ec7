using Holdfast.Studies.Import;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests;

/// <summary>
/// Invented files as people have them, with what a careful reader does with each (characterisation/files of HOLDFAST_REFERENCE: cases s09 to s14, made with
/// fixed seeds from a stated truth).
/// </summary>
public class PeoplesFileTests
{
    [Theory]
    [InlineData("s09-transmittance-falling", "HAp-KBr.csv", "infrared", 1)]
    [InlineData("s11-edx-fields", "ZC_edx.xlsx", "elements", 1)]
    [InlineData("s13-two-groups-one-column", "lengths.tsv", "particles", 2)]
    public void File_ThatNeedsNoQuestion_IsUnderstood(string folder, string file, string technique, int measurements)
    {
        var understood = Of(folder, file);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(measurements, understood.Measurements().Length);
        Assert.All(understood.Measurements(), m => Assert.Equal(technique, m.Technique));
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
