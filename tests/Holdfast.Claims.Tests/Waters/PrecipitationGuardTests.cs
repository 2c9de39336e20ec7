using Holdfast.Claims.Analyses;
using Holdfast.Speciation;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Waters;

public sealed class PrecipitationGuardTests
{
    // reference/measurement/flag-cases.csv, area speciation: metal, 50 mg/L, pH, contact with air, verdict.
    [Theory]
    [InlineData("copper at pH 6.2", "Cu", 6.2, AirContact.Open, Ruling.Contradicted)]
    [InlineData("copper at pH 5.0", "Cu", 5.0, AirContact.Open, Ruling.Holds)]
    [InlineData("copper at pH 5.7", "Cu", 5.7, AirContact.Closed, Ruling.NotShownYet)]
    [InlineData("lead without carbonate", "Pb", 7, AirContact.Excluded, Ruling.Holds)]
    [InlineData("lead without carbonate", "Pb", 7, AirContact.Open, Ruling.Contradicted)]
    [InlineData("lead without carbonate", "Pb", 7, AirContact.Closed, Ruling.NotShownYet)]
    public void SolidOnsets_FlagCases_AsListed(string listed, string metal, double ph, AirContact air, Ruling ruling)
    {
        Assert.Contains(ReferenceTable.Read("measurement", "flag-cases.csv"), r => r["area"] == "speciation" && r["case"] == listed);
        Assert.Equal(ruling, SolidOnsets.Of(MetalIon.Of(metal), 50, 0.01, 298.15).At(ph, 0, air));
    }

    // The invented scenario: nickel 20 mg/L, aged 7.33, fresh 8.23; pH 6 holds, pH 8 open, pH 9 contradicted.
    [Theory]
    [InlineData("PH3-1", Ruling.Holds)]
    [InlineData("PH6-1", Ruling.Holds)]
    [InlineData("PH8-1", Ruling.NotShownYet)]
    [InlineData("PH9-1", Ruling.Contradicted)]
    [InlineData("ISO-60-1", Ruling.Holds)]
    [InlineData("K05-120-1", Ruling.NotShownYet)]
    public void Guard_InventedVials_AsTheScenarioSays(string code, Ruling ruling)
    {
        var vial = PrecipitationGuard.Of(DemoStudy.Dossier.Evidence).Named(code);
        Assert.NotNull(vial);
        Assert.True(ruling == vial.Ruling, vial.Reason);
    }

    [Fact]
    public void SolidOnsets_NickelAt20_AsWorkedOutForTheScenario()
    {
        var onsets = SolidOnsets.Of(MetalIon.Of("Ni"), 20, 0.01, 298.15);
        Assert.Equal(7.33, onsets.Lowest(s => s.Kind == SolidKind.Aged)!.Ph!.Value, 0.005);
        Assert.Equal(8.23, onsets.Lowest(s => s.Kind == SolidKind.Fresh)!.Ph!.Value, 0.005);
        Assert.Null(onsets.Lowest(s => s.Kind == SolidKind.Carbonate));
    }

    // Either iron could be there: fresh iron(III) hydroxide alone does not contradict, and nothing holds above its onset.
    [Fact]
    public void SolidOnsets_IronOfUnknownState_IsOpenBetweenTheTwo()
        => Assert.Equal(Ruling.NotShownYet, SolidOnsets.Of(MetalIon.Of("Fe"), 50, 0.01, 298.15).At(5, 0, AirContact.Closed));

    [Fact]
    public void Guard_VialWithoutPh_SaysItCannotBeExcluded()
    {
        var vial = Guarded(Made.Vessel("V", "S", 20, 4, 2, startPh: null, endPh: null));
        Assert.Equal(Ruling.NotShownYet, vial.Ruling);
        Assert.Contains("cannot be excluded", vial.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Guard_StartPhAlone_DoesNotHold()
        => Assert.Equal(Ruling.NotShownYet, Guarded(Made.Vessel("V", "S", 20, 4, 2, startPh: 5, endPh: null)).Ruling);

    // Between aged and fresh hydroxide; controls without loss at the same end pH decide, those without an end pH do not.
    [Theory]
    [InlineData(7.8, 20.0, 19.9, Ruling.Holds)]
    [InlineData(null, 20.0, 19.9, Ruling.NotShownYet)]
    [InlineData(7.8, 14.0, 13.8, Ruling.Contradicted)]
    [InlineData(null, 14.0, 13.8, Ruling.Contradicted)]
    [InlineData(6.5, 20.0, 19.9, Ruling.NotShownYet)]
    public void Guard_ControlsAtTheSamePh_OverruleTheConstants(double? endPh, double first, double second, Ruling ruling)
    {
        var vial = Guarded(
            Made.Vessel("V", "S", 20, 4, 2, startPh: 7.8, endPh: 7.7),
            Made.Vessel("C-1", "S", 20, first, 0, startPh: 7.8, endPh: endPh, role: SampleRole.Control, u: 0.05),
            Made.Vessel("C-2", "S", 20, second, 0, startPh: 7.8, endPh: endPh, role: SampleRole.Control, u: 0.05));
        Assert.True(ruling == vial.Ruling, vial.Reason);
        Assert.Equal(ruling == Ruling.NotShownYet ? 0 : 2, vial.OverruledBy.Count);
    }

    [Fact]
    public void Guard_ControlOfAnotherConcentration_CountsForNothing()
        => Assert.Empty(Guarded(
            Made.Vessel("V", "S", 20, 4, 2, startPh: 7.8, endPh: 7.7),
            Made.Vessel("C-1", "S", 5, 5, 0, startPh: 7.8, endPh: 7.8, role: SampleRole.Control, u: 0.02)).OverruledBy);

    [Fact]
    public void Guard_MetalWithoutConstants_SaysSo()
    {
        var evidence = Made.Evidence([Made.Series("S", null, [(0, [Made.Vessel("V", "S", 20, 4, 2)])])]);
        var vial = PrecipitationGuard.Of(evidence with { Study = evidence.Study with { Analyte = "Eu" } }).Named("V")!;
        Assert.Equal(Ruling.NotShownYet, vial.Ruling);
        Assert.Contains("No constants", vial.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.01 mol/L NaNO3", 0.01, false, false)]
    [InlineData("100 mmol/L KCl", 0.1, false, true)]
    [InlineData("tap water", Background.Usual, true, true)]
    [InlineData("3 mol/L NaNO3", Background.Usual, true, false)]
    [InlineData(null, Background.Usual, true, false)]
    public void Background_Words_AreReadWhereTheyNameASalt(string? words, double strength, bool assumed, bool chloride)
        => Assert.Equal(new Background(strength, assumed, chloride), Background.Of(words));

    [Theory]
    [InlineData("Open", AirContact.Open)]
    [InlineData("nitrogen", AirContact.Excluded)]
    [InlineData("capped", AirContact.Closed)]
    public void AirContact_Words_AreRead(string words, AirContact contact)
    {
        var vessel = Made.Vessel("V", "S", 20, 4, 2);
        var sample = vessel.Sample with { Facts = vessel.Sample.Facts.AddRange(Made.Facts([], (CarbonateProperties.Air, words))) };
        Assert.Equal(contact, PrecipitationGuard.Of(Made.Evidence([Made.Series("S", null, [(0, [vessel with { Sample = sample }])])])).Vials[0].Air);
    }

    private static GuardedVial Guarded(Vessel vessel, params Vessel[] controls)
        => PrecipitationGuard.Of(Made.Evidence([Made.Series("S", null, [(0, [vessel])], controls)])).Named("V")!;
}
