using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Analyses;

/// <summary>What isotherms at several temperatures say of enthalpy, entropy and free energy.</summary>
/// <param name="Families">Families of isotherms that differ in temperature alone, in the order they came.</param>
public sealed record TemperatureStudy(ImmutableArray<TemperatureFamily> Families)
{
    private static readonly Analysis<TemperatureStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static TemperatureStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The family of named series, however they would be grouped by themselves.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="names">Names of isotherm series.</param>
    public static TemperatureFamily OfSeries(Evidence evidence, IReadOnlyCollection<string> names)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return Family(evidence, evidence.Isotherms.Where(i => names.Contains(i.Series.Name, StringComparer.OrdinalIgnoreCase)));
    }

    private static TemperatureStudy Work(Evidence evidence)
    {
        var families = new List<List<FittedSeries>>();
        foreach (var isotherm in evidence.Isotherms.Where(i => TemperatureOf(i.Series) is not null))
        {
            if (families.Find(f => SameDesign(f[0].Series, isotherm.Series)) is { } family)
                family.Add(isotherm);
            else
                families.Add([isotherm]);
        }

        return new([.. families.Select(f => Family(evidence, f)).Where(f => f.Temperatures.Distinct().Count() > 1)]);
    }

    // One start concentration for one, in the same order: isotherms of one design, repeated at another temperature.
    private static bool SameDesign(Series a, Series b)
        => a.Levels.Length == b.Levels.Length && a.Levels.Zip(b.Levels, (x, y) => Tolerances.SameStart(x.X, y.X)).All(same => same);

    private static double? TemperatureOf(Series series)
    {
        double[] all = [.. series.Vessels.Select(v => v.Sample.Number(BatchProperties.Temperature)).OfType<double>()];
        return all.Length > 0 && Tolerances.SameTemperature(all.Max(), all.Min()) ? all.Average() : null;
    }

    private static TemperatureFamily Family(Evidence evidence, IEnumerable<FittedSeries> isotherms)
    {
        var molar = AtomicMass.Of(evidence.Study.Analyte);
        ImmutableArray<IsothermAtTemperature> members = [.. isotherms
            .Select(i => (Fitted: i, Temperature: TemperatureOf(i.Series)))
            .Where(i => i.Temperature is not null)
            .OrderBy(i => i.Temperature)
            .Select(i => One(i.Fitted, i.Temperature!.Value, molar))];
        var usable = members.Where(m => m.Constant is not null).ToArray();
        var line = VantHoff.Of(Array.ConvertAll(usable, m => m.Temperature), Array.ConvertAll(usable, m => m.Constant!.Value));
        return new(
            string.Join(", ", members.Select(m => m.Fitted.Series.Name)), members, molar is null ? null : ConstantChoice.Molar,
            line.Value, Heats(usable), [.. line.Findings]);
    }

    // Where the analyte is not known the affinity stays in L/mg: its slope still gives the enthalpy, and nothing else is said.
    private static IsothermAtTemperature One(FittedSeries fitted, double temperature, double? molarMass)
    {
        var fit = fitted.Fits.FirstOrDefault(f => f.IsFit && string.Equals(f.Card.Name, Langmuir.Card.Name, StringComparison.Ordinal) && f.Covariance is not null);
        if (fit is null)
            return new(fitted, temperature, null, null);
        var affinity = fit.MeasuredParameters("isotherm:" + fitted.Series.Name, "Langmuir fit of " + fitted.Series.Name)[1];
        return new(fitted, temperature, fit, affinity.Value > 0 ? molarMass is { } m ? ConstantChoice.OfAffinity(affinity, m) : affinity : null);
    }

    // Three uptakes inside what every temperature measured: a quarter, half and three quarters of the common span.
    private static ImmutableArray<HeatAtUptake> Heats(IsothermAtTemperature[] members)
    {
        if (members.Length < 3)
            return [];
        var low = members.Max(m => m.Langmuir!.ValueAt(m.Langmuir.Points.X.Where(x => x > 0).DefaultIfEmpty(0).Min()));
        var high = members.Min(m => m.Langmuir!.ValueAt(m.Langmuir.Points.X.Max()));
        if (!(high > low && low > 0))
            return [];
        var found = ImmutableArray.CreateBuilder<HeatAtUptake>();
        foreach (var share in new[] { 0.25, 0.5, 0.75 })
        {
            var q = low + share * (high - low);
            var at = Array.ConvertAll(members, m => IsostericHeat.ConcentrationAt(m.Langmuir!, q, m.Fitted.Series.Name).Value);
            if (at.All(c => c is not null) && IsostericHeat.Of(Array.ConvertAll(members, m => m.Temperature), Array.ConvertAll(at, c => c!.Concentration)).Value is { } heat)
                found.Add(new(q, heat));
        }

        return found.ToImmutable();
    }
}

/// <summary>Isotherms of one design at several temperatures.</summary>
/// <param name="Name">Names of the series, listed.</param>
/// <param name="Isotherms">The isotherms by rising temperature.</param>
/// <param name="Choice">Which constant was taken; null when the molar mass is not known and the affinity stays in L/mg.</param>
/// <param name="Line">The line of ln K on 1/T, or null.</param>
/// <param name="Heats">Isosteric heats at uptakes that every temperature reached.</param>
/// <param name="Findings">Caveats.</param>
public sealed record TemperatureFamily(
    string Name, ImmutableArray<IsothermAtTemperature> Isotherms, ConstantChoice? Choice, VantHoff? Line, ImmutableArray<HeatAtUptake> Heats, ImmutableArray<Finding> Findings)
{
    /// <summary>Temperatures, K, of the isotherms that gave a constant.</summary>
    public IEnumerable<double> Temperatures => Isotherms.Where(i => i.Constant is not null).Select(i => i.Temperature);
}

/// <summary>One isotherm of a family.</summary>
/// <param name="Fitted">The series with its fits.</param>
/// <param name="Temperature">Its temperature, K.</param>
/// <param name="Langmuir">The Langmuir fit, or null when it did not settle.</param>
/// <param name="Constant">K without unit (or in L/mg, see <see cref="TemperatureFamily.Choice"/>), with the uncertainty of the fit; null without a fit.</param>
public sealed record IsothermAtTemperature(FittedSeries Fitted, double Temperature, FitResult? Langmuir, Measured? Constant);

/// <summary>Heat of sorption at one uptake.</summary>
/// <param name="Uptake">Uptake, mg/g.</param>
/// <param name="Heat">Heat, kJ/mol, by the scatter about its line.</param>
public sealed record HeatAtUptake(double Uptake, Estimate Heat);
