using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Why vessels have no uptake, one sentence a cause, so that it can be said where the result is missing, with what would give it.</summary>
/// <param name="Sentence">What is missing, of how many vessels, and why.</param>
/// <param name="Samples">Codes of the vessels.</param>
public sealed record MissingResult(string Sentence, ImmutableArray<string> Samples)
{
    private const int Named = 4;

    /// <summary>The run that has no calibration; null where that is not the cause.</summary>
    public string? Run { get; private init; }

    /// <summary>Runs whose calibration it could use, by id.</summary>
    public ImmutableArray<string> Lenders { get; private init; } = [];

    /// <summary>The amount that is not recorded; null where that is not the cause.</summary>
    public Property? Amount { get; private init; }

    /// <summary>Every cause, the one that holds up most vessels first.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="series">One series by its name, or null for the whole study.</param>
    public static ImmutableArray<MissingResult> Of(Evidence evidence, string? series = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var only = series is null ? null : evidence.SeriesNamed(series);
        if (series is not null && only is null)
            return [];
        var codes = only is null ? null : only.Vessels.Select(v => v.Code).ToHashSet(StringComparer.Ordinal);
        Vessel[] without = [.. evidence.Vessels.Where(v => v is { IsStruck: false, Uptake: null, Sample.Role: SampleRole.Vessel } && codes?.Contains(v.Code) != false)];
        var below = OnlyBelow(evidence, without);
        return [.. Uncalibrated(evidence, without).Concat(BelowALimit(below)).Concat(Unread(without, below)).Concat(Unrecorded(without)).Concat(Unfit(evidence, without)).OrderByDescending(m => m.Samples.Length)];
    }

    /// <summary>True when a finding of a vessel or of its run says no more than this.</summary>
    /// <param name="finding">The finding.</param>
    public bool Says(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Code is "HF-462" or "HF-464" or "HF-469" && finding.Concerns.Any(c => c == Run || Samples.Contains(c));
    }

    private static IEnumerable<MissingResult> Uncalibrated(Evidence evidence, Vessel[] without)
    {
        ImmutableArray<string> lenders = [.. evidence.Runs.Where(r => r is { Curve: not null, BorrowedFrom: null }).Select(r => r.Run.Id)];
        foreach (var run in evidence.Runs.Where(r => r.Curve is null))
        {
            ImmutableArray<string> codes = [.. without.Where(v => v.End is { Value: null, IsOnlyBelow: false } end && end.Readings.Any(r => r.Run == run.Run.Id)).Select(v => v.Code)];
            if (!codes.IsEmpty)
            {
                var act = lenders.IsEmpty ? "Take in its standards, or say which of its samples are standards." : $"Use the one of {string.Join(" or ", lenders)}.";
                yield return new($"No uptake of {Of(codes)}: run {run.Run.Id} has no calibration. {act}", codes) { Run = run.Run.Id, Lenders = lenders };
            }
        }
    }

    // "< 0.05" alone is no number to fit: it would enter as censored or not at all, and without the instrument's own value it does not.
    private static IEnumerable<MissingResult> BelowALimit(Reading[] below)
    {
        ImmutableArray<string> codes = [.. below.Select(r => r.Sample).Distinct(StringComparer.Ordinal)];
        if (!codes.IsEmpty)
        {
            var limits = Phrase.Listed(below.Select(r => Phrase.With(r.Below!.Value * r.Dilution, Property.Named(r.Signal)?.Unit ?? "")).Distinct(StringComparer.Ordinal));
            yield return new(
                $"No uptake of {Of(codes)}: reported only as below {limits}, so {(codes.Length == 1 ? "it enters" : "they enter")} no fit. Take in what the instrument showed, with its sign.", codes);
        }
    }

    private static Reading[] OnlyBelow(Evidence evidence, Vessel[] without)
    {
        var unread = without.Where(v => v.End is null or { IsOnlyBelow: true }).Select(v => v.Code).ToHashSet(StringComparer.Ordinal);
        return [.. evidence.Study.Readings.Where(r => r is { Value: null, Below: not null } && unread.Contains(r.Sample) && !evidence.Study.IsStruck(r))];
    }

    private static IEnumerable<MissingResult> Unread(Vessel[] without, Reading[] below)
    {
        var reported = below.Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<string> codes = [.. without.Where(v => v.End is null && !reported.Contains(v.Code)).Select(v => v.Code)];
        if (!codes.IsEmpty)
            yield return new($"No uptake of {Of(codes)}: no reading names {(codes.Length == 1 ? "it" : "them")}. Take in what the instrument showed.", codes);
    }

    private static IEnumerable<MissingResult> Unrecorded(Vessel[] without)
    {
        foreach (var (amount, lacks) in new (Property, Func<Vessel, bool>)[]
        {
            (BatchProperties.InitialConcentration, v => v.Start is null), (BatchProperties.Volume, v => v.Volume is null), (BatchProperties.Mass, v => v.Mass is null),
        })
        {
            ImmutableArray<string> codes = [.. without.Where(lacks).Select(v => v.Code)];
            if (!codes.IsEmpty)
                yield return new($"No uptake of {Of(codes)}: the {amount.Title} is not recorded.", codes) { Amount = amount };
        }
    }

    // What was read and recorded, and still gives nothing, has a finding of its own.
    private static IEnumerable<MissingResult> Unfit(Evidence evidence, Vessel[] without)
    {
        var uncalibrated = evidence.Runs.Where(r => r.Curve is null).Select(r => r.Run.Id).ToHashSet(StringComparer.Ordinal);
        return without
            .Where(v => v is { Start: not null, Volume: not null, Mass: not null, End: { } end } && !(end.Value is null && end.Readings.Any(r => uncalibrated.Contains(r.Run))))
            .Select(v => (v.Code, Why: v.Findings.FirstOrDefault(f => f.Weight == Weight.Stop)?.Sentence))
            .Where(v => v.Why is not null)
            .Select(v => new MissingResult($"No uptake of {v.Code}. {v.Why}", [v.Code]));
    }

    private static string Of(ImmutableArray<string> codes)
        => codes.Length <= Named ? Phrase.Listed(codes) : $"{Phrase.Count(codes.Length, "vessel")} ({string.Join(", ", codes.Take(Named - 1))}, …)";
}
