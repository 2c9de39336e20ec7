using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims.Rules;

/// <summary>"The sensor is linear to {to}": on F0/F a quadratic term gains nothing and each level that can be detected reads back close to what it is.</summary>
/// <remarks>Judged as a calibration is: Mandel's F at 99 % over single vessels (ISO 8466-1, from memory). Levels below the detection limit are not read back.</remarks>
public sealed class SensorLinear : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "sensor-linear";

    /// <inheritdoc/>
    public string Wording => "The sensor of {series} is linear to {to}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("to", "upper end", "40 µmol/L", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => Sensing.Of(evidence).Series.Where(s => s.Range?.Longest is not null).Select(s => Claim.Raised(Id, ("series", s.Name), ("to", Phrase.Plain(s.Range!.Longest!.Top, SensorAmount.Unit))));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => SensorGround.Of(claim, evidence);

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = Sensing.Of(evidence).SeriesNamed(claim.Words("series"));
        var to = SensorAmount.In(claim, "to", evidence);
        var used = series?.Ratios(to * (1 + 1e-9)) ?? [];
        var highest = used.Count == 0 ? 0 : used.Max(r => r.Level);
        var decision = series is null || used.Count == 0 ? Decision.Missing("No quenching series with blanks or a level without quencher was found. Read five levels, three vessels each.")
            : to is { } top && !Tolerances.Reaches(highest, top)
                ? Decision.Missing($"The highest level of {series.Name} is {Phrase.With(highest, SensorAmount.Unit)}: nothing is known up to {Phrase.With(top, SensorAmount.Unit)}.")
            : LinearCalibration.Decide(used, series.Name, SensorAmount.Unit, series.Limit(highest)?.Value ?? 0);
        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "the series"), ("to", claim.Words("to") ?? Phrase.With(highest, SensorAmount.Unit))),
            SensorScope.Of(series, highest), SensorScope.Codes(series));
    }
}
