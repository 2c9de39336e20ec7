using Holdfast.Planning;
using Holdfast.Statistics;

namespace Holdfast.Claims.Plans;

/// <summary>How likely planned vessels are to show a claim that is true, and the least that they can show.</summary>
/// <param name="Power">Probability, or null where the kind of claim has none that can be worked out.</param>
/// <param name="Shows">What these vessels can show, in a sentence.</param>
/// <param name="Effect">The margin, or the effect to be seen, in standard deviations of one vessel; null where it is none.</param>
public sealed record PlanPower(double? Power, string Shows, double? Effect)
{
    /// <summary>Power that is wanted; common practice.</summary>
    public const double Wanted = 0.8;

    // Chi-squared of one degree of freedom that is passed with 5 %.
    private static readonly double Critical = ChiSquareDistribution.Quantile(0.95, 1);

    /// <summary>The power of a question on planned series.</summary>
    /// <param name="question">What is to be shown.</param>
    /// <param name="basis">What is supposed.</param>
    /// <param name="margin">Half-width of the margin, in its unit; 0 where the question has none.</param>
    /// <param name="series">The series it rests on.</param>
    public static PlanPower Of(PlanQuestion question, PlanBasis basis, double margin, IReadOnlyList<SeriesDraft> series)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(series);
        var supposed = new Supposed(basis);
        var n = series.Min(s => s.Replicates);
        var sd = 100 * basis.Scatter;
        return question.Rule switch
        {
            "capacity" => Capacity(supposed, margin, series[0]),
            "best-isotherm" => Curves(
                "Langmuir and Freundlich are told apart where the other one is true",
                Separation([.. series[0].Levels.Select(l => (X: supposed.Left(l.Start, l.Dose), N: series[0].VesselsAt(l)))], x => supposed.Uptake(x),
                    x => supposed.UptakeU(x, basis[PlanSetting.Dose]), Supposed.Freundlich)),
            "best-kinetic-model" => Curves(
                "first and second order are told apart where the other one is true",
                Separation([.. series[0].Levels.Select(l => (X: l.Time, N: series[0].VesselsAt(l)))], t => 1 - Math.Exp(-supposed.Rate * t), _ => basis.Scatter, Supposed.SecondOrder)),
            "equilibrium-reached" or "reproducible" => Equal(margin, sd, n, "uptakes that are the same", "%"),
            "smallest-sufficient-dose" => Equal(margin, Points(supposed), n, "removals that are the same", "percentage points"),
            "optimum-dose" or "optimum-ph" => Differ(margin, Points(supposed), n),
            "spontaneous-and-endothermic" => Heat(supposed, series),
            _ => new(null, "no power is worked out for this kind of claim; the vessels and controls that its rule asks for are there", null),
        };
    }

    // The scatter of a removal in percentage points, at the removal supposed.
    private static double Points(Supposed supposed)
        => supposed.Basis.Scatter * supposed.Removal(supposed.Basis[PlanSetting.Concentration], supposed.Basis[PlanSetting.Dose]);

    private static PlanPower Equal(double margin, double sd, int n, string what, string unit) => new(
        Statistics.Power.EquivalenceOfTwoMeans(margin / sd, n),
        $"with {Phrase.Count(n, "vessel")} at each setting, {what} are shown equal within ±{Phrase.With(Statistics.Power.SmallestMarginOfTwoMeans(n, Wanted) * sd, unit)} with a power of 80 %", margin / sd);

    private static PlanPower Differ(double margin, double sd, int n) => new(
        Statistics.Power.TwoMeans(margin / sd, n),
        $"with {Phrase.Count(n, "vessel")} at each setting, a difference of {Phrase.With(Statistics.Power.SmallestDifferenceOfTwoMeans(n, Wanted) * sd, "percentage points")} between two of them is seen with a power of 80 %", margin / sd);

    // The interval of the capacity must lie within the margin: its width follows s, and s² follows chi-squared.
    private static PlanPower Capacity(Supposed supposed, double margin, SeriesDraft series)
    {
        var (information, vessels) = Known(supposed, series);
        if (information.Covariance() is not { } covariance || vessels <= 2)
            return new(0, "the levels leave capacity and affinity mixed: nothing can be shown", null);
        var relative = 100 * Math.Sqrt(covariance[0, 0]) / supposed.Capacity;
        var half = StudentDistribution.Quantile(0.975, vessels - 2) * relative;
        var allowed = (vessels - 2) * (margin / half) * (margin / half);
        return new(
            ChiSquareDistribution.Below(allowed, vessels - 2),
            $"the capacity is expected to be known within ±{Phrase.With(half, "%")} (95 %, standard error {Phrase.With(relative, "%")})", margin / relative);
    }

    private static PlanPower Curves(string what, double separation)
    {
        var power = NoncentralChiSquare.Above(Critical, 1, separation);
        return new(power, $"{what}, with a power of {Phrase.With(100 * power, "%")} (noncentrality {Phrase.Number(separation)})", null);
    }

    // ΔH is the slope of ln K over 1/T times R; each isotherm brings one ln K.
    private static PlanPower Heat(Supposed supposed, IReadOnlyList<SeriesDraft> series)
    {
        double[] inverse = [.. series.Select(s => 1 / s.Levels[0].Temperature)];
        if (inverse.Length < 3)
            return new(0, "fewer than three temperatures leave no degree of freedom: nothing can be shown", null);
        var sd = Math.Sqrt(series.Average(s => Known(supposed, s).Information.Covariance() is { } c ? c[1, 1] / (supposed.Affinity * supposed.Affinity) : 1));
        var spread = Math.Sqrt(inverse.Sum(i => (i - inverse.Average()) * (i - inverse.Average())));
        var se = Constants.MolarGas * sd / spread / 1000;
        var t = StudentDistribution.Quantile(0.975, inverse.Length - 2);
        var enthalpy = supposed.Basis[PlanSetting.Enthalpy];
        return new(
            NoncentralStudent.Above(t, inverse.Length - 2, enthalpy / se),
            $"with {Phrase.Count(inverse.Length, "temperature")} the enthalpy is expected to be known within ±{Phrase.With(t * se, "kJ/mol")} (95 %)", enthalpy / se);
    }

    private static (Information Information, int Vessels) Known(Supposed supposed, SeriesDraft series)
    {
        var row = supposed.Row(supposed.Affinity, supposed.Basis[PlanSetting.Dose]);
        var information = new Information(2);
        foreach (var level in series.Levels)
            information.Add(row(level.Start), series.VesselsAt(level));
        return (information, series.Vessels);
    }

    // Sum of squared distances of the rival's best fit from the curve held true, in variances of one vessel.
    private static double Separation((double X, int N)[] points, Func<double, double> held, Func<double, double> u, Fitting.Model rival)
    {
        double[] x = [.. points.SelectMany(p => Enumerable.Repeat(p.X, p.N))];
        double[] y = [.. x.Select(held)];
        double[] sd = [.. x.Select(u)];
        var fit = rival.Fit(new(x, y, u: sd), new() { Profiles = false });
        if (fit.Parameters.Count == 0)
            return 0;
        var slopes = new double[fit.Parameters.Count];
        return x.Select((v, i) => (y[i] - rival.Value(v, [.. fit.Values], slopes)) / sd[i]).Sum(r => r * r);
    }
}
