using System.Collections.Immutable;
using Holdfast.Studies.Acts;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Acts;

/// <summary>Which samples an act is about, and what a typed value means. What stands for any letters is checked against a search by hand.</summary>
public class SampleSelectionTests
{
    private static readonly Study Some = new()
    {
        Title = "some (invented)",
        Samples = [Vial("KIN-20-1", "KIN-20"), Vial("KIN-20-2", "KIN-20"), Vial("KIN-5-1", "KIN-5"), Vial("ISO-1", "ISO"), Vial("S1", null) with { Role = SampleRole.Standard }],
    };

    [Theory]
    [InlineData("KIN-20-1", "KIN-20-1")]
    [InlineData("kin-20-*", "KIN-20-1 KIN-20-2")]
    [InlineData("KIN*1", "KIN-20-1 KIN-5-1")]
    [InlineData("*-1", "KIN-20-1 KIN-5-1 ISO-1")]
    [InlineData("*20*", "KIN-20-1 KIN-20-2")]
    [InlineData("*", "KIN-20-1 KIN-20-2 KIN-5-1 ISO-1 S1")]
    [InlineData("S1", "S1")]
    public void Codes_WithAStar_AreFound(string pattern, string expected)
        => Assert.Equal(expected.Split(' '), new SampleSelection(null, [pattern], null).In(Some, out _).Select(s => s.Code));

    [Theory]
    [InlineData("KIN-20-11*11")]
    [InlineData("V*")]
    public void Codes_OfNoSample_AreNamed(string pattern)
    {
        Assert.Empty(new SampleSelection(null, [pattern], null).In(Some, out var trouble));
        Assert.Contains(pattern, trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void Vessels_AreThoseThatAreFilled() => Assert.DoesNotContain(SampleSelection.Vessels.In(Some, out _), s => s.Code == "S1");

    // 1 L = 1000 mL, 0 °C = 273.15 K, 1 g = 1000 mg; lead has 207.2 g/mol (CIAAW), so that 1 mmol/L is 207.2 mg/L.
    [Theory]
    [InlineData("volume", "0.01 L", 10)]
    [InlineData("volume", "10", 10)]
    [InlineData("volume", "10,5 mL", 10.5)]
    [InlineData("temperature", "25 °C", 298.15)]
    [InlineData("mass", "0.02 g", 20)]
    [InlineData("initial-concentration", "1 mmol/L", 207.2)]
    [InlineData("contact-time", "2 h", 120)]
    public void Typed_WithAUnit_IsKeptInThatOfTheProperty(string property, string typed, double expected)
    {
        var fact = TypedFact.Read("V-1", Property.Named(property)!, typed, out var trouble, "Pb");
        Assert.Equal("", trouble);
        Assert.Equal(expected, fact!.Value!.Value, 9);
        Assert.Null(fact.Origin.Original);
    }

    [Theory]
    [InlineData("volume", "10 kg")]
    [InlineData("volume", "-10 mL")]
    [InlineData("start-ph", "6 mL")]
    [InlineData("volume", "1,234 mL")]
    public void Typed_WithAUnitThatCannotBe_IsRefusedInWords(string property, string typed)
    {
        Assert.Null(TypedFact.Read("V-1", Property.Named(property)!, typed, out var trouble, "Pb"));
        Assert.NotEqual("", trouble);
    }

    private static Sample Vial(string code, string? series)
    {
        var facts = ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal);
        return new(code, SampleRole.Vessel, series is null ? facts
            : facts.Add(SampleProperties.Series.Name, new Fact(SampleProperties.Series.Name, null, null, null, series, series, new Origin(null, "by hand", null, 0, null))));
    }
}
