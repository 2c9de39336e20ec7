using System.Globalization;
using CsCheck;
using Holdfast.Amounts;

namespace Holdfast.Tests.Amounts;

public class RoundedNumberTests
{
    // The rule (uncertainty to two digits, value to the same place) is JCGM 100, 7.2.6; 19.38 ± 0.34 and 19.38(17) are the trade's two forms.
    [Theory]
    [InlineData(19.382, 0.3420, "19.38 ± 0.34", "19.38(34)")]
    [InlineData(19.382, 0.171, "19.38 ± 0.17", "19.38(17)")]
    [InlineData(50, 0.5, "50.00 ± 0.50", "50.00(50)")]
    [InlineData(127.73216992810205, 0.07110740739699512, "127.732 ± 0.071", "127.732(71)")]
    [InlineData(1.0, 0.0996, "1.00 ± 0.10", "1.00(10)")]
    [InlineData(9.996, 0.01, "9.996 ± 0.010", "9.996(10)")]
    [InlineData(9.9996, 0.01, "10.000 ± 0.010", "10.000(10)")]
    [InlineData(-0.6, 0.707, "\u22120.60 ± 0.71", "\u22120.60(71)")]
    [InlineData(-0.0001, 0.02, "0.000 ± 0.020", "0.000(20)")]
    [InlineData(2.675, 0.010, "2.675 ± 0.010", "2.675(10)")]
    [InlineData(2.675, 0.10, "2.68 ± 0.10", "2.68(10)")]
    [InlineData(1237, 231, "1240 ± 230", "1240(230)")]
    [InlineData(123456, 2345, "(1.235 ± 0.023) × 10^5", "1.235(23) × 10^5")]
    [InlineData(12345.6, 1.2, "12\u202F345.6 ± 1.2", "12\u202F345.6(12)")]
    [InlineData(0.000036421, 0.0000034677, "(3.64 ± 0.35) × 10^-5", "3.64(35) × 10^-5")]
    [InlineData(0.0642, 0.0034, "0.0642 ± 0.0034", "0.0642(34)")]
    [InlineData(5, 0, "5", "5")]
    public void Of_AValueWithUncertainty_ShowsNoMoreDigitsThanItSupports(double value, double u, string plusMinus, string brackets)
    {
        var rounded = RoundedNumber.Of(value, u);
        Assert.Equal(plusMinus, rounded.PlusMinus);
        Assert.Equal(brackets, rounded.Brackets);
    }

    [Theory]
    [InlineData(10, 0.41, "10.0 ± 0.4")]
    [InlineData(10, 0.34, "10.0 ± 0.4")]
    [InlineData(10, 0.39, "10.0 ± 0.4")]
    [InlineData(10, 0.171, "10.00 ± 0.17")]
    public void Of_OneDigitOfUncertainty_NeverRoundsDownByMoreThanATwentieth(double value, double u, string shown)
        => Assert.Equal(shown, RoundedNumber.Of(value, u, digits: 1).PlusMinus);

    [Fact]
    public void Of_WithADecimalComma_ChangesTheMarkAlone()
        => Assert.Equal("19,38 ± 0,34", RoundedNumber.Of(19.382, 0.342, mark: DecimalMark.Comma).PlusMinus);

    [Fact]
    public void IsQuantified_AnUncertaintyAboveHalfTheValue_IsFalse()
    {
        Assert.True(RoundedNumber.Of(1, 0.5).IsQuantified);
        Assert.False(RoundedNumber.Of(1, 0.51).IsQuantified);
    }

    [Fact]
    public void Runs_OfASmallNumber_RaiseThePowerOfTen()
        => Assert.Equal(
            [new TextRun("(3.64 ± 0.35) × 10"), new TextRun("\u22125", Raised: true)],
            RoundedNumber.Of(0.000036421, 0.0000034677).Runs);

    [Theory]
    [InlineData(5.0, 3.53, 8.28, "5.0 (+3.3/\u22121.5)")]
    [InlineData(0.86, 0.793, 0.93, "0.860 (+0.070/\u22120.067)")]
    [InlineData(100, 99.8, 130, "100.0 (+30.0/\u22120.2)")]
    public void Asymmetric_UnequalArms_ShowsBoth(double value, double low, double high, string shown)
        => Assert.Equal(shown, RoundedNumber.Asymmetric(value, low, high));

    [Theory]
    [InlineData(3.531510274, 8.284033018, "3.5 to 8.3")]
    [InlineData(-0.25, 1.20, "\u22120.25 to 1.20")]
    public void Interval_IsRoundedByHalfItsWidth(double low, double high, string shown)
        => Assert.Equal(shown, RoundedNumber.Interval(low, high));

    [Theory]
    [InlineData(CensoredSide.Below, 0.1123, "LOQ", "< 0.11 (LOQ)")]
    [InlineData(CensoredSide.Above, 40.0, null, "> 40")]
    public void Censored_ShowsTheLimitAndItsName(CensoredSide side, double limit, string? name, string shown)
        => Assert.Equal(shown, RoundedNumber.Censored(side, limit, name));

    [Theory]
    [InlineData(0.123456, "0.1235")]
    [InlineData(12, "12")]
    [InlineData(1234567, "1.235 × 10^6")]
    [InlineData(0, "0")]
    public void WithoutUncertainty_ShowsFourDigitsAtMost(double value, string shown)
        => Assert.Equal(shown, RoundedNumber.WithoutUncertainty(value).PlusMinus);

    [Fact]
    public void Of_NumbersThatAreNone_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundedNumber.Of(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundedNumber.Of(1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundedNumber.Of(1, double.PositiveInfinity));
    }

    // Law: what is shown, read back, lies within half a step of the last digit of the uncertainty; u keeps two digits and loses at most 5 %.
    [Fact]
    public void Of_AnyValue_IsReadBackWithinHalfAStep()
        => Gen.Select(Gen.Double[-1e7, 1e7], Gen.Double[-6, 4].Select(p => Math.Pow(10, p))).Sample((value, u) =>
        {
            var shown = RoundedNumber.Of(value, u);
            var scale = Math.Pow(10, shown.Exponent);
            var back = Read(shown.Value) * scale;
            var backU = Read(shown.U!) * scale;
            var step = Math.Pow(10, -RoundedNumber.DecimalsFor(u));
            return Math.Abs(back - value) <= step / 2 * (1 + 1e-6) + 1e-9 * Math.Abs(value) && backU >= 0.95 * u && Math.Abs(backU - u) <= 0.051 * u;
        });

    private static double Read(string shown)
        => double.Parse(shown.Replace('\u2212', '-').Replace("\u202F", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
}
