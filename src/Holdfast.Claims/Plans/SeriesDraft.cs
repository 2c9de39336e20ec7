using System.Collections.Immutable;
using Holdfast.Planning;
using Holdfast.Studies;

namespace Holdfast.Claims.Plans;

/// <summary>A planned series before replicates, codes and order.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What is varied.</param>
/// <param name="Varied">Name of what is varied.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Levels">Its settings.</param>
/// <param name="Parameters">Parameters of the curve that will be fitted; 0 for none.</param>
/// <param name="Says">How the levels were chosen.</param>
public sealed record SeriesDraft(string Name, SeriesKind Kind, string Varied, string Unit, ImmutableArray<PlannedLevel> Levels, int Parameters, string Says)
{
    // A control without sorbent at the lowest level must be known to this share of it.
    private const double WellKnown = 0.025;

    /// <summary>Fewest replicates of anything that is compared; common practice.</summary>
    public const int LeastReplicates = 3;

    /// <summary>Fewest replicates that its rules accept: three of what is compared, two on a curve.</summary>
    public int Fewest => Kind is SeriesKind.Isotherm or SeriesKind.Temperature ? 2 : LeastReplicates;

    /// <summary>D-efficiency of the levels with their shares; null where no curve is fitted.</summary>
    public double? Efficiency { get; init; }

    /// <summary>Replicates at the levels that are compared.</summary>
    public int Replicates { get; init; } = LeastReplicates;

    /// <summary>Levels beyond the parameters: degrees of freedom that can show a misfit.</summary>
    public int LackOfFit => Parameters == 0 ? 0 : Levels.Select(l => l.X).Distinct().Count() - Parameters;

    /// <summary>Vessels with sorbent and metal at a level.</summary>
    /// <param name="level">The level.</param>
    public int VesselsAt(PlannedLevel level)
    {
        ArgumentNullException.ThrowIfNull(level);
        return level.Share * (level.IsCompared ? Replicates : Math.Min(Replicates, LeastReplicates));
    }

    /// <summary>The series with more controls without sorbent at each level that has some.</summary>
    /// <param name="controls">Controls at each.</param>
    internal SeriesDraft WithControls(int controls) => this with { Levels = [.. Levels.Select(l => l.Blanks > 0 ? l with { Blanks = controls } : l)] };

    /// <summary>The level that a planned vessel with sorbent and metal stands at.</summary>
    /// <param name="vessel">A vessel of this series.</param>
    internal PlannedLevel LevelOf(PlannedVessel vessel) => Levels.First(l => l.Start.Equals(vessel.InitialConcentration) && l.Time.Equals(vessel.ContactTime) && l.Ph.Equals(vessel.Ph)
        && l.Batch == vessel.Batch && Math.Abs(l.Dose * vessel.Volume - vessel.Mass) < 1e-3);

    /// <summary>All vessels with sorbent and metal.</summary>
    public int Vessels => Levels.Sum(VesselsAt);

    /// <summary>The series of a kind, by what is supposed.</summary>
    /// <param name="kind">Which.</param>
    /// <param name="basis">What is supposed.</param>
    /// <param name="questions">What is to be shown.</param>
    public static IEnumerable<SeriesDraft> Of(SeriesKind kind, PlanBasis basis, IReadOnlyList<PlanQuestion> questions)
    {
        ArgumentNullException.ThrowIfNull(basis);
        var supposed = new Supposed(basis);
        return kind switch
        {
            SeriesKind.Isotherm => [OfConcentrations("ISO", supposed, basis[PlanSetting.Temperature], Rivals(questions), 1)],
            SeriesKind.Kinetic => [OfTimes(supposed, questions.Contains(PlanQuestion.BestKinetics))],
            SeriesKind.Dose => [OfDoses(basis)],
            SeriesKind.Ph => [OfPh(basis)],
            SeriesKind.Temperature => OfTemperatures(supposed, questions.Any(q => q.Series == SeriesKind.Isotherm)),
            _ => [OfBatches(basis)],
        };
    }

    // Temkin's curve is the one that rises on where Langmuir's levels off, and is nearest to it before: a capacity is not the data's while both serve.
    private static ImmutableArray<Fitting.Model> Rivals(IReadOnlyList<PlanQuestion> questions)
        => [.. questions.Contains(PlanQuestion.BestIsotherm) ? [Supposed.Freundlich] : Array.Empty<Fitting.Model>(), .. questions.Contains(PlanQuestion.Capacity) ? [Supposed.Temkin] : Array.Empty<Fitting.Model>()];

    private static PlannedLevel Base(PlanBasis b, double x) => new(
        x, b[PlanSetting.Concentration], b[PlanSetting.Dose], b[PlanSetting.Ph], b[PlanSetting.Temperature], b[PlanSetting.Time]);

    // Half of the vessels where they tell most, the rest spread geometrically between, so that a misfit can show.
    private static SeriesDraft OfConcentrations(string name, Supposed supposed, double temperature, ImmutableArray<Fitting.Model> rivals, int blanks)
    {
        const int between = 4;
        const double wantedCoverage = 0.82;
        var basis = supposed.Basis;
        var dose = basis[PlanSetting.Dose];
        var highest = basis[PlanSetting.Highest];
        var lowest = Math.Min(highest / 4, supposed.StartFor(2 * basis[PlanSetting.Quantification], dose));
        var factor = basis[PlanSetting.WithinFactor];
        var row = supposed.Row(supposed.Affinity, dose);
        var cases = factor > 1 ? RobustDesign.WithinFactor(supposed.Affinity, factor, k => supposed.Row(k, dose)) : null;
        var robust = cases is null ? null : RobustDesign.Search(cases, lowest, highest);
        var optimal = robust is null ? OptimalDesign.Search(row, lowest, highest) : null;
        double[] telling = [.. (robust?.Levels ?? optimal!.Levels).Select(Rounded).Distinct()];
        var top = Math.Min(highest, Math.Max(telling[^1], supposed.StartFor(OptimalLevels.ForCoverage(supposed.Affinity, wantedCoverage), dose)));
        var bottom = Math.Min(telling[0] / 4, Math.Max(lowest, supposed.ConstantU / WellKnown));
        bottom = Math.Max(bottom, lowest);
        var spread = Enumerable.Range(0, between).Select(i => Rounded(bottom * Math.Pow(top / bottom, i / (between - 1.0)))).ToList();
        foreach (var rival in rivals)
            spread.AddRange(Telling(supposed, rival, bottom, top, dose) ?? []);
        var levels = telling.Select(c => (C: c, Share: 2)).ToList();
        foreach (var c in spread.Where(c => levels.All(l => Math.Abs(l.C / c - 1) > 0.12)).Order())
            if (levels.All(l => Math.Abs(l.C / c - 1) > 0.12))
                levels.Add((c, 1));
        while (levels.Count < Rules.BestIsotherm.Limits.Levels)
        {
            double[] known = [.. levels.Select(l => l.C).Order()];
            var gap = Enumerable.Range(1, known.Length - 1).MaxBy(i => known[i] / known[i - 1]);
            levels.Add((Rounded(Math.Sqrt(known[gap] * known[gap - 1])), 1));
        }

        double[] layout = [.. levels.SelectMany(l => Enumerable.Repeat(l.C, l.Share))];
        var efficiency = robust?.EfficiencyOf(cases!, layout)
            ?? Math.Sqrt(Information.Of(layout.Select(row)).Determinant / (layout.Length * (double)layout.Length) / optimal!.Information.Determinant);
        return new(
            name, SeriesKind.Isotherm, "start concentration", "mg/L",
            [.. levels.OrderBy(l => l.C).Select(l => Base(basis, l.C) with { Start = l.C, Temperature = temperature, Share = l.Share, Blanks = blanks })], 2,
            $"D-optimal start concentrations {(robust is null ? "" : $"for an affinity known within a factor {Phrase.Number(factor)} ")}"
            + $"({Phrase.Listed(telling.Select(Phrase.Number))} mg/L) with half of the vessels, the rest spread geometrically between{(rivals.IsEmpty ? "" : $" and where Langmuir and {Phrase.Listed(rivals.Select(r => r.Card.Name))} differ most")}")
        { Efficiency = efficiency };
    }

    private static IEnumerable<double>? Telling(Supposed supposed, Fitting.Model rival, double bottom, double top, double dose)
    {
        double[] parameters = [supposed.Capacity, supposed.Affinity];
        return Discrimination.Between(
            Supposed.Langmuir, parameters, rival, supposed.Left(bottom, dose), supposed.Left(top, dose), c => supposed.UptakeU(c, dose)).Value?
            .Levels.Select(c => Rounded(supposed.StartFor(c, dose)));
    }

    // Geometric over the rise, the claimed time, and later ones that can test it.
    private static SeriesDraft OfTimes(Supposed supposed, bool tellsCurvesApart)
    {
        const int rise = 8;
        var basis = supposed.Basis;
        var claimed = basis[PlanSetting.Time];
        var proposed = ContactTimes.Propose(basis[PlanSetting.HalfTime], basis[PlanSetting.Stopping] / 5, rise).Where(t => t < 0.9 * claimed);
        var late = new[] { claimed, 1.5 * claimed, 2 * claimed };
        var telling = tellsCurvesApart
            ? Discrimination.Between(
                Supposed.FirstOrder, [1, supposed.Rate], Supposed.SecondOrder, basis[PlanSetting.Starting], 2 * claimed, _ => basis.Scatter).Value?.Levels ?? []
            : [];
        var times = new List<double>();
        foreach (var t in proposed.Concat(late).Select(Whole).Concat(telling.Select(Whole)).Where(t => t >= basis[PlanSetting.Starting]))
        {
            if (times.All(other => Math.Abs(other / t - 1) > 0.12))
                times.Add(t);
        }

        times.Sort();
        var fraction = 1 - Math.Exp(-supposed.Rate * times[^1]);
        return new(
            "KIN", SeriesKind.Kinetic, "contact time", "min",
            [.. times.Select(t => Base(basis, t) with { Time = t, IsCompared = t >= 0.999 * claimed, Blanks = t == times[^1] ? 2 : 0 })], 2,
            $"geometric over the rise, {Phrase.With(claimed, "min")} and one and a half times and twice as long; {Phrase.With(100 * fraction, "%")} of the uptake is expected at the last"
            + (tellsCurvesApart ? "; times at which first and second order differ most are among them" : ""));
    }

    private static SeriesDraft OfDoses(PlanBasis basis)
    {
        double[] doses = [.. new[] { 0.25, 0.5, 0.75, 1, 1.5, 2 }.Select(f => Rounded(f * basis[PlanSetting.Dose]))];
        return new(
            "DOSE", SeriesKind.Dose, "dose", "g/L", [.. doses.Select((d, i) => Base(basis, d) with { Dose = d, Blanks = i == 0 ? 2 : 0 })], 0,
            $"six doses from a quarter to twice {Phrase.With(basis[PlanSetting.Dose], "g/L")}");
    }

    private static SeriesDraft OfPh(PlanBasis basis)
    {
        var middle = basis[PlanSetting.Ph];
        double[] levels = [.. Enumerable.Range(-2, 5).Select(i => middle + i).Where(p => p is >= 2 and <= 11)];
        return new(
            "PH", SeriesKind.Ph, "start pH", "", [.. levels.Select(p => Base(basis, p) with { Ph = p, Blanks = 2 })], 0, $"five start pH values, one apart, around {Phrase.Number(middle)}; two controls without sorbent at each");
    }

    private static IEnumerable<SeriesDraft> OfTemperatures(Supposed supposed, bool hasIsotherm)
    {
        foreach (var t in new[] { 288.15, 298.15, 308.15, 318.15 })
        {
            // The isotherm at its own temperature serves here too.
            if (hasIsotherm && Math.Abs(t - supposed.Basis[PlanSetting.Temperature]) < 1)
                continue;
            var draft = OfConcentrations("TEMP" + Phrase.Number(Math.Round(t)), supposed, t, [], 1);
            var some = draft.Levels.Length > 5 ? draft.Levels.Where((_, i) => i != 1) : draft.Levels;
            yield return draft with { Kind = SeriesKind.Temperature, Levels = [.. some.Select(l => l with { Share = 1 })], Replicates = 2, Efficiency = null, Says = $"isotherm at {Phrase.With(t, "K")}; levels as for the isotherm" };
        }
    }

    private static SeriesDraft OfBatches(PlanBasis basis) => new(
        "BATCH", SeriesKind.Batches, "batch", "",
        [.. Enumerable.Range(1, (int)basis[PlanSetting.Batches]).Select(i => Base(basis, i) with { Batch = "B" + Phrase.Number(i), Blanks = i == 1 ? 2 : 0 })], 0, "every batch at one setting, side by side");

    // What can be made up without a calculator: two figures.
    internal static double Rounded(double value)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Math.Round(Math.Round(value / step) * step, 10);
    }

    private static double Whole(double minutes) => minutes < 20 ? Math.Max(1, Math.Round(minutes)) : minutes < 100 ? Math.Round(minutes / 5) * 5 : Math.Round(minutes / 10) * 10;
}
