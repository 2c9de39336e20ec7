using Holdfast.Fitting;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>Profile-likelihood limits against reference/regression/profile-likelihood-py.json (root finding to 1e-13).</summary>
public class ProfileTests
{
    // BOD data (Marske 1967, in Bates and Watts 1988): at 99 % a has no upper limit and k no limit at all.
    [Fact]
    public void Limits_OfTheBodData_AreOpenWhereTheReferenceSaysSo()
    {
        var points = RegressionData.Table("bod.csv", "Time", "demand");
        var expected = RegressionData.Read("profile-likelihood-py.json").At("fits", "bod");
        foreach (var confidence in new[] { 0.8, 0.95 })
        {
            var fit = Fit.Of<PseudoFirstOrder>(points, new() { Confidence = confidence });
            var limits = expected.At("profile", FormattableString.Invariant($"level{confidence}"), "limits").EnumerateArray().Select(l => l.Doubles()).ToArray();
            for (var j = 0; j < 2; j++)
            {
                Agree.Relative(1e-7, limits[j][0], fit.Parameters[j].Profile!.Lower.Value!.Value);
                Agree.Relative(1e-7, limits[j][1], fit.Parameters[j].Profile!.Upper.Value!.Value);
            }
        }

        var wide = Fit.Of<PseudoFirstOrder>(points, new() { Confidence = 0.99 });
        var (a, k) = (wide["qe"].Profile!, wide["k1"].Profile!);
        Assert.Equal(LimitKind.Closed, a.Lower.Kind);
        Agree.Relative(1e-7, 11.530767275769412, a.Lower.Value!.Value);
        Assert.Equal(LimitKind.Open, a.Upper.Kind);
        Assert.Null(a.Upper.Value);
        Assert.Equal(LimitKind.Open, k.Lower.Kind);
        Assert.Equal(LimitKind.Open, k.Upper.Kind);
        Agree.Relative(1e-6, expected.At("plateauTau_A_to_infinity").GetDouble(), a.Upper.Tau, "a to infinity");
        Agree.Relative(1e-6, expected.At("plateauTau_A_to_infinity").GetDouble(), k.Lower.Tau, "k to zero");
        Agree.Relative(1e-6, expected.At("plateauTau_k_to_infinity").GetDouble(), k.Upper.Tau, "k to infinity");
        Assert.Contains(wide.Findings, f => f.Code == "HF-417" && f.Sentence.Contains("no limit at all", StringComparison.Ordinal));
    }
}
