using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Kinetics;
using Holdfast.Studies.Properties;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Analyses;

/// <summary>Activation energies from contact-time series that differ in temperature alone. One curve serves every temperature of a family.</summary>
/// <param name="Families">Families of series, in the order they came.</param>
public sealed record RateStudy(ImmutableArray<RateFamily> Families)
{
    private const double SameTemperature = 2;
    private const double SameStart = 0.02;

    private static readonly Analysis<RateStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static RateStudy Of(Evidence evidence) => Known.Of(evidence);

    private static RateStudy Work(Evidence evidence)
    {
        var families = new List<List<FittedSeries>>();
        foreach (var series in evidence.Kinetics.Where(k => TemperatureOf(k.Series) is not null && StartOf(k.Series) is not null))
        {
            if (families.Find(f => Math.Abs(StartOf(f[0].Series)!.Value - StartOf(series.Series)!.Value) <= SameStart * StartOf(series.Series)!.Value) is { } family)
                family.Add(series);
            else
                families.Add([series]);
        }

        return new([.. families.Where(f => f.Select(s => TemperatureOf(s.Series)).Distinct().Count() > 2).Select(Family).OfType<RateFamily>()]);
    }

    private static double? TemperatureOf(Series series)
    {
        double[] all = [.. series.Vessels.Select(v => v.Sample.Number(BatchProperties.Temperature)).OfType<double>()];
        return all.Length > 0 && all.Max() - all.Min() <= SameTemperature ? all.Average() : null;
    }

    private static double? StartOf(Series series)
    {
        double[] all = [.. series.Vessels.Select(v => v.Start?.Value).OfType<double>()];
        return all.Length > 0 && all.Max() - all.Min() <= SameStart * all.Max() ? all.Average() : null;
    }

    // First or second order, whichever has the lower AICc over all temperatures together: a curve chosen anew at each would compare unlike constants.
    private static RateFamily? Family(List<FittedSeries> members)
    {
        var sorted = members.OrderBy(m => TemperatureOf(m.Series)).ToArray();
        var best = new[] { PseudoFirstOrder.Card.Name, PseudoSecondOrder.Card.Name }
            .Select(name => (Name: name, Fits: Array.ConvertAll(sorted, m => m.Fits.FirstOrDefault(f => f.IsFit && f.Covariance is not null && string.Equals(f.Card.Name, name, StringComparison.Ordinal)))))
            .Where(c => Array.TrueForAll(c.Fits, f => f?.Aicc is not null))
            .OrderBy(c => c.Fits.Sum(f => f!.Aicc!.Value))
            .FirstOrDefault();
        if (best.Fits is null)
            return null;
        double[] temperatures = Array.ConvertAll(sorted, m => TemperatureOf(m.Series)!.Value);
        IReadOnlyList<Measured>[] parameters = [.. sorted.Zip(best.Fits, (m, f) => f!.MeasuredParameters("rate:" + m.Series.Name, m.Series.Name))];
        var energies = ImmutableArray.CreateBuilder<RateEnergy>();
        var findings = new List<Finding>();
        var secondOrder = string.Equals(best.Name, PseudoSecondOrder.Card.Name, StringComparison.Ordinal);
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
