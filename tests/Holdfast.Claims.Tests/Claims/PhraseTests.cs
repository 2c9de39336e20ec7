using Holdfast.Statistics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>How a number is said, letter for letter: what the summary of <see cref="Phrase"/> promises, on both sides of every change of form.</summary>
public sealed class PhraseTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(9.015, "9.015")]
    [InlineData(-0.01, "−0.01")]
    [InlineData(2.1e-7, "2.1 × 10⁻⁷")]
    [InlineData(12.345, "12.35")]
    [InlineData(100, "100")]
    [InlineData(1440, "1440")]
    [InlineData(0.001, "0.001")]
    [InlineData(0.0012346, "0.001235")]
    [InlineData(0.0009994, "9.994 × 10⁻⁴")]
    [InlineData(0.00099999, "0.001")]
    [InlineData(99_990, "99990")]
    [InlineData(99_994, "99994")]
    [InlineData(99_996, "1 × 10⁵")]
    [InlineData(123_456, "1.235 × 10⁵")]
    [InlineData(-6.02e23, "−6.02 × 10²³")]
    [InlineData(double.PositiveInfinity, "∞")]
    [InlineData(double.NegativeInfinity, "−∞")]
    [InlineData(double.NaN, "not known")]
    public void Number_OfAnySize_HasFourFigures(double value, string said) => Assert.Equal(said, Phrase.Number(value));

    [Theory]
    [InlineData(0.98, "p = 0.98")]
    [InlineData(0.0504, "p = 0.05")]
    [InlineData(0.00021, "p = 2.1 × 10⁻⁴")]
    [InlineData(1e-15, "p = 1 × 10⁻¹⁵")]
    [InlineData(9e-16, "p < 10⁻¹⁵")]
    public void P_OfAnySize_HasTwoFigures(double p, string said) => Assert.Equal(said, Phrase.P(p));

    [Fact]
    public void Parts_OfASentence_AreSaidAsTheirSummariesSay()
    {
        Assert.Equal("12.5 mg/L", Phrase.With(12.5, "mg/L"));
        Assert.Equal("12.5", Phrase.With(12.5, ""));
        Assert.Equal("1440 min", Phrase.Plain(1440, "min"));
        Assert.Equal("0.3", Phrase.Plain(0.3, ""));
        Assert.Equal("90 % interval −1.47 to 3.273 %", Phrase.Interval(new Interval(-1.47, 3.273, 0.90), "%"));
        Assert.Equal("5 to 20 mg/L", Phrase.Span(5, 20, "mg/L"));
        Assert.Equal("5 mg/L", Phrase.Span(5, 5.0000001, "mg/L"));
        Assert.Equal(["0 vessels", "1 vessel", "2 vessels", "1 batch", "2 batches"],
            [Phrase.Count(0, "vessel"), Phrase.Count(1, "vessel"), Phrase.Count(2, "vessel"), Phrase.Count(1, "batch", "batches"), Phrase.Count(2, "batch", "batches")]);
        Assert.Equal(["none", "a", "a and b", "a, b and c", "a and b"], [Phrase.Listed([]), Phrase.Listed(["a"]), Phrase.Listed(["a", "b"]), Phrase.Listed(["a", "b", "c"]), Phrase.Listed(["a", "b", "a"])]);
        Assert.Equal("Up to 5 it is straight.", Phrase.Sentence(Made.Claim("rule"), "Up to {to} it is {how}.", ("to", "5"), ("how", "straight")));
        Assert.Equal("Mine.", Phrase.Sentence(Made.Claim("rule") with { Wording = "Mine." }, "Up to {to}.", ("to", "5")));
    }
}
