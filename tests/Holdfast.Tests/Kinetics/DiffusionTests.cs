using Holdfast.Amounts;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Kinetics;

public class DiffusionTests
{
    // reference/sorption/diffusion-sphere.csv: Crank's sums at 40 digits, printed with 12.
    [Fact]
    public void SphereDiffusion_AtEveryTime_AgreesWithCranksSeries()
    {
        foreach (var row in ReferenceTable.Read("sorption", "diffusion-sphere.csv"))
        {
            var time = row.Number("Dt_over_r2");
            Agree.Relative(2e-11, row.Number("F_exact"), SphereDiffusion.Fraction<Number>(time).Value, row["Dt_over_r2"]);
            Agree.Relative(2e-11, row.Number("F_vermeulen"), SphereDiffusion.Vermeulen<Number>(time).Value, "Vermeulen");
            Agree.Relative(1e-9, row.Number("Bt_true"), BoydTime.Exact(row.Number("F_exact")), "exact Boyd time");
            if (row.Has("Bt_low_F_formula"))
                Agree.Relative(1e-9, row.Number("Bt_low_F_formula"), BoydTime.Early(row.Number("F_exact")), "early");
            Agree.Relative(1e-9, row.Number("Bt_high_F_formula"), BoydTime.Late(row.Number("F_exact")), "late");
        }
    }

    // Both forms of the fraction are exact where they meet, so value and slope pass smoothly.
    [Fact]
    public void SphereDiffusion_WhereItsTwoFormsMeet_IsSmooth()
    {
        var below = SphereDiffusion.Fraction(Slopes.Parameter(0.01 * (1 - 1e-14), 0));
        var above = SphereDiffusion.Fraction(Slopes.Parameter(0.01, 0));
        Agree.Relative(1e-13, above.Value, below.Value, "value");
        Agree.Relative(1e-12, above[0], below[0], "slope");
    }

    // Crank 1975: half of the final uptake at D·t/r² = 0.03055 (four figures, from memory).
    [Fact]
    public void SphereDiffusion_AtCranksHalfTime_IsHalf() => Agree.Relative(1e-3, 0.5, SphereDiffusion.Fraction<Number>(0.03055).Value);

    // reference/sorption/diffusion-limited-bath.csv
    [Fact]
    public void LimitedBath_AtEveryTime_AgreesWithCranksSeries()
    {
        foreach (var row in ReferenceTable.Read("sorption", "diffusion-limited-bath.csv"))
        {
            var alpha = row.Number("alpha");
            Agree.Relative(1e-14, row.Number("first_root"), LimitedBath.Root(alpha, 1), "first root");
            Agree.Relative(1e-9, row.Number("F"), LimitedBath.Fraction(alpha, row.Number("Dt_over_r2")), row["alpha"]);
        }
    }

    // An endless bath is the constant surface; and the two forms of the limited bath meet.
    [Fact]
    public void LimitedBath_AtItsLimits_JoinsItsNeighbours()
    {
        foreach (var time in new[] { 1e-8, 1e-3, 0.05, 0.3 })
            Agree.Relative(1e-5, SphereDiffusion.Fraction<Number>(time).Value, LimitedBath.Fraction(1e6, time), "endless bath");
        foreach (var alpha in new[] { 0.05, 0.25, 1, 20 })
            Agree.Relative(2e-6, LimitedBath.Fraction(alpha, 1e-7), LimitedBath.Fraction(alpha, 1e-7 * (1 - 1e-9)), "where the forms meet");
        Assert.Equal(0, LimitedBath.Fraction(1, 0), 12);
        Assert.Equal(0.5, LimitedBath.FinalRemoval(LimitedBath.Alpha(2, 0.5)));
    }

    // reference/sorption/shrinking-core.csv
    [Fact]
    public void ShrinkingCore_ThreeLaws_AgreeWithTheTableAndInvert()
    {
        foreach (var row in ReferenceTable.Read("sorption", "shrinking-core.csv"))
        {
            foreach (var (control, column) in new[]
            {
                (CoreControl.Film, "t_over_tau_film"), (CoreControl.Layer, "t_over_tau_layer"), (CoreControl.Reaction, "t_over_tau_reaction"),
            })
            {
                Agree.Relative(1e-11, row.Number(column), ShrinkingCore.Time(control, row.Number("F")), column);
                Agree.Relative(1e-9, row.Number("F"), ShrinkingCore.Fraction(control, row.Number(column)), column);
            }
        }
    }

    // The rate of a film with a straight isotherm, held against small explicit steps of its own balance dC/dt = −kf·A·(C − q/Kd).
    [Fact]
    public void FilmDiffusion_WithAStraightIsotherm_IsFirstOrder()
    {
        const double kf = 2e-5, dose = 2, kd = 1.5, c0 = 10;
        var area = FilmDiffusion.OuterArea<Number>(dose, 1e-4, 1500).Value;
        Agree.Relative(1e-12, 3 * 2 / (1e-4 * 1500), area, "outer area");
        var k1 = FilmDiffusion.FirstOrderRate<Number>(kf, area, dose, kd).Value;
        var c = c0;
        const double step = 0.01;
        for (var t = 0; t < 100_000; t++)
            c -= step * kf * area * (c - (c0 - c) / dose / kd);
        var end = c0 / (1 + dose * kd);
        Agree.Relative(1e-4, end + (c0 - end) * Math.Exp(-k1 * 1000), c, "concentration after 1000 s");
        Agree.Relative(1e-12, kf, FilmDiffusion.Coefficient<Number>(-kf * area, area).Value, "film coefficient");
    }
}
