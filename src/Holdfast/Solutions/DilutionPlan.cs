using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Solutions;

/// <summary>
/// Ways to dilute with the pipettes and flasks at hand, best first: least liquid made up over all steps, since the rest is metal waste; then
/// those near the least uncertainty, and among them fewest steps and least stock.
/// </summary>
public static class DilutionPlan
{
    /// <summary>A way is listed when it comes this close to the target; share.</summary>
    public const double Nearness = 0.005;

    /// <summary>Least dilution of one step.</summary>
    public const double LeastFactor = 2;

    /// <summary>Largest dilution of one step.</summary>
    public const double LargestFactor = 100;

    /// <summary>A way up to this many times less certain than the best one is as good: a smaller gain is not worth another step or more stock.</summary>
    private const double SameU = 1.5;

    /// <summary>Ways from a stock to a target.</summary>
    /// <param name="stock">Concentration of the stock, any unit.</param>
    /// <param name="target">Concentration wanted, same unit, above 0.</param>
    /// <param name="volume">Volume needed at the end, mL, above 0.</param>
    /// <param name="ware">Pipettes and flasks at hand.</param>
    /// <param name="most">How many ways to list.</param>
    public static Outcome<IReadOnlyList<Dilution>> Ways(Measured stock, double target, double volume, IReadOnlyList<VolumetricWare> ware, int most = 5)
    {
        ArgumentNullException.ThrowIfNull(ware);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(target);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        if (stock.Value < target)
            return None(string.Create(CultureInfo.InvariantCulture, $"The target {target:G6} lies above the stock, {stock.Value:G6}. Make a stronger stock."));

        var factor = stock.Value / target;
        var ways = OneStep(factor, volume, ware).Select(s => Dilution.Of("plan", stock, s)).ToList();
        foreach (var first in AnyStep(ware).Where(s => s.Factor < factor))
        {
            // The first step must leave enough for the second.
            foreach (var second in OneStep(factor / first.Factor, volume, ware).Where(s => s.Volume < first.Flask.Nominal))
                ways.Add(Dilution.Of("plan", stock, first, second));
        }

        if (ways.Count == 0)
            return None(string.Create(CultureInfo.InvariantCulture, $"No pipette and flask at hand give {target:G6} in one or two steps. Add a smaller pipette or an intermediate."));
        var least = ways.Min(w => w.Concentration.RelativeU);
        return new(
            [.. ways.OrderBy(w => w.Steps.Sum(s => s.Flask.Nominal)).ThenBy(w => w.Concentration.RelativeU > SameU * least).ThenBy(w => w.Steps.Count)
                .ThenBy(w => w.StockVolume).ThenBy(w => w.Concentration.RelativeU).Take(most)],
            []);
    }

    /// <summary>The intermediate that brings the most targets within one further step, or null when none is needed or none helps.</summary>
    /// <param name="stock">Concentration of the stock, any unit.</param>
    /// <param name="targets">Concentrations wanted, same unit.</param>
    /// <param name="volume">Volume needed of each, mL.</param>
    /// <param name="ware">Pipettes and flasks at hand.</param>
    public static DilutionStep? SharedIntermediate(double stock, IReadOnlyList<double> targets, double volume, IReadOnlyList<VolumetricWare> ware)
    {
        ArgumentNullException.ThrowIfNull(targets);
        ArgumentNullException.ThrowIfNull(ware);
        var open = targets.Where(t => !OneStep(stock / t, volume, ware).Any()).ToArray();
        if (open.Length == 0)
            return null;
        var best = AnyStep(ware)
            .Select(s => (Step: s, Reached: open.Count(t => OneStep(stock / t / s.Factor, volume, ware).Any())))
            .Where(p => p.Reached > 0)
            .OrderByDescending(p => p.Reached).ThenBy(p => p.Step.Volume).ThenBy(p => p.Step.Flask.Nominal)
            .FirstOrDefault();
        return best.Step;
    }

    private static Outcome<IReadOnlyList<Dilution>> None(string why) => Outcome<IReadOnlyList<Dilution>>.None(Finding.Of("HF-495", Weight.Stop, why));

    /// <summary>Steps that dilute by a factor and give the volume needed; a piston pipette is set to the exact volume.</summary>
    private static IEnumerable<DilutionStep> OneStep(double factor, double volume, IReadOnlyList<VolumetricWare> ware)
    {
        if (factor is < LeastFactor * (1 - Nearness) or > LargestFactor * (1 + Nearness))
            yield break;
        foreach (var flask in ware.Where(w => w.Kind == WareKind.Flask && w.Nominal >= volume))
        {
            foreach (var pipette in ware.Where(w => w.Kind is WareKind.Pipette or WareKind.PistonPipette))
            {
                var exact = flask.Nominal / factor;
                if (pipette.Kind == WareKind.PistonPipette)
                {
                    // A piston pipette is set in thousandths of its volume.
                    var set = Math.Round(exact / pipette.Nominal * 1000) / 1000 * pipette.Nominal;
                    if (pipette.CanGive(set) && Math.Abs(set / exact - 1) <= Nearness)
                        yield return new(pipette, set, flask);
                }
                else if (Math.Abs(pipette.Nominal / exact - 1) <= Nearness)
                {
                    yield return new(pipette, pipette.Nominal, flask);
                }
            }
        }
    }

    /// <summary>Every step that fixed pipettes allow, and whole settings of piston pipettes, as a first step.</summary>
    private static IEnumerable<DilutionStep> AnyStep(IReadOnlyList<VolumetricWare> ware)
        => from flask in ware
           where flask.Kind == WareKind.Flask
           from pipette in ware
           where pipette.Kind is WareKind.Pipette or WareKind.PistonPipette
           let step = new DilutionStep(pipette, pipette.Nominal, flask)
           where step.Factor is >= LeastFactor and <= LargestFactor
           select step;
}
