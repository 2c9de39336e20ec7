using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Studies.History;

namespace Holdfast.Claims;

/// <summary>A judged claim: everything a reader needs to agree or object. It is recomputed from the data, never typed.</summary>
/// <param name="Claim">What was judged.</param>
/// <param name="Sentence">The claim in words, with its numbers.</param>
/// <param name="Ruling">How it stands.</param>
/// <param name="Reason">Why, in plain words with the deciding numbers and units.</param>
/// <param name="Numbers">The deciding numbers.</param>
/// <param name="Method">The test, by its name in the trade.</param>
/// <param name="Scope">Where a holding claim holds: pH, temperature, concentration, dose, water, batch, n. Null when it does not hold.</param>
/// <param name="Gates">Conditions that had to be met, passed or failed.</param>
/// <param name="Warnings">Prerequisites that are not shown yet, margins fixed after the data, other caveats.</param>
/// <param name="Questions">What an examiner would ask, triggered by the data.</param>
/// <param name="Next">The smallest experiment that would settle it; null when nothing more is needed.</param>
/// <param name="Data">Codes of the samples it rests on.</param>
public sealed record Verdict(
    Claim Claim,
    string Sentence,
    Ruling Ruling,
    string Reason,
    ImmutableArray<Deciding> Numbers,
    string Method,
    string? Scope,
    ImmutableArray<Gate> Gates,
    ImmutableArray<string> Warnings,
    ImmutableArray<Question> Questions,
    NextExperiment? Next,
    ImmutableArray<string> Data)
{
    /// <summary>True when nothing was measured that could test it: what stands on it is neither shown nor contradicted.</summary>
    public bool IsUntested { get; init; }

    /// <summary>What it stands on and does not hold: not shown yet, untested or contradicted. Claims that share one are settled together, see <see cref="SharedGap"/>.</summary>
    public ImmutableArray<Verdict> OpenGrounds { get; init; } = [];

    /// <summary>The next experiment as work for the Plan; null when nothing more is needed.</summary>
    public WorkPlanned? Work => Next is null ? null : new(Next.Sentence, Claim.Id, Next.Vessels, Next.Settings);
}

/// <summary>A number that decided, for tables and machines.</summary>
/// <param name="Name">What it is: "step from 120 to 180 min, share of q(180)".</param>
/// <param name="Value">The number.</param>
/// <param name="Low">Lower end of its interval, or null.</param>
/// <param name="High">Upper end of its interval, or null.</param>
/// <param name="Unit">Unit, "" for none.</param>
/// <param name="Note">What the interval is ("90 % interval, 4 degrees of freedom"), or null.</param>
public sealed record Deciding(string Name, double Value, double? Low, double? High, string Unit, string? Note)
{
    /// <summary>Confidence of the interval, 0 to 1; null where there is none or where its basis is told by <see cref="Note"/> alone.</summary>
    public double? Level { get; init; }

    /// <summary>Standard uncertainty, in the unit given; null where it is not known or the interval is not even.</summary>
    public double? U { get; init; }

    /// <summary>A number without an interval.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The number, in the unit given.</param>
    /// <param name="unit">Unit, "" for none.</param>
    /// <param name="note">What is worth knowing about it, or null.</param>
    public static Deciding Plain(string name, double value, string unit = "", string? note = null) => new(name, value, null, null, unit, note);

    /// <summary>An estimate with its two-sided interval.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="estimate">The estimate, in the unit given.</param>
    /// <param name="confidence">0.90 where sameness is judged, 0.95 elsewhere; no unit.</param>
    /// <param name="unit">Unit, "" for none.</param>
    public static Deciding Of(string name, Estimate estimate, double confidence, string unit)
    {
        var interval = estimate.Interval(confidence);
        var freedom = double.IsPositiveInfinity(estimate.DegreesOfFreedom) ? "known uncertainty"
            : string.Create(CultureInfo.InvariantCulture, $"{estimate.DegreesOfFreedom:G4} degree{(estimate.DegreesOfFreedom == 1 ? "" : "s")} of freedom");
        return new(name, estimate.Value, interval.Low, interval.High, unit, string.Create(
            CultureInfo.InvariantCulture, $"{100 * confidence:G4} % interval, {freedom}, n = {estimate.N}; {estimate.Method}"))
        {
            Level = confidence,
            U = estimate.Scale == Scale.Plain && double.IsFinite(estimate.StandardError) ? estimate.StandardError : null,
        };
    }
}

/// <summary>A condition that had to be met before the claim could hold.</summary>
/// <param name="Name">Short name: "vessels per time".</param>
/// <param name="Passed">Whether it was met.</param>
/// <param name="Sentence">With numbers: "3 vessels at each time; 3 are needed".</param>
public sealed record Gate(string Name, bool Passed, string Sentence)
{
    /// <summary>True when its failing leaves the data mute: neither "holds" nor "contradicted". False forbids "holds" alone.</summary>
    public bool Silences { get; init; }
}

/// <summary>A question an examiner would ask.</summary>
/// <param name="Code">Stable code: "Q17".</param>
/// <param name="Text">The question, with the study's own numbers in it.</param>
public sealed record Question(string Code, string Text);

/// <summary>The smallest experiment that would settle a claim.</summary>
/// <param name="Sentence">In words, with computed times, doses, concentrations and replicates.</param>
/// <param name="Vessels">How many vessels it needs, or null when it needs none.</param>
/// <param name="Settings">The settings to run, each with its unit ("240 min").</param>
/// <param name="Basis">How the size was found: "exact power of the equivalence test, 80 %".</param>
public sealed record NextExperiment(string Sentence, int? Vessels, ImmutableArray<string> Settings, string Basis)
{
    /// <summary>What is left of it for one person: itself, or, where the scatter asks for more vessels than she can run, that and the scatter that would do.</summary>
    /// <param name="most">Most vessels that one person can run for a claim.</param>
    public NextExperiment Within(double most)
    {
        // A plan sized by its power needs vessels as the square of the scatter; one that only spans a range does not.
        if (!(Vessels > most) || !Basis.Contains("power", StringComparison.OrdinalIgnoreCase))
            return this;
        var share = 100 * Math.Sqrt(most / Vessels.Value);
        return new(
            $"Not decidable with this scatter: it would take {Phrase.Number(Vessels.Value)} vessels, and one person runs {Phrase.Number(most)} for a claim. "
            + $"Bring the scatter between vessels down to {Phrase.With(Math.Floor(share), "%")} of what it is, then ask again; or settle for a wider margin, fixed before new data are seen.",
            null, [], Basis);
    }
}
