using CsCheck;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Testing;

namespace Holdfast.Tests.BatchSorption;

public class CorrectionTests
{
    // reference/sorption/control-correction.csv (own computation).
    [Fact]
    public void ControlCorrection_TheReferenceCases_AgreeInThreeWays()
    {
        foreach (var row in ReferenceTable.Read("sorption", "control-correction.csv"))
        {
            var control = ControlCorrection.Of(
                row.Number("C0_mg_L"), row.Number("C_control_mg_L"), row.Number("Ce_mg_L"), row.Number("V_mL") / 1000, row.Number("m_mg") / 1000);
            Agree.Digits(10, row.Number("q_from_C0"), control.Upper.Value, row["case"]);
            Agree.Digits(10, row.Number("q_from_control"), control.Lower.Value, row["case"]);
            Agree.Digits(10, row.Number("q_wall_proportional"), control.WallProportional.Value, row["case"]);
        }
    }

    // Law: the wall-proportional uptake lies between the two bounds, and equals both when nothing is lost.
    [Fact]
    public void WallProportionalUptake_LiesBetweenTheBounds()
        => Gen.Select(Gen.Double[1, 100], Gen.Double[0.5, 1], Gen.Double[0, 1]).Sample((c0, kept, left) =>
        {
            var control = c0 * kept;
            var correction = ControlCorrection.Of(c0, control, control * left, 0.05, 0.05);
            const double Slack = 1e-10;
            return correction.Lower.Value <= correction.WallProportional.Value + Slack && correction.WallProportional.Value <= correction.Upper.Value + Slack;
        });

    [Fact]
    public void BoundsDiffer_OnlyByMoreThanTheUptakeIsKnown()
    {
        var c0 = BatchQuantitiesTests.M(20, 0.1, "c0");
        var end = BatchQuantitiesTests.M(5, 0.1, "c");
        Assert.True(ControlCorrection.Of(c0, BatchQuantitiesTests.M(19.2, 0.1, "k"), end, 0.05, 0.05).BoundsDiffer);
        Assert.False(ControlCorrection.Of(c0, BatchQuantitiesTests.M(19.95, 0.1, "k"), end, 0.05, 0.05).BoundsDiffer);
    }

    // reference/sorption/aliquots.csv (own computation): eight 5 mL samples from 100 mL.
    [Fact]
    public void Aliquots_TheReferenceSeries_AgreesStepByStepAndInTotal()
    {
        var rows = ReferenceTable.Read("sorption", "aliquots.csv");
        Number[] c = [.. rows.Select(r => (Number)r.Number("C_mg_L"))];
        Number[] withdrawn = [.. rows.Select(r => (Number)(r.Number("liquid_withdrawn_mL") / 1000))];
        var c0 = rows[0].Number("C_mg_L") + rows[0].Number("q_uncorrected_mg_g"); // 100 mL and 100 mg: V/m is 1 L/g.
        var uptakes = Aliquots.Uptake(c0, c.AsSpan(), withdrawn, (Number)0.1, (Number)0.1);
        for (var i = 0; i < rows.Count; i++)
        {
            Agree.Digits(10, rows[i].Number("q_stepwise_mg_g"), uptakes[i].Value);
            Agree.Digits(10, rows[i].Number("q_uncorrected_mg_g"), BatchQuantities.Uptake(c0, c[i], 0.1, 0.1).Value);
        }

        Assert.Equal(0.4, Aliquots.Share([.. withdrawn.Select(w => w.Value)], 0.1), 12);
    }

    // Law: steps add up to the balance of the whole vessel, q = [C0·V0 − Σ C_j·v_j − C_n·(V0 − Σ v_j)]/m, sums over the samples before n.
    [Fact]
    public void Aliquots_AnySeries_ClosesTheBalanceOfTheVessel()
        => Gen.Select(Gen.Double[0, 50].Array[1, 8], Gen.Double[0.001, 0.01], Gen.Double[1, 60]).Sample((c, taken, c0) =>
        {
            Number[] concentrations = [.. c.Select(x => (Number)x)];
            Number[] withdrawn = [.. c.Select(_ => (Number)taken)];
            var last = Aliquots.Uptake(c0, concentrations.AsSpan(), withdrawn, 0.1, 0.2)[^1].Value;
            var before = c.Take(c.Length - 1).ToArray();
            var balance = (c0 * 0.1 - before.Sum(x => x * taken) - c[^1] * (0.1 - before.Length * taken)) / 0.2;
            return Math.Abs(last - balance) < 1e-10;
        });

    [Fact]
    public void Aliquots_MoreThanTheVesselHeld_Throws()
        => Assert.Throws<ArgumentException>(() => Aliquots.Uptake<Number>(1, [0.5, 0.4, 0.3], [0.06, 0.06, 0.06], 0.1, 0.1));

    [Fact]
    public void Recovery_AddsWhatIsFound()
        => Assert.Equal(0.95, MassBalance.Recovery<Number>(1.0, 0.2, 0.05, 0.7).Value, 15);
}
