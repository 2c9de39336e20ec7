using System.Text.Json;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Testing;

namespace Holdfast.Tests.Amounts;

/// <summary>First-order propagation against the printed examples of JCGM 100:2008 ("GUM") annex H and of Eurachem/CITAC QUAM.</summary>
public class PropagationTests
{
    private static readonly JsonElement Cases = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "measurement", "uncertainty.json"))).RootElement;

    // GUM H.2: R, X, Z of a circuit element from simultaneous readings of V, I, φ. Printed 127.732(71), 219.847(295), 254.260(236); r −0.588, −0.485, 0.993.
    [Fact]
    public void GumH2_SimultaneousReadings_GiveTheCorrelatedResults()
    {
        var h2 = Cases.GetProperty("GUM H.2");
        var data = new[] { "V", "I_A", "phi_rad" }.Select(n => Numbers(h2.GetProperty("data").GetProperty(n))).ToArray();
        var means = data.Select(d => d.Average()).ToArray();
        var covariance = new double[9];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                covariance[3 * i + j] = data[i].Zip(data[j], (a, b) => (a - means[i]) * (b - means[j])).Sum() / (5 * 4);
        }

        var inputs = CorrelatedInputs.Of(means, covariance, "H.2", "five simultaneous readings", 4);
        var (v, current, phase) = (inputs[0], inputs[1], inputs[2]);
        var z = v / current;
        var r = z * Measured.Scale(Math.Cos(phase.Value), phase, -Math.Sin(phase.Value));
        var x = z * Measured.Scale(Math.Sin(phase.Value), phase, Math.Cos(phase.Value));
        Measured[] results = [r, x, z];
        for (var k = 0; k < 3; k++)
        {
            Agree.Digits(10, h2.GetProperty("R_X_Z")[k].GetDouble(), results[k].Value);
            Agree.Digits(9, h2.GetProperty("u_R_X_Z")[k].GetDouble(), results[k].U);
        }

        Agree.Digits(9, h2.GetProperty("r_RX").GetDouble(), Measured.Correlation(r, x));
        Agree.Digits(9, h2.GetProperty("r_RZ").GetDouble(), Measured.Correlation(r, z));
        Agree.Digits(9, h2.GetProperty("r_XZ").GetDouble(), Measured.Correlation(x, z));
        Assert.Equal("127.732(71)", RoundedNumber.Of(r.Value, r.U).Brackets);
        Assert.Equal("254.26(24)", RoundedNumber.Of(z.Value, z.U).Brackets);
        Assert.Equal((-0.588, -0.485, 0.993), (Math.Round(Measured.Correlation(r, x), 3), Math.Round(Measured.Correlation(r, z), 3), Math.Round(Measured.Correlation(x, z), 3)));
    }

    // GUM H.3: correction of a thermometer at 30 °C from a line through eleven comparisons. Printed −0.1494 °C, u 0.0041 °C.
    [Fact]
    public void GumH3_AFittedLine_CarriesItsCorrelationIntoThePrediction()
    {
        var h3 = Cases.GetProperty("GUM H.3");
        var t = Numbers(h3.GetProperty("t")).Select(x => x - 20).ToArray();
        var line = StraightLine.Through(t, Numbers(h3.GetProperty("b")));
        Agree.Digits(9, h3.GetProperty("y1").GetDouble(), line.Intercept);
        Agree.Digits(9, h3.GetProperty("y2").GetDouble(), line.Slope);
        double ua = line.InterceptError!.Value, ub = line.SlopeError!.Value;
        var covariance = -t.Average() * ub * ub;
        Agree.Digits(9, h3.GetProperty("r").GetDouble(), covariance / (ua * ub));

        var p = CorrelatedInputs.Of([line.Intercept, line.Slope], [ua * ua, covariance, covariance, ub * ub], "H.3", "line", 9);
        var correction = p[0] + p[1] * 10;
        Agree.Digits(9, h3.GetProperty("b_at_30").GetDouble(), correction.Value);
        Agree.Digits(9, h3.GetProperty("u_at_30").GetDouble(), correction.U);
        Assert.Equal(9, correction.DegreesOfFreedom, 9);
        Assert.Equal("\u22120.1494(41)", RoundedNumber.Of(correction.Value, correction.U).Brackets);
        var apart = Measured.From(p[0].Value, new Source("a", "a", ua)) + Measured.From(p[1].Value, new Source("b", "b", ub)) * 10;
        Agree.Digits(9, h3.GetProperty("u_at_30_if_correlation_forgotten").GetDouble(), apart.U);
    }

    // GUM H.1: an end gauge. Printed u 32 nm, 16 degrees of freedom, U99 93 nm, 34 nm with second-order terms.
    [Fact]
    public void GumH1_AnEndGauge_GivesTheEffectiveDegreesOfFreedomAndTheSecondOrder()
    {
        var h1 = Cases.GetProperty("GUM H.1");
        const double Standard = 50_000_623;
        Measured[] inputs =
        [
            Measured.From(0, new Source("ls", "standard", 25, 18)),
            Measured.From(215, new Source("d1", "repeats", 5.8, 24)) + Measured.From(0, new Source("d2", "comparator, random", 3.9, 5))
                + Measured.From(0, new Source("d3", "comparator, systematic", 6.7, 8)),
            Measured.From(0, new Source("da", "difference of expansion", 1e-6 / Math.Sqrt(3), 50)),
            Measured.From(-0.1, new Source("th", "deviation of temperature", 0.41)),
            Measured.From(11.5e-6, new Source("as", "expansion of the standard", 2e-6 / Math.Sqrt(3))),
            Measured.From(0, new Source("dt", "difference of temperature", 0.05 / Math.Sqrt(3), 2)),
        ];
        var length = inputs[0] + inputs[1] - (Standard + inputs[0]) * (inputs[2] * inputs[3] + inputs[4] * inputs[5]);
        Agree.Digits(6, h1.GetProperty("uc_nm").GetDouble(), length.U);
        Agree.Digits(6, h1.GetProperty("dof_eff").GetDouble(), length.DegreesOfFreedom);
        var expanded = ExpandedUncertainty.Of(length, 0.99);
        Assert.Equal(16, expanded.DegreesOfFreedom);
        Agree.Digits(9, h1.GetProperty("t99_16").GetDouble(), expanded.K);
        Agree.Digits(6, h1.GetProperty("U99_nm").GetDouble(), expanded.U);

        var second = SecondOrder.Of(inputs, x => x[0] + x[1] - (Standard + x[0]) * (x[2] * x[3] + x[4] * x[5]));
        Agree.Digits(6, length.U, second.FirstOrder);
        Agree.Digits(6, h1.GetProperty("uc_with_second_order_nm").GetDouble(), second.WithSecondOrder!.Value);
        Assert.Equal(34, Math.Round(second.WithSecondOrder.Value));
        Assert.False(second.NeedsMonteCarlo);
    }

    // Eurachem/CITAC QUAM, examples A1 (from memory), A2 and A5 (summary tables): products and quotients of independent inputs.
    [Theory]
    [InlineData("QUAM A1", "1000 * m * P / V", "1002.70(86)")]
    [InlineData("QUAM A2", "1000 * rep * m * P / M / V", "0.102136(99)")]
    [InlineData("QUAM A5", "1 * c0 * VL * facid * ftime * ftemp / aV", "0.0364(35)")]
    public void Quam_AProductOfInputs_GivesThePrintedResult(string example, string model, string shown)
    {
        var given = Cases.GetProperty(example).GetProperty("inputs");
        Measured? result = null;
        var divide = false;
        foreach (var token in model.Split(' '))
        {
            if (token is "*" or "/")
            {
                divide = token == "/";
                continue;
            }

            var factor = given.TryGetProperty(token, out var pair)
                ? Measured.From(pair[0].GetDouble(), new Source(token, token, pair[1].GetDouble()))
                : double.Parse(token, System.Globalization.CultureInfo.InvariantCulture);
            result = result is not { } r ? factor : divide ? r / factor : r * factor;
        }

        Agree.Digits(11, Cases.GetProperty(example).GetProperty("value").GetDouble(), result!.Value.Value);
        Agree.Digits(11, Cases.GetProperty(example).GetProperty("u").GetDouble(), result.Value.U);
        Assert.Equal(shown, RoundedNumber.Of(result.Value.Value, result.Value.U).Brackets);
    }

    // QUAM A1: 100 mL flask, tolerance 0.1 mL triangular, filling 0.02 mL, 20 ± 4 °C. Printed 0.07 mL.
    [Fact]
    public void TypeB_TheVolumeOfQuamA1_AgreesInEachPart()
    {
        var budget = Cases.GetProperty("QUAM A1").GetProperty("volume_budget");
        Agree.Digits(12, budget.GetProperty("flask100_tol").GetDouble(), TypeB.Triangular(0.1));
        Agree.Digits(12, budget.GetProperty("temp").GetDouble(), TypeB.Rectangular(100 * 2.1e-4 * 4));
        var volume = Measured.From(100, TypeB.Tolerance("flask", "flask", 0.1, Shape.Triangular))
            + Measured.From(0, TypeB.Tolerance("temperature", "temperature", 0.084))
            + Measured.From(0, new Source("filling", "filling", 0.02));
        Agree.Digits(12, budget.GetProperty("combined").GetDouble(), volume.U);
    }

    [Fact]
    public void TypeB_EachRule_DividesAsItSays()
    {
        Agree.Digits(15, 1 / Math.Sqrt(2), TypeB.Arcsine(1));
        Agree.Digits(15, 1 / Math.Sqrt(12), TypeB.Resolution(1));
        Agree.Digits(15, 0.5, TypeB.Certificate(1));
        Agree.Digits(15, 1 / 1.96, TypeB.Range95(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => TypeB.Rectangular(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => TypeB.Tolerance("x", "x", 1, Shape.Normal));
    }

    private static double[] Numbers(JsonElement array) => [.. array.EnumerateArray().Select(e => e.GetDouble())];
}
