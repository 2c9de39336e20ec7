using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.SurfaceCharge;

namespace Holdfast.Reports.Trails;

/// <summary>Points of zero charge, one for each series and salt level in mol/L: "pzc:PZC@0.01".</summary>
internal sealed class SurfaceChargeNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
        => DriftStudy.Of(evidence).Tests.Where(t => t.ZeroCharge is not null).Select(t => One(evidence, t, t.ZeroCharge!));

    /// <summary>Address of the point of zero charge of a test.</summary>
    /// <param name="test">The test.</param>
    public static string Address(DriftTest test) => "pzc:" + test.Series + (test.Salt is { } salt ? "@" + salt.ToString("R", CultureInfo.InvariantCulture) : "");

    private static NumberTrail One(Evidence evidence, DriftTest test, ZeroCrossing zero)
    {
        var samples = evidence.Study.Samples.Where(s => s.Role == SampleRole.SorbentBlank && !evidence.Study.IsStruck(s) && (s.Series ?? "drift") == test.Series
            && s.Number(SurfaceChargeProperties.IonicStrength) == test.Salt).ToArray();
        double below = test.Points.Last(p => p.Start <= zero.Ph).Start, above = test.Points.First(p => p.Start >= zero.Ph).Start;
        var address = Address(test);
        return new(
            address, $"point of zero charge, {test.Series}{(test.Salt is { } salt ? $", {InWords.Plain(salt, "mol/L")} salt" : "")}",
            Measured.From(zero.Ph, new Source(address, $"pH readings on both sides of the crossing, each known to {InWords.Plain(test.U)}{(test.IsAssumed ? " (assumed)" : "")}", zero.U)), "",
            "start pH at which end pH − start pH is 0, straight between its two neighbours",
            [.. samples.OrderBy(Start).Where(s => Start(s) == below || Start(s) == above).SelectMany(s => Both(s, test.U))],
            DerivedTrails.Readings(evidence, samples.Select(s => s.Code)))
        {
            Samples = [.. samples.Select(s => s.Code)],
        };
    }

    private static double? Start(Sample sample) => sample.Number(BatchProperties.StartPh);

    private static IEnumerable<TrailInput> Both(Sample sample, double u)
    {
        foreach (var (symbol, property) in new[] { ("start", BatchProperties.StartPh), ("end", BatchProperties.EndPh) })
        {
            if (sample.Fact(property) is { Value: { } value } fact)
                yield return new($"pH {symbol} ({sample.Code})", Measured.From(value, new Source(property.Name + sample.Code, property.Title, u)), "", fact.Origin.ToString());
        }
    }
}
