using System.Text.Json;
using Holdfast.Infrared;
using Holdfast.Testing;

namespace Holdfast.Tests.Infrared;

public class GroupTests
{
    [Fact]
    public void Table_EveryRow_IsARangeWithASource()
    {
        Assert.Equal(46, GroupRange.All.Count);
        Assert.All(GroupRange.All, r =>
        {
            Assert.InRange(r.Low, 400, r.High);
            Assert.NotEmpty(r.Source);
        });
    }

    // Bands of hydroxyapatite (assignment table of a SCIRP paper, row H of the correlation table): all phosphate rows support each other.
    [Fact]
    public void Possibilities_OfApatiteBands_PutPhosphateFirst()
    {
        Band[] bands = [Narrow(563), Narrow(602), Narrow(631), Narrow(962), Narrow(1046), Narrow(3572)];
        var found = GroupPossibility.Of(Whole, bands);
        Assert.Equal("phosphate", found[4].Possibilities[0].Range.Group);
        Assert.Equal(2, found[4].Possibilities[0].Seen.Count);
        Assert.False(found[4].Possibilities[0].IsWeakened);
        Assert.Equal("structural hydroxide (apatite OH)", found[5].Possibilities[0].Range.Group);
    }

    // A carboxylic acid needs its broad O-H beside C=O (same table); a narrow C-H band in that range is none.
    [Fact]
    public void Possibilities_OfACarbonylWithoutHydroxyl_WeakenTheAcid()
    {
        Band carbonyl = Narrow(1710);
        var alone = Acid(GroupPossibility.Of(Whole, [carbonyl, Narrow(2920)]));
        var partnered = Acid(GroupPossibility.Of(Whole, [carbonyl, new(2900, 5, 0.3, 0.3, 500)]));
        Assert.True(alone.IsWeakened);
        Assert.False(partnered.IsWeakened);

        GroupPossibility Acid(IReadOnlyList<(Band Band, IReadOnlyList<GroupPossibility> Possibilities)> all)
            => all.Single(b => b.Band == carbonyl).Possibilities.Single(p => p.Range.Group == "carboxylic acid");
    }

    [Fact]
    public void Possibilities_BelowTheMetalOxygenLimit_NameNoMetal()
        => Assert.All(GroupRange.All.Where(r => r.High <= 750 && r.Group.StartsWith("metal", StringComparison.Ordinal)), r => Assert.DoesNotContain("Fe", r.Group, StringComparison.Ordinal));

    // reference/characterisation/infrared/numeric-checks.json, carboxylate: example rows from PMC6272241, table 4.
    [Fact]
    public void Carboxylate_TheOpenExample_ReadsAsItsAuthorsDo()
    {
        var rows = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "infrared", "numeric-checks.json")))
            .RootElement.GetProperty("carboxylate").GetProperty("rows").EnumerateArray().ToList();
        var salt = Stretches(rows[0]);
        foreach (var row in rows)
        {
            var stretches = Stretches(row);
            Assert.Equal(row.GetProperty("delta").GetDouble(), stretches.Difference);
            Assert.Equal(row.GetProperty("label").GetString() == "unidentate" ? CarboxylateBinding.Unidentate : CarboxylateBinding.IonicOrBridging, stretches.Against(salt));
        }

        Assert.Equal(CarboxylateBinding.Chelating, new CarboxylateStretches(120, 1).Against(salt));
        Assert.Equal(CarboxylateBinding.NotTold, new CarboxylateStretches(226, 1).Against(salt));

        static CarboxylateStretches Stretches(JsonElement row)
            => CarboxylateStretches.Of(Narrow(row.GetProperty("nu_as").GetDouble()), Narrow(row.GetProperty("nu_s").GetDouble()));
    }

    private static InfraredSpectrum Whole { get; } =
        InfraredSpectrum.Of(Enumerable.Range(0, 1801).Select(i => (400 + 2.0 * i, 0.1)), OrdinateScale.Absorbance).Value!;

    private static Band Narrow(double wavenumber) => new(wavenumber, 1, 0.4, 0.4, 20);
}
