using Holdfast.Amounts;

namespace Holdfast.Tests.Amounts;

public class HeaderTests
{
    [Theory]
    [InlineData("Ce (mg/L)", "Ce", "mg/L")]
    [InlineData("Ce / mg L-1", "Ce", "mg/L")]
    [InlineData("Ce/(mg L⁻¹)", "Ce", "mg/L")]
    [InlineData("Ce [mg·L⁻¹]", "Ce", "mg/L")]
    [InlineData("Ce, mg/L", "Ce", "mg/L")]
    [InlineData("Ce in mg/L", "Ce", "mg/L")]
    [InlineData("Ce mg/L", "Ce", "mg/L")]
    [InlineData("Mass of powder (mg)", "Mass of powder", "mg")]
    [InlineData("Mass of powder mg", "Mass of powder", "mg")]
    [InlineData("ce_mg_per_L", "ce", "mg/L")]
    [InlineData("contact_time_min", "contact_time", "min")]
    [InlineData("k2 (g/(mg min))", "k2", "g/(mg min)")]
    [InlineData("T / K", "T", "K")]
    [InlineData("Removal (%)", "Removal", "%")]
    [InlineData("Removal %", "Removal", "%")]
    [InlineData("Intensity (a.u.)", "Intensity", "a.u.")]
    [InlineData("2θ (°)", "2θ", "deg")]
    [InlineData("  V   (mL) ", "V", "mL")]
    public void Read_AHeadingWithAUnit_SplitsNameAndUnit(string text, string name, string unit)
    {
        var header = Header.Read(text);
        Assert.Equal(name, header.Name);
        Assert.Equal(unit, Assert.IsType<UnitText.Known>(header.Unit).Unit.Plain);
    }

    [Theory]
    [InlineData("Sample")]
    [InlineData("Vial A")]
    [InlineData("K_L")]
    [InlineData("q_m")]
    [InlineData("F/F0")]
    [InlineData("Q_A_")]
    [InlineData("pH")]
    [InlineData("Absorbance (Ni 232.0 nm)")]
    [InlineData("Mean of 3")]
    public void Read_AHeadingWithoutAUnit_SaysSo(string text)
    {
        var header = Header.Read(text);
        Assert.Equal(text, header.Name);
        Assert.IsType<UnitText.Absent>(header.Unit);
    }

    [Theory]
    [InlineData("Ni (ppm)", "Ni", "mg/L")]
    [InlineData("Ce_mg_L", "Ce", "mg/L")]
    [InlineData("T (C)", "T", "degC")]
    public void Read_AHeadingWithTwoMeanings_Asks(string text, string name, string first)
    {
        var header = Header.Read(text);
        Assert.Equal(name, header.Name);
        Assert.Equal(first, Assert.IsType<UnitText.Ambiguous>(header.Unit).Candidates[0].Plain);
    }

    [Fact]
    public void Read_AHeadingWithAnUnknownUnit_KeepsItsText()
        => Assert.Equal("lb/gal", Assert.IsType<UnitText.Unknown>(Header.Read("Load (lb/gal)").Unit).Text);

    [Fact]
    public void In_AnotherUnit_CarriesTheUncertaintyAlong()
    {
        var celsius = new Quantity(25, Unit.Parse("degC"), U: 0.5);
        Assert.Equal(new Quantity(298.15, Unit.Parse("K"), U: 0.5), celsius.In(Unit.Parse("K")));
        Assert.Equal(0.0125, new Quantity(12.5, Unit.Parse("mg/L")).InUnit("g/L"));
        Assert.Equal("12.5 mg/L", new Quantity(12.5, Unit.Parse("mg/L")).ToString());
    }

    // Found by random text: what stands before the last underscore may be a unit, and nothing after it.
    [Theory, InlineData("sPC_L_"), InlineData("mg_L_"), InlineData("x_mL_ ")]
    public void Heading_WithNothingAfterItsLastUnderscore_IsReadWithoutAThrow(string heading)
        => Assert.DoesNotContain("/", Header.Read(heading).Name, StringComparison.Ordinal);
}
