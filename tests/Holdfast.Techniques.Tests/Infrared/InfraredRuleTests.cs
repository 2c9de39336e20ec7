using System.Globalization;
using Holdfast.Claims;
using Holdfast.Infrared;
using Holdfast.Techniques.Infrared;

namespace Holdfast.Techniques.Tests.Infrared;

/// <summary>Each rule about spectra on plain numbers for each of its rulings, on both sides of its limits, and on whole files.</summary>
public class InfraredRuleTests
{
    private static readonly (double, double)[] Before = [(1041, 0.6), (1041.4, 0.6), (1040.7, 0.6)];

    // Resolution 4 cm⁻¹. A shift of 9 is seen, one of 3 is within the resolution, one of 5 with this scatter is not decided.
    [Theory]
    [InlineData(9, 0.3, Ruling.Holds)]
    [InlineData(-9, 0.3, Ruling.Holds)]
    [InlineData(1, 0.3, Ruling.Contradicted)]
    [InlineData(5, 2.0, Ruling.NotShownYet)]
    public void BandShifts_BySize_IsRuled(double shift, double scatter, Ruling ruling)
        => Assert.Equal(ruling, BandShifts.Decide(Before, Moved(shift, scatter), 4, measuredAlike: true).Gated);

    [Theory, InlineData(BandShifts.Limits.Preparations, Ruling.Holds), InlineData(BandShifts.Limits.Preparations - 1, Ruling.NotShownYet)]
    public void BandShifts_WithFewerPreparations_IsNotShown(int preparations, Ruling ruling)
        => Assert.Equal(ruling, BandShifts.Decide([.. Before.Take(preparations)], [.. Moved(15, 0.1).Take(preparations)], 4, measuredAlike: true).Gated);

    // Both sides of the one-sided bound: two groups of three alike to the last digit have only the propagated uncertainty, 0.6/√3 each.
    [Theory, InlineData(1e-3, Ruling.Holds), InlineData(-1e-3, Ruling.NotShownYet)]
    public void BandShifts_AtTheEdgeOfTheResolution_Turns(double beyond, Ruling ruling)
    {
        var bound = 1.6448536 * 0.6 * Math.Sqrt(2.0 / 3);
        (double, double)[] still = [(1041, 0.6), (1041, 0.6), (1041.001, 0.6)], moved = [.. still.Select(p => (p.Item1 + 4 + bound + beyond, 0.6))];
        Assert.Equal(ruling, BandShifts.Decide(still, moved, 4, measuredAlike: true).Gated);
    }

    [Fact]
    public void BandShifts_BetweenReflectionAndTransmission_IsMute()
    {
        Assert.Equal(Ruling.NotShownYet, BandShifts.Decide(Before, Moved(9, 0.3), 4, measuredAlike: false).Gated);
        Assert.Equal(Ruling.NotShownYet, BandShifts.Decide(Before, Moved(1, 0.3), 4, measuredAlike: false).Gated);
    }

    [Fact]
    public void BandShifts_OfOneSpectrumEach_SaysTheShiftAndDecidesNothing()
    {
        var decision = BandShifts.Decide([Before[0]], [(1052, 0.6)], 4, measuredAlike: true);
        Assert.Equal(Ruling.NotShownYet, decision.Gated);
        Assert.Equal(11, decision.Numbers[0].Value);
        Assert.NotNull(decision.Next);
        Assert.Contains(BandShifts.Decide([Before[0]], [(1042, 0.6)], 4, measuredAlike: true).Questions, q => q.Code == "Q11");
    }

    [Fact]
    public void BondFormed_ByLoadingAndControl_IsRuled()
    {
        Decision seen = BandShifts.Decide(Before, Moved(9, 0.3), 4, true), none = BandShifts.Decide(Before, Moved(1, 0.3), 4, true), open = BandShifts.Decide(Before, Moved(5, 2), 4, true);
        Assert.Equal(Ruling.Holds, BondFormed.Decide(seen, none).Gated);
        Assert.Equal(Ruling.Contradicted, BondFormed.Decide(seen, seen).Gated);
        Assert.Equal(Ruling.Contradicted, BondFormed.Decide(none, none).Gated);
        Assert.Equal(Ruling.NotShownYet, BondFormed.Decide(seen, open).Gated);
        Assert.Equal(Ruling.NotShownYet, BondFormed.Decide(seen, null).Gated);
        Assert.Contains(BondFormed.Decide(seen, null).Questions, q => q.Code == "Q04");
    }

    // A third component in each preparation and not in the mixture; in the mixture too; nowhere.
    [Fact]
    public void MoreThanMixture_ByWhatIsLeftOver_IsRuled()
    {
        SpectralMixing third = Mix(0.05, 1), again = Mix(0.05, 2), plain = Mix(0, 3);
        Assert.Equal(Ruling.Holds, MoreThanMixture.Decide([third, again], [plain]).Gated);
        Assert.Equal(Ruling.NotShownYet, MoreThanMixture.Decide([third], [plain]).Gated);
        Assert.Equal(Ruling.NotShownYet, MoreThanMixture.Decide([third, again], []).Gated);
        Assert.Equal(Ruling.Contradicted, MoreThanMixture.Decide([third, again], [Mix(0.05, 4)]).Gated);
        var additive = MoreThanMixture.Decide([plain, Mix(0, 5)], [Mix(0, 6)]);
        Assert.Equal(Ruling.NotShownYet, additive.Gated);
        Assert.Contains("does not show that there is none", additive.Reason, StringComparison.Ordinal);
    }

    // Deacon and Phillips' rule on the open example of PMC6272241: 205 ionic, 240 unidentate, 162 bridging.
    [Theory]
    [InlineData(240, CarboxylateBinding.Unidentate, Ruling.Holds)]
    [InlineData(240, CarboxylateBinding.Chelating, Ruling.Contradicted)]
    [InlineData(162, CarboxylateBinding.IonicOrBridging, Ruling.Holds)]
    [InlineData(205 + CarboxylateStretches.LargerBy, CarboxylateBinding.Unidentate, Ruling.NotShownYet)]
    [InlineData(205 - CarboxylateStretches.SmallerBy, CarboxylateBinding.Chelating, Ruling.NotShownYet)]
    public void CarboxylateBound_ByItsDistance_IsRuled(double distance, CarboxylateBinding claimed, Ruling ruling)
        => Assert.Equal(ruling, CarboxylateBound.Decide(new(distance, 1), new(205, 1), claimed, measuredAlike: true).Gated);

    // Three pellets before and after: the band at 1041 moves by 9, that at 1448 does not; the made spectrum has phosphate and no nitrile.
    [Fact]
    public void Claims_OnWholeFiles_AreJudged()
    {
        var files = Enumerable.Range(1, 3).SelectMany(i => new[] { ("HAp", 0.0), ("HAp loaded", 9.0) }.Select(f => (f.Item1, Seed: 10 * i + (int)f.Item2, Shift: f.Item2)));
        var study = Reading.Taken(null, files.Select(f => (
            string.Create(CultureInfo.InvariantCulture, $"scan{f.Seed}.csv"),
            $"sample,{f.Item1}\nresolution,4 cm-1\nwavenumber (cm-1),Absorbance\n" + string.Concat(Made.Spectrum(f.Seed, f.Shift).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:F1},{p.A:F5}\n"))))));
        var evidence = Holdfast.Claims.Analyses.Evidence.Of(study);
        Assert.Equal(6, InfraredStudy.Of(evidence).Spectra.Length);
        Assert.Equal(Ruling.Holds, Judged("band-shifts", ("before", "HAp"), ("after", "HAp loaded"), ("wavenumber", "1041 cm-1")));
        Assert.Equal(Ruling.Contradicted, Judged("band-shifts", ("before", "HAp"), ("after", "HAp loaded"), ("wavenumber", "1448 cm-1")));
        Assert.Equal(Ruling.NotShownYet, Judged("band-shifts", ("before", "HAp"), ("after", "HAp loaded"), ("wavenumber", "2200 cm-1")));
        Assert.Equal(Ruling.NotShownYet, Judged("bond-formed", ("before", "HAp"), ("after", "HAp loaded"), ("wavenumber", "1041 cm-1"), ("control", "none")));
        Assert.Equal(Ruling.Holds, Judged("group-shown", ("powder", "HAp"), ("group", "phosphate")));
        Assert.Equal(Ruling.Contradicted, Judged("group-shown", ("powder", "HAp"), ("group", "ester")));
        Assert.Equal(Ruling.NotShownYet, Judged("group-shown", ("powder", "HAp"), ("group", "adsorbed or lattice water")));
        Assert.Equal(Ruling.NotShownYet, Judged("group-shown", ("powder", "nobody"), ("group", "phosphate")));

        Ruling Judged(string rule, params (string Name, string? Words)[] about)
            => Defence.Rules.Single(r => r.Id == rule).Judge(Claim.Raised(rule, about), evidence).Ruling;
    }

    private static (double, double)[] Moved(double shift, double scatter) => [.. Before.Select((p, i) => (p.Item1 + shift + scatter * (i - 1), p.Item2))];

    private static SpectralMixing Mix(double extra, int seed)
    {
        InfraredSpectrum first = Of(Made.Spectrum(100)), second = Of(Made.Spectrum(101).Select(p => (p.X, 0.2 + 0.3 * Math.Exp(-Math.Pow((p.X - 2100) / 300, 2)))));
        var noisy = Made.Spectrum(200 + seed, extra: extra, weight: 0.6).ToArray();
        return SpectralMixing.Of(Of(noisy.Select(p => (p.X, p.A + 0.3 * second.At(p.X)!.Value))), first, second).Value!;
    }

    private static InfraredSpectrum Of(IEnumerable<(double, double)> points) => InfraredSpectrum.Of(points, OrdinateScale.Absorbance, 4).Value!;
}
