using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;
using Holdfast.Particles;
using Holdfast.Porosity;
using Holdfast.Statistics;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>What spoilt files brought down once, each by the smallest input that did.</summary>
public class FoundByFuzzingTests
{
    [Fact]
    public void Branches_OfPointsThatAreAllOutside_AreEmptyAndSaid()
    {
        var branches = SorptionBranches.ByTurn([new(1.2, 3), new(-0.1, 2)]);
        Assert.Empty(branches.Adsorption);
        Assert.Empty(branches.Desorption);
        Assert.Contains(branches.Findings, f => f.Sentence.StartsWith("2 points are left out", StringComparison.Ordinal));
    }

    // 3,500 cm³(STP)/g is 156.15 mmol/g (22.41397 cm³/mmol): on both sides of it.
    [Theory, InlineData(156.1, 0), InlineData(156.2, 1), InlineData(-156.2, 1)]
    public void Amount_ThatNoSolidHolds_IsLeftOutAndSaid(double amount, int leftOut)
    {
        var branches = SorptionBranches.ByTurn([new(0.1, 1), new(0.2, 2), new(0.3, amount)]);
        Assert.Equal(3 - leftOut, branches.Adsorption.Length);
        Assert.Equal(leftOut, branches.Findings.Count(f => f.Weight == Weight.Caution && f.Sentence.Contains("no solid holds", StringComparison.Ordinal)));
    }

    [Theory, InlineData("0.0003", false), InlineData("0.00031", true), InlineData("1000", true), InlineData("1001", false)]
    public void Mass_ThatNoneCanBe_IsLeftAsideAndSaid(string mass, bool isMass)
    {
        var rows = string.Concat(Enumerable.Range(1, 12).Select(i => FormattableString.Invariant($"{0.03 * i:F2},{1 + 0.1 * i:F2}\n")));
        var study = Reading.Taken(null, ("n2.csv", $"Sample,P-1\nSample mass (g),{mass}\nAdsorptive,N2\nRelative pressure (p/p0),Quantity adsorbed (mmol/g)\n{rows}"));
        var isotherm = Assert.Single(SorptionStudy.Of(Evidence.Of(study)).Isotherms);
        Assert.Equal(isMass, isotherm.Mass is not null);
        Assert.Equal(!isMass, isotherm.Findings.Any(f => f.Sentence.StartsWith("The mass of M-0001", StringComparison.Ordinal)));
    }

    [Theory, InlineData("x+x,y,z"), InlineData("x,y"), InlineData("x,y,z+1/0"), InlineData("xy,y,z")]
    public void Operation_OfNoSpaceGroup_IsNone(string text) => Assert.Null(SymmetryOperation.Parse(text));

    [Theory, InlineData("0.09", true), InlineData("5.1", true), InlineData("1.5406", false)]
    public void Wavelength_ThatNoPowderIsMeasuredWith_IsLeftAsideAndAsked(string wavelength, bool asked)
    {
        var counts = string.Concat(Enumerable.Range(0, 80).Select(i => FormattableString.Invariant($"{80 + 900 * Math.Exp(-(i - 40) * (i - 40) / 8.0):F0}\n")));
        var understood = Reading.Of("scan.cif", $"data_scan\n_pd_meas_2theta_range_min 20.0\n_pd_meas_2theta_range_max 27.9\n_pd_meas_2theta_range_inc 0.1\n_diffrn_radiation_wavelength {wavelength}\nloop_\n_pd_meas_counts_total\n{counts}");
        Assert.Equal(asked, understood.NeedsDecision);
        Assert.Equal(asked, understood.Findings.Any(f => f.Sentence.Contains("none that a powder is measured with", StringComparison.Ordinal)));
        Assert.DoesNotContain(understood.Findings, f => f.Code == Room.Code);
    }

    [Theory, InlineData(0.09, false), InlineData(0.11, true), InlineData(9.9e6, true), InlineData(1.1e7, false)]
    public void Size_ThatNoParticleHas_IsSaidAndCountedByNoAverage(double nanometres, bool counts)
    {
        var rows = string.Concat(Made.Sizes(40, 62, 0.28, 1).Select((s, i) => FormattableString.Invariant($"{i + 1},{s:F1}\n")));
        var understood = Reading.Of("P-1.csv", FormattableString.Invariant($"no,length (nm)\n{rows}41,{nanometres}\n"), Studies.Import.Answers.None.With("size:42", "as-written"));
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(!counts, understood.Findings.Any(f => f.Sentence.Contains("no size of a particle", StringComparison.Ordinal)));
        var list = Assert.Single(ParticleStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, ""))).Lists);
        Assert.Equal(counts ? 41 : 40, list.Particles.Length);
    }

    [Theory, InlineData(1000, 19.9, 0), InlineData(1000, 20.1, 1), InlineData(1000, 1e300, 1), InlineData(9.9, 0.1, 1), InlineData(15_001, 0.1, 1)]
    public void Point_OfNoInfraredSpectrum_IsSaidAndLeftOut(double wavenumber, double absorbance, int leftOut)
    {
        var outcome = Holdfast.Infrared.InfraredSpectrum.Of(Made.Spectrum().Select(p => (p.X, p.A)).Where(p => p.X != 1000).Append((wavenumber, absorbance)), Holdfast.Infrared.OrdinateScale.Absorbance);
        Assert.Equal(1801 - leftOut, outcome.Value!.Wavenumbers.Count);
        Assert.Equal(leftOut, outcome.Findings.Count(f => f.Sentence.StartsWith("1 points", StringComparison.Ordinal)));
    }

    // Elements that no place has together make no share.
    [Fact]
    public void Elements_InDifferentPlaces_HaveNoShare()
    {
        var study = Reading.Taken(null, ("ZC.csv", "Spectrum,O (wt%),Co (wt%),Zn (wt%)\nSpectrum 1,20.30,3.04,\nSpectrum 2,20.10,,76.70\nSpectrum 3,20.40,,76.50\n"));
        Assert.Empty(Assert.Single(Holdfast.Techniques.Elements.ElementStudy.Of(Evidence.Of(study)).Powders).Shares);
    }

    // Four images that differ: the interval of the median is far wider than that of particles taken one by one; widening factor √(4/3)·t(3)/z = 1.875 from tables of Student's t.
    [Fact]
    public void Interval_OfFewImages_IsWidenedByTheirNumber()
    {
        var chance = new SeededStream(3, "images");
        (double, string?)[] named = [.. Enumerable.Range(0, 4).SelectMany(i => Enumerable.Range(0, 30).Select(_ => (50 * Math.Exp(0.1 * i + 0.2 * chance.Normal()), (string?)$"image {i}")))];
        var byImage = SizeBootstrap.Quantile(named, 0.5, 1589);
        var single = SizeBootstrap.Quantile([.. named.Select(p => (p.Item1, (string?)null))], 0.5, 1589);
        Assert.True(byImage.Half > 2 * single.Half);
        var mean = SizeBootstrap.Mean(named)!;
        Assert.Equal(3, mean.DegreesOfFreedom);
        var sums = named.GroupBy(p => p.Item2).Select(g => g.Average(p => p.Item1)).ToArray();
        Assert.Equal(Summary.Of(sums).Sd!.Value / 2, mean.StandardError, 1e-9);
    }
}
