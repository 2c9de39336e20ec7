using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tests.Figures;

public class RichTextTests
{
    // The form "quantity symbol / unit", symbol italic and unit upright: IUPAC Green Book, 3rd ed., 1.1 and 1.3 (from memory; handbook write-up, section 6).
    [Fact]
    public void Quantity_SymbolWithSubscript_SetsItalicSymbolAndUprightUnit()
    {
        RichRun[] expected =
        [
            new("q", Italic: true), new("e", Shift: Shift.Sub), new("\u00A0/ (mg\u00A0g"), new("−1", Shift: Shift.Super), new(")"),
        ];

        Assert.Equal(expected, RichText.Quantity("q_e", "mg g^-1").Runs);
    }

    [Theory]
    [InlineData("mg g^-1")]
    [InlineData("mg/g")]
    [InlineData("mg g⁻¹")]
    [InlineData("mg·g-1")]
    [InlineData("mg/(g)")]
    public void Unit_WrittenInAnyUsualWay_IsSetInOneWay(string written) => Assert.Equal("mg\u00A0g−1", RichText.Unit(written).Plain);

    [Theory]
    [InlineData("t", "min", "t\u00A0/ min")]
    [InlineData("pH", null, "pH")]
    [InlineData("R", "%", "R\u00A0/ %")]
    [InlineData("n_a", "cm3(STP) g-1", "na\u00A0/ (cm3(STP)\u00A0g−1)")]
    public void Quantity_SimpleUnits_TakeNoBracketsAndCompoundUnitsDo(string symbol, string? unit, string plain)
        => Assert.Equal(plain, RichText.Quantity(symbol, unit).Plain);

    [Fact]
    public void Quantity_WordsOfSeveralLetters_StayUpright()
    {
        Assert.All(RichText.Quantity("Absorbance", null).Runs, r => Assert.False(r.Italic));
        Assert.All(RichText.Quantity("pH", null).Runs, r => Assert.False(r.Italic));
        Assert.Equal([new("Δ"), new("G", Italic: true)], RichText.Quantity("ΔG", null).Runs);
        Assert.Equal([new("ln "), new("K", Italic: true)], RichText.Quantity("ln K", null).Runs);
    }

    // An index that is a quantity is italic, one that is a word or a number upright: IUPAC Green Book, 3rd ed., 1.6 (from memory).
    [Fact]
    public void Quantity_IndexThatIsTime_IsItalicAndOthersAreNot()
    {
        Assert.Equal([new("q", true), new("t", true, Shift.Sub)], RichText.Quantity("q_t", null).Runs);
        Assert.Equal([new("q", true), new("m", false, Shift.Sub)], RichText.Quantity("q_m", null).Runs);
    }

    [Fact]
    public void Parse_ChargesAndIndices_BecomeRuns()
    {
        Assert.Equal([new("Ni"), new("2+", Shift: Shift.Super)], RichText.Parse("Ni^2+").Runs);
        Assert.Equal([new("SO"), new("4", Shift: Shift.Sub), new("2−", Shift: Shift.Super)], RichText.Parse("SO_4^2-").Runs);
        Assert.Equal([new("q", true), new("t", true, Shift.Sub)], RichText.Parse("*q*_{*t*}").Runs);
        Assert.Equal("a_b*c", RichText.Parse("a\\_b\\*c").Plain);
        Assert.Equal("from −5 to x-ray", RichText.Parse("from -5 to x-ray").Plain);
    }

    [Fact]
    public void Literal_NameWithUnderscore_IsLeftAlone()
    {
        RichText label = "batch_2*";
        Assert.Equal([new("batch_2*")], label.Runs);
    }

    [Fact]
    public void Literal_SuperscriptCharacters_BecomeRunsThatEveryTypefaceHas()
        => Assert.Equal([new("L mg"), new("−1", Shift: Shift.Super)], RichText.Literal("L mg⁻¹").Runs);

    [Theory]
    [InlineData("mg g^-1", "milligrams per gram")]
    [InlineData("mg/L", "milligrams per litre")]
    [InlineData("g mg^-1 min^-1", "grams per milligram per minute")]
    [InlineData("µmol L⁻¹", "micromoles per litre")]
    [InlineData("m2 g-1", "square metres per gram")]
    [InlineData("cm^3 g^-1", "cubic centimetres per gram")]
    [InlineData("J mol^-1 K^-1", "joules per mole per kelvin")]
    [InlineData("cm^-1", "per centimetre")]
    [InlineData("min", "minutes")]
    [InlineData("%", "percent")]
    [InlineData("°C", "degrees Celsius")]
    [InlineData("arb. unit", "arbitrary units")]
    [InlineData("nm", "nanometres")]
    public void Speech_Unit_IsReadInWords(string unit, string words) => Assert.Equal(words, Speech.OfUnit(unit));

    [Fact]
    public void Spoken_Label_NamesPositions()
    {
        Assert.Equal("Ni 2 plus", RichText.Parse("Ni^2+").Spoken);
        Assert.Equal("q e", RichText.Parse("q_e").Spoken);
        Assert.Equal("loading, in milligrams per gram", new Axis("q", "mg/g", "loading").Spoken);
    }
}
