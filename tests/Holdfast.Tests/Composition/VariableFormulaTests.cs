using Holdfast.Composition;
using Holdfast.Testing;

namespace Holdfast.Tests.Composition;

public class VariableFormulaTests
{
    // reference/composition/elements.json holds Ca0.95Eu0.05WO4; the others by hand from the counts.
    [Theory]
    [InlineData("Ca1-xEuxWO4", 0.05, "Ca0.95Eu0.05WO4")]
    [InlineData("Ca10-xEux(PO4)6(OH)2-xOx", 0.2, "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2")]
    [InlineData("Zn1\u2212xCoxO", 0.04, "Zn0.96Co0.04O")]
    [InlineData("Zn₁₋ₓCoₓO", 0.04, "Zn0.96Co0.04O")]
    [InlineData("YBa2Cu3O7-δ", 0.25, "YBa2Cu3O6.75")]
    [InlineData("TbxDy1-xFe2", 0.3, "Tb0.3Dy0.7Fe2")]
    [InlineData("Ca(1-1.5x)La(x)WO4", 0.1, "Ca0.85La0.1WO4")]
    [InlineData("CuSO4·nH2O", 5, "CuSO4·5H2O")]
    [InlineData("MgCl2.xH2O", 6, "MgCl2.6H2O")]
    public void At_AValue_WeighsAsThePlainFormula(string open, double value, string plain)
        => Agree.Digits(12, Formula.Parse(plain).MolarMass, VariableFormula.Read(open).Value!.At(value).Value!.MolarMass);

    [Fact]
    public void At_TwoVariables_TakesBoth()
    {
        var formula = VariableFormula.Read("La1-x-ySrxBayMnO3").Value!;
        Assert.Equal(['x', 'y'], formula.Variables);
        Agree.Digits(12, Formula.Parse("La0.7Sr0.2Ba0.1MnO3").MolarMass, formula.At(new Dictionary<char, double> { ['x'] = 0.2, ['y'] = 0.1 }).Value!.MolarMass);
        Assert.Throws<InvalidOperationException>(() => formula.At(0.2));
        Assert.Throws<ArgumentException>(() => formula.At(new Dictionary<char, double> { ['x'] = 0.2 }));
    }

    [Fact]
    public void At_AValueBeyondTheFormula_IsRefused()
    {
        var formula = VariableFormula.Read("Zn1-xCoxO").Value!;
        Assert.True(formula.At(1).HasValue);
        Assert.Equal("HF-499", Assert.Single(formula.At(1.2).Findings).Code);
    }

    [Theory, InlineData("ZnO"), InlineData("Dy2O3"), InlineData(""), InlineData(null), InlineData("x"), InlineData("Qq1-xZnxO")]
    public void Read_OfNoOpenFormula_IsRefused(string? text) => Assert.False(VariableFormula.Read(text).HasValue);
}
