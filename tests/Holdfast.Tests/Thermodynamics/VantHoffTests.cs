using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;
using Holdfast.Thermodynamics;

namespace Holdfast.Tests.Thermodynamics;

public class VantHoffTests
{
    private static readonly IReadOnlyList<ReferenceRow> Expected = ReferenceTable.Read("sorption", "thermo-expected.csv");

    // reference/sorption/thermo-expected.csv, case "synthetic" (scipy 1.10.1, line also R 4.2.2 lm).
    [Fact]
    public void Line_OfTheMadeSeries_AgreesInEveryRow()
    {
        var v = Made();
        Check("dH_kJ_mol", v.Enthalpy.Value, v.Enthalpy.StandardError, v.Enthalpy.Interval().Half);
        Check("dS_J_mol_K", v.Entropy.Value, v.Entropy.StandardError, v.Entropy.Interval().Half);
        var (mean, room) = (v.FreeEnergy(v.Line.HarmonicMeanTemperature), v.FreeEnergy(298.15));
        Check("dG_at_harmonic_mean_T_kJ_mol", mean.Value, mean.StandardError, mean.Interval().Half);
        Check("dG_298.15_kJ_mol", room.Value, room.StandardError, room.Interval().Half);
        Agree.Digits(8, Row("synthetic", "correlation_dH_dS").Number("value"), v.Correlation);
        Agree.Digits(8, Row("synthetic", "harmonic_mean_T").Number("value"), v.Line.HarmonicMeanTemperature);

        static void Check(string quantity, double value, double se, double half)
        {
            var row = Row("synthetic", quantity);
            Agree.Digits(8, row.Number("value"), value, quantity);
            Agree.Digits(8, row.Number("se"), se, quantity);
            Agree.Digits(5, double.Parse(row["note"].Split(' ')[^1], CultureInfo.InvariantCulture), half, quantity);
        }
    }

    // The same table, case "choice of K": one lead isotherm under six choices.
    [Fact]
    public void ChoiceOfConstant_OfOneIsotherm_MovesTheFreeEnergy()
    {
        const double qm = 85, k = 0.065, lead = 207.2;
        Check("KL x 1 mol/L", ConstantChoice.OfAffinity<Number>(k, lead).Value);
        Check("KL x 55.5 mol/L", ConstantChoice.OfAffinityByMoleFraction<Number>(k, lead).Value);
        Check("limiting Kd in L/g", ConstantChoice.LimitingDistribution<Number>(qm, k).Value);
        Check("limiting Kd x 1000 g/L", 1000 * ConstantChoice.LimitingDistribution<Number>(qm, k).Value);
        Check("(C0-Ce)/Ce at 1 g/L, C0 50", Ratio(1));
        Check("(C0-Ce)/Ce at 4 g/L, C0 50", Ratio(4));
        Assert.Equal(33.4, ConstantChoice.EntropyShift(ConstantChoice.WaterAmount), 1);
        Assert.Equal(57.4, ConstantChoice.EntropyShift(1000), 1);

        static double Ratio(double dose)
        {
            var ce = Holdfast.Isotherms.BatchEquilibrium.Langmuir<Number>(50, dose, qm, k).Value;
            return (50 - ce) / ce;
        }

        static void Check(string choice, double value)
        {
            const string Case = "choice of K, Langmuir qm 85 mg/g KL 0.065 L/mg, 207.2 g/mol";
            Agree.Digits(8, Row(Case, choice).Number("value"), value, choice);
            Agree.Digits(8, Row(Case, choice + ": dG_298.15_kJ_mol").Number("value"), VantHoff.FreeEnergyOf<Number>(value, 298.15).Value, choice);
        }
    }

    // Every choice says what it is worth; only a constant with a standard state may be called one.
    [Fact]
    public void ChoicesOfConstant_WithoutStandardState_AreNotThermodynamicConstants()
    {
        Assert.Null(ConstantChoice.RatioInOneVessel.StandardState);
        Assert.Null(ConstantChoice.Distribution.StandardState);
    }

    [Theory]
    [InlineData("3 temperatures 298.15-318.15 K", new[] { 298.15, 308.15, 318.15 })]
    [InlineData("4 temperatures 288.15-318.15 K", new[] { 288.15, 298.15, 308.15, 318.15 })]
    [InlineData("5 temperatures 283.15-323.15 K", new[] { 283.15, 293.15, 303.15, 313.15, 323.15 })]
    public void PlannedError_OfThreePlans_AgreesWithTheTable(string plan, double[] temperatures)
        => Agree.Digits(8, Row("precision u(lnK)=0.05", plan).Number("value"), VantHoff.PlannedError(temperatures, 0.05));

    // reference/design/decision-check.csv, K33 and K34: planning at sd(ln K) = 0.08.
    [Fact]
    public void PlannedError_OfTheDecisionTable_Agrees()
    {
        Agree.Digits(5.5, 4.46067, VantHoff.PlannedError([298.15, 308.15, 318.15], 0.08));
        Agree.Digits(4.5, 1.9887, VantHoff.PlannedError([288.15, 298.15, 308.15, 318.15, 328.15], 0.08));
    }

    // reference/design/decision-check.csv, K13 and K14.
    [Fact]
    public void Enthalpy_OfTheDecisionTable_Agrees()
    {
        var three = Of([298.15, 308.15, 318.15], [9.93, 10.13, 10.25]);
        Agree.Digits(5, 12.6486, three.Enthalpy.Value);
        Agree.Digits(4.5, 1.5844, three.Enthalpy.StandardError);
        Agree.Digits(5, -7.48308, three.Enthalpy.Interval().Low);
        Agree.Digits(5, 32.7802, three.Enthalpy.Interval().High);
        Agree.Digits(5, 125.079, three.Entropy.Value);
        var five = Of([288.15, 298.15, 308.15, 318.15, 328.15], [9.70, 9.93, 10.13, 10.25, 10.44]);
        Agree.Digits(5, 14.1812, five.Enthalpy.Value);
        Agree.Digits(5, 0.635815, five.Enthalpy.StandardError);
        Agree.Digits(5, 12.1577, five.Enthalpy.Interval().Low);
        Agree.Digits(5, 130.011, five.Entropy.Value);
    }

    // A constant factor in K leaves ΔH° and adds R·ln(factor) to ΔS°.
    [Fact]
    public void ConstantFactor_InEveryK_LeavesTheEnthalpy()
    {
        double[] t = [288.15, 298.15, 308.15, 318.15];
        double[] k = [3655, 4478, 5148, 6222];
        var plain = VantHoff.Of(t, [.. k.Select(v => (Measured)v)]).Value!;
        var scaled = VantHoff.Of(t, [.. k.Select(v => (Measured)(55.5 * v))]).Value!;
        Agree.Digits(11, plain.Enthalpy.Value, scaled.Enthalpy.Value);
        Agree.Digits(9, plain.Entropy.Value + ConstantChoice.EntropyShift(55.5), scaled.Entropy.Value);
    }

    // What the constants share (a stock, a balance) moves every ln K alike and leaves the slope alone.
    [Fact]
    public void PropagatedEnthalpy_FromASharedSource_HasNoUncertainty()
    {
        var shared = new Source("stock", "stock", 0.03);
        double[] t = [288.15, 298.15, 308.15, 318.15];
        var line = VantHoff.OfLogarithms(t, [.. t.Select(v => Measured.From(20 - 3500 / v, shared))]).Value!;
        Assert.True(line.PropagatedEnthalpy.U < 1e-10);
        Assert.Equal(0.03, line.Line.PropagatedAt(300).U, 10);
    }

    [Fact]
    public void PropagatedEnthalpy_OfIndependentConstants_IsWhatThePlanPromised()
    {
        double[] t = [288.15, 298.15, 308.15, 318.15];
        var line = VantHoff.OfLogarithms(t, [.. t.Select((v, i) => Measured.From(20 - 1500 / v + 0.001 * i * i, new Source($"K{i}", "K", 0.05)))]).Value!;
        Agree.Digits(9, VantHoff.PlannedError(t, 0.05), line.PropagatedEnthalpy.U);
        Assert.Equal("line on 1/T, propagated uncertainty", line.WiderEnthalpy.Method);
    }

    [Fact]
    public void Line_ThroughTwoTemperatures_IsRefused()
    {
        var found = VantHoff.OfLogarithms([298.15, 308.15], [(Measured)9.9, 10.1]);
        Assert.Null(found.Value);
        Assert.Equal("HF-626", Assert.Single(found.Findings).Code);
        Assert.Equal("HF-625", Assert.Single(VantHoff.Of([298.15, 308.15, 318.15], [(Measured)9.9, 0, 10]).Findings).Code);
        Assert.Equal("HF-627", Assert.Single(VantHoff.Of([298.15, 308.15, 318.15], [(Measured)9.9, 10, 10.3]).Findings).Code);
    }

    // flag-cases.csv, T1: the sign of ΔH° from its interval with n − 2 degrees of freedom.
    [Fact]
    public void SignOfEnthalpy_ByItsInterval_FollowsTheCases()
        => FlagCase.Check("T1", c =>
        {
            var dH = new Holdfast.Statistics.Estimate("case", c["dH"], c["u_dH"], c["temperatures"] - 2, (int)c["temperatures"]);
            Agree.Relative(2e-3, c["half95"], dH.Interval().Half, "half-width");
            return dH.Interval().Low > 0 ? Ruling.Holds : dH.Interval().High < 0 ? Ruling.Contradicted : Ruling.NotShownYet;
        });

    [Fact]
    public void Identity_OfATableRow_FollowsTheCases()
    {
        FlagCase.Check("T3", c =>
        {
            var identity = TableIdentity.Of(c["dH_kJ"], c["dS_J"], c["T_K"], c["dG_kJ"]);
            Assert.Equal(c["mismatch_kJ"], identity.Mismatch, 4);
            return identity.Consistent;
        });
        Assert.True(TableIdentity.Of(1450, 9.9, 308, -1.6).LooksLikeUnitSlip);
        Assert.False(TableIdentity.Of(14, 38, 298, -10.6).LooksLikeUnitSlip);
    }

    // PMC11459056, table 8 (lead on four clays): the printed lines against the printed ΔH°, ΔS° and ΔG°. Bentonite's line contradicts its entropy.
    [Fact]
    public void PrintedLines_OfFourClays_ReproduceThePrintButForOneEntropy()
    {
        foreach (var row in ReferenceTable.Read("sorption", "published", "thermo-lead-clays.csv"))
        {
            var expected = ReferenceTable.Read("sorption", "published-expected.csv").Where(r => r["dataset"] == "thermo-lead-clays " + row["sorbent"]).ToArray();
            double dH = -Constants.MolarGas * row.Number("line_slope_K") / 1000, dS = Constants.MolarGas * row.Number("line_intercept");
            Agree.Digits(8, expected[0].Number("computed_here"), dH);
            Agree.Digits(8, expected[1].Number("computed_here"), dS);
            Assert.Equal(row.Number("dH_kJ_mol"), dH, 2);
            Assert.Equal(row["sorbent"] == "bentonite" ? "not reproduced" : "reproduced", expected[1]["verdict"]);
            Assert.Equal(row["sorbent"] != "bentonite", Math.Abs(dS / row.Number("dS_J_mol_K") - 1) < 0.02);
            foreach (var t in new[] { 298, 308, 323, 333, 343 })
            {
                var dG = row.Number(string.Create(CultureInfo.InvariantCulture, $"dG_{t}_kJ_mol"));
                Assert.Equal(Ruling.Holds, TableIdentity.Of(row.Number("dH_kJ_mol"), row.Number("dS_J_mol_K"), t, dG).Consistent);
            }

            var byIdentity = row.Number("dH_kJ_mol") - 298 * row.Number("dS_J_mol_K") / 1000;
            Agree.Digits(8, expected[2].Number("computed_here"), byIdentity);
        }
    }

    private static VantHoff Made()
    {
        var rows = ReferenceTable.Read("sorption", "thermo-data.csv");
        return Of([.. rows.Select(r => r.Number("T_K"))], [.. rows.Select(r => r.Number("lnK"))]);
    }

    private static VantHoff Of(double[] temperatures, double[] logarithms)
        => VantHoff.OfLogarithms(temperatures, [.. logarithms.Select(l => (Measured)l)]).Value!;

    private static ReferenceRow Row(string of, string quantity) => Expected.Single(r => r["case"] == of && r["quantity"] == quantity);
}
