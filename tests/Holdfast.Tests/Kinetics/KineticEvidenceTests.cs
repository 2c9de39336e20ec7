using Holdfast.Amounts;
using Holdfast.Kinetics;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.Kinetics;

public class KineticEvidenceTests
{
    [Fact]
    public void RateConstant_ByPointsOnTheRise_FollowsTheCases()
        => FlagCase.Check("K3", c => KineticEvidence.RateConstant((int)c["points_between_10_and_80_percent_of_qe"]));

    [Fact]
    public void PointsOnTheRise_OfASeries_LeavesOutBothEnds()
        => Assert.Equal(3, KineticEvidence.PointsOnTheRise([0, 1, 1.5, 5, 7.9, 8, 9.9], 10));

    [Fact]
    public void PlateauMeasured_ByShare_FollowsTheCases() => FlagCase.Check("K4", c => c.Has("curve_within_2_AICc")
        ? KineticEvidence.PlateauMeasured(1, c.Inputs["curve_within_2_AICc"] == "elovich")
        : KineticEvidence.PlateauMeasured(c["smallest_q_last_over_qe_of_curves_within_2_AICc"], elovichAmongThem: false));

    [Fact]
    public void MechanismFromCurve_Always_IsNotShown() => FlagCase.Check("K6", _ => KineticEvidence.MechanismFromCurve);

    [Fact]
    public void RatherThan_ByDeltaAicc_FollowsTheCases() => FlagCase.Check("K7", c => KineticEvidence.RatherThan(c["delta_AICc"]));

    [Fact]
    public void DescribesPlateau_ByGap_FollowsTheCases()
        => FlagCase.Check("K8", c => KineticEvidence.DescribesPlateau(c["qe_fitted"], c["q_plateau"], c.Has("u") ? c["u"] : 0));

    [Fact]
    public void LevelsOff_ByFall_FollowsTheCases() => FlagCase.Check("K10", c => KineticEvidence.LevelsOff(c["q_max"], c["q_last"], c["u_each"]));

    // Rule K9 on reference/sorption/weber-morris-*.csv: two true lines beat the smooth curve, one line and a smooth curve show no stages.
    [Theory]
    [InlineData("two-lines", Standing.Holds)]
    [InlineData("one-line", Standing.NotShown)]
    [InlineData("smooth-first-order", Standing.NotShown)]
    public void Stages_AgainstOneSmoothCurve_FollowTheTable(string name, Standing expected)
    {
        var data = ReferenceTable.Read("sorption", "weber-morris-data.csv").Where(r => r["case"] == name).ToArray();
        var found = WeberMorrisSegments.Search([.. data.Select(r => r.Number("t_min"))], [.. data.Select(r => r.Number("q_mg_g"))]);
        var smooth = ReferenceTable.Read("sorption", "weber-morris-expected.csv").First(r => r["case"] == name && r["model"] == "pseudo_first").Number("value");
        Assert.Equal(expected, KineticEvidence.Stages(found, smooth));
        Assert.Equal(Standing.NotShown, KineticEvidence.Stages(found, null));
    }

    // K9's second half, K11, K12: thresholds as the rules state them, each side of each.
    [Fact]
    public void Thresholds_OnBothSides_AreWhereTheRulesPutThem()
    {
        Assert.Equal(Standing.NotContradicted, KineticEvidence.SolePoreControl(1, -0.1, 0.2, 0.29));
        Assert.Equal(Standing.NotShown, KineticEvidence.SolePoreControl(1, -0.1, 0.2, 0.31));
        Assert.Equal(Standing.NotShown, KineticEvidence.SolePoreControl(2, -0.1, 0.2, 0.2));
        Assert.Equal(Standing.Contradicted, KineticEvidence.SolePoreControl(1, 0.1, 0.2, 0.2));
        Assert.Equal(Standing.NotShown, KineticEvidence.AnyRate(0.06));
        Assert.Equal(Standing.Holds, KineticEvidence.AnyRate(0.04));
        Assert.Equal(Standing.Holds, KineticEvidence.Order(1.25, 2.25, atBound: false));
        Assert.Equal(Standing.NotShown, KineticEvidence.Order(1.2, 2.3, atBound: false));
        Assert.Equal(Standing.NotShown, KineticEvidence.Order(1.2, null, atBound: false));
        Assert.Equal(Standing.NotShown, KineticEvidence.Order(9.8, 10, atBound: true));
        Assert.Equal(Standing.NotShown, KineticEvidence.SecondOrderFromItsLine);
    }

    // Half of qe is reached at each curve's half-time, and the initial rate is the slope at nil time.
    [Fact]
    public void HalfTimeAndInitialRate_OfEachCurve_AreWhatTheySay()
    {
        Agree.Relative(1e-14, 20.5, PseudoFirstOrder.Value<Number>(PseudoFirstOrder.HalfTime<Number>(0.055), [41, 0.055]).Value, "first order");
        Agree.Relative(1e-14, 20.5, PseudoSecondOrder.Value<Number>(PseudoSecondOrder.HalfTime<Number>(41, 0.002), [41, 0.002]).Value, "second order");
        Agree.Relative(1e-14, 20.5, Avrami.Value<Number>(Avrami.HalfTime<Number>(0.05, 0.7), [41, 0.05, 0.7]).Value, "Avrami");
        Agree.Relative(1e-14, 20.5, Elovich.Value<Number>(Elovich.TimeTo<Number>(20.5, 8, 0.13), [8, 0.13]).Value, "Elovich");
        const double h = 1e-9;
        Agree.Relative(1e-6, PseudoFirstOrder.Value<Number>(h, [41, 0.055]).Value / h, PseudoFirstOrder.InitialRate<Number>(41, 0.055).Value, "first order");
        Agree.Relative(1e-6, PseudoSecondOrder.Value<Number>(h, [41, 0.002]).Value / h, PseudoSecondOrder.InitialRate<Number>(41, 0.002).Value, "second order");
        Agree.Relative(1e-6, Elovich.Value<Number>(h, [8, 0.13]).Value / h, 8, "Elovich");
    }

    // One mechanism under many names: general order at 1 and 2, Avrami at 1, mixed order at 0 and towards 1, double exponential at equal rates.
    [Fact]
    public void SpecialCases_OfTheLongerCurves_AreTheShorterOnes()
    {
        foreach (var t in new[] { 0.0, 0.5, 20, 180, 1e5 })
        {
            var first = PseudoFirstOrder.Value<Number>(t, [41, 0.055]).Value;
            Agree.Relative(1e-14, first, GeneralOrder.Value<Number>(t, [41, 0.055, 1]).Value, "general order 1");
            Agree.Relative(1e-14, first, MixedOrder.Value<Number>(t, [41, 0.055, 0]).Value, "mixed order 0");
            Agree.Relative(1e-14, first, Avrami.Value<Number>(t, [41, 0.055, 1]).Value, "Avrami 1");
            Agree.Relative(1e-14, first, DoubleExponential.Value<Number>(t, [41, 0.3, 0.055, 0.055]).Value, "equal rates");
            var second = PseudoSecondOrder.Value<Number>(t, [46, 0.0019]).Value;
            Agree.Relative(1e-14, second, GeneralOrder.Value<Number>(t, [46, 0.0019 * 46, 2]).Value, "general order 2");
            Agree.Relative(1e-6, second, MixedOrder.Value<Number>(t, [46, 0.0019 * 46 * 1e-9, 1 - 1e-9]).Value, "mixed order near 1");
        }
    }

    [Fact]
    public void Admissibility_OfEachCurveWithALimit_IsFoundOnOneSideOnly()
    {
        Assert.Equal("HF-471", Assert.Single(GeneralOrder.Admissibility([41, 0.05, 10], 1, 180)).Code);
        Assert.Empty(GeneralOrder.Admissibility([41, 0.05, 2], 1, 180));
        Assert.Equal("HF-472", Assert.Single(MixedOrder.Admissibility([41, 1e-5, 0.9999], 1, 180)).Code);
        Assert.Empty(MixedOrder.Admissibility([41, 0.02, 0.9], 1, 180));
        Assert.Equal("HF-473", Assert.Single(DoubleExponential.Admissibility([41, 0.5, 0.05, 0.04], 1, 180)).Code);
        Assert.Empty(DoubleExponential.Admissibility([41, 0.5, 0.25, 0.015], 1, 180));
    }
}
