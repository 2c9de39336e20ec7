using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Tests.Markup;

/// <summary>Formulas of model cards as MathML.</summary>
public class FormulaMathTests
{
    // By hand after W3C MathML Core: fraction, lowered letters, brackets only where a bar does not group.
    [Theory]
    [InlineData("D = m / V", "<mrow><mi>D</mi><mo>=</mo><mfrac><mrow><mi>m</mi></mrow><mrow><mi>V</mi></mrow></mfrac></mrow>")]
    [InlineData("q = KF·C^(1/n)", "<mrow><mi>q</mi><mo>=</mo><msub><mi>K</mi><mi mathvariant=\"normal\">F</mi></msub><mo>·</mo><msup><mrow><mi>C</mi></mrow><mrow><mfrac><mrow><mn>1</mn></mrow><mrow><mi>n</mi></mrow></mfrac></mrow></msup></mrow>")]
    [InlineData("q = a / (1 − b)", "<mrow><mi>q</mi><mo>=</mo><mfrac><mrow><mi>a</mi></mrow><mrow><mn>1</mn><mo>−</mo><mi>b</mi></mrow></mfrac></mrow>")]
    [InlineData("y = k1·exp(−x)", "<mrow><mi>y</mi><mo>=</mo><msub><mi>k</mi><mn>1</mn></msub><mo>·</mo><mi mathvariant=\"normal\">exp</mi><mrow><mo>(</mo><mo>−</mo><mi>x</mi><mo>)</mo></mrow></mrow>")]
    public void Of_AFormula_IsItsTree(string formula, string tree)
        => Assert.Contains(tree, FormulaMath.Of(formula).ToHtml(), StringComparison.Ordinal);

    [Theory, InlineData("q = (1 + C"), InlineData("q = 1 $ 2"), InlineData("q = 1)")]
    public void Of_WhatIsNoFormula_IsRefused(string formula) => Assert.Throws<FormatException>(() => FormulaMath.Of(formula));

    // Every curve that a study can lead with has to be set.
    [Fact]
    public void Of_EveryCurveFittedToTheDemo_CanBeRead()
    {
        var evidence = DemoStudy.Dossier.Evidence;
        string[] formulas = [.. evidence.Kinetics.Concat(evidence.Isotherms).SelectMany(f => f.Fits).Select(f => f.Card.Formula).Distinct(StringComparer.Ordinal)];
        Assert.True(formulas.Length > 15);
        Assert.All(formulas, f => Assert.Equal("math", FormulaMath.Of(f).Name));
    }
}
