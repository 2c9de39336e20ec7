using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

public class IsothermFitTests
{
    private const string Data = "isotherm-data.csv";
    private const string Second = "isotherm-data-second-scale.csv";
    private const string Expected = "isotherm-expected.csv";

    public static TheoryData<string, string> Cases()
    {
        var cases = new TheoryData<string, string>();
        foreach (var (name, curve) in ReferenceFits.Pairs(Expected))
        {
            // Profile limits have tests of their own below; here they would meet rows of other quantities.
            if (name is not ("edge-low-coverage" or "edge-saturated-only") || curve != "langmuir")
                cases.Add(name, curve);
        }

        return cases;
    }

    // reference/sorption/isotherm-expected.csv, every case, from the scan alone. Exact data 1e-9, noisy values 1e-7, errors 1e-6.
    [Theory, MemberData(nameof(Cases))]
    public void Fit_OfEveryCase_AgreesWithTheTable(string name, string curve)
    {
        var points = ReferenceFits.PointsOf(Data, name);
        if (curve != "dubinin_radushkevich")
        {
            var fit = ReferenceFits.ModelOf(curve).Fit(points, new() { Profiles = false });
            ReferenceFits.Check(Expected, name, curve, fit, symbol => fit[symbol].Value, symbol => fit[symbol].StandardError);
            return;
        }

        // The table's abscissa is (RT·ln(Cs/C))², ours C/Cs; k = b/(RT)².
        const double rt = 8.314462618e-3 * 298.15;
        Points relative = new([.. points.X.Select(e => Math.Exp(-Math.Sqrt(e) / rt))], points.Y, "", "mg/g");
        var found = Fit.Of<DubininRadushkevich>(relative, new() { Profiles = false });
        ReferenceFits.Check(
            Expected, name, curve, found,
            symbol => symbol == "qs" ? found["qs"].Value : DubininRadushkevich.Constant<Number>(found["b"].Value, 298.15).Value,
            symbol => symbol == "qs" ? found["qs"].StandardError : found["b"].StandardError / (rt * rt));
    }

    // One curve under three names: the constants of Hill and of Koble and Corrigan, with their errors, follow from the one fit.
    [Theory]
    [InlineData("sips-noisy", "sips")]
    [InlineData("sips-noisy", "hill")]
    [InlineData("sips-noisy", "koble_corrigan")]
    [InlineData("hill-noisy", "hill")]
    [InlineData("edge-s-shape", "hill")]
    public void Fit_OfSips_GivesTheConstantsOfItsOtherNames(string name, string curve)
    {
        var fit = Fit.Of<Sips>(ReferenceFits.PointsOf(name == "sips-noisy" ? Second : Data, name), new() { Profiles = false });
        Measured Quantity(string symbol) => fit.Derived(p => symbol switch
        {
            "qm" => p[0],
            "a" => p[1],
            "n" => p[2],
            "KD" => Sips.HillConstant(p[1], p[2]),
            "A" => Sips.KobleCorriganA(p[0], p[1], p[2]),
            "B" => Sips.KobleCorriganB(p[1], p[2]),
            _ => throw new ArgumentException(symbol, nameof(symbol)),
        })!.Value;
        ReferenceFits.Check(
            Expected, name, curve, fit, symbol => Quantity(symbol).Value, symbol => Quantity(symbol).U, name == "sips-noisy" ? "same rss" : null);
    }

    // Points below coverage 0.13: truth qm 100. The interval of qm is open upwards; the table's lower end is 58.96.
    [Fact]
    public void Fit_AtLowCoverage_LeavesTheCapacityOpen()
    {
        var fit = Fit.Of<Langmuir>(ReferenceFits.PointsOf(Data, "edge-low-coverage"));
        Agree.Relative(1e-6, 261.145269487, fit["qm"].Value, "qm");
        Agree.Relative(1e-5, 376.854752795, fit["qm"].StandardError!.Value, "its error");
        Agree.Relative(1e-7, 0.752471825322, fit.SumOfSquares, "rss");
        var profile = fit["qm"].Profile!;
        Agree.Relative(1e-4, 58.9638131039, profile.Lower.Value!.Value, "lower end");
        Assert.NotEqual(LimitKind.Closed, profile.Upper.Kind);
    }

    // Every point above coverage 0.97: truth K 0.6. The interval of K is open upwards; the table's lower end is 0.2328.
    [Fact]
    public void Fit_AtSaturation_LeavesTheAffinityOpen()
    {
        var fit = Fit.Of<Langmuir>(ReferenceFits.PointsOf(Data, "edge-saturated-only"));
        Agree.Relative(1e-7, 49.4620729332, fit["qm"].Value, "qm");
        Agree.Relative(1e-6, 1.03117082234, fit["K"].Value, "K");
        var profile = fit["K"].Profile!;
        Agree.Relative(1e-4, 0.232763600466, profile.Lower.Value!.Value, "lower end");
        Assert.NotEqual(LimitKind.Closed, profile.Upper.Kind);
    }

    // A straight line and an upward curve have no Langmuir capacity: the fit must not offer one.
    [Theory, InlineData("edge-straight-line"), InlineData("edge-upward-curve")]
    public void Fit_OfLangmuirWithoutABend_OffersNoCapacity(string name)
    {
        var fit = Fit.Of<Langmuir>(ReferenceFits.PointsOf(Data, name));
        Assert.True(!fit.IsFit || fit["qm"].Profile is { IsClosed: false }, fit.Stop.ToString());
    }

    // The fitted form is the one to reject: Khan's maximum at 16.67 and the exponent above 1 of an upward Freundlich.
    [Fact]
    public void Admissibility_OfFittedEdgeCases_IsFound()
    {
        var khan = Isotherm.Named("Khan")!;
        var fit = khan.Fit(ReferenceFits.PointsOf(Data, "edge-khan-falls"));
        Assert.Equal("HF-476", Assert.Single(khan.Admissibility([.. fit.Values], 0.8, 95)).Code);
        var freundlich = Isotherm.Named("Freundlich")!;
        fit = freundlich.Fit(ReferenceFits.PointsOf(Data, "edge-upward-curve"));
        Assert.Equal("HF-478", Assert.Single(freundlich.Admissibility([.. fit.Values], 2, 70)).Code);
    }

    // The same data in mg and in mmol of lead (207.2 g/mol): qm/M, K·M, and the errors with them.
    [Fact]
    public void Fit_InOtherUnits_IsTheSameFit()
    {
        const double molarMass = 207.2;
        var points = ReferenceFits.PointsOf(Second, "langmuir-noisy");
        var mg = Fit.Of<Langmuir>(points, new() { Profiles = false });
        var mmol = Fit.Of<Langmuir>(
            new([.. points.X.Select(c => c / molarMass)], [.. points.Y.Select(q => q / molarMass)], "mmol/L", "mmol/g"), new() { Profiles = false });
        ReferenceFits.Check(
            Expected, "langmuir-noisy", "langmuir", mmol, s => mmol[s.Split('_')[0]].Value, s => mmol[s.Split('_')[0]].StandardError, "same data");
        Agree.Relative(1e-10, mg["qm"].Value / molarMass, mmol["qm"].Value, "qm");
        Agree.Relative(1e-10, mg["K"].Value * molarMass, mmol["K"].Value, "K");
        Assert.Equal("L/mmol", mmol["K"].Unit);
    }
}
