using Holdfast.Amounts;

namespace Holdfast.Tests.Amounts;

public class QuantityTextTests
{
    [Theory]
    [InlineData("40 mg/L", 40, "mg/L")]
    [InlineData("1000mg/L", 1000, "mg/L")]
    [InlineData("50mL", 50, "mL")]
    [InlineData("0,42 g", 0.42, "g")]
    [InlineData("1.2e-3 mol/L", 0.0012, "mol/L")]
    [InlineData("1.2×10⁻³ M", 0.0012, "M")]
    [InlineData("5 %", 5, "%")]
    [InlineData("25 °C", 25, "degC")]
    [InlineData("-3 1/min", -3, "1/min")]
    [InlineData("12g", 12, "g")]
    public void Read_AValueWithAUnit_GivesTheQuantity(string text, double value, string unit)
        => Assert.Equal(new Quantity(value, Unit.Parse(unit)), QuantityText.Read(text).Value);

    [Theory]
    [InlineData("40", "HF-497")]
    [InlineData("40 ppm", "HF-497")]
    [InlineData("40 bananas", "HF-497")]
    [InlineData("mg/L", "HF-497")]
    [InlineData("", "HF-497")]
    [InlineData("1,234 mg", "HF-498")]
    [InlineData("<0.05 mg/L", "HF-497")]
    public void Read_AnythingUnclear_Asks(string text, string code)
    {
        var outcome = QuantityText.Read(text);
        Assert.False(outcome.HasValue);
        Assert.Equal(code, outcome.Findings[0].Code);
    }

    [Fact]
    public void Read_ABasis_IsKept() => Assert.Equal(new Basis("Ni"), QuantityText.Read("40 mg Ni/L").Value!.Basis);
}
