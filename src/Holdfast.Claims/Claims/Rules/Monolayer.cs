using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Composition;
using Holdfast.Isotherms;
using Holdfast.Statistics;
using FTest = Holdfast.Fitting.FTest;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "A monolayer on a homogeneous surface": the data leave no room for a spread of sites, and the surface has room for the ions. A
/// Langmuir curve that merely fits best shows neither.
/// </summary>
/// <remarks>
/// The exponent of a Sips fit must lie within 0.9 to 1.1 (90 % interval); the area that the capacity needs must not exceed 1.2 times the
/// nitrogen area. When both are met the claim is compatible with the data, no more: exchange and precipitation give the same shape.
/// </remarks>
public sealed class Monolayer : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Lowest exponent that is one kind of site; no unit.</summary>
        public const double Low = 0.9;

        /// <summary>Highest exponent that is one kind of site; no unit.</summary>
        public const double High = 1.1;

        /// <summary>Most area that the capacity may need, as a share of the nitrogen area; no unit.</summary>
        public const double Room = 1.2;
    }

    /// <inheritdoc/>
    public string Id => "monolayer";

    /// <inheritdoc/>
    public string Wording => "The metal forms a monolayer on a homogeneous surface.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series", "ion-radius", "surface-area"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FittedIsotherm.Of(claim, evidence) is { } f
            ? Grounds.OfSorption(evidence, f.Series)
                .Concat(Grounds.OfEquilibrium(evidence, f.Series))
                .Append(Claim.Raised(Capacity.RuleId, ("series", f.Series.Name), ("model", "Langmuir")))
            : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = FittedIsotherm.Of(claim, evidence);
        var spread = fitted is null ? null : Candidates.Named(fitted, "Sips");
        var plain = fitted is null ? null : Candidates.Named(fitted, "Langmuir");
        var n = fitted is null ? null : SipsExponent.Of(fitted);
        var decision = fitted is null ? Decision.Missing("No series with several start concentrations was fitted.")
            : spread is null || n is null
                ? Decision.Missing("No Sips curve settled on these vessels, so a spread of sites cannot be excluded.", TellingConcentrations.ForSpread(fitted, null, Limits.High - 1))
            : Decide(
                n,
                plain?.Aicc - spread.Aicc,
                plain is null || plain.N != spread.N ? null : FTest.Nested(plain, spread).P,
                Room(claim, evidence, plain is null ? null : Candidates.Value(plain, "qm")),
                TellingConcentrations.ForSpread(fitted, n, Limits.High - 1), Adequacy.Of(fitted, plain));
        var vessels = fitted?.Series.Vessels.ToArray() ?? [];
        return decision.On(claim, Phrase.Sentence(claim, Wording), Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges homogeneity and room.</summary>
    /// <param name="exponent">Exponent of the Sips curve with its standard error; 1 is one kind of site; no unit.</param>
    /// <param name="aiccAhead">AICc of Langmuir less that of Sips, or null.</param>
    /// <param name="extraP">p of the F test for the extra parameter, or null; no unit.</param>
    /// <param name="coverage">Area that the capacity needs over the nitrogen area, or null when either is not known; no unit.</param>
    /// <param name="next">The experiment that would tell a spread of sites, or null.</param>
    /// <param name="adequacy">Whether the series can speak at all; none for plain numbers.</param>
    public static Decision Decide(Estimate exponent, double? aiccAhead, double? extraP, double? coverage, NextExperiment? next, ImmutableArray<Gate> adequacy = default)
    {
        ArgumentNullException.ThrowIfNull(exponent);
        var alike = IntervalRuling.Within(exponent, Limits.Low, Limits.High);
        var wide = exponent.Interval();
        var room = coverage > Limits.Room ? Ruling.Contradicted : Ruling.Holds;
        var beside = aiccAhead is { } a ? $"; AICc(Langmuir) − AICc(Sips) {Phrase.Number(a)}{(extraP is { } p ? $", extra parameter {Phrase.P(p)}" : "")}" : "";
        var area = coverage is { } share ? $" The capacity needs {Phrase.Number(share)} of the nitrogen area." : "";
        return new Decision(
            IntervalRuling.All([alike, room]),
            $"The Sips exponent is {Phrase.Number(exponent.Value)} ({Phrase.Interval(exponent.Interval(0.90), "")}); one kind of site needs {Phrase.Number(Limits.Low)} to {Phrase.Number(Limits.High)}{beside}, n = {Phrase.Count(exponent.N, "vessel")}.{area}",
            "equivalence of the Sips exponent to 1; area needed against nitrogen area")
        {
            Numbers =
            [
                Deciding.Of("Sips exponent", exponent, 0.90, ""),
                .. aiccAhead is { } d ? [Deciding.Plain("AICc(Langmuir) − AICc(Sips)", d)] : Array.Empty<Deciding>(),
                .. extraP is { } q ? [Deciding.Plain("extra parameter, p", q)] : Array.Empty<Deciding>(),
                .. coverage is { } s ? [Deciding.Plain("area needed over nitrogen area", s)] : Array.Empty<Deciding>(),
            ],
            Gates = [.. adequacy.IsDefault ? [] : adequacy, new("room", coverage is not null, "the nitrogen area or the radius of the ion is not stated (surface-area, ion-radius), so whether one layer has room is not known")],
            Warnings = ["“Holds” means compatible with one layer: ion exchange and precipitation give the same shape."],
            Questions =
            [
                .. alike != Ruling.Holds ? [new Question("Q31", $"The exponent may lie between {Phrase.Number(wide.Low)} and {Phrase.Number(wide.High)}: how unequal could the sites be before you would notice?")] : Array.Empty<Question>(),
                .. coverage > 1 ? [new Question("Q32", $"You need {Phrase.Number(coverage.Value)} layers: where do the other ions sit?")] : Array.Empty<Question>(),
            ],
            Next = next,
        };
    }

    /// <summary>Area needed over area measured, from what the author states and the atomic mass of the analyte.</summary>
    private static double? Room(Claim claim, Evidence evidence, double? capacity)
        => claim.In("surface-area", "m2/g") is { } area and > 0 && claim.In("ion-radius", "nm") is { } radius and > 0 && capacity is { } qm
            && Element.Find(evidence.Study.Analyte ?? "")?.AtomicWeight is { } molar
            ? MonolayerArea.Needed(qm / molar, radius) / area
            : null;
}
