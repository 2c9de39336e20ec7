using Holdfast.Fitting;
using Holdfast.Kinetics;
using Holdfast.Testing;
using Holdfast.Tests.Fitting;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.Kinetics;

public class KineticFitTests
{
    private const string Data = "kinetics-data.csv";
    private const string Expected = "kinetics-expected.csv";

    private static readonly Dictionary<string, string> Symbols = new(StringComparer.Ordinal) { ["alpha"] = "α", ["beta"] = "β" };

    public static TheoryData<string, string> Cases()
    {
        var cases = new TheoryData<string, string>();
        foreach (var (name, curve) in ReferenceFits.Pairs(Expected))
            cases.Add(name, curve);
        return cases;
    }

    // reference/sorption/kinetics-expected.csv, every case, from the scan alone. Exact data 1e-9, noisy values 1e-7, errors 1e-6.
    [Theory, MemberData(nameof(Cases))]
    public void Fit_OfEveryCase_AgreesWithTheTable(string name, string curve)
    {
        var fit = ReferenceFits.ModelOf(curve).Fit(ReferenceFits.PointsOf(Data, name), new() { Profiles = false });
        ReferenceFits.Check(
            Expected, name, curve, fit, s => fit[Symbols.GetValueOrDefault(s, s)].Value, s => fit[Symbols.GetValueOrDefault(s, s)].StandardError);
    }

    // First-order truth: the line of t/q on t looks second order (R² 0.995), the direct fits say first order by 21 units of AICc.
    [Fact]
    public void DirectFits_OfFirstOrderTruth_AreNotFooledByTheLine()
    {
        var points = ReferenceFits.PointsOf(Data, "edge-first-order-truth");
        var first = Fit.Of<PseudoFirstOrder>(points);
        var second = Fit.Of<PseudoSecondOrder>(points);
        Assert.True(second.Aicc!.Value - first.Aicc!.Value > 10);
    }

    // Second-order truth: the mixed curve runs to f2 = 1 with k = 0 and has nothing to add; whatever end it reports, it is no first-order share.
    [Fact]
    public void MixedOrder_OfSecondOrderTruth_RunsToItsBound()
    {
        var fit = Fit.Of<MixedOrder>(ReferenceFits.PointsOf(Data, "edge-mixed-goes-second"), new() { Profiles = false });
        Assert.True(!fit.IsFit || MixedOrder.Admissibility([.. fit.Values], 2, 180).Count == 1, fit.Stop.ToString());
    }

    // NIST StRD Misra1a to Misra1d (monomolecular adsorption; certified values and standard deviations in reference/nist-strd): Misra1a is
    // pseudo-first-order; Misra1d is Langmuir, and second order with k2 = b2/b1; all four are the general order with n held at 1, 1.5, 3 and 2.
    [Theory]
    [InlineData("Misra1a", 1.0)]
    [InlineData("Misra1b", 1.5)]
    [InlineData("Misra1c", 3.0)]
    [InlineData("Misra1d", 2.0)]
    public void GeneralOrder_OfNistMisra_AgreesWithTheCertificate(string name, double order)
    {
        var nist = NistSet.Read("nonlinear", name);
        var points = nist.Points;
        var fit = Fit.Of(new HeldOrder(order, [.. points.X]), HeldOrder.Card, points, new() { Starts = [[250, 5e-4], [500, 1e-4]], Scan = false, Profiles = false });
        Assert.True(fit.IsFit, fit.Stop.ToString());
        for (var i = 0; i < 2; i++)
        {
            Agree.Digits(9, nist.Certified[i], fit.Values[i], fit.Parameters[i].Symbol);
            Agree.Digits(8, nist.StandardDeviations[i], fit.Parameters[i].StandardError!.Value, "its standard deviation");
        }
    }

    [Fact]
    public void ShorterCurves_OfNistMisra_AgreeWithTheCertificate()
    {
        var nist = NistSet.Read("nonlinear", "Misra1a");
        var first = Fit.Of<PseudoFirstOrder>(nist.Points);
        Agree.Digits(9, nist.Certified[0], first["qe"].Value, "qe");
        Agree.Digits(9, nist.Certified[1], first["k1"].Value, "k1");
        nist = NistSet.Read("nonlinear", "Misra1d");
        var langmuir = Fit.Of<Holdfast.Isotherms.Langmuir>(nist.Points);
        Agree.Digits(9, nist.Certified[0], langmuir["qm"].Value, "qm");
        Agree.Digits(9, nist.Certified[1], langmuir["K"].Value, "K");
        Agree.Digits(8, nist.StandardDeviations[1], langmuir["K"].StandardError!.Value, "sd of K");
        var second = Fit.Of<PseudoSecondOrder>(nist.Points);
        Agree.Digits(9, nist.Certified[0], second["qe"].Value, "qe");
        Agree.Digits(9, nist.Certified[1] / nist.Certified[0], second["k2"].Value, "k2");
    }

    // The same fourteen points give qe 239, 338, 636 and 437 by curve, since they stop well before a plateau: an extrapolated qe belongs to the curve.
    [Fact]
    public void Capacity_OfNistMisra_BelongsToTheCurve()
    {
        var points = NistSet.Read("nonlinear", "Misra1a").Points;
        double[] expected = [239, 338, 636, 437];
        double[] order = [1, 1.5, 3, 2];
        for (var i = 0; i < order.Length; i++)
        {
            var fit = Fit.Of(new HeldOrder(order[i], [.. points.X]), HeldOrder.Card, points, new() { Starts = [[250, 5e-4], [500, 1e-4]], Scan = false, Profiles = false });
            Assert.Equal(expected[i], fit["b1"].Value, 0);
        }

        Assert.True(points.Y.Max() / 239 < 0.95);
    }

    /// <summary>The general order with n held.</summary>
    private readonly struct HeldOrder(double order, double[] times) : IPrediction
    {
        public static ModelCard Card { get; } = new(
            "General order, order held", "b1·(1 − (1 + (n − 1)·b2·x)^(−1/(n − 1)))",
            [new("b1", Kind.Response, "{y}", "plateau", Above: 0), new("b2", Kind.PerX, "1/({x})", "rate", Above: 0)], "test", "test");

        public int Count => times.Length;

        public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, Holdfast.Amounts.IReal<T> => GeneralOrder.Value<T>(times[i], [p[0], p[1], order]);
    }
}
