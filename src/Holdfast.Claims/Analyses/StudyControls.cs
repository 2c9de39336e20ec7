using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// Controls without sorbent speak of a vessel's wall, filter and solution, whichever series they are filed under: each reaches every vessel of the study at its start
/// concentration and pH. A pH that was not recorded tells nothing apart.
/// </summary>
internal static class StudyControls
{
    /// <summary>The controls of a study that count.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static IEnumerable<Vessel> All(Evidence evidence) => evidence.Series.SelectMany(s => s.Controls).Where(c => !c.IsStruck);

    /// <summary>Controls that speak of a series: its own, and those of other series at one of its start concentrations and pH.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="series">The series.</param>
    public static Vessel[] Reaching(Evidence evidence, Series series)
    {
        Vessel[] vessels = [.. series.Vessels];
        return [.. All(evidence).Where(c => series.Controls.Contains(c) || vessels.Any(v => Reaches(c, v)))];
    }

    /// <summary>Controls at a pH of a series, at none of its start concentrations.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="series">The series.</param>
    public static Vessel[] Beside(Evidence evidence, Series series)
    {
        Vessel[] vessels = [.. series.Vessels], reaching = Reaching(evidence, series);
        return [.. All(evidence).Where(c => !reaching.Contains(c) && vessels.Any(v => AtItsPh(c, v)))];
    }

    /// <summary>Whether a control speaks of a vessel.</summary>
    /// <param name="control">The control.</param>
    /// <param name="vessel">The vessel.</param>
    public static bool Reaches(Vessel control, Vessel vessel)
        => Start(control) is { } a && Start(vessel) is { } b && Tolerances.SameStart(b, a) && AtItsPh(control, vessel);

    private static bool AtItsPh(Vessel control, Vessel vessel)
        => control.Sample.Number(BatchProperties.StartPh) is not { } a || vessel.Sample.Number(BatchProperties.StartPh) is not { } b || Tolerances.SamePh(a, b);

    private static double? Start(Vessel vessel) => vessel.Sample.Number(BatchProperties.InitialConcentration) ?? vessel.Start?.Value;
}
