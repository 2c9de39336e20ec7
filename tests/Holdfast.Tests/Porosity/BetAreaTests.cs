using System.Collections.Immutable;
using System.Text.Json;
using Holdfast.Porosity;
using Holdfast.Testing;

namespace Holdfast.Tests.Porosity;

public class BetAreaTests
{
    private static readonly JsonElement Known = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "sorption", "synthetic-and-scalar.json"))).RootElement;

    /// <summary>The exact model isotherms.</summary>
    public static TheoryData<string> Exact => [.. Known.GetProperty("bet_exact").EnumerateArray().Select(e => e.GetProperty("file").GetString()!)];

    internal static ImmutableArray<SorptionPoint> Read(string file, string column = "amount_mmol_per_g", double scale = 1)
        => [.. ReferenceTable.Read("characterisation", "sorption", file).Select(r => new SorptionPoint(r.Number("p_over_p0"), r.Number(column) * scale))];

    // reference/characterisation/sorption: the BET equation itself.
    [Theory, MemberData(nameof(Exact))]
    public void Windows_OfTheEquationItself_AllGiveMonolayerAndC(string file)
    {
        var known = Known.GetProperty("bet_exact").EnumerateArray().Single(e => e.GetProperty("file").GetString() == file);
        var bet = BetArea.Of(Read(file));
        Assert.NotEmpty(bet.Windows);
        Assert.All(bet.Windows, w =>
        {
            Agree.Relative(1e-9, known.GetProperty("n_m_mmol_per_g").GetDouble(), w.Monolayer);
            Agree.Relative(1e-6, known.GetProperty("C").GetDouble(), w.C);
        });
        Agree.Relative(1e-8, known.GetProperty("area_m2_per_g").GetDouble(), bet.Windows[^1].Area);
        Agree.Relative(1e-8, known.GetProperty("single_point_area_m2_per_g").GetDouble(), BetArea.SinglePoint(Read(file).Single(p => p.X == 0.3)));
    }

    // ASTM D6556-19, example of carbon black N121 (table read in a stored copy): r = 0.999981 and 123.9 m²/g over 0.05 to 0.15.
    [Fact]
    public void Window_OfTheStandardsExample_GivesItsCorrelationAndArea()
    {
        var example = Known.GetProperty("scalars").GetProperty("standard_example_carbon_black");
        double[] x = Numbers(example, "p_over_p0"), v = Numbers(example, "volume_cm3stp_per_g");
        ImmutableArray<SorptionPoint> points = [.. x.Zip(v, (a, b) => new SorptionPoint(a, b / Nitrogen.StpPerMmol))];
        var three = BetWindow.Of(points, 0, 3);
        Assert.Equal(0.999981, Math.Sqrt(three.R2), 6);
        Assert.Equal(123.9, three.Area, 0.05);
        Agree.Relative(1e-6, 123.852949, three.Area);
        Agree.Relative(1e-6, 152.347268, three.C);
        Agree.Relative(1e-6, 123.986871, BetWindow.Of(points, 0, 4).Area);
    }

    // A textbook's rutile at 75 K: V_m 811 mm³ and C 310 in the book (from memory), 813.64 and 302.24 recomputed.
    [Fact]
    public void Window_OfATextbookExample_IsNearItsAnswer()
    {
        var book = Known.GetProperty("scalars").GetProperty("textbook_rutile_75K");
        double[] p = Numbers(book, "p_kPa"), v = Numbers(book, "volume_mm3_stp");
        var window = BetWindow.Of([.. p.Zip(v, (a, b) => new SorptionPoint(a / 76.0, b))], 0, p.Length);
        Agree.Relative(1e-6, 813.6436, window.Monolayer);
        Agree.Relative(1e-6, 302.2442, window.C);
        Assert.Equal(811, window.Monolayer, 0.01 * 811);
        Assert.Equal(310, window.C, 0.05 * 310);
    }

    // Micropores beside a flat area: the usual window gives C below 0 and must not be used.
    [Fact]
    public void Area_WithMicropores_IsTakenBelowTheUsualWindow()
    {
        var bet = BetArea.Of(Read("micro-plus-external.csv", "amount_cm3stp_per_g", 1 / Nitrogen.StpPerMmol));
        Assert.Equal((465, 9, 13), (bet.Windows.Length, bet.Accepted.Length, bet.Chosen!.Points));
        Agree.Relative(1e-6, 558.59332, bet.Chosen.Area);
        Agree.Relative(1e-5, 9514.63, bet.Chosen.C);
        Agree.Relative(1e-6, 558.59332, bet.Lowest);
        Agree.Relative(1e-6, 558.92317, bet.Highest);
        Agree.Relative(1e-6, -40.921334, bet.Fixed!.C);
        Agree.Relative(1e-6, 415.69692, bet.Fixed.Area);
        Assert.Contains(bet.Findings, f => f.Code == "HF-713" && f.Sentence.Contains("0.05 to 0.30", StringComparison.Ordinal));
        Assert.True(bet.IsApparent);
    }

    // Eight measured isotherms (MIT-licensed converter tests), with windows counted by another program.
    [Theory, InlineData("isotherm-a"), InlineData("isotherm-c"), InlineData("isotherm-d"), InlineData("isotherm-e"), InlineData("isotherm-g"), InlineData("isotherm-h"), InlineData("dut-67"), InlineData("dut-75")]
    public void Area_OfMeasuredIsotherms_PassesTheSameWindowsAsAnotherProgram(string name)
    {
        var expected = JsonDocument.Parse(File.ReadAllText(Repository.Verbatim("characterisation", "sorption", "isotherms-expected.json"))).RootElement.GetProperty(name);
        var branches = Measured(name);
        var bet = BetArea.Of(branches.Adsorption);
        var known = expected.GetProperty("bet").GetProperty("min_points_5");
        Assert.Equal(known.GetProperty("windows_tested").GetInt32(), bet.Windows.Length);
        Assert.Equal(known.GetProperty("pass_c1").GetInt32(), bet.Windows.Count(w => w.Rises));
        Assert.Equal(known.GetProperty("pass_c2").GetInt32(), bet.Windows.Count(w => w.IsPositive));
        Assert.Equal(known.GetProperty("pass_c1_to_c4").GetInt32(), bet.Windows.Count(w => w is { Rises: true, IsPositive: true, HoldsMonolayer: true, Matches: true }));
        Assert.Equal(known.GetProperty("accepted").GetInt32(), bet.Accepted.Length);
        if (!known.TryGetProperty("chosen", out var chosen))
        {
            Assert.Null(bet.Chosen);
            Assert.Contains(bet.Findings, f => f is { Code: "HF-712", Weight: Weight.Stop });
            return;
        }

        Agree.Relative(2e-6, chosen.GetProperty("area_m2_per_g").GetDouble(), bet.Chosen!.Area);
        Agree.Relative(2e-5, chosen.GetProperty("u_area_fit").GetDouble(), bet.Chosen.AreaU);
        Agree.Relative(2e-5, chosen.GetProperty("C").GetDouble(), bet.Chosen.C);
        Agree.Relative(1e-3, chosen.GetProperty("u_C").GetDouble(), bet.Chosen.CU);
        Agree.Relative(2e-6, known.GetProperty("accepted_area_min").GetDouble(), bet.Lowest);
        Agree.Relative(2e-6, known.GetProperty("accepted_area_max").GetDouble(), bet.Highest);
        Assert.Equal(expected.GetProperty("points_dropped").GetInt32(), ReadMeasured(name).Count(p => p.Branch == "adsorption") - branches.Adsorption.Length);
        Agree.Relative(2e-6, expected.GetProperty("gurvich_at_0.95").GetProperty("volume_cm3_per_g").GetDouble(), PoreVolume.At(branches.Adsorption, 0.95)!.Value);
        var line = expected.GetProperty("t_plot_harkins_jura_035_050_nm");
        var plot = LayerPlot.ByThickness(branches.Adsorption, ThicknessCurve.HarkinsJura)!;
        Assert.Equal((int)line.GetProperty("points").GetDouble(), plot.Points.Length);
        Agree.Relative(2e-5, line.GetProperty("external_area_m2_per_g").GetDouble(), plot.ExternalArea);
        Agree.Relative(1e-4, line.GetProperty("micropore_volume_cm3_per_g").GetDouble(), plot.MicroporeVolume);
        Agree.Relative(1e-5, line.GetProperty("R2").GetDouble(), plot.R2);
    }

    // Types as judged by eye by who made the reference.
    [Theory, InlineData("isotherm-a", "IV(a)"), InlineData("isotherm-c", "I"), InlineData("isotherm-d", "not classifiable"), InlineData("isotherm-e", "not classifiable"), InlineData("isotherm-g", "not classified"), InlineData("isotherm-h", "not classifiable"), InlineData("dut-67", "I"), InlineData("dut-75", "I-like")]
    public void Shape_OfMeasuredIsotherms_IsTheOneJudgedByEye(string name, string type)
    {
        var branches = Measured(name);
        Assert.StartsWith(type, IsothermShape.Of(branches, BetArea.Of(branches.Adsorption)).Type, StringComparison.Ordinal);
    }

    [Fact]
    public void Area_OfASmallSample_IsRefusedBelowOneSquareMetreInAll()
    {
        var points = Read("bet-exact-nm0.25-C25.csv");
        Assert.NotNull(BetArea.Of(points, 1.01 / 24.38967).Chosen);
        Assert.Null(BetArea.Of(points, 0.99 / 24.38967).Chosen);
        Assert.Contains(BetArea.Of(points, 9.9 / 24.38967).Findings, f => f.Sentence.Contains("grows quickly", StringComparison.Ordinal));
        Assert.DoesNotContain(BetArea.Of(points, 10.1 / 24.38967).Findings, f => f.Sentence.Contains("grows quickly", StringComparison.Ordinal));
    }

    internal static SorptionBranches Measured(string name)
        => SorptionBranches.Of([.. ReadMeasured(name).Where(p => p.Branch == "adsorption").Select(p => p.Point)], [.. ReadMeasured(name).Where(p => p.Branch == "desorption").Select(p => p.Point)]);

    private static (string Branch, SorptionPoint Point)[] ReadMeasured(string name)
        => [.. File.ReadLines(Repository.Verbatim("characterisation", "sorption", "isotherms", name + ".csv")).Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','))
            .Select(c => (c[0], new SorptionPoint(double.Parse(c[1], System.Globalization.CultureInfo.InvariantCulture), double.Parse(c[2], System.Globalization.CultureInfo.InvariantCulture))))];

    private static double[] Numbers(JsonElement of, string name) => [.. of.GetProperty(name).EnumerateArray().Select(e => e.GetDouble())];
}
