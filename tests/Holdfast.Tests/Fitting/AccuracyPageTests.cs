using System.Globalization;
using System.Text;
using Holdfast.Fitting;
using Holdfast.Fitting.Lines;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>
/// docs/accuracy.md: agreeing digits, case by case, worst first. Run with HOLDFAST_WRITE_DOCS=1 to write it; otherwise the page is held against the
/// numbers of this run.
/// </summary>
public class AccuracyPageTests
{
    private static readonly string Page = Repository.Path("docs", "accuracy.md");

    // Digits change by a few tenths with the machine's exp and log; what lies beyond thirteen is chance and is not told apart.
    private const double Drift = 1.0;
    private const double MostTold = 13;

    [Fact]
    public void AccuracyPage_OfThisRun_SaysWhatThePageSays()
    {
        var cases = Cases().OrderBy(c => c.Digits).ThenBy(c => c.Name, StringComparer.Ordinal).ToArray();
        if (Environment.GetEnvironmentVariable("HOLDFAST_WRITE_DOCS") == "1")
            File.WriteAllText(Page, Write(cases));
        var written = File.ReadAllLines(Page).Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Select(l => l.Split('|')).Where(c => c.Length == 6)
            .Where(c => double.TryParse(c[1], NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            .ToDictionary(c => c[2].Trim() + ", " + c[3].Trim(), c => double.Parse(c[1], CultureInfo.InvariantCulture), StringComparer.Ordinal);
        Assert.Equal(cases.Length, written.Count);
        foreach (var c in cases)
        {
            Assert.True(written.TryGetValue(c.Name + ", " + c.What, out var digits), $"{c.Name}, {c.What} is not on the page.");
            Assert.True(c.Digits >= digits - Drift, FormattableString.Invariant($"{c.Name}, {c.What}: {c.Digits:0.0} digits, the page says {digits:0.0}."));
            Assert.True(c.Digits >= c.Asked, FormattableString.Invariant($"{c.Name}, {c.What}: {c.Digits:0.0} digits, {c.Asked} are asked for."));
        }
    }

    private static string Write(IReadOnlyList<Case> cases)
    {
        var page = new StringBuilder();
        page.Append("""
            # Accuracy

            Agreeing digits, −log10 of the relative error, told up to 13, of every checked set of numbers that the regression engine, and what stands on it (temperature, metals in water,
            stages, beds), is held against: the worst number of each case, the worst case first. Written by the tests (`AccuracyPageTests`, with `HOLDFAST_WRITE_DOCS=1`); do not edit.

            Where the certified values have 11 digits only, the comparison is with the same solutions worked out to 17 digits (reference/nist-strd/SOURCE.md).


            """.Replace("\r", "", StringComparison.Ordinal));
        page.Append("| digits | case | what | asked |\n| --- | --- | --- | --- |\n");
        foreach (var c in cases)
            page.Append(CultureInfo.InvariantCulture, $"| {c.Digits:0.0} | {c.Name} | {c.What} | {c.Asked:0.#} |\n");
        return page.ToString();
    }

    private static IEnumerable<Case> Cases()
        => new[] { Nonlinear(), Linear(), Statistics(), SmallCurves(), Others(), Trade() }.SelectMany(c => c).Select(c => c with { Digits = Math.Min(c.Digits, MostTold) });

    private static IEnumerable<Case> Nonlinear()
    {
        using var json = System.Text.Json.JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "nist-strd", "nonlinear-17digit.json")));
        foreach (var name in NistSet.Names("nonlinear"))
        {
            var set = NistSet.Read("nonlinear", name);
            var exact = json.RootElement.GetProperty(name);
            foreach (var start in new[] { "start1", "start2" })
            {
                var fit = NistCurves.Fit(set, set.Numbers(start));
                var label = $"NIST {name} from {start}";
                yield return new(label, "parameters", Worst(exact.At("parameters").Doubles(), [.. fit.Values]), 6);
                if (name == "Lanczos1")
                    continue;
                yield return new(label, "standard deviations", Worst(exact.At("standardDeviation").Doubles(), [.. fit.Parameters.Select(p => p.StandardError!.Value)]), 6);
                yield return new(label, "residual sum of squares", Agree.DigitsOf(exact.At("residualSumOfSquares").GetDouble(), fit.SumOfSquares), 8);
            }
        }
    }

    private static IEnumerable<Case> Linear()
    {
        foreach (var name in NistSet.Names("linear"))
        {
            var set = NistSet.Read("linear", name);
            var fit = NistLinearTests.Fit(set);
            var asked = name == "Filip" ? 6 : 8;
            yield return new("NIST " + name, "coefficients", Worst(set.Certified, [.. fit.Coefficients]), asked);
            if (set.StandardDeviations.All(s => s > 0))
                yield return new("NIST " + name, "standard deviations", Worst(set.StandardDeviations, [.. fit.StandardErrors]), asked);
        }
    }

    private static IEnumerable<Case> Statistics()
    {
        foreach (var name in NistSet.Names("anova"))
        {
            var digits = Agree.DigitsOf(NistSet.Read("anova", name).Number("fStatistic"), OneWay.Of(NistStatisticsTests.Groups(name)).Value!.F);
            yield return new("NIST " + name, "F", digits, 4);
        }

        foreach (var name in NistSet.Names("univariate"))
        {
            var set = NistSet.Read("univariate", name);
            yield return new("NIST " + name, "standard deviation", Agree.DigitsOf(set.Number("standardDeviation"), Summary.Of(set.Y).Sd!.Value), 8);
        }
    }

    private static IEnumerable<Case> SmallCurves()
    {
        var file = RegressionData.Read("profile-likelihood-py.json").At("fits");
        foreach (var (key, model) in RegressionData.Curves)
        {
            var fit = model.Fit(RegressionData.Points(key));
            yield return new(fit.Card.Name, "parameters, without a start", Worst(file.At(key, "estimate").Doubles(), [.. fit.Values]), 8);
            yield return new(fit.Card.Name, "standard errors", Worst(file.At(key, "standardError").Doubles(), [.. fit.Parameters.Select(p => p.StandardError!.Value)]), 7);
            var limits = file.At(key, "profile", "level0.95", "limits").EnumerateArray().SelectMany(l => l.Doubles()).ToArray();
            yield return new(fit.Card.Name, "profile limits at 95 %",
                Worst(limits, [.. fit.Parameters.SelectMany(p => new[] { p.Profile!.Lower.Value!.Value, p.Profile.Upper.Value!.Value })]), 7);
        }
    }

    private static IEnumerable<Case> Others()
    {
        var bod = Fit.Of<PseudoFirstOrder>(RegressionData.Table("bod.csv", "Time", "demand"));
        var limits = RegressionData.Read("profile-likelihood-py.json").At("fits", "bod", "profile", "level0.95", "limits").EnumerateArray().SelectMany(l => l.Doubles()).ToArray();
        yield return new("BOD", "profile limits at 95 %",
            Worst(limits, [.. bod.Parameters.SelectMany(p => new[] { p.Profile!.Lower.Value!.Value, p.Profile.Upper.Value!.Value })]), 7);
        var york = RegressionData.Read("errors-in-variables-py.json").At("york");
        var rows = ReferenceTable.Read("regression", "york.csv");
        var line = York.Through(
            [.. rows.Select(r => r.Number("x"))], [.. rows.Select(r => r.Number("y"))],
            [.. rows.Select(r => 1 / Math.Sqrt(r.Number("wx")))], [.. rows.Select(r => 1 / Math.Sqrt(r.Number("wy")))]).Value!;
        yield return new("Pearson's points with York's weights", "slope and intercept",
            Worst([york.At("slope").GetDouble(), york.At("intercept").GetDouble()], [line.Slope, line.Intercept]), 10);
    }

    private static IEnumerable<Case> Trade() => TradeAccuracy.Cases().Select(c => new Case(c.Name, c.What, c.Digits, c.Asked));

    private static double Worst(double[] expected, double[] actual) => expected.Zip(actual, Agree.DigitsOf).Min();

    private sealed record Case(string Name, string What, double Digits, double Asked);
}
