using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>"The sensor detects {limit}": the stated limit lies above what separately prepared blanks allow on the line of F0/F.</summary>
/// <remarks>
/// As for a calibration: 3.3 s/b (ICH Q2, from memory) with the 95 % chi-square interval of s; s and b on the axis F0/F, b over the range the claim names, else
/// over the longest straight one.
/// </remarks>
public sealed class SensorDetectionLimit : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "sensor-detection-limit";

    /// <inheritdoc/>
    public string Wording => "The sensor of {series} detects {limit}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("limit", "limit", "2 µmol/L", null), new("to", "upper end of the line used", "40 µmol/L", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => SensorGround.Of(claim, evidence);

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = Sensing.Of(evidence).SeriesNamed(claim.Words("series"));
        var to = SensorAmount.In(claim, "to", evidence);
        var stated = SensorAmount.In(claim, "limit", evidence);
        var decision = series is null ? Decision.Missing("No quenching series was found. Read five levels and ten separate blanks.")
            : stated is not { } limit || limit <= 0 ? Decision.NotNamed(claim, "limit", "2 µmol/L")
            : series.Limit(to) is not { } found
                ? Decision.Missing($"{series.Name} has {Phrase.Count(series.Blanks.Length, "blank")} and no slope to go with them: prepare ten blanks one by one and read five levels.")
            : DetectionLimit.Decide(found, limit, Lowest(series), SensorAmount.Unit);
        if (stated is { } amount && claim.In("limit", SensorAmount.Unit) is null)
            decision = decision with { Warnings = decision.Warnings.Add($"{claim.Words("limit")} of {evidence.Study.Analyte} is {Phrase.With(amount, SensorAmount.Unit)}.") };
        if (series?.Limit(to) is { } own)
        {
            decision = decision with
            {
                Warnings = decision.Warnings.Add(
                    $"The detection limit is {Phrase.With(own.Value, SensorAmount.Unit)}{SensorAmount.InMilligrams(own.Value, evidence)} in {Water(series)}; another water has its own."),
            };
        }

        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "the series"), ("limit", claim.Words("limit") ?? "the limit")),
            SensorScope.Of(series, to), SensorScope.Codes(series));
    }

    private static double? Lowest(SensorSeries series) => series.Levels.Where(l => l > 0).Select(l => (double?)l).Min();

    private static string Water(SensorSeries series)
        => series.Samples.Select(s => s.Sample.Words(SampleProperties.Matrix)).OfType<string>().FirstOrDefault() ?? "the water of the series, which was not recorded";
}
