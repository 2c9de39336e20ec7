using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Claims.Rules;
using Holdfast.Isotherms;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>Rules against reference/sorption/flag-cases.csv: an input and how the statement must stand.</summary>
public sealed partial class FlagCaseTests
{
    public static TheoryData<string, string, string> Cases(string flag)
        => [.. ReferenceTable.Read("sorption", "flag-cases.csv").Where(r => r["rule"] == flag).Select(r => (flag, r["inputs"], r["verdict"]))];

    [Theory]
    [MemberData(nameof(Cases), "B3")]
    public void ControlsClean_LossOfAControl_AsFlagged(string flag, string inputs, string verdict)
    {
        var (start, left) = (Of(inputs, "C0", flag), Of(inputs, "C_control", flag));
        var loss = BatchQuantities.RemovedShare(U("start", start, Of(inputs, "u_each", flag)), U("end", left, Of(inputs, "u_each", flag)));
        Assert.Equal(verdict == "correct first" ? Ruling.Contradicted : Ruling.Holds, ControlsClean.Decide([new("K", loss)]).Gated);
    }

    [Theory]
    [MemberData(nameof(Cases), "B6")]
    public void PhRecorded_EndPhAgainstSaturation_AsFlagged(string flag, string inputs, string verdict)
        => Assert.Equal(Said(verdict), PhRecorded.Decide([Of(inputs, "pH_final", flag)], Of(inputs, "pH_saturation", flag), constantPh: true).Gated);

    [Theory]
    [MemberData(nameof(Cases), "I4")]
    public void Monolayer_SipsExponent_ContradictsWhereItExcludesOne(string flag, string inputs, string verdict)
    {
        // The table gives the 95 % interval; the estimate with 20 degrees of freedom that has it.
        var (low, high) = (Of(inputs, "exponent_low95", flag), Of(inputs, "exponent_high95", flag));
        var exponent = new Estimate("exponent", (low + high) / 2, (high - low) / 2 / StudentDistribution.TwoSided(0.95, 20), 20, 24);
        Assert.Equal(verdict == "contradicted", Monolayer.Decide(exponent, null, null, 0.9, null).Gated == Ruling.Contradicted);
    }

    [Theory]
    [MemberData(nameof(Cases), "I5")]
    public void Monolayer_RoomOnTheSurface_ContradictsWhereThereIsNone(string flag, string inputs, string verdict)
    {
        var coverage = MonolayerArea.Needed(Of(inputs, "q_max_mmol_g", flag), Of(inputs, "ion_radius_nm", flag)) / Of(inputs, "area_m2_g", flag);
        Assert.Equal(verdict == "contradicted", Monolayer.Decide(new("exponent", 1, 0.02, 20, 24), null, null, coverage, null).Gated == Ruling.Contradicted);
    }

    // The table gives no uncertainty; 0.05 stands for a usual one.
    [Theory]
    [MemberData(nameof(Cases), "I9")]
    public void Favourable_FreundlichExponent_AsFlagged(string flag, string inputs, string verdict)
        => Assert.Equal(Said(verdict), Favourable.Decide(new("1/n", Of(inputs, "one_over_n", flag), 0.05, 20, 24)).Gated);

    // K6: a kinetic curve is no evidence of a bond, however well it fits.
    [Fact]
    public void Chemisorption_FromACurve_IsNotShown()
        => Assert.Equal(Ruling.NotShownYet, Chemisorption.Decide([], releaseTested: false).Gated);

    // K7: below 2 units nothing is told apart; from above 10 one curve may be named. Between, "favoured" holds here from 4 on.
    [Theory]
    [MemberData(nameof(Cases), "K7")]
    public void ModelChoice_DifferenceOfAicc_AsFlagged(string flag, string inputs, string verdict)
    {
        Candidate named = new("A", 0, 20, 2, 0.5), other = new("B", Of(inputs, "delta_AICc", flag), 20, 2, 0.5);
        var ruling = BestIsotherm.Decide("A", [], "ISO", [named, other], 8).Gated;
        Assert.Equal(verdict == "not shown yet" ? Ruling.NotShownYet : Ruling.Holds, ruling);
    }

    private static Measured U(string id, double value, double u) => Measured.From(value, new Source(id, id, u));

    private static Ruling Said(string verdict) => verdict switch
    {
        "holds" => Ruling.Holds,
        "contradicted" => Ruling.Contradicted,
        _ => Ruling.NotShownYet,
    };

    private static double Of(string inputs, string name, string flag)
        => Input().Matches(inputs).FirstOrDefault(m => m.Groups["name"].Value == name) is { } found
            ? double.Parse(found.Groups["value"].Value, CultureInfo.InvariantCulture)
            : throw new ArgumentException($"{flag}: no {name} in '{inputs}'.", nameof(name));

    [GeneratedRegex(@"(?<name>\w+)=(?<value>-?[\d.]+)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Input();
}
