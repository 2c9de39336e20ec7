using Holdfast.Claims.Rules;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Claims;

public sealed class ClaimTests
{
    [Theory]
    [InlineData("120 min", 120.0)]
    [InlineData("0.020 mg/L", 0.02)]
    [InlineData("5.48e-16", 5.48e-16)]
    [InlineData("-3", -3.0)]
    [InlineData("6", 6.0)]
    [InlineData("20e", 20.0)]
    [InlineData("many", null)]
    [InlineData("", null)]
    [InlineData("1.2.3", null)]
    public void Number_OfAParameter_IsItsLeadingNumber(string words, double? expected)
        => Assert.Equal(expected, Made.Claim("rule", ("x", words)).Number("x"));

    // SI Brochure, 9th edition: 1 h = 60 min, 1 µg = 10⁻³ mg, 0 °C = 273.15 K.
    [Theory]
    [InlineData("2 h", "min", 120.0)]
    [InlineData("120", "min", 120.0)]
    [InlineData("20 µg/L", "mg/L", 0.02)]
    [InlineData("20 ug/L", "mg/L", 0.02)]
    [InlineData("0,020 mg/L", "mg/L", 0.02)]
    [InlineData("25 °C", "K", 298.15)]
    [InlineData("73.4 m²/g", "m2/g", 73.4)]
    [InlineData("0.34 mmol/L", "mg/L", null)]
    [InlineData("120 min", "mg/L", null)]
    [InlineData("soon", "min", null)]
    public void In_AParameterWithItsUnit_IsConvertedOrRefused(string words, string unit, double? expected)
    {
        var found = Made.Claim("rule", ("x", words)).In("x", unit);
        Assert.Equal(expected is null, found is null);
        if (expected is { } value)
            Agree.Digits(14, value, found!.Value);
    }

    [Fact]
    public void Judge_LimitOfAnotherKind_SaysSoAndThrowsNothing()
    {
        var verdict = Defence.RuleNamed("meets-limit")!.Judge(Made.Claim("meets-limit", ("series", "WATER-rinse"), ("limit", "0.34 mmol/L")), DemoStudy.Dossier.Evidence);
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains("0.34 mmol/L", verdict.Reason, StringComparison.Ordinal);
    }

    // 2.38 mg/L is 2380 µg/L: the unit changes nothing.
    [Fact]
    public void Judge_SameLimitInAnotherUnit_GivesTheSameVerdict()
    {
        Verdict At(string limit) => Defence.RuleNamed("meets-limit")!.Judge(Made.Claim("meets-limit", ("series", "WATER-rinse"), ("limit", limit)), DemoStudy.Dossier.Evidence);
        Assert.Equal((At("2.38 mg/L").Ruling, At("2.38 mg/L").Reason), (At("2380 µg/L").Ruling, At("2380 µg/L").Reason));
    }

    [Fact]
    public void Raised_WithoutAParameter_LeavesItOutOfIdAndKey()
    {
        var claim = Claim.Raised("capacity", ("series", "ISO 298/a"), ("model", null), ("to", " "));
        Assert.Equal("capacity-iso-298-a", claim.Id);
        Assert.Equal(["series"], claim.Parameters.Keys);
        Assert.False(claim.Stated);
    }

    [Theory]
    [InlineData("Pseudo-second-order", true)]
    [InlineData("pseudo second order", true)]
    [InlineData("PSO", true)]
    [InlineData("second", false)]
    [InlineData("PFO", false)]
    public void Candidate_ByName_IsFoundHoweverItIsWritten(string words, bool called)
        => Assert.Equal(called, new Candidate("Pseudo-second-order", 0, 20, 2, null).IsCalled(words));

    [Fact]
    public void Candidate_ByAnotherNameOfTheCurve_IsTheSameCurve()
        => Assert.True(new Candidate("Sips", 0, 20, 3, null) { Aliases = ["Hill", "Koble-Corrigan"] }.IsCalled("koble corrigan"));

    // A failed gate forbids "holds", leaves "contradicted", and is named in the reason.
    [Fact]
    public void Decision_GateThatFailed_ForbidsHoldsOnly()
    {
        Gate failed = new("vessels", false, "2 vessels; 3 are needed"), passed = new("levels", true, "6 levels");
        var holds = new Decision(Ruling.Holds, "It fits.", "test") { Gates = [failed, passed] };
        Assert.Equal(Ruling.NotShownYet, holds.Gated);
        var verdict = holds.On(Made.Claim("rule"), "Words.", "scope", ["V-1", "V-1", "V-2"]);
        Assert.Contains("2 vessels; 3 are needed", verdict.Reason, StringComparison.Ordinal);
        Assert.DoesNotContain("6 levels", verdict.Reason, StringComparison.Ordinal);
        Assert.Null(verdict.Scope);
        Assert.Equal(["V-1", "V-2"], verdict.Data);
        Assert.Equal(Ruling.Contradicted, (holds with { Ruling = Ruling.Contradicted }).Gated);
        Assert.Equal(Ruling.Holds, (holds with { Gates = [passed] }).Gated);
    }

    // A wider curve contains the claimed one and cannot trail by 4: unnamed it may lead by 1, as noise lets it; named it must trail by 4.
    [Theory]
    [InlineData(0.5, false, Ruling.Holds)]
    [InlineData(-0.99, false, Ruling.Holds)]
    [InlineData(-1.01, false, Ruling.NotShownYet)]
    [InlineData(-4.5, false, Ruling.Contradicted)]
    [InlineData(2.5, true, Ruling.NotShownYet)]
    [InlineData(4.5, true, Ruling.Holds)]
    public void ModelChoice_WiderRival_MayLeadByAsMuchAsNoiseLetsIt(double difference, bool named, Ruling expected)
    {
        Candidate claimed = new("Langmuir", 0, 24, 2, null), narrow = new("Freundlich", 40, 24, 2, null), wider = new("Sips", difference, 24, 3, null);
        Assert.Equal(expected, BestIsotherm.Decide("Langmuir", named ? ["Sips"] : [], "ISO", [claimed, narrow, wider], 8).Gated);
    }

    [Fact]
    public void Raised_SeriesInAnotherScript_KeepAddressesOfTheirOwn()
        => Assert.NotEqual(Claim.Raised("capacity", ("series", "Серия А")).Id, Claim.Raised("capacity", ("series", "Серия Б")).Id);
}
