using System.Collections.Immutable;
using Holdfast.Planning;
using Holdfast.Studies;

namespace Holdfast.Claims.Plans;

/// <summary>What is doubtful about a plan, before anything is weighed. Each is mended by a change, or accepted with a reason.</summary>
public static class PlanWarnings
{
    /// <summary>The limits; the sentences print from here.</summary>
    public static class Limits
    {
        /// <summary>Least margin, or effect to be seen, in standard deviations of one vessel.</summary>
        public const double Effect = 1;

        /// <summary>Least removal, %, common practice.</summary>
        public const double LeastRemoval = 20;

        /// <summary>Largest removal, %, common practice.</summary>
        public const double MostRemoval = 95;

        /// <summary>Least share of the highest standard that a diluted reading should reach, common practice.</summary>
        public const double LowestReading = 0.2;

        /// <summary>Least coverage at the highest level.</summary>
        public const double Coverage = 0.8;

        /// <summary>Least share of the final uptake at the longest time.</summary>
        public const double Fraction = 0.95;

        /// <summary>A later time that tests a plateau is this many times the one claimed.</summary>
        public const double LaterBy = Rules.EquilibriumReached.Limits.LaterBy;

        /// <summary>Times before this share of the final uptake tell rate laws apart.</summary>
        public const double Early = 0.85;

        /// <summary>Fewest such times.</summary>
        public const int EarlyTimes = 4;

        /// <summary>Fewest temperatures for a heat.</summary>
        public const int Temperatures = 4;

        /// <summary>Fewest batches for a reproducible powder.</summary>
        public const int Batches = 3;

        /// <summary>Fewest levels beyond the parameters of a fitted curve.</summary>
        public const int LackOfFit = 2;

        /// <summary>First hour at which a vessel may be stopped.</summary>
        public const double Morning = 7;

        /// <summary>Last hour.</summary>
        public const double Evening = 20;
    }

    /// <summary>All warnings of a plan.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<PlanWarning> Of(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. Power(plan), .. Ground(plan), .. Controls(plan), .. Removal(plan), .. Reading(plan), .. Reach(plan), .. Times(plan), .. Solid(plan), .. Settings(plan), .. Order(plan), .. Hands(plan), .. Stores(plan)];
    }

    private static PlanWarning Warn(string name, string sentence) => new(name, sentence, null);

    private static IEnumerable<PlanWarning> Power(PlanDesign plan)
    {
        foreach (var (question, power, _) in plan.Claims.Where(c => c.Power.IsShort || c.Power.Effect < Limits.Effect))
        {
            var n = plan.Series.Where(s => s.Kind == question.Series).Max(s => s.Replicates);
            yield return Warn($"power-{question.Rule}",
                $"{question.Rule}: the power is {Phrase.With(Math.Round(100 * (power.Power ?? 0)), "%")}, {Phrase.With(100 * PlanPower.Wanted, "%")} are wanted, so the answer may be “not shown yet”. {SentenceCase.Of(power.Shows)}. "
                + (n < PlanDesign.MostReplicates ? "Run more vessels, or widen the margin before the work." : "Widen the margin before the work, or find a steadier method."));
        }
    }

    // What nothing tests caps a claim, however many vessels it has.
    private static IEnumerable<PlanWarning> Ground(PlanDesign plan)
    {
        string[] late = [.. plan.Claims.Where(c => c.Question.StandsOnEquilibrium).Select(c => c.Question.Rule)];
        if (late.Length > 0 && !plan.TestsEquilibrium)
            yield return Warn("ground-equilibrium", $"{Phrase.Listed(late)} {(late.Length == 1 ? "stands" : "stand")} on equilibrium by {Phrase.With(plan.Basis[PlanSetting.Time], "min")}, which no series tests: “not shown yet” is all that can come out. Show {PlanQuestion.Equilibrium.Rule} too.");
        if (plan.Claims.Any(c => c.Question == PlanQuestion.BestPh) && !plan.TestsStability)
            yield return Warn("ground-stability", $"{PlanQuestion.BestPh.Rule} stands on a powder that stays at that pH, which nothing tests: “not shown yet” is all that can come out. Read a constituent of the powder in the vessels without metal, and state {Rules.StableInWater.RuleId} with the powder's formula.");
    }

    private static IEnumerable<PlanWarning> Controls(PlanDesign plan)
        => plan.Series.Where(s => !plan.Vessels.Any(v => v.Role == SampleRole.Control && s.Levels.Any(l => l.Start.Equals(v.InitialConcentration) && l.Ph.Equals(v.Ph ?? l.Ph)))
                || !plan.Vessels.Any(v => v.Series == s.Name && v.Role == SampleRole.SorbentBlank))
            .Select(s => Warn("controls-" + s.Name, $"{s.Name} has no control without sorbent, or none without metal: losses to wall, filter or a solid cannot be told from sorption. Add them."));

    private static IEnumerable<PlanWarning> Removal(PlanDesign plan)
    {
        var supposed = new Supposed(plan.Basis);
        foreach (var series in plan.Series)
        {
            string[] bad = [.. series.Levels.Select(l => (l, R: supposed.Removal(l.Start, l.Dose))).Where(l => l.R is < Limits.LeastRemoval or > Limits.MostRemoval)
                .Select(l => $"{Phrase.With(l.R, "%")} at {Phrase.With(l.l.X, series.Unit)}")];
            if (bad.Length > 0)
                yield return Warn("removal-" + series.Name, $"{series.Name}: a removal of {Phrase.Listed(bad)} is expected, outside {Phrase.Span(Limits.LeastRemoval, Limits.MostRemoval, "%")}: uptake or what is left is then badly known. Take another dose or start concentration there.");
        }
    }

    private static IEnumerable<PlanWarning> Reading(PlanDesign plan)
    {
        var top = plan.Basis[PlanSetting.TopStandard];
        var limit = plan.Basis[PlanSetting.Quantification];
        foreach (var series in plan.Vessels.Where(v => v.InitialConcentration > 0).GroupBy(v => v.Series))
        {
            double[] bad = [.. series.Where(v => v.Expected / v.Dilution is var read && (read > PlanDesign.HighestReading * top || read < limit || (v.Dilution > 1 && read < Limits.LowestReading * top)))
                .Select(v => v.Expected).Distinct().Order()];
            if (bad.Length > 0)
                yield return Warn("reading-" + series.Key, $"{series.Key}: {Phrase.Listed(bad.Take(4).Select(e => Phrase.With(Math.Round(e, 3), "mg/L")))} would be read outside the calibration from {Phrase.With(limit, "mg/L")} to {Phrase.With(top, "mg/L")} at every usual dilution. Concentrate the sample, or calibrate another range.");
        }
    }

    private static IEnumerable<PlanWarning> Reach(PlanDesign plan)
    {
        var supposed = new Supposed(plan.Basis);
        foreach (var series in plan.Series.Where(s => s.Kind is SeriesKind.Isotherm or SeriesKind.Temperature))
        {
            var coverage = series.Levels.Max(l => supposed.Coverage(supposed.Left(l.Start, l.Dose)));
            if (coverage < Limits.Coverage)
                yield return Warn("coverage-" + series.Name, $"{series.Name}: the highest level fills {Phrase.With(100 * coverage, "%")} of the sites, less than {Phrase.With(100 * Limits.Coverage, "%")}: the capacity would be extrapolated. Raise the highest concentration, or lower the dose.");
        }

        foreach (var series in plan.Series.Where(s => s.Kind == SeriesKind.Kinetic))
        {
            var fraction = 1 - Math.Exp(-supposed.Rate * series.Levels.Max(l => l.Time));
            if (fraction < Limits.Fraction)
                yield return Warn("fraction-" + series.Name, $"{series.Name}: {Phrase.With(100 * fraction, "%")} of the uptake is expected at the longest time, less than {Phrase.With(100 * Limits.Fraction, "%")}: the plateau would be assumed. Run longer.");
        }
    }

    private static IEnumerable<PlanWarning> Times(PlanDesign plan)
    {
        var rate = new Supposed(plan.Basis).Rate;
        var claimed = plan.Basis[PlanSetting.Time];
        foreach (var series in plan.Series.Where(s => s.Kind == SeriesKind.Kinetic))
        {
            var later = plan.Claims.Any(c => c.Question == PlanQuestion.Equilibrium) && !series.Levels.Any(l => l.Time >= claimed * Limits.LaterBy * 0.999);
            var early = series.Levels.Count(l => 1 - Math.Exp(-rate * l.Time) < Limits.Early);
            if (later)
                yield return Warn("later-" + series.Name, $"{series.Name}: no vessel is stopped at or after {Phrase.With(claimed * Limits.LaterBy, "min")}, so equilibrium by {Phrase.With(claimed, "min")} cannot hold. Add a later time.");
            if (plan.Claims.Any(c => c.Question == PlanQuestion.BestKinetics) && early < Limits.EarlyTimes)
                yield return Warn("early-" + series.Name, $"{series.Name}: {Phrase.Count(early, "time")} before {Phrase.With(100 * Limits.Early, "%")} of the uptake, fewer than {Phrase.Number(Limits.EarlyTimes)}: rate laws differ there only. Add earlier times.");
        }
    }

    private static IEnumerable<PlanWarning> Solid(PlanDesign plan)
    {
        var supposed = new Supposed(plan.Basis);
        var rise = plan.Basis[PlanSetting.PhRise];
        foreach (var series in plan.Series)
        {
            PlannedLevel[] bad = [.. series.Levels.Where(l => supposed.MayFormSolid(plan.Analyte, l))];
            if (bad.Length > 0)
                yield return Warn("solid-" + series.Name, $"{series.Name}: at {Phrase.Listed(bad.Take(4).Select(l => $"{Phrase.With(l.Start, "mg/L")} and end pH {Phrase.Number(l.Ph + rise)}"))} a solid of {plan.Analyte} could form, so sorption cannot be shown by the calculation. Lower concentration or pH, and run controls without sorbent at the end pH.");
        }
    }

    private static IEnumerable<PlanWarning> Settings(PlanDesign plan)
    {
        var temperatures = plan.Series.Where(s => s.Kind is SeriesKind.Temperature or SeriesKind.Isotherm).Select(s => s.Levels[0].Temperature).Distinct().Count();
        if (plan.Claims.Any(c => c.Question == PlanQuestion.Heat) && temperatures < Limits.Temperatures)
            yield return Warn("temperatures", $"A heat of uptake from {Phrase.Count(temperatures, "temperature")}: {Phrase.Number(Limits.Temperatures)} are asked for. Add 288 and 328 K.");
        var batches = plan.Vessels.Select(v => v.Batch).OfType<string>().Distinct(StringComparer.Ordinal).Count();
        if (plan.Claims.Any(c => c.Question == PlanQuestion.Reproducible) && batches < Limits.Batches)
            yield return Warn("batches", $"{Phrase.Count(batches, "batch", "batches")} of powder cannot show that batches are alike; {Phrase.Number(Limits.Batches)} are asked for. Make batches before vessels.");
        foreach (var series in plan.Series.Where(s => s.Parameters > 0 && s.LackOfFit < Limits.LackOfFit))
            yield return Warn("levels-" + series.Name, $"{series.Name}: {Phrase.Count(series.LackOfFit + series.Parameters, "level")} for {Phrase.Number(series.Parameters)} parameters leave no test of misfit; {Phrase.Number(series.Parameters + Limits.LackOfFit)} are asked for. Spread the levels.");
    }

    private static IEnumerable<PlanWarning> Order(PlanDesign plan)
    {
        foreach (var clock in plan.Clocks.Where(c => c.StartCorrelation >= RunOrder.LargestCorrelation || c.ReadCorrelation >= RunOrder.LargestCorrelation).DistinctBy(c => c.Series))
            yield return Warn("order-" + clock.Series, $"{clock.Series}: the order rises or falls with the level (|ρ| {Phrase.Number(Math.Max(clock.StartCorrelation ?? 0, clock.ReadCorrelation ?? 0))}, {Phrase.Number(RunOrder.LargestCorrelation)} is the limit), so a drift looks like a trend. Take another seed, or more vessels in a block.");
        foreach (var series in plan.Series)
        {
            var blocks = plan.Vessels.Where(v => v.Series == series.Name && v.Role == SampleRole.Vessel).GroupBy(v => v.Block).ToArray();
            if (blocks.Any(b => series.Levels.Any(l => !b.Any(v => v.InitialConcentration.Equals(l.Start) && v.ContactTime.Equals(l.Time) && v.Ph.Equals(l.Ph) && v.Batch == l.Batch))))
                yield return Warn("blocks-" + series.Name, $"{series.Name}: a block lacks a level, so a difference between days looks like one between levels. Draw the order again with fewer blocks.");
        }
    }

    private static IEnumerable<PlanWarning> Hands(PlanDesign plan)
    {
        var begin = 60 * plan.Basis[PlanSetting.Begin];
        foreach (var series in plan.Vessels.GroupBy(v => v.Series))
        {
            PlannedVessel[] late = [.. series.Where(v => (begin + v.StartsAt + v.ContactTime) / 60 % 24 is < Limits.Morning or > Limits.Evening || (begin + v.StartsAt) / 60 % 24 is < Limits.Morning or > Limits.Evening)];
            if (late.Length > 0)
                yield return Warn("night-" + series.Key, $"{series.Key}: {Phrase.Count(late.Length, "vessel")} would be started or stopped between {Phrase.Number(Limits.Evening)} and {Phrase.Number(Limits.Morning)} o'clock. Begin at another hour, or take fewer vessels a day.");
        }

        foreach (var clock in plan.Clocks)
        {
            var (starting, stopping) = ((int)plan.Basis[PlanSetting.Starting], (int)plan.Basis[PlanSetting.Stopping]);
            var actions = plan.Vessels.Where(v => v.Series == clock.Series && v.Block == clock.Block)
                .SelectMany(v => new[] { (At: v.StartsAt, Long: starting), (At: v.StartsAt + Math.Round(v.ContactTime), Long: stopping) }).OrderBy(a => a.At).ToArray();
            if (actions.Zip(actions.Skip(1)).Any(p => p.First.At + p.First.Long > p.Second.At + 1e-9))
                yield return Warn($"hands-{clock.Series}-{Phrase.Number(clock.Block)}", $"{clock.Series}, block {Phrase.Number(clock.Block)}: two actions overlap, which one pair of hands cannot do. Work the clock out again.");
        }
    }

    private static IEnumerable<PlanWarning> Stores(PlanDesign plan)
    {
        if (plan.Basis[PlanSetting.Vessels] is > 0 and var most && plan.Vessels.Length > most)
            yield return Warn("vessels", $"{Phrase.Count(plan.Vessels.Length, "vessel")} are the least for these claims, with the fewest vessels a level that their rules accept and the controls; you can run {Phrase.Number(most)}. Show fewer claims at a time.");
        var hand = plan.Basis[PlanSetting.Sorbent];
        var needed = plan.Budget.SorbentWithOverage / 1000;
        if (hand > 0 && needed > hand)
            yield return Warn("sorbent", $"{Phrase.With(needed, "g")} of sorbent are needed, {Phrase.With(hand, "g")} are at hand: the series would stop in the middle. Make a larger batch, or take less liquid in each vessel.");
    }
}
