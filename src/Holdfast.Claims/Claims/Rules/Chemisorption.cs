using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The metal is bound by chemisorption": two independent kinds of evidence agree. A kinetic curve is never one of them: first-order and
/// diffusion data follow the second-order form as well (Hubbe, Azizian and Douven, BioResources 14 (2019) 7582).
/// </summary>
/// <remarks>
/// Of the kinds that count (release, spectra, enthalpy, stoichiometry) a study can record release: the share that plain water at the same
/// pH takes off a loaded sorbent. Below 20 % it speaks for a bond, above 80 % against one (common practice).
/// </remarks>
public sealed class Chemisorption : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest independent kinds of evidence.</summary>
        public const int Kinds = 2;

        /// <summary>Release in plain water up to which the metal counts as held, %.</summary>
        public const double Held = 20;

        /// <summary>Release in plain water from which the metal counts as loose, %.</summary>
        public const double Loose = 80;
    }

    /// <inheritdoc/>
    public string Id => "chemisorption";

    /// <inheritdoc/>
    public string Wording => "The metal is bound by chemisorption.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name && evidence.SeriesNamed(name) is { } series ? Grounds.OfSorption(evidence, series) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var released = evidence.Study.Samples
            .Where(s => !evidence.Study.IsStruck(s) && s.Number(ReleaseProperties.ReleasedInWater) is not null)
            .ToArray();
        var values = released.Select(s => s.Number(ReleaseProperties.ReleasedInWater)!.Value).ToImmutableArray();
        var kinds = values.IsEmpty ? ImmutableArray<KindOfEvidence>.Empty : Release(values) is { } release ? [release] : [];
        return Decide(kinds, values.Length > 0).On(claim, Phrase.Sentence(claim, Wording), null, released.Select(s => s.Code));
    }

    /// <summary>Judges a bond by independent kinds of evidence.</summary>
    /// <param name="kinds">Each kind with how it stands by itself.</param>
    /// <param name="releaseTested">Whether release in plain water was tested at all.</param>
    public static Decision Decide(ImmutableArray<KindOfEvidence> kinds, bool releaseTested)
    {
        var speaking = kinds.Where(k => k.Ruling == Ruling.Holds).ToArray();
        var against = kinds.Where(k => k.Ruling == Ruling.Contradicted).ToArray();
        var ruling = against.Length > 0 ? Ruling.Contradicted
            : speaking.Length >= Limits.Kinds ? Ruling.Holds
            : Ruling.NotShownYet;
        var found = kinds.IsEmpty
            ? "Nothing but a kinetic curve is at hand, and a curve names no mechanism."
            : string.Join(" ", kinds.Select(k => k.Words));
        return new Decision(
            ruling,
            $"{found} Independent kinds that speak for a bond: {speaking.Length}; {Limits.Kinds} are needed (release, spectra, enthalpy, stoichiometry).",
            "agreement of independent kinds of evidence")
        {
            Numbers = [.. kinds.SelectMany(k => k.Numbers)],
            Questions =
            [
                .. kinds.IsEmpty ? [new Question("Q25", "Simulate a first-order process with your times and noise: which model wins?")] : Array.Empty<Question>(),
                .. releaseTested ? Array.Empty<Question>() : [new Question("Q26", "Does the metal come off in water alone?")],
            ],
            Next = new(
                "Load 3 vessels, exchange the liquid for metal-free electrolyte at the same pH, wait 24 h and read what came off; do the same with an eluent.",
                6, ["blank electrolyte, same pH, 24 h", "eluent, 24 h"], "three vessels tell 80 % from 20 % released"),
        };
    }

    /// <summary>How release in plain water stands, or null when it has no scatter to judge by.</summary>
    /// <param name="released">Share of the loaded metal that came off in each vessel, %.</param>
    internal static KindOfEvidence? Release(ImmutableArray<double> released)
    {
        if (Summary.Of(released).MeanEstimate().Value is not { } mean)
            return null;
        var ruling = mean.UpperBound() < Limits.Held ? Ruling.Holds : mean.LowerBound() > Limits.Loose ? Ruling.Contradicted : Ruling.NotShownYet;
        return new(
            "release", ruling,
            $"Plain water took off {Phrase.With(mean.Value, "%")} (one-sided 95 % bounds {Phrase.Number(mean.LowerBound())} and {Phrase.With(mean.UpperBound(), "%")}, n = {Phrase.Count(mean.N, "vessel")}).",
            [Deciding.Of("released by plain water", mean, 0.90, "%")]);
    }
}

/// <summary>One kind of evidence for or against a bond, judged by itself.</summary>
/// <param name="Name">Release, spectra, enthalpy, stoichiometry.</param>
/// <param name="Ruling">How it stands.</param>
/// <param name="Words">What was found, with numbers.</param>
/// <param name="Numbers">Its deciding numbers.</param>
public sealed record KindOfEvidence(string Name, Ruling Ruling, string Words, ImmutableArray<Deciding> Numbers);
