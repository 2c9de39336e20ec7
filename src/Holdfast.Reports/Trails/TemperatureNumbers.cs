using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Thermodynamics;

namespace Holdfast.Reports.Trails;

/// <summary>
/// Constants and free energies at one temperature ("K:TEMP-298", "dG:TEMP-298"); enthalpy, entropy and free energy by the line through several, under the
/// name of the coldest series ("dH:TEMP-298", "dS:TEMP-298", "dG-line:TEMP-298"); activation energies, the same ("Ea:KIN-298", "Ea-plateau:KIN-298").
/// </summary>
internal sealed class TemperatureNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
        => TemperatureStudy.Of(evidence).Families.SelectMany(f => Family(evidence, f)).Concat(RateStudy.Of(evidence).Families.SelectMany(f => Rates(evidence, f)));

    /// <summary>Address of an activation energy.</summary>
    /// <param name="family">The series.</param>
    /// <param name="place">Place of the energy in the family: 0 for the rate constant, 1 for the constant times the plateau.</param>
    public static string EnergyAddress(RateFamily family, int place) => (place == 0 ? "Ea:" : "Ea-plateau:") + family.Series[0].Name;

    private static IEnumerable<NumberTrail> Family(Evidence evidence, TemperatureFamily family)
    {
        var usable = family.Isotherms.Where(i => i.Constant is not null).ToArray();
        foreach (var isotherm in usable)
        {
            foreach (var trail in Single(evidence, isotherm, family.Choice))
                yield return trail;
        }

        if (family.Line is not { } found)
            yield break;
        var (first, line) = (family.Isotherms[0].Fitted.Series.Name, found.Line);
        string[] samples = [.. usable.SelectMany(i => i.Langmuir!.Points.Ids)];
        var readings = DerivedTrails.Readings(evidence, samples);
        TrailInput[] inputs = [.. usable.Select(i => Constant(i, family.Choice))];
        var fit = Line(line, "ln K", [.. usable.Select(i => (i.Fitted.Series.Name, (string?)("K:" + i.Fitted.Series.Name)))]);
        yield return One("dH", "enthalpy of sorption", found.Enthalpy, "kJ/mol", "ΔH° = −R·slope of ln K on 1/T", found.PropagatedEnthalpy);
        if (family.Choice?.StandardState is not { } state)
            yield break;
        yield return One("dS", $"entropy of sorption, standard state {state}", found.Entropy, "J/(mol K)", "ΔS° = R·intercept of ln K on 1/T", null);
        var at = line.HarmonicMeanTemperature;
        yield return One(
            "dG-line", $"free energy of sorption at {InWords.Plain(at, "K")} by the line, standard state {state}", found.FreeEnergy(at), "kJ/mol", "ΔG° = −R·T·ln K, ln K read from the line", -Constants.MolarGas * at / 1000 * line.PropagatedAt(at));

        NumberTrail One(string kind, string name, Statistics.Estimate estimate, string unit, string formula, Measured? carried)
        {
            var address = $"{kind}:{first}";
            return new(address, $"{name}, {family.Name}", DerivedTrails.Measured(estimate, address, "scatter about the line on 1/T"), unit, formula, [.. inputs], readings)
            {
                Samples = [.. samples],
                Fit = fit,
                Carried = carried is { U: > 0 } ? carried : null,
            };
        }
    }

    private static IEnumerable<NumberTrail> Single(Evidence evidence, IsothermAtTemperature isotherm, ConstantChoice? choice)
    {
        var (series, fit) = (isotherm.Fitted.Series.Name, isotherm.Langmuir!);
        var readings = DerivedTrails.Readings(evidence, fit.Points.Ids);
        var end = DerivedTrails.Fit(fit, "Ce", "q", id => "q:" + id);
        var affinity = FittedNumbers.Inputs(fit, fit.MeasuredParameters("isotherm:" + series, "Langmuir fit of " + series), series).ElementAt(1);
        var molar = AtomicMass.Of(evidence.Study.Analyte);
        yield return new(
            "K:" + series, $"constant at {InWords.Setting(isotherm.Temperature, "K")}, {choice?.Name ?? "Langmuir affinity"}", isotherm.Constant!.Value, choice is null ? "L/mg" : "",
            choice is null ? "K as fitted, Langmuir" : "K° = K·M·1000 mg/g·1 mol/L, K as fitted, Langmuir",
            molar is { } m && choice is not null ? [affinity, new("M", m, "g/mol", $"standard atomic weight of {evidence.Study.Analyte}")] : [affinity], readings)
        {
            Samples = [.. fit.Points.Ids],
            Fit = end,
        };
        if (choice?.StandardState is not { } state)
            yield break;
        yield return new(
            "dG:" + series, $"free energy of sorption at {InWords.Setting(isotherm.Temperature, "K")}, standard state {state}", VantHoff.FreeEnergyOf(isotherm.Constant.Value, isotherm.Temperature), "kJ/mol",
            "ΔG° = −R·T·ln K", [Constant(isotherm, choice), new("T", isotherm.Temperature, "K", $"{InWords.Setting(isotherm.Temperature, "K")} as recorded for {series}")], readings)
        {
            Samples = [.. fit.Points.Ids],
            Fit = end,
        };
    }

    private static TrailInput Constant(IsothermAtTemperature isotherm, ConstantChoice? choice)
        => new($"K({InWords.Setting(isotherm.Temperature, "K")})", isotherm.Constant!.Value, choice is null ? "L/mg" : "", $"Langmuir fit of {isotherm.Fitted.Series.Name}", "K:" + isotherm.Fitted.Series.Name);

    private static IEnumerable<NumberTrail> Rates(Evidence evidence, RateFamily family)
    {
        string[] samples = [.. family.Series.SelectMany(s => s.Vessels).Where(v => v.Uptake is not null).Select(v => v.Code)];
        var readings = DerivedTrails.Readings(evidence, samples);
        foreach (var (energy, i) in family.Energies.Select((e, i) => (e, i)))
        {
            var address = EnergyAddress(family, i);
            string? Trail(Holdfast.Claims.Analyses.Series series) => i == 0 ? FittedNumbers.Address(energy.Constant, series.Name, family.Curve) : null;
            yield return new(
                address, $"apparent activation energy of {energy.Constant}, {family.Name}", DerivedTrails.Measured(energy.Line.ActivationEnergy, address, "scatter about the line on 1/T"), "kJ/mol",
                $"Ea = −R·slope of ln {energy.Constant} on 1/T",
                [.. family.Series.Select((s, t) => new TrailInput($"{energy.Constant}({InWords.Setting(family.Temperatures[t], "K")})", energy.Values[t], energy.Unit, $"{family.Curve} fit of {s.Name}", Trail(s)))],
                readings)
            {
                Samples = [.. samples],
                Fit = Line(energy.Line.Line, "ln " + energy.Constant, [.. family.Series.Select(s => (s.Name, Trail(s)))]),
                Carried = energy.Line.PropagatedActivationEnergy is { U: > 0 } carried ? carried : null,
            };
        }
    }

    private static TrailFit Line(ReciprocalTemperatureLine line, string y, (string Series, string? Trail)[] points)
        => new(
            $"straight line of {y} on 1/T through {InWords.Count(points.Length, "temperature")} with equal weights, {InWords.Count((int)line.Slope.DegreesOfFreedom, "degree")} of freedom left",
            "1/T (1/K)", y,
            [.. points.Select((p, i) => new TrailPoint(p.Series, 1 / line.Temperatures[i], line.Logarithms[i].Value, line.At(line.Temperatures[i]).Value, p.Trail))]);
}
