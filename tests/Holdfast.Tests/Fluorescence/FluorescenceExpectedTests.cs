using Holdfast.Calibration;
using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

/// <summary>
/// Every row of reference/measurement/fluorescence-expected.csv: numpy 1.24.2 and scipy 1.10.1, fits repeated with R 4.2.2 nls. Exact series to 8 digits,
/// noisy ones to 6, as their source says.
/// </summary>
public class FluorescenceExpectedTests
{
    private const string Binding = "binding-1-1-exact";

    private static readonly Dictionary<string, (string Law, string Symbol)> Parameters = new(StringComparer.Ordinal)
    {
        ["linear/F0"] = ("Stern-Volmer", "F0"),
        ["linear/K"] = ("Stern-Volmer", "K"),
        ["static+dynamic/F0"] = ("Static and dynamic", "F0"),
        ["static+dynamic/sum KD+KS"] = ("Static and dynamic", "S"),
        ["static+dynamic/product KD*KS"] = ("Static and dynamic", "P"),
        ["sphere/F0"] = ("Sphere of action", "F0"),
        ["sphere/K"] = ("Sphere of action", "K"),
        ["sphere/V"] = ("Sphere of action", "V"),
        ["accessible/F0"] = ("Accessible fraction", "F0"),
        ["accessible/Ka"] = ("Accessible fraction", "Ka"),
        ["accessible/fa"] = ("Accessible fraction", "fa"),
    };

    /// <summary>Every row, by number.</summary>
    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Table.Count)];

    private static IReadOnlyList<ReferenceRow> Table { get; } = ReferenceTable.Read("measurement", "fluorescence-expected.csv");

    [Fact]
    public void Table_AllRows_AreTried() => Assert.Equal(102, Table.Count);

    [Theory, MemberData(nameof(Rows))]
    public void Row_OfTheTable_IsReproduced(int number)
    {
        var row = Table[number];
        var (value, error) = Found(row);
        var digits = row["dataset"].Contains("exact", StringComparison.Ordinal) ? 8 : 6;
        var at = $"{row["dataset"]}, {row["method"]}, {row["quantity"]}";
        Near(row.Number("value"), value, digits, at);
        if (row.Has("se"))
            Near(row.Number("se"), Assert.NotNull(error), StandardErrorDigits(row), at + ", se");
    }

    // scipy takes the covariance from differenced slopes: on the nearly parallel S and P of this law that leaves four digits. Exact slopes by hand at the
    // printed parameters give 4.034979, 0.0005252341 and 6.890629e-06, which are ours.
    private static double StandardErrorDigits(ReferenceRow row)
        => row["method"].StartsWith("static+dynamic", StringComparison.Ordinal) ? 3.8 : 5;

    // Rounding is all that is left of exact data: a sum of squares or standard error there has no digits to compare.
    private static void Near(double expected, double found, double digits, string at)
    {
        if (Math.Abs(expected) < 1e-12)
            Assert.True(Math.Abs(found) < 1e-8, $"{at}: {found}");
        else
            Agree.Digits(digits, expected, found, at);
    }

    private static (double Value, double? Error) Found(ReferenceRow row)
    {
        var (dataset, method, quantity) = (row["dataset"], row["method"], row["quantity"]);
        if (dataset.StartsWith("blanks", StringComparison.Ordinal))
            return (OfBlanks([.. dataset.Split(' ')[1..].Select(b => double.Parse(b, System.Globalization.CultureInfo.InvariantCulture))], quantity), null);
        if (dataset.StartsWith(Binding, StringComparison.Ordinal))
            return (OfBinding(method, quantity), null);
        var series = QuenchingSeries.Named(dataset);
        if (method.Contains("relative weights", StringComparison.Ordinal))
            return OfFit(series, method.Split(" (")[0], quantity);
        if (method == "static+dynamic roots")
        {
            var fit = series.Fit("Static and dynamic");
            var (larger, smaller) = Assert.NotNull(StaticAndDynamic.Constants(fit["S"].Value, fit["P"].Value));
            return (quantity == "larger K" ? larger : smaller, null);
        }

        if (method == "mandel on F0/F")
        {
            var mandel = Linearity.Of([.. series.Q.Zip(series.Ratios, (q, r) => new StandardReading(q, r))]).Mandel!;
            return (quantity == "F" ? mandel.F : mandel.P, null);
        }

        return method.StartsWith("line F0/F", StringComparison.Ordinal) ? OfLine(series, quantity) : (OfTwoLines(series, quantity), null);
    }

    private static (double, double?) OfFit(QuenchingSeries series, string method, string quantity)
    {
        if (quantity == "sum of squares (relative)")
            return (series.Fit(Parameters[method + "/F0"].Law).SumOfSquares, null);
        var (law, symbol) = Parameters[$"{method}/{quantity}"];
        var fit = series.Fit(law);
        return (fit[symbol].Value, fit[symbol].StandardError);
    }

    private static (double, double?) OfLine(QuenchingSeries series, string quantity)
    {
        var line = QuenchingPlots.Ratio(series.Q, series.F, series.F[0]).Value!.Line;
        return quantity == "slope" ? (line.Slope, line.SlopeError) : (line.Intercept, line.InterceptError);
    }

    private static double OfTwoLines(QuenchingSeries series, string quantity)
    {
        var lines = JoinedLines.Of(series.Q, series.Ratios).Value!;
        return quantity switch
        {
            "break" => lines.Break,
            "slope 1" => lines.First,
            "slope 2" => lines.Second,
            "SSE two lines (4 parameters)" => lines.SumOfSquares,
            _ => lines.OneLine.ResidualSquares,
        };
    }

    private static double OfBlanks(double[] blanks, string quantity)
    {
        DetectionLimit Limit(LimitDefinition definition) => SensorLimits.OfConstant(blanks, 0.02).Single(l => l.Definition == definition);
        return quantity switch
        {
            "mean blank" => blanks.Average(),
            "sd blank" => Holdfast.Statistics.Summary.Of(blanks).Sd!.Value,
            "3 s LOD" => Limit(LimitDefinition.ThreeSd).Value,
            "3.3 s LOD" => Limit(LimitDefinition.ThreePointThreeSd).Value,
            "10 s LOQ" => Limit(LimitDefinition.TenSd).Value,
            "3.3 s LOD low 95" => Limit(LimitDefinition.ThreePointThreeSd).Interval!.Value.Low,
            _ => Limit(LimitDefinition.ThreePointThreeSd).Interval!.Value.High,
        };
    }

    private static double OfBinding(string method, string quantity)
    {
        const double sites = 10;
        var series = QuenchingSeries.Named(Binding);
        if (method == "direct fit with depletion")
        {
            var points = Quenching.PointsOf([.. series.Q.Select(q => q / sites)], series.F, "", "counts").Value!;
            return BindingWithDepletion.BindingConstant<Holdfast.Amounts.Number>(Fit.Of<BindingWithDepletion>(points)["k"].Value, sites).Value;
        }

        var outcome = method.StartsWith("double reciprocal", StringComparison.Ordinal)
            ? QuenchingPlots.DoubleReciprocal(series.Q, series.F, series.F[0]) : QuenchingPlots.DoubleLogarithmic(series.Q, series.F, series.F[0]);
        Assert.Contains(outcome.Findings, f => f.Code == "HF-575");
        return quantity switch
        {
            "slope n" => outcome.Value!.Order!.Value,
            "lg K" => Math.Log10(outcome.Value!.Constant),
            _ => outcome.Value!.Constant,
        };
    }
}
