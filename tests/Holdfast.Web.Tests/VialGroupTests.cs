using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Web.Parts;

namespace Holdfast.Web.Tests;

public class VialGroupTests
{
    [Fact]
    public void Groups_OfASmallStudy_BeginWithAll()
    {
        var groups = VialGroup.Of(Made(VialGroup.MostAtOnce));
        Assert.Equal(VialGroup.All, groups[0].Id);
        Assert.Equal(VialGroup.MostAtOnce, VialGroup.Chosen(groups, null).Samples.Length);
    }

    [Fact]
    public void Groups_OfALargeStudy_BeginWithItsFirstSeriesAndEndWithAll()
    {
        var study = Made(VialGroup.MostAtOnce + 1);
        var groups = VialGroup.Of(study);
        Assert.Equal(["series:A", "series:B", "none", "instrument", VialGroup.All], groups.Select(g => g.Id));
        Assert.Equal(study.Samples.Length, groups.Where(g => g.Id != VialGroup.All).Sum(g => g.Samples.Length));
        Assert.Equal(study.Samples.Length, VialGroup.Chosen(groups, "all").Samples.Length);
        Assert.Equal("series:A", VialGroup.Chosen(groups, "no such").Id);
        Assert.All(VialGroup.Chosen(groups, "instrument").Samples, s => Assert.Equal(SampleRole.Standard, s.Role));
    }

    [Fact]
    public void Groups_OfOneKind_AreOne()
    {
        var study = new Study { Title = "invented", Samples = [.. Enumerable.Range(0, 400).Select(i => Vial(i, SampleRole.Vessel, "A"))] };
        Assert.Equal(VialGroup.All, Assert.Single(VialGroup.Of(study)).Id);
        Assert.Equal(VialGroup.All, Assert.Single(VialGroup.Of(new Study { Title = "invented" })).Id);
    }

    private static Study Made(int count) => new()
    {
        Title = "invented",
        Samples = [.. Enumerable.Range(0, count).Select(i => (i % 4) switch { 0 => Vial(i, SampleRole.Vessel, "A"), 1 => Vial(i, SampleRole.Vessel, "B"), 2 => Vial(i, SampleRole.Vessel, null), _ => Vial(i, SampleRole.Standard, null) })],
    };

    private static Sample Vial(int i, SampleRole role, string? series)
        => new($"V-{i}", role, series is null ? ImmutableSortedDictionary<string, Fact>.Empty : ImmutableSortedDictionary<string, Fact>.Empty.Add(SampleProperties.Series.Name, new Fact(SampleProperties.Series.Name, null, null, null, series, series, new Origin(null, "typed", null, 0, null))));
}
