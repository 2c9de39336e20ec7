using System.Globalization;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Planning;
using Holdfast.Testing;

namespace Holdfast.Tests.Planning;

public class DiscriminationTests
{
    public static TheoryData<string, string, double[], string> Pairs() => new()
    {
        { "langmuir true, freundlich rival", "Langmuir", [20, 0.1], "Freundlich" },
        { "freundlich true, langmuir rival", "Freundlich", [3, 2], "Langmuir" },
        { "pfo true, pso rival", "Pseudo-first-order", [20, 0.05], "Pseudo-second-order" },
        { "pso true, pfo rival", "Pseudo-second-order", [20, 0.004], "Pseudo-first-order" },
        { "langmuir true, sips nested test (langmuir is rival to sips m=0.7)", "Sips", [20, 0.1, 0.7], "Langmuir" },
    };

    // reference/design/t-optimal.csv, found there by vertex exchange; ours by Remez' exchange. Three figures.
    [Theory, MemberData(nameof(Pairs))]
    public void Between_TwoCurvesOfTheTrade_AgreesWithTheTable(string name, string held, double[] parameters, string rival)
    {
        static Model Named(string n) => Isotherm.Named(n) ?? Kinetic.Named(n)!;
        var row = ReferenceTable.Read("design", "t-optimal.csv").First(r => r["case"] == name);
        var outcome = Discrimination.Between(Named(held), parameters, Named(rival), row.Number("x_low"), row.Number("x_high"), _ => 1);
        Check(row, outcome.Value!);
        Agree.Relative(1e-4, 7.8489 / row.Number("T_value"), outcome.Value!.Vessels(), "vessels at 80 %");
        Agree.Relative(1e-4, 10.5074 / row.Number("T_value"), outcome.Value!.Vessels(0.9), "vessels at 90 %");
    }

    // Atkinson and Fedorov 1975, their first example (printed values from memory: −1, −0.669, 0.144, 0.957; 0.253, 0.428, 0.247, 0.072).
    [Fact]
    public void Between_TheFirstPublishedExample_AgreesWithThePrint()
    {
        var row = ReferenceTable.Read("design", "t-optimal.csv").First(r => r["case"] == "Atkinson-Fedorov 1975");
        var found = Discrimination.Between(x => 4.5 - 1.5 * Math.Exp(x) - 2 * Math.Exp(-x), Quadratic, [1, 0.5, -2], -1, 1, _ => 1);
        Check(row, found!);
        double[] levels = [-1, -0.669, 0.144, 0.957];
        double[] weights = [0.253, 0.428, 0.247, 0.072];
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(levels[i], found!.Levels[i], 3);
            Assert.Equal(weights[i], found.Weights[i], 3);
        }
    }

    [Fact]
    public void Between_EmaxAndMichaelisMenten_AgreesWithTheTable()
    {
        var row = ReferenceTable.Read("design", "t-optimal.csv").First(r => r["case"] == "emax vs michaelis-menten");
        var found = Discrimination.Between(x => 1 + x / (x + 1), MichaelisMenten, [1.87, 0.25], 1, 2, _ => 1);
        Check(row, found!);
    }

    // T counts in units of a reading's variance: halving the uncertainty makes it four times as large and a quarter of the vessels enough.
    [Fact]
    public void Vessels_WithHalfTheUncertainty_AreAQuarter()
    {
        Discrimination At(double u) => Discrimination.Between(Isotherm.Named("Langmuir")!, [20, 0.1], Isotherm.Named("Freundlich")!, 1, 50, _ => u).Value!;
        Agree.Relative(1e-9, At(1).Vessels() / 4, At(0.5).Vessels());
    }

    // Sips can follow Langmuir exactly: nothing tells them apart, and the outcome says so instead of giving levels.
    [Fact]
    public void Between_ACurveAndOneThatContainsIt_HasNoAnswer()
    {
        var outcome = Discrimination.Between(Isotherm.Named("Langmuir")!, [20, 0.1], Isotherm.Named("Sips")!, 1, 50, _ => 1);
        Assert.False(outcome.HasValue);
        Assert.Equal("HF-489", Assert.Single(outcome.Findings).Code);
    }

    private static void Check(ReferenceRow row, Discrimination found)
    {
        double[] Numbers(string column) => [.. row[column].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
        var (levels, weights) = (Numbers("support"), Numbers("weights"));
        Assert.Equal(levels.Length, found.Levels.Count);
        for (var i = 0; i < levels.Length; i++)
        {
            Assert.True(Math.Abs(levels[i] - found.Levels[i]) <= 2e-3 * Math.Max(Math.Abs(levels[i]), 0.5), FormattableString.Invariant($"level {levels[i]}: {found.Levels[i]}"));
            Assert.True(Math.Abs(weights[i] - found.Weights[i]) <= 2e-3, FormattableString.Invariant($"weight {weights[i]}: {found.Weights[i]}"));
        }

        Agree.Relative(1e-4, row.Number("T_value"), found.T, "T");
        Assert.InRange(found.Bound, 1 - 1e-6, 1);
        Assert.Equal(1, found.Weights.Sum(), 12);
    }

    private static double Quadratic(double x, ReadOnlySpan<double> p, Span<double> by)
    {
        (by[0], by[1], by[2]) = (1, x, x * x);
        return p[0] + p[1] * x + p[2] * x * x;
    }

    private static double MichaelisMenten(double x, ReadOnlySpan<double> p, Span<double> by)
    {
        (by[0], by[1]) = (x / (x + p[1]), -p[0] * x / ((x + p[1]) * (x + p[1])));
        return p[0] * x / (x + p[1]);
    }
}
