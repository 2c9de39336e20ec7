using System.Text.Json;
using Holdfast.Infrared;
using Holdfast.Testing;

namespace Holdfast.Tests.Infrared;

/// <summary>
/// reference/characterisation/infrared/mixture.csv and numeric-checks.json: two made parents and three made mixtures, least squares by numpy 1.24.2. No
/// share meets its bound there, so plain least squares is the answer.
/// </summary>
public class SpectralMixingTests
{
    private static readonly IReadOnlyList<ReferenceRow> Rows = ReferenceTable.Read("characterisation", "infrared", "mixture.csv");
    private static readonly JsonElement Expected = JsonDocument.Parse(
        File.ReadAllText(Repository.Path("reference", "characterisation", "infrared", "numeric-checks.json"))).RootElement.GetProperty("mixture");

    [Theory]
    [InlineData("exact_mixture", 6)]
    [InlineData("noisy_mixture", 6)]
    [InlineData("mixture_with_third_component", 6)]
    public void Of_AMixtureOfTwoParents_GivesTheirSharesAndBaseline(string column, double digits)
    {
        var found = SpectralMixing.Of(Column(column), Column("parent_a"), Column("parent_b")).Value!;
        var expected = Expected.GetProperty(column);
        var coefficients = expected.GetProperty("coefficients");
        Agree.Digits(digits, coefficients.GetProperty("parent_a").GetDouble(), found.Shares[0]);
        Agree.Digits(digits, coefficients.GetProperty("parent_b").GetDouble(), found.Shares[1]);
        Agree.Digits(digits, coefficients.GetProperty("offset").GetDouble(), found.Offset);
        Agree.Digits(digits, coefficients.GetProperty("slope_over_range").GetDouble(), found.Slope);
        Agree.Digits(5, expected.GetProperty("residual_sd").GetDouble(), found.ResidualSd);
        Agree.Digits(6, expected.GetProperty("pearson_with_parent_a").GetDouble(), found.Likeness[0]);
        Agree.Digits(6, expected.GetProperty("pearson_with_parent_b").GetDouble(), found.Likeness[1]);

        // The table's standard errors are those of white noise; ours are wider by the correlation of the residuals, never narrower.
        var white = expected.GetProperty("standard_uncertainty")[0].GetDouble();
        var wider = Math.Sqrt((1 + Math.Max(0, found.Autocorrelation)) / (1 - Math.Max(0, found.Autocorrelation)));
        Agree.Digits(3.5, white, found.ShareErrors[0] / wider);
        Assert.True(wider >= 1);
    }

    [Fact]
    public void Of_AMixtureWithAHiddenThird_NamesItsBand()
    {
        var found = SpectralMixing.Of(Column("mixture_with_third_component"), Column("parent_a"), Column("parent_b")).Value!;
        var band = found.LeftOver.MaxBy(b => Math.Abs(b.Absorbance))!;
        var expected = Expected.GetProperty("mixture_with_third_component");
        Assert.Equal(expected.GetProperty("largest_smoothed_residual_at").GetDouble(), band.Wavenumber, 8.0);
        // The table does not say how it smoothed.
        Agree.Relative(0.1, expected.GetProperty("largest_smoothed_residual").GetDouble(), band.Absorbance);
        Assert.True(band.InNoise > SpectralMixing.LeastResidual);
    }

    [Fact]
    public void Of_ANoisyMixture_LeavesNothingOver()
        => Assert.Empty(SpectralMixing.Of(Column("noisy_mixture"), Column("parent_a"), Column("parent_b")).Value!.LeftOver);

    // Law: a parent less another cannot be a sum of both; the share that would be below 0 is 0.
    [Fact]
    public void Of_ADifference_KeepsNoShareBelowNothing()
    {
        var a = Column("parent_a");
        var b = Column("parent_b");
        var difference = Spectrum(a.Wavenumbers.Select((v, i) => (v, a.Absorbances[i] - 0.2 * b.Absorbances[i])));
        Assert.Equal(0, SpectralMixing.Of(difference, a, b).Value!.Shares[1]);
    }

    [Fact]
    public void Of_TransmissionAgainstReflection_IsRefused()
    {
        var points = Column("parent_a").Wavenumbers.Zip(Column("parent_a").Absorbances).ToList();
        var reflected = InfraredSpectrum.Of(points, OrdinateScale.Absorbance, isReflected: true).Value!;
        var outcome = SpectralMixing.Of(reflected, Column("parent_a"));
        Assert.False(outcome.HasValue);
        Assert.Equal("HF-751", outcome.Findings[0].Code);
    }

    private static InfraredSpectrum Column(string name) => Spectrum(Rows.Select(r => (r.Number("wavenumber_cm-1"), r.Number(name))));

    private static InfraredSpectrum Spectrum(IEnumerable<(double, double)> points) => InfraredSpectrum.Of(points, OrdinateScale.Absorbance).Value!;
}
