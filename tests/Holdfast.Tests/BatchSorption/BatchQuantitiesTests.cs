using CsCheck;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Testing;

namespace Holdfast.Tests.BatchSorption;

public class BatchQuantitiesTests
{
    // reference/sorption/batch-quantities.csv, computed independently by hand propagation with the correlation of C0 and Ce.
    [Fact]
    public void Vessel_TheReferenceCases_AgreeInValueAndUncertainty()
    {
        foreach (var row in ReferenceTable.Read("sorption", "batch-quantities.csv"))
        {
            var (c0, c) = Correlated(row.Number("C0_mg_L"), row.Number("u_C0"), row.Number("Ce_mg_L"), row.Number("u_Ce"), row.Number("correlation"));
            var volume = Measured.From(row.Number("V_mL") / 1000, new Source("V", "volume", row.Number("u_V") / 1000));
            var mass = Measured.From(row.Number("m_mg") / 1000, new Source("m", "mass", row.Number("u_m") / 1000));
            var vessel = Vessel.Of(row["case"], c0, c, volume, mass);
            var kd = vessel.DistributionCoefficient!.Value;

            Agree.Digits(10, row.Number("removal_percent"), vessel.Removal.Value, row["case"]);
            Agree.Digits(10, row.Number("u_removal"), vessel.Removal.U, row["case"]);
            Agree.Digits(10, row.Number("q_mg_g"), vessel.Uptake.Value, row["case"]);
            Agree.Digits(10, row.Number("u_q"), vessel.Uptake.U, row["case"]);
            Agree.Digits(10, row.Number("Kd_L_g"), kd.Value, row["case"]);
            Agree.Digits(10, row.Number("u_Kd"), kd.U, row["case"]);
            Agree.Digits(10, row.Number("z"), vessel.Significance.Z!.Value, row["case"]);
            Agree.Digits(10, row.Number("q_critical"), vessel.Significance.CriticalUptake, row["case"]);
            Agree.Digits(10, row.Number("q_detectable"), vessel.Significance.DetectableUptake, row["case"]);
            Assert.Equal(row["removed_significant"] == "yes", vessel.Significance.Removed == Ruling.Holds);
        }
    }

    [Fact]
    public void Vessel_AboveItsStart_KeepsTheNegativeUptake()
    {
        var vessel = Vessel.Of("V-1", M(50, 0.5, "c0"), M(52, 0.5, "c"), M(0.05, 0, "V"), M(0.05, 0, "m"));
        Assert.Equal(-2, vessel.Uptake.Value, 12);
        Assert.Equal(Ruling.Contradicted, vessel.Significance.Removed);
        Assert.Contains(vessel.Findings, f => f.Code == "HF-483");
    }

    [Fact]
    public void Vessel_BelowItsQuantificationLimit_HasNoDistributionCoefficient()
    {
        var vessel = Vessel.Of("V-1", M(50, 0.5, "c0"), M(0.02, 0.03, "c"), M(0.05, 0, "V"), M(0.05, 0, "m"), quantificationLimit: 0.1);
        Assert.Null(vessel.DistributionCoefficient);
        Assert.Contains(vessel.Findings, f => f.Code == "HF-485");
        Assert.Equal(99.8, BatchQuantities.LeastRemoval<Number>(50, 0.1).Value, 12);
    }

    [Fact]
    public void Significance_OfFewReadings_AsksForMore()
    {
        var few = Measured.From(50, new Source("c0", "start", 0.5, DegreesOfFreedom: 2));
        var known = Measured.From(50, new Source("c0", "start", 0.5));
        var end = Measured.From(49, new Source("c", "end", 0.0));
        // t(0.95, 2) = 2.919986 (any table of Student's t).
        Agree.Digits(6, 2.919986, Significance.Of(few, end, 1, 1).CriticalUptake / 0.5);
        Agree.Digits(15, 1.645, Significance.Of(known, end, 1, 1).CriticalUptake / 0.5);
        Assert.Equal(Ruling.NotShownYet, Significance.Of(few, end, 1, 1).Removed);
        Assert.Equal(Ruling.Holds, Significance.Of(known, end, 1, 1).Removed);
    }

    // Handbook table of this project (own computation): u(q)/q when each concentration is known to 2 %.
    [Theory]
    [InlineData(0.05, 0.55)]
    [InlineData(0.10, 0.27)]
    [InlineData(0.20, 0.13)]
    [InlineData(0.50, 0.045)]
    [InlineData(0.90, 0.022)]
    [InlineData(0.99, 0.020)]
    public void RelativeUOfUptake_AtTwoPercent_ShowsTheWorkingWindow(double removed, double expected)
    {
        Assert.Equal(expected, WorkingWindow.RelativeUOfUptake(0.02, removed), expected * 0.03);
        var c0 = M(100, 2, "c0");
        var c = M(100 * (1 - removed), 2 * (1 - removed), "c");
        Agree.Digits(12, WorkingWindow.RelativeUOfUptake(0.02, removed), BatchQuantities.Uptake(c0, c, 1.0, 1.0).RelativeU);
    }

    // Law: R/100 = s·Kd/(1 + s·Kd), and a slope error common to both concentrations leaves the removal untouched.
    [Fact]
    public void Removal_FollowsFromDoseAndDistributionCoefficient()
        => Gen.Select(Gen.Double[1, 100], Gen.Double[0.01, 0.99], Gen.Double[0.01, 1], Gen.Double[0.01, 5]).Sample((c0, left, volume, mass) =>
        {
            Number c = c0 * left;
            var s = BatchQuantities.Dose<Number>(mass, volume).Value;
            var kd = BatchQuantities.DistributionCoefficient<Number>(c0, c, volume, mass).Value;
            var slope = Measured.From(1, new Source("slope", "calibration slope", 0.02));
            var removal = BatchQuantities.Removal(c0 / slope, c.Value / slope);
            return Math.Abs(BatchQuantities.RemovedShare<Number>(c0, c).Value - s * kd / (1 + s * kd)) < 1e-13 && removal.U < 1e-12;
        });

    // One C0 serves a series: cov(q1, q2) = (V1/m1)(V2/m2)·u²(C0); and cov(q, Ce) = −(V/m)·u²(Ce).
    [Fact]
    public void Uptake_OfTwoVesselsFromOneStock_IsCorrelatedThroughIt()
    {
        var c0 = M(50, 0.5, "c0");
        var ce = M(12, 0.2, "c1");
        var first = BatchQuantities.Uptake(c0, ce, 0.05, 0.05);
        var second = BatchQuantities.Uptake(c0, M(30, 0.3, "c2"), 0.05, 0.025);
        Agree.Digits(14, 1.0 * 2.0 * 0.25, Measured.Covariance(first, second));
        Agree.Digits(14, -0.04, Measured.Covariance(first, ce));
    }

    // reference/measurement/uncertainty.json, "correlation by shared source": both concentrations read on one line y = a + b·x.
    [Fact]
    public void Uptake_ReadOnOneLine_HasTheUncertaintyOfTheSharedLine()
    {
        var line = CorrelatedInputs.Of([0.0015, 0.0595], [0.0008 * 0.0008, -0.75 * 0.0008 * 0.0004, -0.75 * 0.0008 * 0.0004, 0.0004 * 0.0004], "C-1", "line");
        var c0 = (M(0.24, 0.0012, "y0") - line[0]) / line[1];
        var ce = (M(0.21, 0.0012, "ye") - line[0]) / line[1];
        var q = BatchQuantities.Uptake(c0, ce, M(0.025, 3e-5, "V"), M(0.05, 0.0002, "m"));
        Agree.Digits(12, 4.008403361344538, c0.Value);
        Agree.Digits(12, 0.02775264753162375, c0.U);
        Agree.Digits(12, 0.025833698131011402, ce.U);
        Agree.Digits(12, 0.42722309662933183, Measured.Correlation(c0, ce));
        Agree.Digits(12, 0.25210084033613445, q.Value);
        Agree.Digits(11, 0.01439986792099144, q.U);
        Agree.Digits(11, -0.48532133036142416, Measured.Correlation(q, ce));
        Agree.Digits(11, 0.018986988895935746, BatchQuantities.Uptake(M(c0.Value, c0.U, "a"), M(ce.Value, ce.U, "b"), M(0.025, 3e-5, "V"), M(0.05, 0.0002, "m")).U);
    }

    [Fact]
    public void MolarUptake_AndDryMass_AreWhatTheySay()
    {
        Agree.Digits(14, 38.0 / 58.693, BatchQuantities.MolarUptake<Number>(38, 58.693).Value);
        Agree.Digits(15, 0.0475, BatchQuantities.DryMass<Number>(0.05, 0.05).Value);
    }

    internal static Measured M(double value, double u, string id) => Measured.From(value, new Source(id, id, u));

    private static (Measured C0, Measured C) Correlated(double c0, double u0, double c, double u, double r)
    {
        var both = CorrelatedInputs.Of([c0, c], [u0 * u0, r * u0 * u, r * u0 * u, u * u], "line", "calibration line");
        return (both[0], both[1]);
    }
}
