using Holdfast.Planning;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Plans;

/// <summary>How likely planned vessels are to show a claim that is true, and the least that they can show.</summary>
/// <param name="Power">Probability, or null where the kind of claim has none that can be worked out.</param>
/// <param name="Shows">What these vessels can show, in a sentence.</param>
/// <param name="Effect">The margin, or the effect to be seen, in standard deviations of one vessel; null where it is none.</param>
public sealed record PlanPower(double? Power, string Shows, double? Effect)
{
    /// <summary>Half-width of the margin it was worked out for, in the unit of the margin; 0 where the claim has none.</summary>
    public double Margin { get; init; }

    /// <summary>The power that no number of vessels brings beyond; no unit.</summary>
    public double Most { get; init; } = 1;

    /// <summary>Whether more vessels would bring power that is wanted.</summary>
    public bool IsShort => Power < Wanted && Power < Most - PlanDesign.Unseen;

    /// <summary>Power that is wanted; common practice.</summary>
    public const double Wanted = 0.8;

    /// <summary>Shares that noise takes from every study of curves, however many vessels it has: found by trying plans out (docs/power.md).</summary>
    internal static class Limits
    {
        /// <summary>Controls, calibration and range of a sound study do not speak against what stands on them.</summary>
        public const double GroundHolds = 0.985;

        /// <summary>The same where each of many levels has a control of its own.</summary>
        public const double GroundOfLevelsHolds = 0.945;

        /// <summary>A constant fitted to few vessels, whose scatter has to be found too, spreads by so much more than the information of its levels says.</summary>
        public const double FittedSpread = 1.12;

        /// <summary>A true isotherm agrees with its replicates, and its ground holds.</summary>
        public const double IsothermFits = 0.88;

        /// <summary>A true rate law does, and its ground holds.</summary>
        public const double RateLawFits = 0.91;

        /// <summary>A true Langmuir curve agrees with its replicates, and no other curve is near it that goes elsewhere.</summary>
        public const double CapacitySpeaks = 0.77;
    }

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
        var draws = new PlanDraws(new(basis), question, margin);
        var drawn = DrawnFor(draws, series);
        var power = new PlanPower(drawn is null ? Formula(draws, series[0]) : GroundOf(question) * drawn.Power(margin), "", null) { Margin = margin };
        var supposed = new Supposed(basis);
        var level = Compared(question, basis, series[0]);
        var left = supposed.Left(level.Start, level.Dose, level.Time);
        var u = supposed.U(level.Start, left);
        var n = Phrase.Count(series[0].VesselsAt(level), "vessel");
        PlanPower Shows(string shows, double? sd) => power with { Shows = shows, Effect = sd is null ? null : margin / sd };
        string Least(string unit) => drawn!.LeastMargin(Wanted / GroundOf(question)) is var least && double.IsFinite(least) ? Phrase.With(least, unit) : "any number of " + unit;
        switch (question.Rule)
        {
            case "capacity":
                return Interval(supposed, series[0]) is not { } interval
                    ? Shows("the levels leave capacity and affinity mixed: nothing can be shown", null)
                    : Shows(
                        $"the capacity is expected to be known within ±{Phrase.With(interval.Half, "%")} (95 %, standard error {Phrase.With(interval.Relative, "%")}); in one sound study of five noise leaves a wider curve or a misfit in the way, whatever the number of vessels",
                        interval.Relative) with
                    {
                        Most = Limits.CapacitySpeaks,
                    };
            case "best-isotherm" or "best-kinetic-model":
                var curves = question.Rule == "best-isotherm" ? "Langmuir and Freundlich" : "first and second order";
                return Shows($"{curves} are told apart, by some {Phrase.With(Math.Round(Units(Ahead(supposed, question, series[0]), series[0].Vessels)), "units")} of AICc; one true curve of ten is left open by chance", null);
            case "equilibrium-reached" or "reproducible":
                return Shows($"with {n} at each setting, uptakes that are the same are shown equal within ±{Least("%")} with a power of {Phrase.With(100 * Wanted, "%")}", 100 * u / (level.Start - left));
            case "smallest-sufficient-dose":
                return Shows($"with {n} at each setting, removals that are the same are shown equal within ±{Least("percentage points")} with a power of {Phrase.With(100 * Wanted, "%")}", 100 * u / level.Start);
            case "optimum-dose" or "optimum-ph":
                return Shows($"with {n} at each setting, an optimum that stands out from both neighbours by {Least("percentage points")} is seen with a power of {Phrase.With(100 * Wanted, "%")}", 100 * u / level.Start);
            case "not-precipitation":
                return Shows($"with {Phrase.Count(level.Blanks, "control")} at pH {Phrase.Number(level.Ph)}, a loss of {Phrase.With(100 * Rules.NotPrecipitation.Limits.Passing, "%")} of the removal is ruled out", null);
            case "removal-falls-with-concentration":
                return Shows($"removal is expected to fall from {Phrase.With(supposed.Removal(series[0].Levels[0].Start, series[0].Levels[0].Dose), "%")} to {Phrase.With(supposed.Removal(series[0].Levels[^1].Start, series[0].Levels[^1].Dose), "%")}", null);
            case "spontaneous-and-endothermic":
                var constants = Constants(supposed, series);
                if (constants.Length < 3)
                    return Shows("fewer than three temperatures leave no degree of freedom: nothing can be shown", null);
                var se = VantHoff.PlannedError([.. constants.Select(c => c.Kelvin)], Math.Sqrt(constants.Average(c => c.Sd * c.Sd)));
                return power with
                {
                    Shows = $"with {Phrase.Count(constants.Length, "temperature")} the enthalpy is expected to be known within ±{Phrase.With(StudentDistribution.Quantile(0.975, constants.Length - 2) * se, "kJ/mol")} (95 %)",
                    Effect = basis[PlanSetting.Enthalpy] / se,
                };
            default:
                return power with { Power = null, Shows = "no power is worked out for this kind of claim; the vessels and controls that its rule asks for are there" };
        }
    }

    /// <summary>The probability alone.</summary>
    /// <param name="draws">What is drawn, and for which claim.</param>
    /// <param name="series">The series it rests on.</param>
    internal static double Of(PlanDraws draws, IReadOnlyList<SeriesDraft> series)
        => DrawnFor(draws, series) is { } drawn ? GroundOf(draws.Question) * drawn.Power(draws.Margin) : Formula(draws, series[0]);

    private static Drawn? DrawnFor(PlanDraws draws, IReadOnlyList<SeriesDraft> series)
    {
        var (supposed, first) = (draws.Supposed, series[0]);
        return draws.Question.Rule switch
        {
            "equilibrium-reached" => draws.Equilibrium(first),
            "reproducible" => draws.Reproducible(first),
            "smallest-sufficient-dose" => draws.SufficientDose(first),
            "optimum-dose" => draws.StandsOut(first, supposed.Basis[PlanSetting.Dose], asksForSorption: false),
            "optimum-ph" => draws.StandsOut(first, supposed.Basis[PlanSetting.Ph], asksForSorption: true),
            "not-precipitation" => draws.NotPrecipitated(Compared(draws.Question, supposed.Basis, first)),
            "removal-falls-with-concentration" => draws.RemovalFalls(first),
            "spontaneous-and-endothermic" => draws.Heat(Constants(supposed, series)),
            _ => null,
        };
    }

    private static double GroundOf(PlanQuestion question) => question.Series is SeriesKind.Isotherm or SeriesKind.Temperature ? Limits.GroundOfLevelsHolds : Limits.GroundHolds;

    private static double Formula(PlanDraws draws, SeriesDraft series)
    {
        if (draws.Question == PlanQuestion.Capacity)
            return Interval(draws.Supposed, series) is { } interval ? Limits.CapacitySpeaks * interval.Within(draws.Margin) : 0;
        var told = ToldApart(Ahead(draws.Supposed, draws.Question, series), series.Vessels);
        return draws.Question == PlanQuestion.BestKinetics ? Limits.RateLawFits * told * PlateauSeen(draws.Supposed, series) : Limits.IsothermFits * told;
    }

    // Where the scatter has to be found from the n points themselves, a separation λ gives n ln(1 + λ/n) units of AICc, about normal; λ itself has the variance 4λ.
    private static double ToldApart(double separation, int n)
        => separation > 0 ? NormalDistribution.Below((Units(separation, n) - AiccDistance.ForFew) * (1 + separation / n) / (2 * Math.Sqrt(separation))) : 0;

    private static double Units(double separation, int n) => n * Math.Log(1 + separation / n);

    // The mean at the last time must reach the share of the plateau that the rule asks for; the plateau rests on that time and on those near it.
    private static double PlateauSeen(Supposed supposed, SeriesDraft series)
    {
        double Reached(PlannedLevel level) => 1 - Math.Exp(-supposed.Rate * level.Time);
        var last = series.Levels[^1];
        var left = supposed.Left(last.Start, last.Dose, last.Time);
        var near = series.Levels.Where(l => Reached(l) >= Rules.EquilibriumReached.Limits.NearPlateau).Sum(series.VesselsAt);
        var u = supposed.U(last.Start, left) / (last.Start - left) * Math.Sqrt(Math.Max(0, 1.0 / series.VesselsAt(last) - 1.0 / Math.Max(1, near)));
        return u > 0 ? NormalDistribution.Below((Reached(last) - Rules.BestKineticModel.Limits.Measured) / u) : Reached(last) >= Rules.BestKineticModel.Limits.Measured ? 1 : 0;
    }

    // The level that the claim speaks of.
    private static PlannedLevel Compared(PlanQuestion question, PlanBasis basis, SeriesDraft series)
    {
        var x = question.Series switch
        {
            SeriesKind.Ph => basis[PlanSetting.Ph],
            SeriesKind.Dose => basis[PlanSetting.Dose],
            SeriesKind.Kinetic => basis[PlanSetting.Time],
            _ => series.Levels[^1].X,
        };
        return series.Levels.MinBy(l => Math.Abs(l.X - x))!;
    }

    // The interval of the capacity must lie within the margin: its width follows s, and s² follows chi-squared.
    private static (double Relative, double Half, Func<double, double> Within)? Interval(Supposed supposed, SeriesDraft series)
    {
        var (information, vessels) = Known(supposed, series);
        if (information.Covariance() is not { } covariance || vessels <= 2)
            return null;
        var relative = 100 * Math.Sqrt(covariance[0, 0]) / supposed.Capacity;
        var half = StudentDistribution.Quantile(0.975, vessels - 2) * relative;
        return (relative, half, margin => ChiSquareDistribution.Below((vessels - 2) * (margin / half) * (margin / half), vessels - 2));
    }

    private static double Ahead(Supposed supposed, PlanQuestion question, SeriesDraft series)
    {
        var basis = supposed.Basis;
        return question == PlanQuestion.BestIsotherm
            ? Separation([.. series.Levels.Select(l => (X: supposed.Left(l.Start, l.Dose), N: series.VesselsAt(l)))], supposed.Uptake, x => supposed.UptakeU(x, basis[PlanSetting.Dose]), Supposed.Freundlich)
            : Separation(
                [.. series.Levels.Select(l => (X: l.Time, N: series.VesselsAt(l)))], t => (basis[PlanSetting.Concentration] - Left(t)) / basis[PlanSetting.Dose],
                t => supposed.U(basis[PlanSetting.Concentration], Left(t)) / basis[PlanSetting.Dose], Supposed.SecondOrder);

        double Left(double time) => supposed.Left(basis[PlanSetting.Concentration], basis[PlanSetting.Dose], time);
    }

    // Each isotherm brings one ln K.
    private static (double Kelvin, double Sd)[] Constants(Supposed supposed, IReadOnlyList<SeriesDraft> series) => [.. series.Select(s =>
    {
        var kelvin = s.Levels[0].Temperature;
        var there = supposed with { Affinity = supposed.AffinityAt(kelvin) };
        return (kelvin, Known(there, s).Information.Covariance() is { } c ? Limits.FittedSpread * Math.Sqrt(c[1, 1]) / there.Affinity : 1);
    })];

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
