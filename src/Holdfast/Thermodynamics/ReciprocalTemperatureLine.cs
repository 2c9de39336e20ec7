using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Thermodynamics;

/// <summary>
/// The line of a logarithm on 1/T that van 't Hoff, Arrhenius and the isosteric heat share: ln y = a + b/T. Its uncertainty is known in two
/// ways that answer different questions: the scatter about the line, which sees everything that differs between temperatures but has n − 2
/// degrees of freedom, and the uncertainty carried in from each ln y, which sees only what was propagated.
/// </summary>
public sealed class ReciprocalTemperatureLine
{
    /// <summary>Temperatures below which the line is weak evidence of any sign.</summary>
    /// <remarks>E. C. Lima and co-workers, J. Mol. Liq. 334 (2021) 116542, ask for four.</remarks>
    public const int EnoughTemperatures = 4;

    private readonly PolynomialFit fit;

    private ReciprocalTemperatureLine(ImmutableArray<double> temperatures, ImmutableArray<Measured> logarithms, PolynomialFit fit)
    {
        (Temperatures, Logarithms, this.fit) = (temperatures, logarithms, fit);
        PropagatedSlope = Combine(x => (x - fit.Centre) / fit.Components[1].SquaredLength);
    }

    /// <summary>Temperatures, K, in the order given.</summary>
    public ImmutableArray<double> Temperatures { get; }

    /// <summary>Natural logarithms; no unit.</summary>
    public ImmutableArray<Measured> Logarithms { get; }

    /// <summary>b, K, by the scatter about the line with n − 2 degrees of freedom.</summary>
    public Estimate Slope => fit.Coefficient(1)! with { Method = "line on 1/T, scatter about it" };

    /// <summary>a, without unit, by the scatter about the line.</summary>
    public Estimate Intercept => fit.Coefficient(0)! with { Method = "line on 1/T, scatter about it" };

    /// <summary>b, K, with the uncertainty that the logarithms brought in, what they share included; exact when they brought none.</summary>
    public Measured PropagatedSlope { get; }

    /// <summary>
    /// b, K, by whichever way leaves the wider 95 % interval. Few temperatures make the scatter's wide, poor logarithms the propagated one; neither may hide
    /// the other.
    /// </summary>
    public Estimate WiderSlope
    {
        get
        {
            var scatter = Slope;
            if (PropagatedSlope.U == 0)
                return scatter;
            var propagated = new Estimate("line on 1/T, propagated uncertainty", scatter.Value, PropagatedSlope.U, Math.Max(1, PropagatedSlope.DegreesOfFreedom), scatter.N);
            return propagated.Interval().Half > scatter.Interval().Half ? propagated : scatter;
        }
    }

    /// <summary>Correlation of intercept and slope: close to −1 for any data over a few tens of kelvin near room temperature; no unit.</summary>
    public double Correlation => fit.Covariance(0, 1) / Math.Sqrt(fit.Covariance(0, 0) * fit.Covariance(1, 1));

    /// <summary>The temperature at which the line is known best, K: the harmonic mean.</summary>
    public double HarmonicMeanTemperature => 1 / fit.Centre;

    /// <summary>ln y at a temperature, by the scatter about the line; no unit.</summary>
    /// <param name="temperature">Temperature, K, above 0.</param>
    public Estimate At(double temperature)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        return new("line on 1/T, scatter about it", fit.At(1 / temperature), fit.UncertaintyAt(1 / temperature), fit.DegreesOfFreedom, fit.X.Count);
    }

    /// <summary>ln y at a temperature with the uncertainty that the logarithms brought in; no unit.</summary>
    /// <param name="temperature">Temperature, K, above 0.</param>
    public Measured PropagatedAt(double temperature)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        var x = 1 / temperature;
        return Combine(v => 1 / fit.Components[0].SquaredLength + (x - fit.Centre) * (v - fit.Centre) / fit.Components[1].SquaredLength);
    }

    /// <summary>
    /// The line through three temperatures or more. Points weigh alike unless weights are asked for: uncertainties that come from short fits are themselves
    /// known to a third at best, and weights made of them lose more than they gain.
    /// </summary>
    /// <param name="temperatures">Temperatures, K.</param>
    /// <param name="logarithms">Natural logarithms in the same order.</param>
    /// <param name="weighted">True to weigh by the uncertainty of each logarithm, where all have one.</param>
    /// <exception cref="ArgumentException">The lists differ in length, or a temperature is not above 0.</exception>
    public static Outcome<ReciprocalTemperatureLine> Of(IReadOnlyList<double> temperatures, IReadOnlyList<Measured> logarithms, bool weighted = false)
    {
        ArgumentNullException.ThrowIfNull(temperatures);
        ArgumentNullException.ThrowIfNull(logarithms);
        if (temperatures.Count != logarithms.Count)
            throw new ArgumentException($"There are {temperatures.Count} temperatures and {logarithms.Count} values.", nameof(logarithms));
        if (temperatures.Any(t => !(t > 0 && double.IsFinite(t))))
            throw new ArgumentException("A temperature is not above 0 K.", nameof(temperatures));
        if (logarithms.Any(l => !double.IsFinite(l.Value)))
        {
            return Outcome<ReciprocalTemperatureLine>.None(Finding.Of("HF-625", Weight.Stop,
                "A constant is 0 or negative: it has no logarithm. Look at the isotherm or rate fitted at that temperature."));
        }

        var levels = temperatures.Distinct().Count();
        if (levels < 3)
        {
            return Outcome<ReciprocalTemperatureLine>.None(Finding.Of("HF-626", Weight.Stop,
                $"{Phrased(levels)}: a line through two has no degree of freedom left. Measure at four or more."));
        }

        var fit = PolynomialFit.Of(
            [.. temperatures.Select(t => 1 / t)], [.. logarithms.Select(l => l.Value)], 1,
            weighted && logarithms.All(l => l.U > 0) ? [.. logarithms.Select(l => 1 / l.Variance)] : null);
        var line = new ReciprocalTemperatureLine([.. temperatures], [.. logarithms], fit);
        return new(line, levels < EnoughTemperatures
            ? [Finding.Of("HF-627", Weight.Caution, "Three temperatures leave one degree of freedom: the interval is 12.7 standard errors wide. Measure at four or more.")]
            : []);
    }

    private static string Phrased(int levels) => levels switch { 0 => "No temperature was measured", 1 => "One temperature was measured", _ => "Two temperatures were measured" };

    // A fitted quantity is linear in the readings: Σ w·g(x)·y.
    private Measured Combine(Func<double, double> coefficient)
    {
        Measured sum = 0;
        for (var i = 0; i < Logarithms.Length; i++)
            sum += fit.Weights[i] * coefficient(fit.X[i]) * Logarithms[i];
        return sum;
    }
}
