using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Isotherms;
using Holdfast.Planning;

namespace Holdfast.Claims.NextExperiments;

/// <summary>Start concentrations that a further isotherm point needs, by the Langmuir curve found so far: the bench sets C0, not Ce.</summary>
/// <param name="Capacity">qm, mg/g.</param>
/// <param name="Affinity">K, L/mg.</param>
/// <param name="Dose">Sorbent per volume, g/L.</param>
public sealed record LangmuirDesign(double Capacity, double Affinity, double Dose)
{
    /// <summary>The curve found for a series, or null when it was not fitted or the dose is not known.</summary>
    /// <param name="fitted">The series with its fits.</param>
    public static LangmuirDesign? Of(FittedSeries fitted)
    {
        double[] doses = [.. fitted.Series.Vessels.Select(v => v.Dose?.Value).OfType<double>()];
        return Candidates.Named(fitted, "Langmuir") is { } fit && doses.Length > 0
            && Candidates.Value(fit, "qm") is { } qm and > 0 && Candidates.Value(fit, "K") is { } k and > 0
            ? new(qm, k, doses.Average())
            : null;
    }

    /// <summary>Concentration after contact at which a share of the capacity is in use, mg/L.</summary>
    /// <param name="coverage">Between 0 and 1; no unit.</param>
    public double ConcentrationAt(double coverage) => OptimalLevels.ForCoverage(Affinity, coverage);

    /// <summary>Start concentration that leaves the given one, mg/L: C0 = Ce + D q(Ce).</summary>
    /// <param name="ce">Concentration after contact, mg/L.</param>
    public double StartFor(double ce) => ce + Dose * Capacity * Langmuir.Coverage<Number>(Affinity, ce).Value;
}
