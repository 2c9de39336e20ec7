using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Tests.StudyTables;

/// <summary>Numbers as sentences say them.</summary>
public class InWordsTests
{
    [Fact]
    public void Of_MeasuredValue_GivesTheExpandedUncertaintyItsFactorAndTheUnit()

        // 8.0549 with u 0.155 and many degrees of freedom: U = 2 u = 0.31, by hand (JCGM 100, 6.2.1 and G.6.6).
        => Assert.Equal("8.05 ± 0.31\u00A0mg/g (95 %, k = 2)", InWords.Of(Measured.From(8.0549, new Source("s", "s", 0.155)), "mg/g"));

    [Fact]
    public void Of_ValueWithoutUncertainty_SaysWhy()
        => Assert.Equal("7.5\u00A0mg/g (no uncertainty: none of its inputs came with one)", InWords.Of((Measured)7.5, "mg/g"));

    [Theory]
    [InlineData(13.5, 12.97, 14.06, "13.50 mg/g (12.97 to 14.06)")]
    [InlineData(0.009, -0.015, 0.033, "0.009 mg/g (−0.015 to 0.033)")]
    [InlineData(2, double.NegativeInfinity, 3, "2 mg/g (no lower limit, up to 3)")]
    [InlineData(2, 1, double.PositiveInfinity, "2 mg/g (from 1, no upper limit)")]
    [InlineData(double.NaN, 1, 2, "not defined")]
    public void Of_Interval_IsRoundedByItsWidthAndSaysAnOpenEndInWords(double value, double low, double high, string expected)
        => Assert.Equal(expected, InWords.Of(new Deciding("x", value, low, high, "mg/g", null))["x: ".Length..].Replace('\u00A0', ' '));

    [Theory, InlineData(2.1e-7, "2.1 × 10⁻⁷"), InlineData(298.15, "298.2")]
    public void Plain_Number_RaisesItsPower(double value, string expected) => Assert.Equal(expected, InWords.Plain(value));

    [Fact]
    public void Setting_KeepsTheFiguresItWasSetWith() => Assert.Equal("298.15\u00A0K", InWords.Setting(298.15, "K"));

    [Theory, InlineData(0.0004, "p < 0.001"), InlineData(0.0312, "p = 0.031")]
    public void P_IsGivenToThreePlaces(double p, string expected) => Assert.Equal(expected, InWords.P(p).Replace('\u00A0', ' '));

    [Fact]
    public void Some_ManyNames_NamesTheFirstAndCountsTheRest()
        => Assert.Equal("a, b and 3 more", InWords.Some(["a", "b", "c", "d", "e"], 2));

    [Theory]
    [InlineData("mg/g/min^0.5", "mg/g/min0.5")]
    [InlineData("(mg/L)^(-g)", "(mg/L)−g")]
    [InlineData("mg/(g·min^0.5)", "mg/(g·min0.5)")]
    [InlineData("", "none")]
    public void UnitOfAParameter_WithABrokenPower_IsRaisedAndKeepsItsBrackets(string unit, string plain)
        => Assert.Equal(plain, UnitWords.Of(unit).Text.Plain);
}
