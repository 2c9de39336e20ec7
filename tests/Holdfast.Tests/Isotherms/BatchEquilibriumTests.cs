using CsCheck;
using Holdfast.Amounts;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

public class BatchEquilibriumTests
{
    // The definition: what left the liquid is on the solid.
    [Fact]
    public void Concentration_OfAnyIsotherm_ClosesTheMassBalance()
        => Gen.Select(Gen.Double[-3, 4], Gen.Double[-2, 2], Gen.Double[-2, 3], Gen.Double[-4, 2], Gen.Double[0.3, 3]).Sample((c, s, q, k, n) =>
        {
            var (c0, dose, qm, affinity) = (Math.Pow(10, c), Math.Pow(10, s), Math.Pow(10, q), Math.Pow(10, k));
            var langmuir = BatchEquilibrium.Concentration<Langmuir, Number>(c0, dose, [qm, affinity]).Value;
            Agree.Relative(1e-12, BatchEquilibrium.Langmuir<Number>(c0, dose, qm, affinity).Value, langmuir, "closed form");
            Closes(langmuir + dose * Langmuir.Value<Number>(langmuir, [qm, affinity]).Value, c0);
            var freundlich = BatchEquilibrium.Concentration<Freundlich, Number>(c0, dose, [qm, n]).Value;
            Closes(freundlich + dose * Freundlich.Value<Number>(freundlich, [qm, n]).Value, c0);
            var sips = BatchEquilibrium.Concentration<Sips, Number>(c0, dose, [qm, affinity, n]).Value;
            Closes(sips + dose * Sips.Value<Number>(sips, [qm, affinity, n]).Value, c0);
        }, seed: "0000KOg3kmg0", iter: 2000);

    // b² dwarfs 4·K·C0 on both sides: the schoolbook root would lose every digit. Expected values by the leading terms of the exact expansions.
    [Fact]
    public void Langmuir_AtExtremes_DoesNotCancel()
    {
        Agree.Relative(1e-12, 1e-3 / (1 + 1e9 - 1e-3), BatchEquilibrium.Langmuir<Number>(1e-3, 1e3, 1e6, 1).Value, "strong sorbent, trace");
        Agree.Relative(1e-9, 1e9 - 1e-2, BatchEquilibrium.Langmuir<Number>(1e9, 1e-3, 10, 1e3).Value, "flooded sorbent");
    }

    [Fact]
    public void Concentration_WithSlopes_AgreesWithDifferences()
    {
        double[] p = [85, 0.065];
        Slopes[] moving = [Slopes.Parameter(p[0], 0), Slopes.Parameter(p[1], 1)];
        var ce = BatchEquilibrium.Concentration<Langmuir, Slopes>(Slopes.Parameter(40, 2), Slopes.Parameter(0.5, 3), moving);
        double At(double qm, double k, double c0, double s) => BatchEquilibrium.Langmuir<Number>(c0, s, qm, k).Value;
        const double h = 1e-5;
        Agree.Relative(1e-7, (At(85 + h, 0.065, 40, 0.5) - At(85 - h, 0.065, 40, 0.5)) / (2 * h), ce[0], "qm");
        Agree.Relative(1e-7, (At(85, 0.065 + h, 40, 0.5) - At(85, 0.065 - h, 40, 0.5)) / (2 * h), ce[1], "K");
        Agree.Relative(1e-7, (At(85, 0.065, 40 + h, 0.5) - At(85, 0.065, 40 - h, 0.5)) / (2 * h), ce[2], "C0");
        Agree.Relative(1e-7, (At(85, 0.065, 40, 0.5 + h) - At(85, 0.065, 40, 0.5 - h)) / (2 * h), ce[3], "dose");
    }

    // The same through the list of isotherms, where the type is no longer known; uncertainty of C0 and dose carried by first order.
    [Fact]
    public void ConcentrationLeft_OfAListedIsotherm_CarriesSlopesAndUncertainty()
    {
        var model = Isotherm.Named("Langmuir")!;
        Slopes[] moving = [Slopes.Parameter(85, 0), Slopes.Parameter(0.065, 1)];
        var known = BatchEquilibrium.Concentration<Langmuir, Slopes>(Slopes.Parameter(40, 2), Slopes.Parameter(0.5, 3), moving);
        var by = new double[2];
        Assert.Equal(known.Value, model.ConcentrationLeft(40, 0.5, [85, 0.065], by), 13);
        Assert.Equal(known[0], by[0], 13);
        Assert.Equal(known[1], by[1], 12);
        var measured = model.ConcentrationLeft(
            Measured.From(40, new Source("c0", "start", 0.4)), Measured.From(0.5, new Source("s", "dose", 0.01)), [85, 0.065]);
        Assert.Equal(known.Value, measured.Value, 12);
        Agree.Relative(1e-12, Math.Sqrt(Math.Pow(0.4 * known[2], 2) + Math.Pow(0.01 * known[3], 2)), measured.U, "u(Ce)");
    }

    [Fact]
    public void Concentration_OfAMeaninglessVessel_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchEquilibrium.Concentration<Henry, Number>(-1, 1, [new Number(1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchEquilibrium.Concentration<Henry, Number>(1, 0, [new Number(1)]));
    }

    private static void Closes(double total, double c0) => Assert.InRange(total / c0, 1 - 1e-12, 1 + 1e-12);
}
