using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Kinetics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Analyses;

/// <summary>Activation energies from contact-time series that differ in temperature alone. One curve serves every temperature of a family.</summary>
/// <param name="Families">Families of series, in the order they came.</param>
public sealed record RateStudy(ImmutableArray<RateFamily> Families)
{
    private static readonly Analysis<RateStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static RateStudy Of(Evidence evidence) => Known.Of(evidence);

    private static RateStudy Work(Evidence evidence)
        => new([.. ByStart(evidence.Kinetics, alikeInTemperature: false).Where(f => f.Select(s => TemperatureOf(s.Series)).Distinct().Count() > 2).Select(Family).OfType<RateFamily>()]);

    /// <summary>Contact-time series that share start concentration and temperature: what else was changed between them may explain their rates.</summary>
    /// <param name="fitted">Fitted series.</param>
    internal static IReadOnlyList<IReadOnlyList<FittedSeries>> Alike(IEnumerable<FittedSeries> fitted) => ByStart(fitted, alikeInTemperature: true);

    /// <summary>The curve with the lowest AICc over all series together, with its fit to each; null where none settled everywhere.</summary>
    /// <param name="series">Fitted series.</param>
    /// <param name="names">Names of the curves that are asked.</param>
    internal static CommonCurve? CommonCurve(IReadOnlyList<FittedSeries> series, params IEnumerable<string> names)
        => names
            .Select(name => new CommonCurve(name, [.. series.Select(m => m.Fits.FirstOrDefault(f => f.IsFit && f.Covariance is not null && f.Aicc is not null && string.Equals(f.Card.Name, name, StringComparison.Ordinal))).OfType<FitResult>()]))
            .Where(c => c.Fits.Length == series.Count && series.Count > 0)
            .OrderBy(c => c.Fits.Sum(f => f.Aicc!.Value))
            .FirstOrDefault();

    private static List<List<FittedSeries>> ByStart(IEnumerable<FittedSeries> fitted, bool alikeInTemperature)
    {
        var families = new List<List<FittedSeries>>();
        foreach (var series in fitted.Where(k => TemperatureOf(k.Series) is not null && StartOf(k.Series) is not null))
        {
            if (families.Find(f => Tolerances.SameStart(StartOf(series.Series)!.Value, StartOf(f[0].Series)!.Value)
                && (!alikeInTemperature || Tolerances.SameTemperature(TemperatureOf(f[0].Series)!.Value, TemperatureOf(series.Series)!.Value))) is { } family)
                family.Add(series);
            else
                families.Add([series]);
        }

        return families;
    }

    private static double? TemperatureOf(Series series)
    {
        double[] all = [.. series.Vessels.Select(v => v.Sample.Number(BatchProperties.Temperature)).OfType<double>()];
        return all.Length > 0 && Tolerances.SameTemperature(all.Max(), all.Min()) ? all.Average() : null;
    }

    private static double? StartOf(Series series)
    {
        double[] all = [.. series.Vessels.Select(v => v.Start?.Value).OfType<double>()];
        return all.Length > 0 && Tolerances.SameStart(all.Max(), all.Min()) ? all.Average() : null;
    }

    // First or second order: a curve chosen anew at each temperature would compare unlike constants.
    private static RateFamily? Family(List<FittedSeries> members)
    {
        var sorted = members.OrderBy(m => TemperatureOf(m.Series)).ToArray();
        if (CommonCurve(sorted, PseudoFirstOrder.Card.Name, PseudoSecondOrder.Card.Name) is not { } best)
            return null;
        double[] temperatures = Array.ConvertAll(sorted, m => TemperatureOf(m.Series)!.Value);
        IReadOnlyList<Measured>[] parameters = [.. sorted.Zip(best.Fits, (m, f) => f.MeasuredParameters("rate:" + m.Series.Name, m.Series.Name))];
        var energies = ImmutableArray.CreateBuilder<RateEnergy>();
        var findings = new List<Finding>();
        var secondOrder = best.IsSecondOrder;
        Add(secondOrder ? "k2" : "k1", secondOrder ? "g/(mg min)" : "1/min", p => p[1]);
        if (secondOrder)
            Add("k2·qe", "1/min", p => p[0] * p[1]);
        return new(string.Join(", ", sorted.Select(m => m.Series.Name)), [.. sorted.Select(m => m.Series)], [.. temperatures], best.Name, energies.ToImmutable(), [.. findings.DistinctBy(f => f.Code)]);

        void Add(string constant, string unit, Func<IReadOnlyList<Measured>, Measured> of)
        {
            Measured[] values = Array.ConvertAll(parameters, p => of(p));
            var line = Arrhenius.Of(temperatures, values);
            findings.AddRange(line.Findings);
            if (line.Value is { } found)
                energies.Add(new(constant, unit, [.. values], found));
        }
    }
}

/// <summary>One curve that serves several contact-time series.</summary>
/// <param name="Name">Name of the curve.</param>
/// <param name="Fits">Its fit to each series, in their order.</param>
internal sealed record CommonCurve(string Name, ImmutableArray<FitResult> Fits)
{
    /// <summary>True for second order, whose constant k2·qe is the one in 1/min.</summary>
    public bool IsSecondOrder => string.Equals(Name, PseudoSecondOrder.Card.Name, StringComparison.Ordinal);
}

/// <summary>Contact-time series of one start concentration at several temperatures.</summary>
/// <param name="Name">Names of the series, listed.</param>
/// <param name="Series">The series by rising temperature.</param>
/// <param name="Temperatures">Their temperatures, K.</param>
/// <param name="Curve">Name of the curve that serves all of them.</param>
/// <param name="Energies">Activation energies, one for each constant that may be meant by "the rate constant".</param>
/// <param name="Findings">Caveats.</param>
public sealed record RateFamily(
    string Name, ImmutableArray<Series> Series, ImmutableArray<double> Temperatures, string Curve, ImmutableArray<RateEnergy> Energies, ImmutableArray<Finding> Findings);

/// <summary>Activation energy by one constant.</summary>
/// <param name="Constant">Symbol of the constant.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Values">Its values by rising temperature, in that unit.</param>
/// <param name="Line">The line of ln k on 1/T.</param>
public sealed record RateEnergy(string Constant, string Unit, ImmutableArray<Measured> Values, Arrhenius Line);
