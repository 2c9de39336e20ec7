using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Speciation;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;
using Holdfast.Studies;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "At {ph} the metal is sorbed, not precipitated": no solid can form at the highest pH the vessel reached, and controls without
/// sorbent lose next to nothing at that pH.
/// </summary>
/// <remarks>
/// Solids are judged by the constants and their uncertainty (<see cref="PrecipitationGuard"/>). An author who states a solubility product (ksp, with its source) is
/// judged by that: within 0.5 of saturation nothing is decided; where the constants see it otherwise, a warning says so. A control passes when the one-sided
/// 95 % bound of its loss stays below 5 % of the removal; a loss of 20 % of the removal or more says that the removal is not the sorbent's, whatever took the metal.
/// </remarks>
public sealed class NotPrecipitation : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Largest loss in controls as a share of the removal; no unit.</summary>
        public const double Passing = PrecipitationGuard.LargestLoss / 100;

        /// <summary>Loss in controls, as a share of the removal, from which the removal is not the sorbent's; no unit.</summary>
        public const double Failing = 0.20;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "not-precipitation";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "At pH {ph} the metal is sorbed, not precipitated.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series", "ksp", "charge", "solid"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => SeriesOf(claim, evidence) is { } series ? Grounds.OfConcentrations(evidence, At(series, claim.Number("ph"))) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = SeriesOf(claim, evidence);
        var vessels = series is null ? [] : At(series, claim.Number("ph"));
        var decision = vessels.IsEmpty
            ? Decision.Missing("No vessels at this pH were found. Run three vessels and two controls without sorbent at it, and record start and end pH.")
            : Decide(claim, evidence, series!, vessels);
        var sentence = claim.Wording is null && claim.Words("ph") is null
            ? $"In {series?.Name ?? claim.Words("series") ?? "the study"} the metal is sorbed, not precipitated."
            : Phrase.Sentence(claim, Wording, ("ph", claim.Words("ph") ?? "of the study"));
        return decision.On(
            claim, sentence, Scope.Of(vessels),
            vessels.Concat(series is null ? [] : Controls(evidence, series, claim.Number("ph"))).Select(v => v.Code));
    }

    /// <summary>Judges the vessels of one pH with the product that a claim states, or by the constants.</summary>
    /// <param name="claim">A claim; its ksp, charge and solid count.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="series">The series, whose controls count.</param>
    /// <param name="vessels">The vessels at one pH.</param>
    internal static Decision Decide(Claim claim, Evidence evidence, Series series, ImmutableArray<Vessel> vessels)
        => Decide(
            Reached(vessels, BatchProperties.StartPh), Reached(vessels, BatchProperties.EndPh),
            Solid(claim, evidence, vessels), Setting.Of(0, vessels, v => v.Removal),
            Setting.Of(0, Controls(evidence, series, claim.Number("ph")), v => v.Removal),
            ByConstants.Of(PrecipitationGuard.Of(evidence), vessels));

    /// <summary>Judges one pH.</summary>
    /// <param name="startPh">pH at the start, the highest of the vessels, or null.</param>
    /// <param name="endPh">pH at the end, the highest of the vessels, or null.</param>
    /// <param name="solid">The hydroxide that could form, or null when no solubility product is stated.</param>
    /// <param name="removals">Removals of the vessels, %.</param>
    /// <param name="losses">Losses in controls without sorbent at this pH, %.</param>
    /// <param name="constants">What the constants say of the same vessels, or null where they say nothing.</param>
    public static Decision Decide(double? startPh, double? endPh, Hydroxide? solid, Setting removals, Setting losses, ByConstants? constants = null)
    {
        ArgumentNullException.ThrowIfNull(removals);
        ArgumentNullException.ThrowIfNull(losses);
        var highest = startPh is null || endPh is null ? startPh ?? endPh : Math.Max(startPh.Value, endPh.Value);
        var index = solid is not null && highest is { } ph ? solid.IndexAt(ph) : (double?)null;
        var removal = removals.Values.IsEmpty ? (double?)null : removals.Mean;
        var loss = losses.Values.IsEmpty ? null : LargerUncertainty.Mean(losses);
        var passes = loss is not null && removal > 0 && loss.UpperBound() < Limits.Passing * removal;
        var fails = loss is not null && removal > 0 && loss.LowerBound() >= Limits.Failing * removal;
        var bare = solid is not null ? index < -HydroxideSaturation.DefaultUncertainty : constants?.Ruling == Ruling.Holds;
        var ruling = fails || (solid is null && constants?.Ruling == Ruling.Contradicted) ? Ruling.Contradicted
            : bare && passes ? Ruling.Holds
            : Ruling.NotShownYet;
        var stated = solid?.AgainstConstants;
        return new Decision(
            ruling, $"{Saturation(highest, index, solid, constants)} {Control(loss, removal, losses.Values.Length)}",
            (solid is null ? "pH of onset of every listed solid, with its uncertainty" : "saturation index of the hydroxide") + "; loss in controls without sorbent, one-sided 95 % bound")
        {
            IsUntested = loss is null && solid is null && constants is null,
            Numbers =
            [
                .. solid is not null && startPh is { } s ? [Deciding.Plain($"saturation index of {solid.Name} at the start pH", solid.IndexAt(s))] : Array.Empty<Deciding>(),
                .. index is { } si ? [Deciding.Plain($"saturation index of {solid!.Name} at the highest pH", si, "", $"uncertainty {Phrase.Number(HydroxideSaturation.DefaultUncertainty)} (common practice)")] : Array.Empty<Deciding>(),
                .. solid is null ? constants?.Numbers ?? [] : [],
                .. stated is not null ? [Deciding.Plain($"stated lg Ks less that of {stated.Nearest.Name} here", stated.Apart, "", stated.Nearest.Status)] : Array.Empty<Deciding>(),
                .. loss is not null ? [Deciding.Of("loss in controls without sorbent", loss, 0.90, "%")] : Array.Empty<Deciding>(),
                .. removal is { } r ? [Deciding.Plain("removal", r, "%")] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                new("end pH", endPh is not null, "the end pH was not recorded"),
                new("controls", loss is not null, "no control without sorbent was read at this pH, or one alone without a known uncertainty"),
                new("solids", solid is not null || constants is not null, "no solubility product is stated (ksp) and no constants of this metal are known here, so no saturation index is known"),
            ],
            Warnings =
            [
                solid is not null
                    ? "Carbonates, phosphates and what the sorbent releases are not considered; they can precipitate metal that a control without sorbent cannot show."
                    : "Phosphates and what the sorbent releases are not considered; they can precipitate metal that a control without sorbent cannot show.",
                .. stated is { Agrees: false } ? [$"The stated product is {Phrase.Number(Math.Abs(stated.Apart))} units of lg away from {stated.Nearest.Name} here: say where it is from and of which solid."] : Array.Empty<string>(),
                .. solid is not null && constants is not null && constants.Ruling != ruling ? [$"By the constants here: {constants.Reason}"] : Array.Empty<string>(),
            ],
            Questions =
            [
                .. loss is not null && loss.LowerBound() > 0 ? [new Question("Q37", $"Without your sorbent {Phrase.With(loss.Value, "%")} is gone too: what is your material's share?")] : Array.Empty<Question>(),
                .. endPh is null ? [new Question("Q38", "What was the pH when you took the sample?")] : Array.Empty<Question>(),
            ],
            Next = new(
                $"Shake metal solution in water that has stood with the sorbent and was filtered{(highest is { } at ? $", at pH {Phrase.Number(at)}" : "")}: 3 vessels, same time and filter; take a diffractogram of the loaded powder.",
                3, [highest is { } p ? $"pH {Phrase.Number(p)}" : "the same pH"], "three controls that hold what the sorbent releases (common practice)"),
        };
    }

    private static string Saturation(double? ph, double? index, Hydroxide? solid, ByConstants? constants)
        => index is { } si
            ? $"At pH {Phrase.Number(ph!.Value)}, the highest reached, the saturation index of {solid!.Name} is {Phrase.Number(si)}; within {Phrase.Number(HydroxideSaturation.DefaultUncertainty)} of 0 nothing is decided."
            : solid is null && constants is not null ? constants.Reason
            : "The saturation index is not known.";

    private static string Control(Estimate? loss, double? removal, int controls)
        => loss is null ? "No control without sorbent was read at this pH."
            : $"Controls lose {Phrase.With(loss.Value, "%")} (one-sided 95 % bounds {Phrase.Number(loss.LowerBound())} and {Phrase.With(loss.UpperBound(), "%")}, n = {Phrase.Count(controls, "control")}); removal is {Phrase.With(removal ?? 0, "%")}.";

    private static Hydroxide? Solid(Claim claim, Evidence evidence, ImmutableArray<Vessel> vessels)
        => claim.Number("ksp") is { } product and > 0 && Element.Find(evidence.Study.Analyte ?? "")?.AtomicWeight is { } mass
            && vessels.Select(v => v.Start?.Value).Max() is { } start and > 0
            && (claim.Number("charge") ?? 2) is var charge and >= 1 and <= 4
            ? new(claim.Words("solid") ?? $"{evidence.Study.Analyte}(OH){Phrase.Number(Math.Round(charge))}", start / 1000 / mass, (int)Math.Round(charge), product)
            {
                AgainstConstants = MetalIon.Of(evidence.Study.Analyte ?? "").Where(i => i.Charge == (int)Math.Round(charge)).Select(i => StatedProduct.Of(i, product)).FirstOrDefault(),
            }
            : null;

    private static double? Reached(ImmutableArray<Vessel> vessels, Property property) => vessels.Select(v => v.Sample.Number(property)).Max();

    private static Series? SeriesOf(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name ? evidence.SeriesNamed(name) : evidence.Series.FirstOrDefault(s => s.Varied == BatchProperties.StartPh);

    private static ImmutableArray<Vessel> At(Series series, double? ph) => [.. series.Vessels.Where(v => IsAt(v, ph))];

    private static ImmutableArray<Vessel> Controls(Evidence evidence, Series series, double? ph) => [.. StudyControls.Reaching(evidence, series).Where(v => IsAt(v, ph))];

    private static bool IsAt(Vessel vessel, double? ph)
        => ph is not { } wanted || (vessel.Sample.Number(BatchProperties.StartPh) is { } own && Tolerances.SamePh(own, wanted));
}

/// <summary>A hydroxide that could form in a vessel.</summary>
/// <param name="Name">Its formula: "Ni(OH)2".</param>
/// <param name="Concentration">Dissolved metal at the start, mol/L.</param>
/// <param name="Charge">Charge of the ion.</param>
/// <param name="SolubilityProduct">Solubility product in (mol/L) to the power charge + 1.</param>
public sealed record Hydroxide(string Name, double Concentration, int Charge, double SolubilityProduct)
{
    /// <summary>Saturation index at a pH; above 0 the solid can form.</summary>
    /// <param name="ph">The pH.</param>
    public double IndexAt(double ph) => HydroxideSaturation.Index(Concentration, Charge, ph, SolubilityProduct);

    /// <summary>The stated product held against the constants of the metal; null where none are known here.</summary>
    internal StatedProduct? AgainstConstants { get; init; }
}
