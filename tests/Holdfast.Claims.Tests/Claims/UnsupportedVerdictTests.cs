using System.Collections.Immutable;
using Holdfast.Verdicts;
using static Holdfast.Verdicts.SimulatedStudy;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// Studies whose truth is known to the simulation alone: what they cannot carry must not be said of them, one way or the other, in more than one of twenty.
/// bench/Holdfast.Verdicts measures the same with more studies (docs/verdicts.md).
/// </summary>
public sealed class UnsupportedVerdictTests
{
    private const int Studies = 12;
    private const int Most = 2; // of 12: at a true rate of 5 % chance exceeds it in 2 of 100 draws, and the seeds are fixed

    private static readonly SimulatedStudy Sound = new()
    {
        Claims =
        [
            Claim("best-isotherm", ("model", "Langmuir")), Claim("favourable"), Claim("capacity", ("capacity", "14 mg/g")), Claim("removal-falls-with-concentration"), Claim("monolayer"),
        ],
    };

    private static readonly ImmutableArray<string> OfShape = ["best-isotherm", "favourable", "capacity", "removal-falls-with-concentration", "monolayer"];

    /// <summary>Studies that cannot speak of an isotherm at all.</summary>
    private static readonly ImmutableSortedDictionary<string, SimulatedStudy> Mute = new Dictionary<string, SimulatedStudy>
    {
        ["five vessels"] = Sound with { Vessels = 1, Starts = [2, 5, 15, 30, 60], Rate = null },
        ["random removal"] = Sound with { Removed = (chance, _) => chance.Uniform(), Rate = null },
        ["noise"] = Sound with { Removed = (chance, _) => Math.Clamp(0.5 + 0.5 * chance.Normal(), -0.3, 0.99), Rate = null },
        ["no uptake"] = Sound with { Removed = (_, _) => 0, Rate = null },
        ["all below detection"] = Sound with { Removed = (_, _) => 0.99999, Rate = null },
        ["leaking controls"] = Sound with { Leak = 0.3, Rate = null },
        ["leak, no controls"] = Sound with { Leak = 0.3, Controls = null, Rate = null },
        ["drift seen by checks"] = Sound with { Drift = -0.25, Rate = null },
        ["drift, no checks"] = Sound with { Drift = -0.25, Checks = false, Rate = null },
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static TheoryData<string> MuteNames => [.. Mute.Keys];

    [Theory]
    [MemberData(nameof(MuteNames))]
    public void Study_ThatCannotSpeak_GetsNeitherVerdict(string name)
        => Assert.All(Rates(Mute[name]).Where(r => OfShape.Contains(r.Key)), r => Assert.True(r.Value.Holds + r.Value.Contradicted <= Most, $"{r.Key}: {r.Value}"));

    // An isotherm that bends upwards first saturates in the end: one exponent for all of it says "favourable".
    [Fact]
    public void SShapedUptake_NeitherFavourableNorACapacity()
    {
        var rates = Rates(Sound with { Uptake = c => 14 * 0.01 * c * c / (1 + 0.01 * c * c) });
        Assert.InRange(rates["favourable"].Holds, 0, Most);
        Assert.InRange(rates["capacity"].Holds, 0, Most);
        Assert.InRange(rates["capacity"].Contradicted, 0, Most); // 14 mg/g is its true capacity; Langmuir, of which it was asked, is not its curve
    }

    // A spread of sites: Langmuir's capacity is tight, wrong, and not what the data say.
    [Fact]
    public void SpreadOfSites_LangmuirsCapacity_IsNeitherShownNorHeldAgainstTheTruth()
    {
        var rates = Rates(Sound with { Uptake = c => 14 * Math.Pow(0.35 * c, 0.7) / (1 + Math.Pow(0.35 * c, 0.7)) });
        Assert.InRange(rates["capacity"].Holds, 0, Most);
        Assert.InRange(rates["capacity"].Contradicted, 0, Most);
        Assert.InRange(rates["best-isotherm"].Holds, 0, Most);
    }

    // Strictness that nobody can satisfy teaches nothing.
    [Fact]
    public void SoundStudy_WhatIsTrueOfIt_Holds()
    {
        var rates = Rates(Sound);
        Assert.All(["favourable", "capacity", "removal-falls-with-concentration"], rule => Assert.InRange(rates[rule].Holds, (int)(0.8 * Studies), Studies));
        Assert.All(OfShape, rule => Assert.InRange(rates[rule].Contradicted, 0, Most));
    }

    private static Dictionary<string, (int Holds, int Contradicted)> Rates(SimulatedStudy study)
        => Enumerable.Range(0, Studies).SelectMany(seed => study.Judge((ulong)seed)).Where(v => v.Claim.Stated)
            .GroupBy(v => v.Claim.Rule, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => (g.Count(v => v.Ruling == Ruling.Holds), g.Count(v => v.Ruling == Ruling.Contradicted)), StringComparer.Ordinal);
}
