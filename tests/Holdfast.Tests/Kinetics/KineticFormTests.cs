using Holdfast.Amounts;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Kinetics;

public class KineticFormTests
{
    [Fact]
    public void RisingPoints_OfASeries_LeaveOutBothEnds()
        => Assert.Equal(3, RisingPoints.Count([0, 1, 1.5, 5, 7.9, 8, 9.9], 10));

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
