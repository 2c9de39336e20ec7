using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Tests.Isotherms;

public class IsothermListTests
{
    // Snapshot: a curve added or lost shows here.
    [Fact]
    public void All_OfTheIsotherms_AreThese()
    {
        Assert.Equal(
            [
                "BET in liquid", "Dual-site Langmuir", "Freundlich", "Henry", "Khan", "Langmuir", "Langmuir with partition", "Redlich-Peterson", "Sips",
                "Temkin", "Toth",
            ],
            Isotherm.All.Select(m => m.Card.Name));
        Assert.Equal(["Dubinin-Radushkevich"], Isotherm.OverRelativeConcentration.Select(m => m.Card.Name));
    }

    // Snapshot: a curve added or lost shows here.
    [Fact]
    public void All_OfTheKineticCurves_AreThese() => Assert.Equal(
        [
            "Avrami", "Diffusion into spheres", "Double exponential", "Elovich", "General order", "Mixed 1,2-order", "Pseudo-first-order",
            "Pseudo-second-order", "Weber-Morris",
        ],
        Kinetic.All.Select(m => m.Card.Name));

    [Fact]
    public void Named_ByAnAlias_IsTheOneCurve()
    {
        Assert.Equal("Sips", Isotherm.Named("Hill")?.Card.Name);
        Assert.Equal("Sips", Isotherm.Named("koble-corrigan")?.Card.Name);
        Assert.Null(Isotherm.Named("Langmuir-Hill"));
        Assert.Equal(2, Isotherm.CountDistinct(["Sips", "Hill", "Koble-Corrigan", "Langmuir"]));
    }

    // Every card can stand beside its number: formula with all symbols, a source, limits that say what a close fit does not show.
    [Fact]
    public void Card_OfEveryCurve_IsComplete()
        => Assert.All(Isotherm.All.Concat(Isotherm.OverRelativeConcentration).Concat(Kinetic.All), m =>
        {
            Assert.All(m.Card.Parameters, p =>
            {
                Assert.NotEmpty(p.Meaning);
                Assert.Contains(p.Symbol, m.Card.Formula, StringComparison.Ordinal);
            });
            Assert.InRange(m.Card.Parameters.Count, 1, 4);
            Assert.NotEmpty(m.Card.Source);
            Assert.Matches("not show|shows n|no evidence", m.Card.Limits);
        });
}
