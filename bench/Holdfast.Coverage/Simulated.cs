using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Isotherms;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Coverage;

/// <summary>Something that is simulated many times and counted: a batch study, a line of constants on 1/T, a quenching series.</summary>
/// <param name="Name">Stable name, by which its counts are kept.</param>
/// <param name="Curve">Under which heading it is summed.</param>
/// <param name="Quantities">What is counted of it.</param>
/// <param name="Count">Counts so many studies from the study of a number on.</param>
internal sealed record Simulated(string Name, string Curve, IReadOnlyList<string> Quantities, Func<int, int, Tally[]> Count)
{
    private const double LnAffinity = -1.6, Enthalpy = 20, Room = 298.15;
    private static readonly double[] Starts = [3, 6, 12, 20, 35, 50, 75, 100];

    /// <summary>Everything that is simulated, in a fixed order.</summary>
    public static IReadOnlyList<Simulated> All => [.. Vessels, .. Powder];

    /// <summary>What vessels, lines of constants and signals are simulated for.</summary>
    public static IReadOnlyList<Simulated> Vessels { get; } = [.. Condition.All.Select(Of), .. Temperatures(), .. QuenchingSeries()];

    /// <summary>What measurements of the powder are simulated for.</summary>
    public static IReadOnlyList<Simulated> Powder { get; } = [.. PowderConditions.All()];

    /// <summary>A batch study.</summary>
    public static Simulated Of(Condition condition) => new(
        condition.Name, condition.Model.Card.Name, [.. condition.Model.Card.Parameters.Select(p => p.Symbol), Tally.Left, Tally.NotDetected, Tally.NoLackOfFit],
        (from, count) => Tally.Count(condition, from, count));

    // Langmuir isotherms of eight vessels at several temperatures: constants from fits, the pipette shared by all of them, ln K moving with ΔH° as van 't Hoff has it.
    private static IEnumerable<Simulated> Temperatures()
        => from temperatures in new[] { 3, 4, 5 }
           from scatter in new[] { 0, 0.02 }
           select One(
               FormattableString.Invariant($"van 't Hoff, {temperatures} temperatures × {Starts.Length} vessels, vessels scatter {100 * scatter:0} %"), "van 't Hoff", ["ΔH°", "ΔH°, wider"],
               stream =>
               {
                   double[] kelvin = [.. Enumerable.Range(0, temperatures).Select(i => Room + 10 * i)];
                   var line = VantHoff.Of(kelvin, [.. kelvin.Select(t => Affinity(t, scatter, stream))]).Value!;
                   return [(Limits(line.Enthalpy), Enthalpy), (Limits(line.WiderEnthalpy), Enthalpy)];
               });

    private static Measured Affinity(double kelvin, double scatter, SeededStream stream)
    {
        const double reading = 0.015, flask = 0.01;
        double[] truth = [20, Math.Exp(LnAffinity - 1000 * Enthalpy / Constants.MolarGas * (1 / kelvin - 1 / Room))];
        var model = Model.Of<Langmuir>();
        double[] by = new double[2], left = [.. Starts.Select(c => model.ConcentrationLeft(
            c * (1 + flask * stream.Normal()), 2 * (1 + scatter * stream.Normal()), truth, by) * (1 + reading * stream.Normal()))];
        var fit = model.Series(SeriesPoints.OfVessels(
            [.. Starts.Select((c, i) => Measured.From(c, new Source(FormattableString.Invariant($"{kelvin}/flask {i}"), "flask", flask * c)))], [.. Starts.Select(_ => (Measured)2)],
            [.. left.Select((c, i) => Measured.From(c, new Source(FormattableString.Invariant($"{kelvin}/read {i}"), "reading", reading * c)))]));
        return fit.MeasuredParameters(FormattableString.Invariant($"isotherm at {kelvin}"))[1];
    }

    // Intensities with a relative error, weighed by the mean of their level as the product does.
    private static IEnumerable<Simulated> QuenchingSeries()
        => from levels in new[] { 6, 8, 12 }
           from times in new[] { 1, 3 }
           from noise in new[] { 0.01, 0.03 }
           select One(
               FormattableString.Invariant($"Stern-Volmer, {levels} × {times}, noise {100 * noise:0} % of the signal"), SternVolmer.Card.Name, ["F0", "K"],
               stream =>
               {
                   double[] truth = [1000, 0.02], q = [.. from i in Enumerable.Range(0, levels) from k in Enumerable.Range(0, times) select 100.0 * i / (levels - 1)];
                   double[] signal = [.. q.Select(x => Model.Of<SternVolmer>().Value(x, truth) * (1 + noise * stream.Normal()))];
                   var fit = Model.Of<SternVolmer>().Fit(Quenching.PointsOf(q, signal, "µmol/L", "").Value!);
                   return [(Shown.Interval(fit, 0), truth[0]), (Shown.Interval(fit, 1), truth[1])];
               });

    private static (double Low, double High)? Limits(Estimate estimate) => (estimate.Interval().Low, estimate.Interval().High);

    /// <summary>Something whose every study gives one interval for each quantity, or null where none is printed.</summary>
    /// <param name="name">Stable name.</param>
    /// <param name="curve">Under which heading it is summed.</param>
    /// <param name="quantities">What is counted of it.</param>
    /// <param name="study">One study, from random numbers.</param>
    internal static Simulated One(string name, string curve, string[] quantities, Func<SeededStream, ((double Low, double High)? Interval, double Truth)[]> study)
        => new(name, curve, quantities, (from, count) =>
        {
            Tally[] tallies = [.. quantities.Select(q => new Tally(q, 0, 0, 0, 0, 0))];
            for (var i = from; i < from + count; i++)
            {
                var found = study(new SeededStream((ulong)i, name));
                for (var j = 0; j < tallies.Length; j++)
                    tallies[j] = tallies[j].With(found[j].Interval, found[j].Truth);
            }

            return tallies;
        });
}
