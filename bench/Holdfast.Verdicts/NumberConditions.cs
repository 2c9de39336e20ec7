using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Verdicts;

/// <summary>Rules that judge replicate values: drawn here and given to the rule's own decision, on both sides of its margin.</summary>
internal static class NumberConditions
{
    private static readonly (string Name, Truth Truth)[] Sides = [("inside", Truth.True), ("at the margin", Truth.Margin), ("outside", Truth.False)];

    /// <summary>All of them.</summary>
    public static IEnumerable<Condition> All()
        => OfSorption().Concat(OfDoses()).Concat(OfReuse()).Concat(OfReadings()).Concat(OfSensors()).Concat(EstimateConditions.All());

    private static IEnumerable<Condition> OfSorption()
    {
        foreach (var c in Three("mass-balance", "ratio of solid to difference, sd 2 %, n = 3 and 3, window 0.90 to 1.10", [1.0, 0.90, 0.80],
            (chance, ratio) => MassBalance.Decide(Setting(chance, 0, 8, 0.16, 3), Setting(chance, 0, 8 * ratio, 0.16 * ratio, 3), 0.90, 1.10)))
            yield return c;
        var n = SampleSize.ForEquivalenceOfTwoMeans(0.05 / 0.02).N;
        foreach (var (name, proportional) in new[] { ("constant", false), ("in proportion to uptake", true) })
        {
            foreach (var c in Three("equilibrium-reached", Invariant($"step after the time, scatter {name}, 2 % at the plateau, n = {n} a time, margin 5 %"), [0, 0.05, 0.12],
                (chance, step) => EquilibriumReached.Decide("KIN", 120, [.. new[] { (10.0, 0.4), (30, 0.7), (60, 0.9), (120, 1 - step), (240, 1) }.Select(l => Setting(chance, l.Item1, 6 * l.Item2, 0.12 * (proportional ? l.Item2 : 1), n))], -0.05, 0.05)))
                yield return c;
        }

        foreach (var c in Three("removal-falls-with-concentration", "six concentrations, n = 3, sd 2 points: falling, flat, rising", [-6.0, 0, 6],
            (chance, slope) => RemovalFallsWithConcentration.Decide([.. Enumerable.Range(0, 6).Select(i => Setting(chance, 10 * (i + 1), 75 + slope * (i - 2.5), 2, 3))], [])))
            yield return c;
        foreach (var c in Three("better-than-published", "own uptake less a published 9 mg/g, u 0.3 and 0.2 mg/g: 2, 0, −2", [2.0, 0, -2],
            (chance, ahead) => BetterThanPublished.Decide(Found("own", 9 + ahead + 0.2 * chance.Normal(), 0.2, chance, 20), 9 + 0.3 * chance.Normal(), 0.3, [])))
            yield return c;
        double[] temperatures = [288.15, 298.15, 308.15, 318.15, 328.15];
        foreach (var c in Three("spontaneous-and-endothermic", "ΔH° of 20, 0, −20 kJ/mol, five temperatures, sd of ln K 0.08", [20.0, 0, -20],
            (chance, enthalpy) => Endothermic.Decide(
                VantHoff.OfLogarithms(temperatures, [.. temperatures.Select(t => (Measured)(9.5 - enthalpy * 1000 / Constants.MolarGas * (1 / t - 1 / 308.15) + 0.08 * chance.Normal()))]).Value!, ConstantChoice.Molar, false, [5, 5, 5, 5, 5])))
            yield return c;
        foreach (var c in Three("selective", "α of 2.5, 1, 0.4 over two rivals, sd of ln α 0.2, n = 3, factor 1", [2.5, 1, 0.4],
            (chance, alpha) => Selective.Decide([.. new[] { "Zn", "Cd" }.Select(m => (m, (IReadOnlyList<Measured>)[.. Enumerable.Range(0, 3).Select(_ => (Measured)(alpha * Math.Exp(0.2 * chance.Normal())))]))], 1)))
            yield return c;
        foreach (var c in Three("not-precipitation", "loss in 3 controls of 0, 5 and 30 % of a removal of 80 %, sd 1 point, pH 6", [0, 0.05, 0.30],
            (chance, loss) => NotPrecipitation.Decide(6, 6.7, new("Ni(OH)2", 20e-3 / 58.693, 2, 5.48e-16), Setting(chance, 0, 80, 1, 3), Setting(chance, 0, 80 * loss, 1, 3))))
            yield return c;
        foreach (var c in Three("stable-in-water", "dissolved 0.5, 1, 2 %, sd a tenth of it, n = 3 at 3 pH, limit 1 %", [0.5, 1, 2],
            (chance, share) => { Setting[] alike = [.. new[] { 5.0, 6, 7 }.Select(ph => Setting(chance, ph, share, 0.1 * share, 3))]; return StableInWater.Decide([alike[1]], alike, 0.02, "calcium"); }))
            yield return c;
        foreach (var c in Three("reproducible", "three batches, n = 3, vessels 2 %, batches 0.5 %; one batch off by 0, 10, 30 %; margin 10 %", [0, 0.10, 0.30],
            (chance, off) => Reproducible.Decide([.. Enumerable.Range(0, 3).Select(b => { var mean = 8 * (1 + 0.005 * chance.Normal() + (b == 0 ? 1.5 * off : 0)); return new Group(Invariant($"B{b}"), Draw(chance, mean, 0.16, 3)); })], 0.10)))
            yield return c;
    }

    private static IEnumerable<Condition> OfDoses()
    {
        Setting[] Doses(SeededStream chance, int n, params double[] means) => [.. means.Select((m, i) => Setting(chance, i + 1, m, 1, n))];
        yield return new("optimum-dose", "beats both neighbours by 6 points, sd 1 point, n = 3", Truth.True, Ruled("optimum-dose 1", chance => OptimumDose.Decide(2, Doses(chance, 3, 70, 86, 80, 74), 2)));
        yield return new("optimum-dose", "a neighbour removes as much", Truth.Margin, Ruled("optimum-dose 2", chance => OptimumDose.Decide(2, Doses(chance, 3, 70, 86, 86, 80), 2)));
        yield return new("optimum-dose", "another dose removes 6 points more", Truth.False, Ruled("optimum-dose 3", chance => OptimumDose.Decide(2, Doses(chance, 3, 70, 80, 86, 74), 2)));
        var n = SampleSize.ForEquivalenceOfTwoMeans(2).N + 1;
        yield return new("smallest-sufficient-dose", Invariant($"higher doses add nothing, the lower one lacks 10 points, sd 1 point, n = {n}, margin 2"), Truth.True, Ruled("sufficient 1", chance => SmallestSufficientDose.Decide(2, Doses(chance, n, 76, 86, 86, 86), 2)));
        yield return new("smallest-sufficient-dose", "the next dose adds just the margin", Truth.Margin, Ruled("sufficient 2", chance => SmallestSufficientDose.Decide(2, Doses(chance, n, 76, 86, 88, 88), 2)));
        yield return new("smallest-sufficient-dose", "the next dose adds 6 points", Truth.False, Ruled("sufficient 3", chance => SmallestSufficientDose.Decide(2, Doses(chance, n, 76, 80, 86, 86), 2)));
    }

    private static IEnumerable<Condition> OfReuse()
    {
        var n = SampleSize.ForOneMean(0.10 / (0.03 * Math.Sqrt(1.81)), sides: Statistics.Sides.One).N;
        foreach (var c in Three("reusable", Invariant($"cycle 5 keeps 0.90, 0.80, 0.70, sd 3 %, n = {Math.Max(3, n)} a cycle, 0.80 asked"), [0.90, 0.80, 0.70],
            (chance, kept) => Reusable.Decide([.. Enumerable.Range(1, 5).Select(k => Setting(chance, k, 8 * (1 - (1 - kept) * (k - 1) / 4), 0.24, Math.Max(3, n)))], 5, 0.80, massIsKnown: true)))
            yield return c;
        foreach (var c in Three("regenerated-better", "later less first cycle 0.5, 0, −0.5 mg/g, five pairs, sd of a difference 0.25 mg/g", [0.5, 0, -0.5],
            (chance, rise) => { var first = Draw(chance, 8, 0.3, 5); return RegeneratedBetter.Decide(RegeneratedBetter.Paired(first, [.. first.Select(v => v + rise + 0.25 * chance.Normal())]), massIsKnown: true, 0); }))
            yield return c;
        foreach (var c in Three("meets-limit", "mean of 0.5, 1, 1.5 limits, sd 0.1 limit, n = 4", [0.5, 1, 1.5],
            (chance, mean) => MeetsLimit.Decide(Setting(chance, 0, mean, 0.1, 4), 1, 0.1, 0.03)))
            yield return c;
    }

    private static IEnumerable<Condition> OfReadings()
    {
        foreach (var c in Three("detection-limit", "stated at 2.5, 1, 0.4 times the true limit, ten blanks", [2.5, 1, 0.4],
            (chance, times) => Holdfast.Claims.Rules.DetectionLimit.Decide(Holdfast.Claims.Rules.DetectionLimit.Found(Draw(chance, 0.001, 0.0006, 10), 0.06)!, times * 3.3 * 0.0006 / 0.06, 0.1)))
            yield return c;
        double[] standards = [0, 0.25, 0.5, 1, 1.5, 2, 3];
        (string, double, Truth)[] bends = [("no bend", 0, Truth.True), .. Bends(standards)];
        foreach (var (name, bend, truth) in bends)
        {
            yield return new("linear-calibration", $"seven levels, n = 3, constant noise 0.5 % of the top and 1 % of the reading: {name}", truth, Ruled("linear " + name, chance => LinearCalibration.Decide(
                [.. standards.SelectMany(x => Enumerable.Range(0, 3).Select(_ => new StandardReading(x, Noisy(chance, 0.06 * x * (1 - bend * x / 3)))))], "run")));
        }

        (string, double, Truth)[] losses = [("none lost", 0, Truth.True), ("5 % lost, the tolerance", 0.05, Truth.Margin), ("10 % lost", 0.10, Truth.False)];
        foreach (var (name, loss, truth) in losses)
        {
            yield return new("controls-clean", $"eight controls, u of a loss 0.7 %: {name}", truth, Ruled("controls " + name, chance => ControlsClean.Decide(
                [.. Enumerable.Range(0, 8).Select(i => new ControlLoss(Invariant($"K-{i}"), Measured.From(loss + 0.007 * chance.Normal(), new Source("control", "control", 0.007))))])));
        }
    }

    private static IEnumerable<Condition> OfSensors()
    {
        foreach (var c in Three("works-in-water", "slope of found on added 1, 0.80, 0.60, sd 0.7 µmol/L, four levels, n = 3, window 0.80 to 1.10", [1.0, 0.80, 0.60],
            (chance, slope) => { double[] added = [.. new[] { 0.0, 10, 20, 30 }.SelectMany(a => Enumerable.Repeat(a, 3))]; return WorksInWater.Decide(SpikedWater.Of(added, [.. added.Select(a => 1.5 + slope * a + 0.7 * chance.Normal())]).Value!, 3, 0.80, 1.10); }))
            yield return c;
        var n = Math.Max(3, SampleSize.ForEquivalenceOfTwoMeans(0.05 / 0.015).N);
        foreach (var c in Three("no-interference", Invariant($"one of three ions changes the signal by 0, 5, 15 %, sd 1.5 %, n = {n}, six without, margin 5 %"), [1.0, 1.05, 1.15],
            (chance, effect) =>
            {
                string[] ions = ["Ca", "Mg", "Zn"];
                var found = Interference.Of(Draw(chance, 700, 10.5, 6), [.. ions.Select((ion, i) => (ion, 50.0, (IReadOnlyList<double>)Draw(chance, 700 * (i == 0 ? effect : 1), 10.5, n)))]).Ions;
                return NoInterference.Decide("INT", [.. found.Select(f => new IonEffect(f.Ion, 1000, 20, f, null, [.. Enumerable.Range(0, n).Select(i => Invariant($"{f.Ion}-{i}"))]))]);
            }))
            yield return c;
    }

    /// <summary>Bends by what they cost: what matters, 5 % at the top for the reader, what may just not hide, twice that.</summary>
    /// <param name="levels">Levels of the standards, the blank first.</param>
    internal static IEnumerable<(string Name, double Bend, Truth Truth)> Bends(double[] levels)
    {
        // Without noise, by the rule's own line and tolerance.
        LinearCalibrationCost Of(double bend) => LinearCalibrationCost.Of(levels, bend);
        double BendOf(Func<double, bool> enough)
        {
            double low = 0, high = 1;
            for (var i = 0; i < 50; i++)
                (low, high) = enough((low + high) / 2) ? (low, (low + high) / 2) : ((low + high) / 2, high);
            return high;
        }

        var matters = BendOf(b => Of(b).Percent > LinearCalibration.Limits.Matters);
        var hides = BendOf(b => Of(b).Share > 1);
        yield return (Invariant($"a bend of {100 * matters:0.0} % at the top, which costs {LinearCalibration.Limits.Matters} % at worst: what matters"), matters, Truth.True);
        yield return (Invariant($"a bend of 5 % at the top, which costs {Of(0.05).Percent:0.0} % at worst"), 0.05, Truth.Between);
        yield return (Invariant($"a bend of {100 * hides:0.0} % at the top, half of what reading back tolerates"), hides, Truth.False);
        yield return (Invariant($"a bend of {200 * hides:0.0} % at the top, all that reading back tolerates"), 2 * hides, Truth.False);
    }

    internal static IEnumerable<Condition> Three(string rule, string name, double[] values, Func<SeededStream, double, Decision> decide)
        => Sides.Zip(values, (side, value) => new Condition(rule, $"{name}: {side.Name} ({Invariant($"{value}")})", side.Truth, Ruled(rule + side.Name, chance => decide(chance, value))));

    internal static Func<ulong, Ruling> Ruled(string purpose, Func<SeededStream, Decision> decide) => seed => decide(new SeededStream(seed, purpose)).Gated;

    internal static Setting Setting(SeededStream chance, double x, double mean, double sd, int n) => new(x, [.. Draw(chance, mean, sd, n)]);

    internal static double[] Draw(SeededStream chance, double mean, double sd, int n) => [.. Enumerable.Range(0, n).Select(_ => mean + sd * chance.Normal())];

    private static double Noisy(SeededStream chance, double signal) => signal + Math.Sqrt(0.0009 * 0.0009 + 0.01 * signal * 0.01 * signal) * chance.Normal();

    // A standard error found from n values is itself scattered.
    internal static Estimate Found(string name, double value, double error, SeededStream chance, int freedom)
        => new(name, value, error * Math.Sqrt(Enumerable.Range(0, freedom).Average(_ => Math.Pow(chance.Normal(), 2))), freedom, freedom + 2);

    internal static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
