using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>What the study cannot say, read off what it holds.</summary>
internal static class LimitSection
{
    /// <summary>The section.</summary>
    public static Section Of(Dossier dossier)
    {
        string[] limits = [.. Limits(dossier)];
        return new("limits", "Limits of the study", limits.Length == 0
            ? [Prose.Paragraph("The records raise no limit beyond the scope of each claim.")]
            : [Prose.Paragraph("Nothing is shown outside the conditions that were measured. In particular:"), Prose.List(limits)]);
    }

    private static IEnumerable<string> Limits(Dossier dossier)
    {
        var evidence = dossier.Evidence;
        Vessel[] vessels = [.. evidence.Vessels.Where(v => v.Sample.Role == SampleRole.Vessel && !v.IsStruck)];
        if (vessels.Length == 0)
        {
            yield return "No vessel with sorbent counts, so nothing is said about uptake.";
            yield break;
        }

        var batches = vessels.Select(v => v.Sample.Batch).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        if (batches.Length == 0)
            yield return "The batch of the sorbent was not recorded, so its batches cannot be compared.";
        else if (batches.Length == 1)
            yield return $"All vessels that were shaken hold sorbent of one batch ({batches[0]}): the scatter between batches is in no interval of this report.";
        var waters = vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        if (waters.Length == 1)
            yield return $"Only one water was used ({waters[0]}): other waters may hold rivals, ligands and buffers.";
        if (Held(BatchProperties.Temperature, vessels) is { } temperature)
            yield return $"All vessels were at {temperature}: nothing is said about other temperatures.";
        if (evidence.Study.Samples.All(s => s.Role != SampleRole.StartSolution))
            yield return "Start solutions were made up and not read: an error in making one up is in all vessels of that solution alike.";
        var ends = vessels.Count(v => v.Sample.Number(BatchProperties.EndPh) is null);
        if (ends > 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"The end pH is missing for {ends} of {vessels.Length} vessels, so the condition they came to is not known.");
        // Controls of another series at the same conditions serve as well.
        var served = dossier.Verdicts.Where(v => v.Claim.Rule == ControlsClean.RuleId && v.Ruling == Ruling.Holds).Select(v => v.Claim.Words("series")).ToHashSet(StringComparer.Ordinal);
        var bare = evidence.Series.Where(s => !s.Levels.IsEmpty && s.Controls.IsEmpty && !served.Contains(s.Name)).Select(s => s.Name).ToArray();
        if (bare.Length > 0)
            yield return $"No control without sorbent belongs to {InWords.Some(bare, 8)}: loss to wall, filter and precipitate is not measured there.";
        if (!evidence.Runs.IsEmpty && evidence.Runs.All(r => r.Checks.IsEmpty))
            yield return "No check standard was read: the calibration standards vouch for themselves.";
        var few = evidence.Series.Where(s => s.Varied is not null && s.Levels.Any(l => l.Vessels.Length < 3)).Select(s => s.Name).ToArray();
        if (few.Length > 0)
            yield return $"Some levels of {InWords.Some(few, 8)} have fewer than three vessels: their intervals are wide or missing.";
        if (evidence.Kinetics.Length == 1)
            yield return "Contact time was varied at one start concentration only: equilibrium at another one is not covered.";
    }

    private static string? Held(Property property, Vessel[] vessels)
    {
        var values = vessels.Select(v => v.Sample.Number(property)).OfType<double>().Distinct().ToArray();
        return values.Length == 1 ? InWords.Plain(values[0], property.Unit) : null;
    }
}
