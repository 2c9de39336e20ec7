namespace Holdfast.Tests;

/// <summary>Words as a sentence begins with them; symbols keep their letters (common practice).</summary>
public class SentenceCaseTests
{
    [Theory]
    [InlineData("contact time", "Contact time")]
    [InlineData("pH at the start", "pH at the start")]
    [InlineData("dV/dlog d", "dV/dlog d")]
    [InlineData("x axis", "X axis")]
    [InlineData("Uptake", "Uptake")]
    [InlineData("", "")]
    public void Of_Words_BeginsThemAndLeavesSymbols(string words, string expected) => Assert.Equal(expected, SentenceCase.Of(words));
}
