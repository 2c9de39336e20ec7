using CsCheck;
using Holdfast.Fluorescence;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

public class QuenchingLawTests
{
    /// <summary>Every law there is.</summary>
    public static TheoryData<string> Laws => [.. Quenching.All.Concat(Quenching.OverSiteConcentration).Select(m => m.Card.Name)];

    // Snapshot: a law added or lost shows here.
    [Fact]
    public void All_OfTheLaws_AreThese()
    {
        Assert.Equal(["Accessible fraction", "Sphere of action", "Static and dynamic", "Stern-Volmer"], Quenching.All.Select(m => m.Card.Name));
        Assert.Equal(["1:1 binding with depletion"], Quenching.OverSiteConcentration.Select(m => m.Card.Name));
    }

    // A law is found by reflection: every curve of the folder is in one of the two lists.
    [Fact]
    public void Curves_OfTheFolder_AreAllListed()
        => Assert.Equal(
            typeof(Quenching).Assembly.GetExportedTypes().Count(t => t is { IsValueType: true, Namespace: "Holdfast.Fluorescence" } && t.GetProperty("Card") is not null),
            Quenching.All.Count + Quenching.OverSiteConcentration.Count);

    [Theory, MemberData(nameof(Laws))]
    public void Value_WithoutQuencher_IsF0(string law)
    {
        var model = Quenching.Named(law)!;
        double[] p = [.. model.Card.Parameters.Select((parameter, i) => i == 0 ? 873.5 : parameter.Below is { } bound ? bound / 2 : 0.02)];
        Agree.Digits(14, 873.5, model.Value(0, p));
    }

    [Theory, MemberData(nameof(Laws))]
    public void Value_WithMoreQuencher_NeverRises(string law)
    {
        var model = Quenching.Named(law)!;
        Gen.Double[0.05, 0.95].Array[model.Card.Parameters.Count].Select(Gen.Double[0, 50], Gen.Double[0, 20]).Sample(
            (p, q, more) => model.Value(q + more, p) <= model.Value(q, p) * (1 + 1e-12), seed: "0000KOg3kmg0", iter: 500);
    }

    // The laws hold each other: with one constant at nothing, or all emitters within reach, every one is Stern and Volmer's.
    [Theory]
    [InlineData("Static and dynamic", 1.0, 0.02, 0.0)]
    [InlineData("Sphere of action", 1.0, 0.02, 0.0)]
    [InlineData("Accessible fraction", 1.0, 1.0, 0.02)]
    public void Value_WithItsExtraAtNothing_IsSternVolmer(string law, double a, double b, double c)
    {
        var simple = Quenching.Named("Stern-Volmer")!;
        foreach (var q in new[] { 0, 0.5, 7, 300.0 })
            Agree.Digits(14, simple.Value(q, [1, 0.02]), Quenching.Named(law)!.Value(q, [a, b, c]));
    }

    // Twice the sites of a tight complex: half of the sites are taken by an equal share of quencher (mass balance, derived).
    [Fact]
    public void Value_OfTightBinding_FollowsTheMassBalance()
    {
        var model = Quenching.Named("1:1 binding with depletion")!;
        Agree.Digits(9, 1000 - 700 * 0.5, model.Value(0.5, [1000, 0.3, 1e12]));
        Agree.Digits(6, 300, model.Value(5, [1000, 0.3, 1e12]));
    }

    // reference/measurement/flag-cases.csv, "upward curve": both bending laws are offered, not told apart; the line is out.
    [Fact]
    public void Compare_UpwardCurve_OffersBothAndExcludesTheLine()
    {
        var series = QuenchingSeries.Named("quadratic-noisy");
        var comparison = Quenching.Compare([.. Quenching.All.Select(m => m.Fit(series.Points))]);
        Assert.Equal(["Sphere of action", "Static and dynamic"], comparison.Survivors.Select(r => r.Fit.Card.Name).Order(StringComparer.Ordinal));
        Assert.Contains(comparison.Findings, f => f.Code == "HF-412");
        Assert.True(comparison.Ranked.Single(r => r.Fit.Card.Name == "Stern-Volmer").Delta > 10);
    }

    // "downward curve": accessible fraction 0.70 (0.01), and nothing else.
    [Fact]
    public void Compare_DownwardCurve_IsTheAccessibleFraction()
    {
        var series = QuenchingSeries.Named("accessible-noisy");
        var best = Assert.Single(Quenching.Compare([.. Quenching.All.Select(m => m.Fit(series.Points))]).Survivors).Fit;
        Assert.Equal("Accessible fraction", best.Card.Name);
        Assert.Equal(0.70, best["fa"].Value, 2);
        Assert.Equal(0.01, best["fa"].StandardError!.Value, 2);
    }

    // "complex roots": sum 0.020, product 0.00012 have no real constants. The finding keeps the law out of the ranking.
    [Fact]
    public void Constants_OfANegativeDiscriminant_AreNoneAndTheLawIsNotRanked()
    {
        Assert.Null(StaticAndDynamic.Constants(0.020, 0.00012));
        double[] q = [0, 5, 10, 20, 30, 40, 60, 80];
        double[] f = [.. q.Select((v, i) => 1000 / (1 + 0.020 * v + 0.00012 * v * v) * (1 + 0.004 * (i % 2 == 0 ? 1 : -1)))];
        var points = Quenching.PointsOf(q, f, "µmol/L", "").Value!;
        var fits = Quenching.All.Select(m => m.Fit(points)).ToArray();
        Assert.Contains(fits.Single(r => r.Card.Name == "Static and dynamic").Findings, d => d.Code == "HF-570");
        Assert.DoesNotContain(Quenching.Compare(fits).Ranked, r => r.Fit.Card.Name == "Static and dynamic");
    }

    // Binding stands over Q/H0, the others over Q: the same readings with the same weights, so they rank together.
    [Fact]
    public void Compare_WithBindingOverSites_RanksBindingFirstOnItsOwnData()
    {
        var series = QuenchingSeries.Named("binding-1-1-exact");
        double[] f = [.. series.F.Select((v, i) => v * (1 + 0.003 * (i % 3 - 1)))];
        var fits = Quenching.All.Select(m => m.Fit(Quenching.PointsOf(series.Q, f, "µmol/L", "").Value!))
            .Append(Quenching.OverSiteConcentration[0].Fit(Quenching.PointsOf([.. series.Q.Select(q => q / 10)], f, "", "").Value!));
        Assert.Equal("1:1 binding with depletion", Quenching.Compare([.. fits]).Ranked[0].Fit.Card.Name);
    }

    [Fact]
    public void PointsOf_ALevelWithoutLight_SaysSo()
        => Assert.Equal("HF-571", Assert.Single(Quenching.PointsOf([0, 5, 10], [100, 20, -1], "µmol/L", "").Findings).Code);

    // One emitter per sphere of radius 1 nm holds 4/3 π·1e-24 L·NA = 2.5225 L/mol (geometry).
    [Fact]
    public void Radius_OfAKnownVolume_IsItsRadius() => Agree.Digits(4, 1.0, SphereOfAction.RadiusNm(2.5225e-6));
}
