using System.Globalization;
using CsCheck;
using Holdfast.Amounts;
using Holdfast.Testing;

namespace Holdfast.Tests.Amounts;

public class CellTextTests
{
    [Theory]
    [InlineData("12.5", 12.5)]
    [InlineData(" 12.5 ", 12.5)]
    [InlineData("12", 12)]
    [InlineData("+3", 3)]
    [InlineData("-0.003", -0.003)]
    [InlineData("\u22120.003", -0.003)]
    [InlineData("\u22125", -5)]
    [InlineData("1\u00A0234.5", 1234.5)]
    [InlineData("12\u2009345", 12345)]
    [InlineData("12\u202F345\u202F678", 12345678)]
    [InlineData("0.123\u2009456", 0.123456)]
    [InlineData("1.2e-3", 0.0012)]
    [InlineData("1.2E-3", 0.0012)]
    [InlineData("1.2 × 10⁻³", 0.0012)]
    [InlineData("1.2×10⁻³", 0.0012)]
    [InlineData("1.2x10^-3", 0.0012)]
    [InlineData("1.2·10\u22123", 0.0012)]
    [InlineData("10⁻³", 0.001)]
    [InlineData(".5", 0.5)]
    [InlineData("5.", 5)]
    [InlineData("1.234", 1.234)]
    [InlineData("1,234.5", 1234.5)]
    public void Read_WithADecimalPoint_GivesTheNumber(string text, double value)
        => Assert.Equal(value, Assert.IsType<CellText.Number>(CellText.Read(text, DecimalMark.Point)).Value);

    [Theory]
    [InlineData("12,5", 12.5)]
    [InlineData("0,7", 0.7)]
    [InlineData("1,234", 1.234)]
    [InlineData("1,2E-3", 0.0012)]
    [InlineData("1.234,5", 1234.5)]
    [InlineData("1\u00A0234,5", 1234.5)]
    [InlineData("12", 12)]
    public void Read_WithADecimalComma_GivesTheNumber(string text, double value)
        => Assert.Equal(value, Assert.IsType<CellText.Number>(CellText.Read(text, DecimalMark.Comma)).Value);

    [Theory]
    [InlineData("12,5", 12.5)]
    [InlineData("0,234", 0.234)]
    [InlineData("12.345", 12.345)]
    [InlineData("1.234,5", 1234.5)]
    [InlineData("1,234.5", 1234.5)]
    [InlineData("1,2345", 1.2345)]
    public void Read_WithTheMarkNotSettled_TakesTheOnlyReading(string text, double value)
        => Assert.Equal(value, Assert.IsType<CellText.Number>(CellText.Read(text, null)).Value);

    // Once a file's decimal mark is settled, the other mark in threes can only group.
    [Theory]
    [InlineData("1,234", DecimalMark.Point)]
    [InlineData("1.234", DecimalMark.Comma)]
    public void Read_TheOtherMarkInThrees_Groups(string text, DecimalMark mark)
        => Assert.Equal(1234, Assert.IsType<CellText.Number>(CellText.Read(text, mark)).Value);

    [Theory]
    [InlineData("1,234", null, 1.234, 1234)]
    public void Read_DigitsWithTwoReadings_Asks(string text, DecimalMark? mark, double first, double second)
        => Assert.Equal([first, second], Assert.IsType<CellText.Ambiguous>(CellText.Read(text, mark)).Candidates);

    [Theory]
    [InlineData("<0.05", CensoredSide.Below, 0.05, null)]
    [InlineData("< 0.05", CensoredSide.Below, 0.05, null)]
    [InlineData("≤0.05", CensoredSide.Below, 0.05, null)]
    [InlineData(">40", CensoredSide.Above, 40.0, null)]
    [InlineData("<LOD", CensoredSide.Below, null, "LOD")]
    [InlineData("< LOQ", CensoredSide.Below, null, "LOQ")]
    [InlineData("n.d.", CensoredSide.Below, null, "LOD")]
    [InlineData("ND", CensoredSide.Below, null, "LOD")]
    [InlineData("BDL", CensoredSide.Below, null, "LOD")]
    [InlineData("not detected", CensoredSide.Below, null, "LOD")]
    [InlineData("over", CensoredSide.Above, null, null)]
    [InlineData("OVR", CensoredSide.Above, null, null)]
    [InlineData("****", CensoredSide.Above, null, null)]
    public void Read_AReadingOutsideALimit_StaysCensored(string text, CensoredSide side, double? limit, string? name)
    {
        var censored = Assert.IsType<CellText.Censored>(CellText.Read(text, DecimalMark.Point));
        Assert.Equal((side, limit, name, text), (censored.Side, censored.Limit, censored.LimitName, censored.Text));
    }

    [Fact]
    public void Read_ALimitWithADecimalComma_ReadsTheLimit()
        => Assert.Equal(0.05, Assert.IsType<CellText.Censored>(CellText.Read("<0,05", DecimalMark.Comma)).Limit);

    [Theory]
    [InlineData("NaN", NotANumberKind.NotFinite)]
    [InlineData("Inf", NotANumberKind.NotFinite)]
    [InlineData("\u2212Infinity", NotANumberKind.NotFinite)]
    [InlineData("#DIV/0!", NotANumberKind.WorksheetError)]
    [InlineData("#N/A", NotANumberKind.WorksheetError)]
    [InlineData("1e999", NotANumberKind.OutOfRange)]
    [InlineData("-1e999", NotANumberKind.OutOfRange)]
    [InlineData("1e-999", NotANumberKind.OutOfRange)]
    [InlineData("1e99999999999", NotANumberKind.OutOfRange)]
    [InlineData("-", NotANumberKind.Missing)]
    [InlineData("n/a", NotANumberKind.Missing)]
    [InlineData("V-12", NotANumberKind.Words)]
    [InlineData("3-Mar", NotANumberKind.Words)]
    [InlineData("12.5 mg", NotANumberKind.Words)]
    [InlineData("1.2.3", NotANumberKind.Words)]
    [InlineData("12,5", NotANumberKind.Words)]
    [InlineData("1,23,4", NotANumberKind.Words)]
    [InlineData("1 2", NotANumberKind.Words)]
    [InlineData("12\u00A034", NotANumberKind.Words)]
    [InlineData("0x1F", NotANumberKind.Words)]
    [InlineData("--5", NotANumberKind.Words)]
    [InlineData("1e", NotANumberKind.Words)]
    [InlineData("٣", NotANumberKind.Words)]
    public void Read_ATextThatIsNoNumber_IsKeptAsText(string text, NotANumberKind kind)
    {
        var odd = Assert.IsType<CellText.NotANumber>(CellText.Read(text, DecimalMark.Point));
        Assert.Equal((text, kind), (odd.Text, odd.Kind));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \u00A0")]
    [InlineData(null)]
    public void Read_Nothing_IsBlank(string? text) => Assert.IsType<CellText.Blank>(CellText.Read(text, DecimalMark.Point));

    [Theory]
    [InlineData("0.2683", 1e-4)]
    [InlineData("12.50", 0.01)]
    [InlineData("1000", 1)]
    [InlineData("1.2e-3", 1e-4)]
    public void Read_ANumber_KnowsTheStepOfItsLastDigit(string text, double step)
        => Agree.Digits(14, step, Assert.IsType<CellText.Number>(CellText.Read(text, DecimalMark.Point)).Step);

    // Law: the stored form of any number is read back to the same bits, with a point and with a comma.
    [Fact]
    public void Read_TheShortestFormOfAnyNumber_GivesTheSameBits()
        => Gen.Double.Where(double.IsFinite).Sample(x =>
        {
            var text = x.ToString("R", CultureInfo.InvariantCulture);
            return CellText.Read(text, DecimalMark.Point) is CellText.Number a && a.Value.Equals(x)
                && CellText.Read(text.Replace('.', ','), DecimalMark.Comma) is CellText.Number b && b.Value.Equals(x);
        });

    // Law: no text whatever throws, becomes NaN or becomes infinite.
    [Fact]
    public void Read_AnyText_GivesAFiniteNumberOrNone()
        => Gen.String[Gen.Char["0123456789.,+-eE<>*#x×^ \u00A0\u2212naLOD/"], 0, 12].Sample(text =>
            CellText.Read(text, DecimalMark.Point) is not CellText.Number n || double.IsFinite(n.Value));
}
