using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests;

/// <summary>
/// The invented demo study as evidence, from the concentrations that an independent program worked out (reference/design/demo-seed-1589-values.csv;
/// invented, seed 1589), so that the rules can be held against demo-seed-1589-verdicts.csv without the files being read.
/// </summary>
internal static class InventedEvidence
{
    private static readonly Lazy<Evidence> Made1589 = new(Build);

    /// <summary>The evidence.</summary>
    public static Evidence Whole => Made1589.Value;

    private static Evidence Build()
    {
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv");
        ImmutableArray<Series> series =
        [
            Made.Series("ISO-298", BatchProperties.InitialConcentration, Levels("ISO-298", level => (level, 2, 1440))),
            Made.Series("DOSE", BatchProperties.Dose, Levels("DOSE", level => (20, level, 1440))),
            Made.Series("KIN-05", BatchProperties.ContactTime, Levels("KIN-05", level => (5, 2, level))),
            Made.Series("KIN-20", BatchProperties.ContactTime, Levels("KIN-20", level => (20, 2, level))),
            Made.Series("WATER-rinse", null, Levels("WATER-rinse", _ => (6.80, 2, 1440))),
            Made.Series("WATER-roof", null, Levels("WATER-roof", _ => (0.120, 2, 1440))),
        ];
        var standards = rows.Where(r => r["series"] == "AAS-CAL").Select(r => (Leading(r["level"]), r.Number("value")));
        var blanks = rows.Where(r => r["series"] == "AAS-BLANK").Select(r => r.Number("value"));
        var digests = rows.Where(r => r["series"] == "DIGEST").Select(r => new Sample(
            "DIG-" + r["replicate"], SampleRole.Digest, Made.Facts([(BatchProperties.UptakeBySolid, r.Number("value"))]))).ToArray();
        return Made.Evidence(series, [Made.Run("aas-run1", standards, blanks, ("Calibrated to", "2 mg/L"))], digests);

        (double X, Vessel[] Vessels)[] Levels(string name, Func<double, (double Start, double Dose, double Time)> settings)
            => [.. rows.Where(r => r["series"] == name && r["quantity"] == "measured concentration mg/L")
                .GroupBy(r => Leading(r["level"]))
                .Select(g => (g.Key, g.Select(r =>
                {
                    var (start, dose, time) = settings(g.Key);
                    return Made.Vessel($"{name}-{r["level"]}-{r["replicate"]}", name, start, r.Number("value"), dose, time, detection: 0.03593, quantification: 0.1089);
                }).ToArray()))];
    }

    private static double Leading(string level) => Made.Claim("", ("x", level)).Number("x") ?? 0;
}
