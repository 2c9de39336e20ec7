using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>NIST StRD univariate and one-way sets against the formulas of Holdfast.Statistics (reference/nist-strd/SOURCE.md, with its bars).</summary>
public class NistStatisticsTests
{
    public static TheoryData<string> Univariate() => [.. NistSet.Names("univariate")];

    public static TheoryData<string> OneWaySets() => [.. NistSet.Names("anova")];

    [Theory, MemberData(nameof(Univariate))]
    public void Summary_OfEachUnivariateSet_AgreesWithTheCertificate(string name)
    {
        var set = NistSet.Read("univariate", name);
        var summary = Summary.Of(set.Y);
        Agree.Digits(14, set.Number("mean"), summary.Mean, name + " mean");

        // The readings of NumAcc3 and NumAcc4 are themselves rounded to doubles, which leaves 9 and 8 digits of their scatter.
        Agree.Digits(name switch { "NumAcc3" => 9, "NumAcc4" => 8, _ => 13 }, set.Number("standardDeviation"), summary.Sd!.Value, name + " sd");
    }

    [Theory, MemberData(nameof(OneWaySets))]
    public void OneWay_OfEachSet_AgreesWithTheCertificate(string name)
    {
        var certificate = NistSet.Read("anova", name);
        var analysis = OneWay.Of(Groups(name)).Value!;
        var digits = name[..4] == "SmLs" ? (name[5] - '1') / 3 switch { 0 => 13, 1 => 9, _ => 4 } : name == "AtmWtAgt" ? 9 : 12;
        Agree.Digits(digits, certificate.Number("fStatistic"), analysis.F, name + " F");
        Agree.Digits(digits, certificate.Number("betweenSS"), analysis.BetweenSquares, name + " between");
        Agree.Digits(digits, certificate.Number("withinSS"), analysis.WithinSquares, name + " within");
        Agree.Digits(digits, certificate.Number("residualStandardDeviation"), analysis.PooledSd, name + " sd");
        Agree.Digits(digits, certificate.Number("rSquared"), analysis.R2, name + " share");
    }

    public static Group[] Groups(string name)
        => [.. ReferenceTable.Read("nist-strd", "anova", name + ".csv").GroupBy(r => r["treatment"])
            .Select(g => new Group(g.Key, [.. g.Select(r => double.Parse(r["y"], CultureInfo.InvariantCulture))]))];
}
