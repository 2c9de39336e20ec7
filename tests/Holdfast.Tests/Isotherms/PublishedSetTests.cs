using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

public class PublishedSetTests
{
    private static readonly FitOptions Plain = new() { Profiles = false };

    // M. C. Newman, Quantitative Ecotoxicology, 2nd ed. 2012, example 3.6, p. 101: direct fit M 9.899 (0.521), K 2.097 (0.188).
    [Fact]
    public void Langmuir_OfNewmansZinc_AgreesWithThePrint()
    {
        var fit = Fit.Of<Langmuir>(Newman(), Plain);
        Assert.Equal(9.899, fit["qm"].Value, 3);
        Assert.Equal(0.521, fit["qm"].StandardError!.Value, 3);
        Assert.Equal(2.097, fit["K"].Value, 3);
        Assert.Equal(0.188, fit["K"].StandardError!.Value, 3);
    }

    // reference/sorption/published-expected.csv: five curves through the same ten points. Langmuir ranks last, and the capacity reads 9.9, 20 or 96 by
    // curve: the set does not identify one, though the print reports it to four digits.
    [Fact]
    public void Capacity_OfNewmansZinc_BelongsToTheCurve()
    {
        var rows = ReferenceTable.Read("sorption", "published-expected.csv").Where(r => r["dataset"] == "newman-zinc").ToArray();
        var aicc = new Dictionary<string, double>(StringComparer.Ordinal) { ["langmuir"] = Fit.Of<Langmuir>(Newman(), Plain).Aicc!.Value };
        Assert.Equal(-39.750575, aicc["langmuir"], 6);
        foreach (var curve in new[] { "freundlich", "sips", "redlich_peterson", "toth" })
        {
            var fit = ReferenceFits.ModelOf(curve).Fit(Newman(), Plain);
            Assert.True(fit.IsFit, curve);
            foreach (var row in rows.Where(r => r["method"] == curve))
            {
                if (row["quantity"] == "aicc")
                {
                    Assert.Equal(row.Number("computed_here"), fit.Aicc!.Value, 7);
                    continue;
                }

                Agree.Relative(1e-6, row.Number("computed_here"), fit[row["quantity"]].Value, curve);
                Agree.Relative(1e-5, row.Number("se"), fit[row["quantity"]].StandardError!.Value, curve);
            }

            aicc[curve] = fit.Aicc!.Value;
        }

        Assert.Equal("langmuir", aicc.MaxBy(a => a.Value).Key);
        var coverage = Langmuir.Coverage<Number>(Fit.Of<Langmuir>(Newman(), Plain)["K"].Value, 0.512).Value;
        Assert.Equal(0.52, coverage, 2);
    }

    // C. J. Geankoplis, Transport Processes and Unit Operations, example 12.1-1: direct fit 0.19402064 and 0.22297769 as a worked notebook gives them;
    // Langmuir qm 0.134. Example 12.2-1: 1 m³ of 0.21 kg/m³ with 1.4 kg carbon comes to 0.0632 kg/m³ and 0.1048 kg/kg, 69.9 % removed.
    [Fact]
    public void Freundlich_OfGeankoplisPhenol_GivesTheBatchAnswer()
    {
        var data = ReferenceTable.Read("sorption", "published", "geankoplis-phenol.csv");
        Points points = new([.. data.Select(r => r.Number("C_kg_m3"))], [.. data.Select(r => r.Number("q_kg_kg"))], "kg/m3", "kg/kg");
        var fit = Fit.Of<Freundlich>(points, Plain);
        Agree.Relative(1e-7, 0.19402064, fit["KF"].Value, "KF");
        Agree.Relative(1e-7, 0.22297769, 1 / fit["n"].Value, "1/n");
        Agree.Relative(1e-6, 0.00417231310664, fit["KF"].StandardError!.Value, "error of KF");
        Assert.Equal(0.134, Fit.Of<Langmuir>(points, Plain)["qm"].Value, 3);

        var ce = BatchEquilibrium.Concentration<Freundlich, Number>(0.21, 1.4, [.. fit.Values.Select(v => new Number(v))]).Value;
        Assert.Equal(0.0632, ce, 4);
        Assert.Equal(0.1048, (0.21 - ce) / 1.4, 4);
        Assert.Equal(69.9, 100 * (0.21 - ce) / 0.21, 1);
    }

    // Carbon monoxide on charcoal at 273 K (P. Atkins, Physical Chemistry; printed results from memory: 111 cm³, 7.51e-3 /kPa by the line). The direct fit
    // differs by 2.5 and 3.6 %: the line weighs the points otherwise, and the last point reaches a coverage of 0.40 only.
    [Fact]
    public void Langmuir_OfCarbonMonoxideOnCharcoal_IsNotDeterminedByThesePoints()
    {
        var data = ReferenceTable.Read("sorption", "published", "atkins-co-charcoal.csv");
        var fit = Fit.Of<Langmuir>(new([.. data.Select(r => r.Number("p_kPa"))], [.. data.Select(r => r.Number("V_cm3"))], "kPa", "cm3"), Plain);
        Agree.Relative(1e-7, 113.754692796, fit["qm"].Value, "V");
        Agree.Relative(1e-6, 2.43914927797, fit["qm"].StandardError!.Value, "its error");
        Agree.Relative(1e-7, 0.00723868887013, fit["K"].Value, "K");
        Agree.Relative(0.03, 111, fit["qm"].Value, "the print");
        var coverage = Langmuir.Coverage<Number>(fit["K"].Value, 93.3).Value;
        Assert.Equal(0.40, coverage, 2);
    }

    // Uptake at three start concentrations (published/trace-kinetics.csv, weak provenance). The line of t/q reads R² 0.9995 and more at each level; direct
    // fits leave second order and Elovich undecided at 50 and 200 µg/L.
    [Theory]
    [InlineData("50", false)]
    [InlineData("100", true)]
    [InlineData("200", false)]
    public void Curves_OfTraceKinetics_AgreeWithTheTable(string level, bool secondOrderRatherThanElovich)
    {
        var data = ReferenceTable.Read("sorption", "published", "trace-kinetics.csv").Where(r => r.Number("t_min") > 0).ToArray();
        Points points = new([.. data.Select(r => r.Number("t_min"))], [.. data.Select(r => r.Number($"q_mg_g_{level}_ug_L"))], "min", "mg/g");
        var fits = new Dictionary<string, FitResult>(StringComparer.Ordinal);
        foreach (var row in ReferenceTable.Read("sorption", "published-expected.csv").Where(r => r["dataset"] == $"trace-kinetics {level} ug/L" && r["method"] != "t/q line"))
        {
            if (!fits.TryGetValue(row["method"], out var fit))
                fit = fits[row["method"]] = ReferenceFits.ModelOf(row["method"]).Fit(points, Plain);
            Assert.True(fit.IsFit, row["method"]);
            var symbol = row["quantity"] switch { "alpha" => "α", "beta" => "β", var other => other };
            if (symbol == "aicc")
                Assert.Equal(row.Number("computed_here"), fit.Aicc!.Value, 7);
            else
            {
                Agree.Relative(1e-6, row.Number("computed_here"), fit[symbol].Value, $"{row["method"]} {symbol}");
                Agree.Relative(1e-5, row.Number("se"), fit[symbol].StandardError!.Value, $"{row["method"]} {symbol}, error");
            }
        }

        Assert.Equal(4, fits.Count);
        var gap = fits["elovich"].Aicc!.Value - fits["pseudo_second"].Aicc!.Value;
        Assert.Equal(secondOrderRatherThanElovich, gap > 10);
    }

    private static Points Newman()
    {
        var data = ReferenceTable.Read("sorption", "published", "newman-zinc.csv");
        return new([.. data.Select(r => r.Number("C_mmol_per_mL"))], [.. data.Select(r => r.Number("N_mmol_per_g"))], "mmol/mL", "mmol/g");
    }
}
