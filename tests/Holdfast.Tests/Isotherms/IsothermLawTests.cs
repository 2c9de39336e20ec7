using CsCheck;

namespace Holdfast.Tests.Isotherms;

public class IsothermLawTests
{
    // Curves that start at the origin, by definition: Temkin does not (it crosses zero at C = 1/A), Weber-Morris has an intercept.
    [Theory]
    [InlineData("henry"), InlineData("langmuir"), InlineData("freundlich"), InlineData("dubinin_radushkevich"), InlineData("sips")]
    [InlineData("redlich_peterson"), InlineData("toth"), InlineData("khan"), InlineData("dual_langmuir"), InlineData("langmuir_partition")]
    [InlineData("bet_liquid"), InlineData("pseudo_first"), InlineData("pseudo_second"), InlineData("general_order"), InlineData("mixed_order")]
    [InlineData("elovich"), InlineData("avrami"), InlineData("double_exponential"), InlineData("sphere_diffusion")]
    public void Value_AtZero_IsZeroWithFiniteSlopes(string curve)
    {
        var model = CurveCase.Named(curve);
        double[] p = [.. model.Card.Parameters.Select((parameter, i) => parameter.Below is { } bound ? Math.Min(0.3, bound / 2) : 1.5 + 0.5 * i)];
        Assert.Equal(0, model.Value(0, p));
        var slopes = model.Slopes(0, p);
        Assert.All(Enumerable.Range(0, p.Length), i => Assert.True(double.IsFinite(slopes[i]), model.Card.Parameters[i].Symbol));
    }

    // Units of concentration (or time) and uptake are conventions: with parameters carried over by their unit the curve is the same curve.
    [Theory]
    [InlineData("henry", "r/x")]
    [InlineData("langmuir", "r 1/x")]
    [InlineData("temkin", "r 1/x")]
    [InlineData("sips", "r 1/x 0")]
    [InlineData("toth", "r 1/x 0")]
    [InlineData("khan", "r 1/x 0")]
    [InlineData("dual_langmuir", "r 1/x r 1/x")]
    [InlineData("langmuir_partition", "r 1/x r/x")]
    [InlineData("bet_liquid", "r 1/x 1/x")]
    [InlineData("pseudo_first", "r 1/x")]
    [InlineData("pseudo_second", "r 1/rx")]
    [InlineData("general_order", "r 1/x 0")]
    [InlineData("mixed_order", "r 1/x 0")]
    [InlineData("elovich", "r/x 1/r")]
    [InlineData("avrami", "r 1/x 0")]
    [InlineData("double_exponential", "r 0 1/x 1/x")]
    [InlineData("sphere_diffusion", "r 1/x")]
    public void Value_InOtherUnits_IsTheSame(string curve, string units)
    {
        var model = CurveCase.Named(curve);
        var unit = units.Split(' ');
        Gen.Double[0.2, 0.9].Array[unit.Length].Select(Gen.Double[0.1, 3], Gen.Double[0.01, 100], Gen.Double[0.01, 100]).Sample((p, x, perX, perY) =>
        {
            // Keeps BET below its pole.
            if (curve == "bet_liquid")
                p[2] /= 4 * x;
            double[] moved = [.. p.Select((v, i) => unit[i] switch
            {
                "r" => v * perY,
                "1/x" => v / perX,
                "r/x" => v * perY / perX,
                "1/r" => v / perY,
                "1/rx" => v / (perX * perY),
                _ => v,
            })];
            var here = model.Value(x, p) * perY;
            return Math.Abs(model.Value(x * perX, moved) - here) <= 1e-11 * (Math.Abs(here) + perY * p[0]);
        }, seed: "0000KOg3kmg0", iter: 500);
    }

    // KF and a of these two have a unit that depends on the exponent: KF → KF·y·x^(−1/n), a → a·x^(−g).
    [Fact]
    public void Value_OfPowerLawsInOtherUnits_FollowsTheExponent()
    {
        const double perX = 1 / 207.2;
        const double perY = 1 / 207.2;
        var freundlich = CurveCase.Named("freundlich");
        var here = freundlich.Value(37.5, [4.2, 2.3]);
        Assert.Equal(here * perY, freundlich.Value(37.5 * perX, [4.2 * perY * Math.Pow(perX, -1 / 2.3), 2.3]), 12);
        var peterson = CurveCase.Named("redlich_peterson");
        here = peterson.Value(37.5, [6.2, 0.115, 0.88]);
        Assert.Equal(here * perY, peterson.Value(37.5 * perX, [6.2 * perY / perX, 0.115 * Math.Pow(perX, -0.88), 0.88]), 12);
    }

    [Theory]
    [InlineData("langmuir"), InlineData("freundlich"), InlineData("temkin"), InlineData("sips"), InlineData("redlich_peterson"), InlineData("toth")]
    [InlineData("khan"), InlineData("dual_langmuir"), InlineData("langmuir_partition"), InlineData("pseudo_first"), InlineData("pseudo_second")]
    [InlineData("general_order"), InlineData("mixed_order"), InlineData("elovich"), InlineData("avrami"), InlineData("double_exponential")]
    [InlineData("weber_morris"), InlineData("sphere_diffusion")]
    public void Value_WithAdmissibleParameters_NeverFalls(string curve)
    {
        var model = CurveCase.Named(curve);
        Gen.Double[0.05, 0.95].Array[model.Card.Parameters.Count].Select(Gen.Double[0.01, 50], Gen.Double[1, 3]).Sample((p, x, factor) =>
            model.Value(x * factor, p) >= model.Value(x, p) * (1 - 1e-12 * Math.Sign(model.Value(x, p))), seed: "0000KOg3kmg0", iter: 500);
    }
}
