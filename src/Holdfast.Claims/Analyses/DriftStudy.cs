using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.SurfaceCharge;

namespace Holdfast.Claims.Analyses;

/// <summary>What powder in salt solutions without metal says of its point of zero charge, and uptake at several ionic strengths of its binding.</summary>
/// <param name="Tests">One for each series and salt level, in the order they came.</param>
/// <param name="Ionic">One for each series in which the ionic strength was varied.</param>
public sealed record DriftStudy(ImmutableArray<DriftTest> Tests, ImmutableArray<IonicSeries> Ionic)
{
    // A pH electrode calibrated with two buffers, read to 0.01 (common practice).
    private const double AssumedU = 0.05;
    private const int EnoughLevels = 4;

    private static readonly Analysis<DriftStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static DriftStudy Of(Evidence evidence) => Known.Of(evidence);

    private static DriftStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        var known = study.Apparatus.FirstOrDefault(i => string.Equals(i.Serves, BatchProperties.EndPh.Name, StringComparison.Ordinal))?.U;
        var samples = study.Samples
            .Where(s => s.Role == SampleRole.SorbentBlank && !study.IsStruck(s) && s.Number(BatchProperties.StartPh) is not null && s.Number(BatchProperties.EndPh) is not null)
            .ToArray();
        var levels = samples.Select(s => s.Number(SurfaceChargeProperties.IonicStrength)).OfType<double>().Distinct().Count();
        var tests = samples
            .GroupBy(s => (Series: s.Series ?? "drift", Salt: s.Number(SurfaceChargeProperties.IonicStrength)))
            .Select(g => One(g.Key.Series, g.Key.Salt, [.. g], levels, known))
            .OfType<DriftTest>();
        return new([.. tests], [.. evidence.Series.Select(OfSalt).OfType<IonicSeries>()]);
    }

    private static DriftTest? One(string series, double? salt, Sample[] samples, int saltLevels, double? known)
    {
        var u = known ?? AssumedU;
        var points = samples.GroupBy(s => s.Number(BatchProperties.StartPh)!.Value).OrderBy(g => g.Key)
            .Select(g => (Start: g.Key, End: g.Average(s => s.Number(BatchProperties.EndPh)!.Value))).ToArray();
        if (points.Length < EnoughLevels)
            return null;
        var stated = Array.TrueForAll(samples, s => s.Number(BatchProperties.Dose) is > 0 || (s.Number(BatchProperties.Mass) is > 0 && s.Number(BatchProperties.Volume) is > 0));
        var crossings = PhDrift.Crossings([.. points.Select(p => p.Start)], [.. points.Select(p => p.End)], u);
        var judged = PhDrift.Judge(crossings, saltLevels, stated);
        return new(series, salt, [.. points], [.. crossings], judged.Value, u, known is null, [.. judged.Findings]);
    }

    private static IonicSeries? OfSalt(Series series)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && v.Sample.Number(SurfaceChargeProperties.IonicStrength) is > 0).ToArray();
        double[] salt = Array.ConvertAll(vessels, v => v.Sample.Number(SurfaceChargeProperties.IonicStrength)!.Value);
        if (salt.Distinct().Count() < 3)
            return null;
        return IonicStrengthSeries.Of(salt, Array.ConvertAll(vessels, v => v.Uptake!.Value.Value)).Value is { } trend ? new(series, [.. vessels], trend) : null;
    }
}

/// <summary>pH drift at one salt level.</summary>
/// <param name="Series">Name of the series.</param>
/// <param name="Salt">Ionic strength, mol/L, or null when not recorded.</param>
/// <param name="Points">Start pH and mean final pH.</param>
/// <param name="Crossings">Where the drift changes sign.</param>
/// <param name="ZeroCharge">The point of zero charge, or null when none may be named.</param>
/// <param name="U">Standard uncertainty taken for one pH.</param>
/// <param name="IsAssumed">True when no apparatus sheet gave it.</param>
/// <param name="Findings">Caveats.</param>
public sealed record DriftTest(
    string Series, double? Salt, ImmutableArray<(double Start, double End)> Points, ImmutableArray<ZeroCrossing> Crossings, ZeroCrossing? ZeroCharge, double U, bool IsAssumed,
    ImmutableArray<Finding> Findings);

/// <summary>Uptake at several ionic strengths.</summary>
/// <param name="Source">The series.</param>
/// <param name="Vessels">Its vessels.</param>
/// <param name="Trend">Trend over the logarithm of ionic strength.</param>
public sealed record IonicSeries(Series Source, ImmutableArray<Vessel> Vessels, IonicStrengthSeries Trend);
