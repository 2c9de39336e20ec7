using Holdfast.Fitting.Lines;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>NIST StRD linear regression: certified coefficients, standard deviations, residual sd (reference/nist-strd/SOURCE.md).</summary>
public class NistLinearTests
{
    public static TheoryData<string> Sets() => [.. NistSet.Names("linear")];

    [Theory, MemberData(nameof(Sets))]
    public void Fit_OfEachSet_AgreesWithTheCertificate(string name)
    {
        var set = NistSet.Read("linear", name);
        var fit = Fit(set);
        var digits = name == "Filip" ? 6 : 8;
        for (var j = 0; j < set.Certified.Length; j++)
        {
            var symbol = set.Certificate.GetProperty("parameterNames")[j].GetString()!;
            Agree.Digits(digits, set.Certified[j], fit.Coefficients[j], $"{name} {symbol}");
            AgreeUnlessExact(digits, set.StandardDeviations[j], fit.StandardErrors[j], $"{name} sd of {symbol}");
        }

        AgreeUnlessExact(digits, set.Number("residualStandardDeviation"), fit.ResidualSd!.Value, $"{name} residual sd");
        Agree.Digits(digits, set.Certified.Length, fit.Leverages.Sum(), $"{name} sum of leverages");
    }

    internal static LinearModel Fit(NistSet set)
    {
        double[][] columns = [.. set.Certificate.GetProperty("terms").EnumerateArray().Select(t => Column(set, t.GetString()!))];
        return LinearModel.Of(columns, set.Y).Value!;
    }

    // Wampler1 and Wampler2 are exact polynomials: their certified scatter is 0, ours is rounding beside readings of up to 6e6.
    private static void AgreeUnlessExact(double digits, double expected, double actual, string what)
    {
        if (expected == 0)
            Assert.True(actual < 1e-8, what);
        else
            Agree.Digits(digits, expected, actual, what);
    }

    private static double[] Column(NistSet set, string term)
    {
        if (term == "1")
            return [.. set.Y.Select(_ => 1.0)];
        var parts = term.Split('^');
        var x = set.X[parts[0] == "x" ? 0 : int.Parse(parts[0][1..], System.Globalization.CultureInfo.InvariantCulture) - 1];
        var power = parts.Length == 1 ? 1 : int.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture);
        return [.. x.Select(v => Enumerable.Repeat(v, power).Aggregate(1.0, (a, b) => a * b))];
    }
}
