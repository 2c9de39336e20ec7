using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Fitting;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The capacity is {capacity}": a fitted capacity that the data reach. A curve that was never followed to its plateau gives a number,
/// not a capacity.
/// </summary>
/// <remarks>
/// The 95 % interval is the profile-likelihood one; a stated capacity is contradicted when the whole interval lies more than the margin away from it. Coverage is the fitted uptake at the highest concentration over the fitted capacity;
/// from 0.8 on the standard error falls below about 3 % (computed: reference/design, langmuir-coverage).
/// </remarks>
public sealed class Capacity : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Smallest share of the capacity that the highest point must reach; no unit.</summary>
        public const double Coverage = 0.8;

        /// <summary>Fewest levels.</summary>
        public const int Levels = 5;

        /// <summary>Where rival curves are compared, in highest concentrations: far enough to see whether another one levels off as well.</summary>
        public const double FarAbove = 3;

        /// <summary>Correlation of capacity and affinity, without its sign, above which an examiner asks what one of them can take from the other; no unit.</summary>
        public const double Entangled = 0.95;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "capacity";



    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The capacity of {series} is {capacity}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["model"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => from fitted in evidence.Isotherms
           where Candidates.Named(fitted, "Langmuir") is not null
           select Claim.Raised(Id, ("series", fitted.Series.Name), ("model", "Langmuir"));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FittedIsotherm.Of(claim, evidence) is { } f ? Grounds.OfSorption(evidence, f.Series).Concat(Grounds.OfEquilibrium(evidence, f.Series)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = FittedIsotherm.Of(claim, evidence);
        var model = claim.Words("model") ?? "Langmuir";
        var margin = FixedMargin.Of(evidence, MarginKind.Capacity);
        var fit = fitted is null ? null : Candidates.Named(fitted, model);
        var decision = fitted is null ? Decision.Missing("No series with several start concentrations was fitted. Run five concentrations or more, three vessels each.")
            : fit is null || Numbers(fit, fitted) is not { } numbers ? Decision.Missing($"{model} gives no capacity for {fitted.Series.Name}: it was not fitted, did not settle, or has none.")
            : Decide(numbers, claim.In("capacity", "mg/g"), margin.High / 100, LangmuirDesign.Of(fitted), Adequacy.Of(fitted, fit));
        var vessels = fitted?.Series.Vessels.ToArray() ?? [];
        var sentence = Phrase.Sentence(
            claim, Wording, ("series", fitted?.Series.Name ?? claim.Words("series") ?? "any series"),
            ("capacity", claim.Words("capacity") ?? (fit is null ? "known" : Phrase.With(Candidates.Value(fit, "qm") ?? 0, "mg/g"))));
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] })
            .On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges a fitted capacity.</summary>
    /// <param name="found">The fitted numbers.</param>
    /// <param name="stated">The capacity as stated, mg/g, or null.</param>
    /// <param name="margin">Largest difference that counts as none, as a share (0.10): of the interval's ends from the capacity, and from what is stated; no unit.</param>
    /// <param name="design">The Langmuir curve found so far, to size the next experiment, or null.</param>
    /// <param name="adequacy">Whether the series can speak at all; none for plain numbers.</param>
    public static Decision Decide(FittedCapacity found, double? stated, double margin, LangmuirDesign? design, ImmutableArray<Gate> adequacy = default)
    {
        ArgumentNullException.ThrowIfNull(found);
        var trails = found.Trails >= AiccDistance.Of(found.N, found.Parameters);
        var differ = found.OtherEnds.Where(o => Math.Abs(o.Share - 1) > margin).ToArray();
        var closed = found.Low is not null && found.High is not null;
        var beyond = found.High is { } top && found.HighestUptake > top;
        var away = stated is { } s && (found.Low > (1 + margin) * s || found.High < (1 - margin) * s);
        var near = stated is not { } c || (closed && found.Low > (1 - margin) * c && found.High < (1 + margin) * c);
        var tight = closed && Math.Max(found.High!.Value - found.Value, found.Value - found.Low!.Value) <= margin * found.Value;
        var agrees = found.LackOfFitP is not { } p || p >= Confidence.Chance;
        var ruling = beyond || away ? Ruling.Contradicted
            : found.Coverage >= Limits.Coverage && tight && agrees ? Ruling.Holds
            : Ruling.NotShownYet;
        return new Decision(ruling, Reason(found, stated, beyond), $"{found.Model} fit, profile-likelihood interval, coverage reached")
        {
            Numbers =
            [
                new("capacity", found.Value, found.Low, found.High, "mg/g", $"95 % profile interval, n = {Phrase.Number(found.N)} vessels"),
                .. found.StandardError is { } se ? [Deciding.Plain("standard error of the capacity", se, "mg/g")] : Array.Empty<Deciding>(),
                Deciding.Plain("highest coverage", found.Coverage),
                Deciding.Plain("highest mean uptake", found.HighestUptake, "mg/g"),
                .. found.LackOfFitP is { } lack ? [Deciding.Plain("lack of fit, p", lack)] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                .. adequacy.IsDefault ? [] : adequacy,
                new("curve", !trails, $"{found.Model} trails the best curve by {Phrase.Number(found.Trails)} units of AICc, so its capacity is not the data's") { Silences = true },
                new("other curves", differ.Length == 0, differ.Length == 0 ? "every curve not told apart levels off alike" : $"{differ[0].Model}, not told apart from {found.Model}, goes on to {Phrase.Number(differ[0].Share)} times its uptake far above the data"),
                new("concentrations", found.Levels >= Limits.Levels, $"{Phrase.Count(found.Levels, "concentration")} were run; {Limits.Levels} are needed"),
                new("coverage", found.Coverage >= Limits.Coverage, $"the highest point reaches {Phrase.With(100 * found.Coverage, "%")} of the capacity; {Phrase.With(100 * Limits.Coverage, "%")} are needed"),
                new("interval", tight, closed ? $"the interval reaches {Phrase.With(100 * Math.Max(found.High!.Value - found.Value, found.Value - found.Low!.Value) / found.Value, "%")} from the capacity; {Phrase.With(100 * margin, "%")} are tolerated" : "the profile interval is open: the data set no limit"),
                new("stated capacity", near, $"the interval does not lie within {Phrase.With(100 * margin, "%")} of the {Phrase.With(stated ?? found.Value, "mg/g")} stated"),
                new("lack of fit", agrees, found.LackOfFitP is { } q ? $"the curve misses the replicates ({Phrase.P(q)})" : "lack of fit is not known"),
            ],
            Questions =
            [
                .. found.Coverage < Limits.Coverage ? [new Question("Q21", $"Your highest point is at {Phrase.With(100 * found.Coverage, "%")} of the capacity: what if the curve keeps rising?")] : Array.Empty<Question>(),
                .. found.Correlation < -Limits.Entangled ? [new Question("Q22", $"Capacity and affinity are correlated at {Phrase.Number(found.Correlation.Value)}: how much can K change if the capacity changes by 10 %?")] : Array.Empty<Question>(),
            ],
            Next = design is null ? null : Further(design, found),
        };
    }

    private static string Reason(FittedCapacity found, double? stated, bool beyond)
    {
        var interval = $"95 % profile interval {(found.Low is { } l ? Phrase.Number(l) : "open")} to {(found.High is { } h ? Phrase.With(h, "mg/g") : "open")}";
        var claim = stated is { } s ? $"; the claim says {Phrase.With(s, "mg/g")}" : "";
        var above = beyond ? $" The highest mean uptake, {Phrase.With(found.HighestUptake, "mg/g")}, lies above it." : "";
        return $"{found.Model} gives {Phrase.With(found.Value, "mg/g")} ({interval}){claim}. The highest point reaches {Phrase.With(100 * found.Coverage, "%")} of it, n = {Phrase.Count(found.N, "vessel")}.{above}";
    }

    private static NextExperiment Further(LangmuirDesign design, FittedCapacity found)
    {
        var left = Math.Max(design.ConcentrationAt(Limits.Coverage), found.HighestConcentration);
        var start = design.StartFor(left);
        string setting = $"C0 = {Phrase.With(start, "mg/L")}";
        return new(
            $"Run 3 vessels at {setting} and {Phrase.With(design.Dose, "g/L")}: about {Phrase.With(left, "mg/L")} will be left, a coverage of {Phrase.Number(design.Affinity * left / (1 + design.Affinity * left))}.",
            3, [setting], "C0 = Ce + D q(Ce) at Ce = 4/K, where a Langmuir surface is 80 % full");
    }

    private static FittedCapacity? Numbers(FitResult fit, FittedSeries fitted)
    {
        var series = fitted.Series;
        var qm = fit.Parameters.FirstOrDefault(p => string.Equals(p.Symbol, "qm", StringComparison.Ordinal));
        double[] left = [.. series.Levels.SelectMany(l => l.EndConcentrations)];
        double[] means = [.. series.Levels.Where(l => l.Uptakes.Length > 0).Select(l => l.Uptakes.Average())];
        if (qm is not { Value: > 0 } || left.Length == 0 || means.Length == 0 || left.Max() <= 0)
            return null;
        FitResult[] rivals = [.. fitted.Fits.Where(f => f.IsFit && f != fit && f.Aicc is not null && Adequacy.Comparable(f.N, f.P))];
        var k = fit.Card.Parameters.Select((p, i) => (p.Symbol, Index: i)).FirstOrDefault(p => p.Symbol == "K");
        return new(
            fit.Card.Name, qm.Value, qm.StandardError,
            qm.Profile is { Lower: { Kind: LimitKind.Closed, Value: var low } } ? low : null,
            qm.Profile is { Upper: { Kind: LimitKind.Closed, Value: var high } } ? high : null,
            fit.ValueAt(left.Max()) / qm.Value, means.Max(), left.Max(), fit.LackOfFit?.Test.P,
            k.Symbol is null ? null : fit.Correlation(0, k.Index), fit.N, series.Levels.Length)
        {
            Parameters = fit.P,
            Trails = fit.Aicc is { } own ? Math.Max(0, own - rivals.Min(r => r.Aicc) ?? 0) : 0,
            OtherEnds = [.. rivals.Where(r => r.Aicc < fit.Aicc + (r.P <= fit.P ? AiccDistance.Of(fit.N, fit.P) : 0)).Select(r => new CurveEnd(r.Card.Name, r.ValueAt(Limits.FarAbove * left.Max()) / fit.ValueAt(Limits.FarAbove * left.Max())))],
        };
    }
}

/// <summary>A fitted capacity with what decides whether it may be called one.</summary>
/// <param name="Model">Name of the isotherm.</param>
/// <param name="Value">Capacity, mg/g.</param>
/// <param name="StandardError">Its standard error, mg/g, or null.</param>
/// <param name="Low">Lower end of the 95 % profile interval, mg/g; null when open.</param>
/// <param name="High">Upper end, mg/g; null when open.</param>
/// <param name="Coverage">Fitted uptake at the highest concentration over the capacity; no unit.</param>
/// <param name="HighestUptake">Highest mean uptake of a level, mg/g.</param>
/// <param name="HighestConcentration">Highest concentration after contact, mg/L.</param>
/// <param name="LackOfFitP">p of the lack-of-fit test, or null without replicates; no unit.</param>
/// <param name="Correlation">Correlation of capacity and affinity, or null; no unit.</param>
/// <param name="N">Number of vessels.</param>
/// <param name="Levels">Number of start concentrations.</param>
public sealed record FittedCapacity(
    string Model, double Value, double? StandardError, double? Low, double? High, double Coverage, double HighestUptake,
    double HighestConcentration, double? LackOfFitP, double? Correlation, int N, int Levels)
{
    /// <summary>Parameters of the curve.</summary>
    public int Parameters { get; init; } = 2;

    /// <summary>AICc of this curve less that of the best; 0 when it is the best.</summary>
    public double Trails { get; init; }

    /// <summary>Where rivals go far above the data: curves with a lower AICc, and curves of no more parameters that it does not tell apart from this one.</summary>
    public ImmutableArray<CurveEnd> OtherEnds { get; init; } = [];
}

/// <summary>How far another curve goes.</summary>
/// <param name="Model">Its name.</param>
/// <param name="Share">Its uptake at three times the highest concentration over that of the curve in question; no unit.</param>
public sealed record CurveEnd(string Model, double Share);
