using System.Text.Json;
using Holdfast.Porosity;
using Holdfast.Testing;

namespace Holdfast.Tests.Porosity;

public class PoreTests
{
    private const double PerStp = 1 / Nitrogen.StpPerMmol;

    private static readonly JsonElement Scalars = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "sorption", "synthetic-and-scalar.json"))).RootElement.GetProperty("scalars");

    // reference/characterisation/sorption/synthetic-and-scalar.json
    [Fact]
    public void Constants_OfNitrogen_GiveTheFactorsOfTheTrade()
    {
        Agree.Relative(1e-8, 22413.96954, Nitrogen.MolarVolumeStp);
        Agree.Relative(1e-8, 4.35258378, Nitrogen.AreaPerMmol / Nitrogen.StpPerMmol);
        Agree.Relative(1e-8, 0.00154680542, Nitrogen.LiquidPerMmol / Nitrogen.StpPerMmol);
    }

    [Fact]
    public void Thickness_OfBothCurves_IsTheTabulatedOne()
        => Assert.All(Scalars.GetProperty("thickness_nm").EnumerateArray(), t =>
        {
            Agree.Relative(1e-8, t.GetProperty("harkins_jura").GetDouble(), ThicknessCurve.HarkinsJura.At(t.GetProperty("p_over_p0").GetDouble()));
            Agree.Relative(1e-8, t.GetProperty("halsey").GetDouble(), ThicknessCurve.Halsey.At(t.GetProperty("p_over_p0").GetDouble()));
        });

    [Fact]
    public void KelvinRadius_AndPoreRadius_AreTheTabulatedOnes()
        => Assert.All(Scalars.GetProperty("kelvin").GetProperty("radius_nm").EnumerateArray(), k =>
        {
            Agree.Relative(1e-8, k.GetProperty("r_kelvin").GetDouble(), PoreSizes.KelvinRadius(k.GetProperty("p_over_p0").GetDouble()));
            Agree.Relative(1e-8, k.GetProperty("r_pore_harkins_jura").GetDouble(), PoreSizes.PoreRadius(k.GetProperty("p_over_p0").GetDouble()));
        });

    [Fact]
    public void AverageDiameter_FourVolumesOverArea_IsInNanometres()
        => Assert.All(Scalars.GetProperty("average_pore_diameter").EnumerateArray(), a =>
            Agree.Relative(1e-8, a.GetProperty("diameter_nm").GetDouble(), PoreVolume.AverageDiameter(a.GetProperty("volume_cm3_per_g").GetDouble(), a.GetProperty("area_m2_per_g").GetDouble())));

    // An exact straight line in t, and the composite whose bias is the method's own.
    [Theory]
    [InlineData("t-plot-exact.csv", 60.0, 0.18561665, 1e-8)]
    [InlineData("micro-plus-external.csv", 61.433471, 0.18486282, 1e-7)]
    public void TPlot_OfKnownIsotherms_GivesAreaAndVolume(string file, double area, double volume, double tolerance)
    {
        var plot = LayerPlot.ByThickness(BetAreaTests.Read(file, "amount_cm3stp_per_g", PerStp), ThicknessCurve.HarkinsJura)!;
        Agree.Relative(tolerance, area, plot.ExternalArea);
        Agree.Relative(tolerance, volume, plot.MicroporeVolume);
    }

    [Fact]
    public void TPlot_OverAShortRange_HasNoAnswer()
        => Assert.Null(LayerPlot.ByThickness(BetAreaTests.Read("t-plot-exact.csv", "amount_cm3stp_per_g", PerStp), ThicknessCurve.HarkinsJura, 0.35, 0.36));

    [Fact]
    public void AlphaPlot_AgainstAReference_GivesAreaAndVolume()
    {
        var reference = BetAreaTests.Read("alpha-s-exact.csv", "reference_cm3stp_per_g", PerStp);
        var sample = BetAreaTests.Read("alpha-s-exact.csv", "sample_cm3stp_per_g", PerStp);
        var plot = LayerPlot.ByReference(sample, reference, 9, 0.6, 1.2)!;
        Agree.Relative(1e-8, 210, plot.ExternalArea);
        Agree.Relative(1e-8, 0.0850742979, plot.MicroporeVolume);
    }

    // A forward model of cylinders must come back step by step.
    [Fact]
    public void PoreSizes_OfExactCylinders_ComeBack()
    {
        var sizes = PoreSizes.Of(BetAreaTests.Read("bjh-exact-isotherm.csv", "amount_cm3stp_per_g", PerStp), 0.99, 0.40)!;
        var steps = ReferenceTable.Read("characterisation", "sorption", "bjh-exact-steps.csv");
        Assert.Equal(steps.Count, sizes.Steps.Length);
        foreach (var (known, step) in steps.Zip(sizes.Steps))
        {
            Assert.Equal(known.Number("pore_volume"), step.Volume, 1e-8);
            Assert.Equal(known.Number("pore_area_m2_per_g"), step.Area, 1e-5);
            Assert.Equal(known.Number("d_mean_nm"), step.Diameter, 1e-6);
            Assert.Equal(known.Number("dV_film"), step.Film, 1e-8);
        }

        Assert.Equal(0.62, sizes.Volume, 1e-4);
    }

    // Isotherm A (MIT-licensed converter tests), worked out by another program.
    [Fact]
    public void PoreSizes_OfAMeasuredIsotherm_AgreeOnBothBranches()
    {
        var known = JsonDocument.Parse(File.ReadAllText(Repository.Verbatim("characterisation", "sorption", "bjh-isotherm-a.json"))).RootElement;
        var branches = BetAreaTests.Measured("isotherm-a");
        foreach (var (branch, name) in new[] { (branches.Adsorption, "adsorption"), (branches.Desorption, "desorption") })
        {
            var sizes = PoreSizes.Of(branch)!;
            Agree.Relative(1e-6, known.GetProperty(name).GetProperty("pore_volume_cm3_per_g").GetDouble(), sizes.Volume);
            Agree.Relative(1e-6, known.GetProperty(name).GetProperty("pore_area_m2_per_g").GetDouble(), sizes.Area);
            Agree.Relative(1e-5, known.GetProperty(name).GetProperty("mode_diameter_nm_dVdlogd").GetDouble(), sizes.Mode!.Value.Diameter);
        }
    }

    // A law: noise-free cylinders have a spread that grows with the error of the amounts and is the same each time.
    [Fact]
    public void Spread_OfTheSameData_IsTheSameEachTimeAndAboveZero()
    {
        var branch = BetAreaTests.Read("bjh-exact-isotherm.csv", "amount_cm3stp_per_g", PerStp);
        var (sizes, spread) = PoreSizes.WithSpread(branch, "A")!.Value;
        Assert.Equal(spread.AsEnumerable(), PoreSizes.WithSpread(branch, "A")!.Value.Spread);
        Assert.Equal(sizes.Steps.Length, spread.Length);
        Assert.All(spread, s => Assert.True(s > 0));
    }

    [Fact]
    public void Branches_OfAStackedList_TurnAtTheHighestPoint()
    {
        var branches = SorptionBranches.ByTurn([new(1.013, 0.9), new(0.1, 1), new(0.05, 2), new(0.3, 2), new(-0.1, 3), new(0.9, 5), new(0.6, 4), new(0.7, 4), new(0.2, 2)]);
        Assert.Equal([0.1, 0.3, 0.9], branches.Adsorption.Select(p => p.X));
        Assert.Equal([0.6, 0.2], branches.Desorption.Select(p => p.X));
        Assert.Equal(["2 points are left out: p/p0 is not between 0 and 1.", "1 point is left out: p/p0 does not rise there on adsorption.", "1 point is left out: p/p0 does not fall there on desorption."], branches.Findings.Select(f => f.Sentence));
    }

    [Fact]
    public void Branches_ListedTheOtherWayRound_AreTurned()
    {
        var branches = SorptionBranches.Of([new(0.9, 5), new(0.1, 1)], [new(0.2, 2), new(0.8, 4.5)]);
        Assert.Equal([0.1, 0.9], branches.Adsorption.Select(p => p.X));
        Assert.Equal([0.8, 0.2], branches.Desorption.Select(p => p.X));
    }

    // The limit on both sides: a fall of 0.1 % of the largest amount.
    [Theory, InlineData(0.0011, true), InlineData(0.0009, false)]
    public void Branches_WhereTheAmountFalls_SayWhere(double fall, bool said)
    {
        var branches = SorptionBranches.ByTurn([new(0.1, 1), new(0.5, 4), new(0.6, 4 - 5 * fall), new(0.9, 5)]);
        Assert.Equal(said ? 0.5 : null, branches.FallsAbove);
        Assert.Equal(said, branches.Findings.Any(f => f.Code == "HF-711"));
    }
}
