using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Planning;
using Holdfast.Solutions;

namespace Holdfast.Claims.Plans;

/// <summary>One start solution of a block, made up once for all its vessels.</summary>
/// <param name="Series">The series.</param>
/// <param name="Block">The block.</param>
/// <param name="Concentration">Start concentration, mg/L.</param>
/// <param name="Volume">Volume needed with the overage, mL.</param>
/// <param name="How">How it is made from the stock; or why no way was found.</param>
/// <param name="Made">What it gives, mg/L, with the uncertainty of pipettes and flasks; null where no way was found.</param>
public sealed record PlannedSolution(string Series, int Block, double Concentration, double Volume, string How, Measured? Made)
{
    /// <summary>The solutions of a plan.</summary>
    /// <param name="plan">The plan.</param>
    public static ImmutableArray<PlannedSolution> Of(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var known = new Dictionary<(double, double), (string, Measured?)>();
        return
        [
            .. plan.Vessels.Where(v => v.InitialConcentration > 0).GroupBy(v => (v.Series, v.Block, v.InitialConcentration)).Select(g =>
            {
                var volume = g.Sum(v => v.Volume) * (1 + PlanBudget.Overage);
                if (!known.TryGetValue((g.Key.InitialConcentration, volume), out var way))
                    known[(g.Key.InitialConcentration, volume)] = way = Way(plan.Basis[PlanSetting.Stock], g.Key.InitialConcentration, volume);
                return new PlannedSolution(g.Key.Series, g.Key.Block, g.Key.InitialConcentration, volume, way.Item1, way.Item2);
            }),
        ];
    }

    private static (string How, Measured? Made) Way(double stock, double target, double volume)
    {
        var ways = DilutionPlan.Ways(stock, target, volume, VolumetricWare.All, 1);
        if (ways.Value is { Count: > 0 } found)
            return (string.Join("; then ", found[0].Instructions), found[0].Concentration);

        // No pipette gives it: a burette, or weighing, does.
        var flask = VolumetricWare.All.Where(w => w.Kind == WareKind.Flask && w.Nominal >= volume).OrderBy(w => w.Nominal).FirstOrDefault();
        return (flask is null
            ? $"no flask holds {Phrase.With(volume, "mL")}: make it up in several portions and mix them"
            : string.Create(CultureInfo.InvariantCulture, $"no pipette gives it: {flask.Nominal * target / stock:0.00} mL from a burette or by weight, make up to {flask.Nominal} mL; uncertainty not worked out"), null);
    }
}
