using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Regeneration;
using Holdfast.Testing;

namespace Holdfast.Tests.Regeneration;

public class CycleTests
{
    private static readonly IReadOnlyList<ReferenceRow> Data = ReferenceTable.Read("sorption", "cycles-data.csv");

    // reference/sorption/cycles-expected.csv (scipy 1.10.1): every row of every case.
    [Theory, InlineData("decay"), InlineData("stable"), InlineData("rises"), InlineData("three-cycles")]
    public void Trend_OfTheMadeSeries_AgreesInEveryRow(string of)
    {
        var (cycles, uptakes, masses) = Series(of);
        var trend = CycleTrend.Of(cycles, uptakes).Value!;
        var kept = trend.KeptPerCycle!;
        var seen = 0;
        foreach (var row in ReferenceTable.Read("sorption", "cycles-expected.csv").Where(r => r["case"] == of))
        {
            var (value, se) = row["quantity"] switch
            {
                "linear_loss_percent_of_first_per_cycle" => (100 * trend.LossPerCycle, (double?)null),
                "linear_slope" => (trend.PerCycle.Value, trend.PerCycle.StandardError),
                "linear_slope_low95" => (trend.PerCycle.Interval().Low, null),
                "linear_slope_high95" => (trend.PerCycle.Interval().High, null),
                "retention_per_cycle" => (kept.Value, kept.Value * kept.StandardError),
                "retention_low95" => (kept.Interval().Low, null),
                "retention_high95" => (kept.Interval().High, null),
                "last_over_first_percent" => (100 * uptakes[^1] / uptakes[0], null),
                "cumulative_uptake" => (uptakes.Sum(), null),
                "mean_of_later_minus_first" => (uptakes.Skip(1).Average() - uptakes[0], null),
                "z_with_vessel_to_vessel_sd_0.8" => (CycleEvidence.RiseZ(uptakes, 0.8), null),
                "slope_after_mass_correction" => (Corrected().PerCycle.Value, Corrected().PerCycle.StandardError),
                "share_of_loss_due_to_lost_sorbent" => (CycleQuantities.ShareByLostSorbent<Number>(trend.PerCycle.Value, Corrected().PerCycle.Value).Value, null),
                var other => throw new InvalidDataException(other),
            };
            Agree.Digits(8, row.Number("value"), value, row["quantity"]);
            if (row.Has("se"))
                Agree.Digits(8, row.Number("se"), se!.Value, row["quantity"]);
            seen++;
        }

        Assert.InRange(seen, 9, 11);

        CycleTrend Corrected() => CycleTrend.Of(cycles, [.. uptakes.Zip(masses, (q, m) => CycleQuantities.OnMassPresent<Number>(q, masses[0], m).Value)]).Value!;
    }

    // PMC9075951, table 6, first sorbent: −2.03 (−2.86..−1.20) % per cycle, computed from the print.
    [Fact]
    public void Trend_OfThePublishedSeries_AgreesWithComputation()
    {
        var rows = ReferenceTable.Read("sorption", "published", "reuse-m-ida-pgma.csv");
        var trend = CycleTrend.Of([.. rows.Select(r => (int)r.Number("cycle"))], [.. rows.Select(r => r.Number("relative_sorption_percent_A"))]).Value!;
        Agree.Digits(8, -2.03, trend.PerCycle.Value);
        Agree.Digits(8, 0.26027677576, trend.PerCycle.StandardError);
        Assert.Equal(-2.8583, trend.PerCycle.Interval().Low, 4);
        Agree.Digits(8, 0.978974720903, trend.KeptPerCycle!.Value);
        Assert.Equal(0.97105, trend.KeptPerCycle.Interval().Low, 5);
        Assert.Equal(0.98697, trend.KeptPerCycle.Interval().High, 5);
        Assert.Equal(-1, trend.Rank!.Tau);
    }

    // The fitted share lost is the trend's, and over five cycles AICc does not tell the two laws apart.
    [Fact]
    public void LinearAndGeometricLoss_OverFewCycles_AreNotToldApart()
    {
        var (cycles, uptakes, _) = Series("decay");
        Points points = new([.. cycles.Select(i => (double)i)], uptakes, "", "mg/g");
        FitResult line = Fit.Of<LinearLoss>(points), curve = Fit.Of<GeometricLoss>(points);
        Assert.True(line.IsFit && curve.IsFit);
        Agree.Digits(7, 0.0305781286278, line["d"].Value);
        Agree.Relative(2e-4, 0.967414479913, curve["r"].Value, "direct against ln q");
        Assert.InRange(Math.Abs(line.Aicc!.Value - curve.Aicc!.Value), 0, 4);
    }

    // Mass balance over three cycles, worked by hand: 40 on, 36 off; 38 on, 35 off; 37 on, 36 off leaves 8 mg.
    [Fact]
    public void LeftOn_OverCycles_IsWhatWasNotEluted()
    {
        Number left = 0;
        foreach (var (on, off) in new[] { (40.0, 36.0), (38, 35), (37, 36) })
            left = CycleQuantities.LeftOn<Number>(left, on, off);
        Assert.Equal(8, left.Value, 12);
        Assert.Equal(35.0 / 42, CycleQuantities.DesorptionEfficiency<Number>(4, 38, 35).Value, 12);
        Assert.Equal(2.0, CycleQuantities.Sorbed<Number>(50, 10, 0.05).Value, 12);
        Assert.Equal(1.5, CycleQuantities.Eluted<Number>(150, 0.01).Value, 12);
    }

    // reference/sorption/carry-over.csv: three volumes held back.
    [Fact]
    public void HeldBack_OfThreeCases_AgreesInEveryRow()
    {
        foreach (var row in ReferenceTable.Read("sorption", "carry-over.csv"))
        {
            Number v = row.Number("V_mL"), held = row.Number("held_back_mL");
            var acid = HeldBackLiquid.AddedAcid(row.Number("acid_mol_L"), v, held);
            Agree.Digits(8, row.Number("added_H_mol_L"), acid.Value);
            Agree.Digits(8, row.Number("pH_if_unbuffered_and_initially_neutral"), HeldBackLiquid.PhIfUnbuffered(acid).Value);
            Agree.Digits(8, row.Number("apparent_removal_percent_by_dilution"), 100 * HeldBackLiquid.ApparentRemovedShare(v, held).Value);
        }
    }

    [Fact]
    public void Rules_OfReuse_FollowTheCases()
    {
        foreach (var row in Flagged("R2"))
            Assert.Equal(row["verdict"] == "explain the rise", CycleEvidence.MustBeExplained(Input(row, "z_later_minus_first")));
        foreach (var row in Flagged("R5"))
        {
            var share = HeldBackLiquid.ApparentRemovedShare<Number>(Input(row, "V_mL"), Input(row, "held_back_mL")).Value;
            Assert.Equal(row["verdict"] == "correct first" ? Ruling.Contradicted : Ruling.Holds, HeldBackLiquid.MayBeLeftOut(share, Input(row, "u_removal_percent") / 100));
        }
    }

    [Fact]
    public void RiseQuestions_InOrder_EndWithTheRealEffect()
    {
        Assert.Equal(6, RiseQuestion.InOrder.Count);
        Assert.StartsWith("It is real", RiseQuestion.InOrder[^1].Reason, StringComparison.Ordinal);
    }

    // Shuffled replicates leave the trend.
    [Fact]
    public void Trend_OfShuffledValues_IsTheSame()
    {
        var (cycles, uptakes, _) = Series("decay");
        int[] order = [3, 0, 5, 1, 4, 2];
        var shuffled = CycleTrend.Of([.. order.Select(i => cycles[i])], [.. order.Select(i => uptakes[i])]).Value!;
        Agree.Digits(12, CycleTrend.Of(cycles, uptakes).Value!.PerCycle.Value, shuffled.PerCycle.Value);
        Assert.Equal("HF-620", Assert.Single(CycleTrend.Of([1, 2, 3], [41.2, 39.9, 39.1]).Findings).Code);
    }

    private static (int[] Cycles, double[] Uptakes, double[] Masses) Series(string of)
    {
        var rows = Data.Where(r => r["case"] == of).ToArray();
        return ([.. rows.Select(r => (int)r.Number("cycle"))], [.. rows.Select(r => r.Number("q_mg_g_on_first_mass"))], [.. rows.Select(r => r.Number("mass_present_mg"))]);
    }

    private static ReferenceRow[] Flagged(string rule)
    {
        var rows = ReferenceTable.Read("sorption", "flag-cases.csv").Where(r => r["rule"] == rule).ToArray();
        Assert.NotEmpty(rows);
        return rows;
    }

    private static double Input(ReferenceRow row, string name)
        => double.Parse(row["inputs"].Split("; ").Single(p => p.StartsWith(name + "=", StringComparison.Ordinal))[(name.Length + 1)..], System.Globalization.CultureInfo.InvariantCulture);
}
