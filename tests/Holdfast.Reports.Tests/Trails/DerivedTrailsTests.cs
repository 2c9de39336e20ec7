using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tests.Documents;
using Holdfast.Reports.Trails;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.Trails;

/// <summary>Numbers that follow from many vessels, back to the fits, points and cells they came from.</summary>
public class DerivedTrailsTests
{
    // Hidden truth of the invented study: 9.0 kJ/mol (K = 0.35 exp(−(9000/R)(1/T − 1/298.15)), reference/design, invented). The arithmetic of the line is
    // checked against row D18 of demo-seed-1589-verdicts.csv in the tests of the claims.
    [Fact]
    public void Enthalpy_LeadsToItsConstantsAndTheirCells()
    {
        var trail = Demo("dH:TEMP-298");
        Assert.InRange(9.0, trail.Value.Value - ExpandedUncertainty.Of(trail.Value).U, trail.Value.Value + ExpandedUncertainty.Of(trail.Value).U);
        Assert.InRange(9.0, trail.Value.Value - 2 * trail.Carried!.Value.U, trail.Value.Value + 2 * trail.Carried.Value.U);
        Assert.Equal(["TEMP-298", "TEMP-308", "TEMP-318"], trail.Fit!.Points.Select(p => p.Name));
        Assert.Equal(["K:TEMP-298", "K:TEMP-308", "K:TEMP-318"], trail.Inputs.Select(i => i.Trail));
        Assert.Equal(30 * 3, trail.Readings.Length);
        Assert.Equal(["aas-run3.xlsx, rows 10 to 39"], trail.Cells);
        Assert.Contains("dH:TEMP-298 = 16 ± 11 kJ/mol ← aas-run3.xlsx", trail.Line(), StringComparison.Ordinal);
    }

    // By derivation: with x = 1/T, the slope of a line weighs ln K by (x − mean x)/Σ(x − mean x)², so that a share of the propagated variance is that weight
    // times u(ln K), squared. The middle temperature lies next to the harmonic mean and says nearly nothing.
    [Fact]
    public void Enthalpy_SharesFollowTheDistanceFromTheHarmonicMean()
    {
        var trail = Demo("dH:TEMP-298");
        double[] x = [1 / 298.15, 1 / 308.15, 1 / 318.15];
        double[] part = [.. trail.Inputs.Select((k, i) => Math.Pow((x[i] - x.Average()) * k.Value.U / k.Value.Value, 2))];
        var shares = trail.Budget.Rows.ToDictionary(r => r.Name, r => r.Share, StringComparer.Ordinal);
        Assert.Equal(3, shares.Count);
        for (var i = 0; i < 3; i++)
            Agree.Relative(1e-6, 100 * part[i] / part.Sum(), shares["Langmuir fit of " + trail.Fit!.Points[i].Name]);
    }

    // ΔG° = −RT·ln K and K° = K·M·1000 mg/g·1 mol/L (Zhou and Zhou, Chem. Eng. Commun. 201 (2014) 1459), R = 8.314462618 J/(mol K) (CODATA 2018), Ni 58.6934 g/mol (IUPAC).
    [Fact]
    public void FreeEnergy_FollowsFromTheFittedAffinity()
    {
        var affinity = Demo("K:TEMP-308@langmuir");
        var constant = Demo("K:TEMP-308");
        Agree.Relative(1e-5, affinity.Value.Value * 58.6934 * 1000, constant.Value.Value);
        var free = Demo("dG:TEMP-308");
        Agree.Relative(1e-6, -8.314462618e-3 * 308.15 * Math.Log(constant.Value.Value), free.Value.Value);
        Agree.Relative(1e-6, 8.314462618e-3 * 308.15 * affinity.Value.RelativeU, free.Value.U);
    }

    // By derivation from the cells of samples/demo/mixtures.csv: α = (c0 − c)/c of nickel over that of zinc, in one vessel; the mean is geometric.
    [Fact]
    public void Selectivity_OfOneVesselAndOfAll_LeadsToTheSheet()
    {
        var mean = Demo("alpha:Zn");
        var vessels = mean.Inputs.Select(i => Demo(i.Trail!)).ToArray();
        Assert.Equal(["MIX-Zn-1", "MIX-Zn-2", "MIX-Zn-3"], vessels.Select(v => Assert.Single(v.Samples)));
        foreach (var v in vessels)
        {
            Assert.All(v.Inputs, i => Assert.StartsWith("mixtures.csv, row", i.From, StringComparison.Ordinal));
            var (c0, metal, rival) = (v.Inputs[0].Value.Value, v.Inputs[1].Value.Value, v.Inputs[2].Value.Value);
            Agree.Relative(1e-9, (c0 - metal) / metal * rival / (c0 - rival), v.Value.Value);
        }

        Agree.Relative(1e-9, Math.Pow(vessels.Aggregate(1.0, (product, v) => product * v.Value.Value), 1 / 3.0), mean.Value.Value);
    }

    // reference/design/demo-seed-1589-verdicts.csv, row D13 (capacity of ISO-298): see DemoVerdictTests; here the points are the 24 vessels and the fit is theirs.
    [Fact]
    public void FittedParameter_HasTheFitAndItsPoints()
    {
        var trail = Demo("qm:ISO-298@langmuir");
        Assert.Equal(24, trail.Fit!.Points.Length);
        Assert.All(trail.Fit.Points, p => Assert.Equal("q:" + p.Name, p.Trail));
        var k = Demo("K:ISO-298@langmuir").Value.Value;
        Assert.All(trail.Fit.Points, p => Agree.Relative(1e-9, trail.Value.Value * k * p.X / (1 + k * p.X), p.Fitted));
        Assert.Contains("24 points, 2 parameters", trail.Text(), StringComparison.Ordinal);
        Assert.Contains("point      ISO-60-3", trail.Text(), StringComparison.Ordinal);
    }

    // The balance of one stage: all that leaves the water is on the sorbent, in equilibrium with the outlet (R. E. Treybal, Mass-Transfer Operations, from memory).
    [Fact]
    public void StageDose_ClosesTheBalanceOfOneStage()
    {
        var plan = StagePlans.Of(DemoStudy.Dossier.Evidence).Plans[0];
        var trail = Demo($"m1:plating-rinse-water@6.8-2.38");
        Assert.Equal("g/L", trail.Unit);
        var fit = StagePlans.Isotherm(DemoStudy.Dossier.Evidence, plan.Series)!.Value.Fit;
        Agree.Relative(1e-9, (6.8 - 2.38) / fit.ValueAt(2.38), trail.Value.Value);
        Assert.All(trail.Inputs.Skip(2), i => Assert.NotNull(NumberTrail.Of(DemoStudy.Dossier.Evidence, i.Trail!)));
        foreach (var kind in new[] { "m2-fresh", "m2-counter", "m-floor" })
            Assert.True(Demo($"{kind}:plating-rinse-water@6.8-2.38").Value.Value < trail.Value.Value);
    }

    // reference/sorption/pzc-expected.csv, case "clear": 6.48276 with u 0.07764 for u(pH) 0.05.
    [Fact]
    public void PointOfZeroCharge_LeadsToTheTwoNeighbours()
    {
        var trail = TreatmentReportTests.Trail("pzc:PZC@0.01");
        Assert.Equal(6.48276, trail.Value.Value, 5);
        Assert.Equal(0.07764, trail.Value.U, 5);
        Assert.Equal([6, 6.35, 8, 6.9], trail.Inputs.Select(i => i.Value.Value));
        Assert.All(trail.Inputs, i => Assert.StartsWith("drift.csv, row", i.From, StringComparison.Ordinal));
    }

    // reference/sorption/breakthrough-expected.csv: N0 400 mg/L of bed, k 0.0004 L/(mg min), critical depth 3.68 cm; τ of the run of 10 cm is 400 min by construction.
    [Fact]
    public void BedConstants_LeadToTheCurveAndTheOutlets()
    {
        Agree.Relative(0.001, 400, TreatmentReportTests.Trail("tau:BED-10").Value.Value);
        Agree.Relative(0.001, 0.0004, TreatmentReportTests.Trail("kTh:BED-10").Value.Value);
        var perBed = TreatmentReportTests.Trail("N0:BED-10");
        Agree.Relative(0.001, 400, perBed.Value.Value);
        Assert.Equal(["τ", "C0", "U", "Z"], perBed.Inputs.Select(i => i.Symbol));
        Assert.Equal(23, perBed.Fit!.Points.Length);
        Agree.Relative(0.01, 400, TreatmentReportTests.Trail("N0-line:BED-05").Value.Value);
        var depth = TreatmentReportTests.Trail("Z0:BED-05");
        Agree.Relative(0.05, 3.68, depth.Value.Value);
        Assert.Equal(["tb:BED-05", "tb:BED-10", "tb:BED-15"], depth.Fit!.Points.Select(p => p.Trail));
        Agree.Relative(0.01, 252.8, TreatmentReportTests.Trail("tb:BED-10").Value.Value);
        Agree.Relative(0.01, 40, TreatmentReportTests.Trail("qb:BED-10").Value.Value);
    }

    // By derivation from ranges each taken at its middle: price 450, uses 5, disposal 1.5 per kg; eluent 30 L at 0.03, used 1.5 times; energy 0.075, labour 0.35 per m³;
    // removed 6.80 − 2.38 g/m³.
    [Fact]
    public void Cost_LeadsToTheDoseAndTheRangesOfTheClaim()
    {
        var study = DemoStudy.Dossier.Evidence.Study;
        var words = new (string Name, string Words)[]
        {
            ("rival", "1 to 3"), ("price", "300 to 600"), ("uses", "5"), ("disposal", "1 to 2"), ("eluent", "20 to 40"), ("eluent-price", "0.02 to 0.04"), ("eluent-uses", "1 to 2"),
            ("energy", "0.05 to 0.1"), ("labour", "0.2 to 0.5"), ("currency", "EUR 2026"), ("c0", "6.80 mg/L"), ("limit", "2.38 mg/L"),
        };
        var claim = study.Claims[0] with { Id = "priced", Rule = "low-cost", Parameters = words.ToImmutableSortedDictionary(w => w.Name, w => w.Words, StringComparer.Ordinal) };
        var evidence = Evidence.Of(study with { Claims = [claim] });
        var trail = NumberTrail.Of(evidence, "cost:priced")!;
        var dose = NumberTrail.Of(DemoStudy.Dossier.Evidence, "m1:plating-rinse-water@6.8-2.38")!.Value.Value;
        Agree.Relative(1e-9, (dose * (450.0 / 5 + 1.5) + 30 * 0.03 / 1.5 + 0.075 + 0.35) / (6.80 - 2.38), trail.Value.Value);
        Assert.Equal("EUR 2026 per g", trail.Unit);
        Assert.Equal("price", trail.Budget.Rows[0].Name);
        Assert.Equal("range in the claim: 300 to 600", trail.Inputs.Single(i => i.Symbol == "price").From);
        Assert.Contains("cost:priced", DerivedTrails.Behind(Dossier.Of(evidence.Study).Verdicts.First(v => v.Claim.Id == "priced"), evidence).Select(t => t.Address));
    }

    // Every number opens its trail, and a trail leads on to trails that are there (our own requirement).
    [Fact]
    public void Trails_LeadOn_AndTheirAddressesAreTheirOwn()
    {
        var evidence = DemoStudy.Dossier.Evidence;
        var all = DerivedTrails.Of(evidence).All;
        Assert.True(all.Length > 60);
        Assert.All(all, t => Assert.Same(t, NumberTrail.Of(evidence, t.Address)));
        var onward = all.SelectMany(t => t.Inputs.Select(i => i.Trail).Concat(t.Fit?.Points.Select(p => p.Trail) ?? [])).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        Assert.DoesNotContain(onward, a => NumberTrail.Of(evidence, a) is null);
        Assert.DoesNotContain(all, t => t.Samples.IsEmpty);
        Assert.Equal(all.Count(t => !t.Inputs.IsEmpty), DerivedTable.Of(evidence)!.Rows.Count);
    }

    // Deciding numbers of the claims lead to the trails behind them; a claim without such a number has none.
    [Theory]
    [InlineData("endothermic", "dH:TEMP-298")]
    [InlineData("capacity", "qm:ISO-298@langmuir")]
    public void Claim_NamesTheTrailOfTheNumberThatDecidedIt(string rule, string address)
    {
        var verdict = DemoStudy.Dossier.Verdicts.First(v => v.Claim.Rule.Contains(rule, StringComparison.Ordinal));
        Assert.Contains(address, DerivedTrails.Behind(verdict, DemoStudy.Dossier.Evidence).Select(t => t.Address));
        var calibration = DemoStudy.Dossier.Verdicts.First(v => v.Claim.Rule == "linear-calibration");
        Assert.Empty(DerivedTrails.Behind(calibration, DemoStudy.Dossier.Evidence));
    }

    // The raised link in the report: the note is there, and holds the fit and the cells.
    [Fact]
    public void Report_SetsANoteForTheEnthalpy()
    {
        var html = StudyReport.Html(DemoStudy.Dossier, new ReportOptions());
        Assert.Contains("Address: dH:TEMP-298.", html, StringComparison.Ordinal);
        Assert.Contains("Address: alpha:Zn.", html, StringComparison.Ordinal);
        Assert.Contains("Readings: aas-run3.xlsx, rows 10 to 39.", html, StringComparison.Ordinal);
    }

    private static NumberTrail Demo(string address) => NumberTrail.Of(DemoStudy.Dossier.Evidence, address) ?? throw new ArgumentException("There is no " + address, nameof(address));
}
