using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims;

/// <summary>What claims commonly stand on.</summary>
internal static class Grounds
{
    /// <summary>What every claim with a concentration stands on: its runs' calibration, and readings inside the calibrated range.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="vessels">The vessels whose concentrations count.</param>
    public static IEnumerable<Claim> OfConcentrations(Evidence evidence, IEnumerable<Vessel> vessels)
    {
        var runs = vessels.SelectMany(v => v.End?.Readings ?? []).Select(r => r.Run).Distinct(StringComparer.Ordinal).ToArray();
        foreach (var run in evidence.Runs.Where(r => runs.Contains(r.Run.Id, StringComparer.Ordinal)))
        {
            yield return Claim.Raised(CalibrationFit.RuleId, ("run", run.Run.Id));
            if (CalibrationRun.Lender(run, evidence) is { } lender && LinearCalibration.OverTheRangeInUse(lender) is { } straight)
                yield return straight;
            yield return Claim.Raised(ReadingsInsideRange.RuleId, ("run", run.Run.Id));
        }
    }

    /// <summary>What every claim of removal by sorption stands on: concentrations, clean controls, a recorded pH, and no precipitation at any condition used.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="series">The series.</param>
    public static IEnumerable<Claim> OfSorption(Evidence evidence, Series series)
        => OfConcentrations(evidence, series.Vessels)
            .Append(Claim.Raised(ControlsClean.RuleId, ("series", series.Name)))
            .Append(Claim.Raised(PhRecorded.RuleId, ("series", series.Name)))
            .Append(Claim.Raised(NotPrecipitation.RuleId, ("series", series.Name)));

    /// <summary>
    /// What every claim stands on that needs the powder itself to stay: that it is stable at each pH it was used at. The composition is that of the author's own
    /// claim of stability.
    /// </summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="vessels">The vessels whose powder has to stay.</param>
    public static IEnumerable<Claim> OfStability(Evidence evidence, IEnumerable<Vessel> vessels)
    {
        var stated = evidence.Study.Claims.Where(c => c.Rule == StableInWater.RuleId).Select(c => new Claim(c.Id, c.Rule, c.Parameters, null, Stated: true)).FirstOrDefault();
        var used = vessels.Select(v => v.Sample.Number(BatchProperties.StartPh)).Select(ph => ph is { } known ? Phrase.Number(Math.Round(known, 1)) : "not recorded").Distinct(StringComparer.Ordinal);
        return used.Select(ph => Claim.Raised(
            StableInWater.RuleId,
            ("ph", ph), ("formula", stated?.Words("formula")), ("fraction", stated?.Words("fraction")), ("dopant", stated?.Words("dopant")), ("limit", stated?.Words("limit"))));
    }

    /// <summary>
    /// What every claim about equilibrium stands on: that the contact time used was long enough, shown at the highest concentration. It is
    /// asked of the kinetic series with the highest start concentration.
    /// </summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="series">The series said to be at equilibrium.</param>
    public static IEnumerable<Claim> OfEquilibrium(Evidence evidence, Series series)
        => OfEquilibrium(evidence, series.Vessels.Select(v => v.Sample), series.Vessels.Select(v => v.Start?.Value));

    /// <summary>The same of samples that are in no series.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="samples">The samples, with their contact times where recorded.</param>
    /// <param name="concentrations">Their start concentrations, mg/L, where known.</param>
    public static IEnumerable<Claim> OfEquilibrium(Evidence evidence, IEnumerable<Sample> samples, IEnumerable<double?> concentrations)
    {
        double[] times = [.. samples.Select(s => s.Number(BatchProperties.ContactTime)).OfType<double>()];
        double[] starts = [.. concentrations.OfType<double>()];
        var kinetic = evidence.Series
            .Where(s => s.Varied == BatchProperties.ContactTime)
            .MaxBy(s => s.Vessels.Select(v => v.Start?.Value ?? 0).DefaultIfEmpty().Max());
        yield return Claim.Raised(
            EquilibriumReached.RuleId,
            ("series", kinetic?.Name),
            ("time", times.Length == 0 ? null : Phrase.Plain(times.Min(), "min")),
            ("concentration", starts.Length == 0 ? null : Phrase.Plain(starts.Max(), "mg/L")));
    }
}
