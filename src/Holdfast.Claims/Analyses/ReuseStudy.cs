using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Regeneration;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>What sorption and elution cycles say of a sorbent that is used again.</summary>
/// <param name="Series">One for each series with cycles, in the order they came.</param>
public sealed record ReuseStudy(ImmutableArray<ReuseSeries> Series)
{
    private static readonly Analysis<ReuseStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ReuseStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The cycles of a named series; of the only one when no name is given; otherwise null.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="name">Name of the series, or null.</param>
    public static ReuseSeries? Named(Evidence evidence, string? name)
    {
        var all = Of(evidence).Series;
        return name is null ? all.Length == 1 ? all[0] : null : all.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase));
    }

    private static ReuseStudy Work(Evidence evidence)
        => new([.. evidence.Series.Select(One).OfType<ReuseSeries>()]);

    private static ReuseSeries? One(Series series)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && v.Sample.Number(RegenerationProperties.Cycle) is >= 1).ToArray();
        if (vessels.Select(v => CycleOf(v)).Distinct().Count() < 2)
            return null;
        var cycles = vessels.GroupBy(CycleOf).OrderBy(g => g.Key).Select(g => new ReuseCycle(g.Key, [.. g.Select(One)])).ToImmutableArray();
        var all = cycles.SelectMany(c => c.Vessels.Select(v => (c.Number, v.Uptake))).ToArray();
        var trend = CycleTrend.Of(Array.ConvertAll(all, a => a.Number), Array.ConvertAll(all, a => a.Uptake.Value));
        var points = new Points(Array.ConvertAll(all, a => (double)a.Number), Array.ConvertAll(all, a => a.Uptake.Value), "", "mg/g");
        var options = new FitOptions { Profiles = false };
        var pooled = OneWay.Of([.. cycles.Select(c => new Group(c.Number.ToString(CultureInfo.InvariantCulture), [.. c.Vessels.Select(v => v.Uptake.Value)]))]);
        return new(series, cycles, trend.Value, pooled.Value, Fit.Of<LinearLoss>(points, options), Fit.Of<GeometricLoss>(points, options), [.. trend.Findings, .. Findings(series.Name, cycles)]);
    }

    private static int CycleOf(Vessel vessel) => (int)Math.Round(vessel.Sample.Number(RegenerationProperties.Cycle)!.Value);

    // Uptake on the mass present where it was weighed again; otherwise on the mass of the first cycle, and a finding says so.
    private static ReuseVessel One(Vessel vessel)
    {
        var present = vessel.Sample.Number(CycleProperties.MassPresent);
        var uptake = vessel.Uptake!.Value;
        if (present is > 0 && vessel.Mass is { } first)
            uptake = CycleQuantities.OnMassPresent(uptake, first, present.Value);
        return new(vessel, uptake, vessel.Sample.Number(RegenerationProperties.Eluted), present, vessel.Sample.Words(CycleProperties.PowderPortion), vessel.Sample.Number(CycleProperties.HeldBack));
    }

    private static IEnumerable<Finding> Findings(string name, ImmutableArray<ReuseCycle> cycles)
    {
        if (cycles.Skip(1).Any(c => !c.MassIsKnown))
        {
            yield return Finding.Of("HF-650", Weight.Caution,
                $"{name}: the powder was not weighed again, so uptake is on the first mass and lost powder looks like lost capacity. Weigh it dry each cycle.", name);
        }

        if (cycles.Any(c => c.Vessels.Any(v => v.Eluted is null)))
        {
            yield return Finding.Of("HF-651", Weight.Caution,
                $"{name}: the eluate of some cycles was not analysed. Removal alone cannot show regeneration.", name);
        }

        foreach (var vessel in cycles.SelectMany(c => c.Vessels).Where(v => v.HeldBack is > 0))
        {
            if (vessel.Vessel is { Volume: { } volume, Removal: { } removal }
                && HeldBackLiquid.ApparentRemovedShare<Number>(volume.Value, vessel.HeldBack!.Value).Value is var share
                && HeldBackLiquid.MayBeLeftOut(share, removal.U / 100) == Ruling.Contradicted)
            {
                yield return Finding.Of("HF-652", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                    $"{vessel.Vessel.Code}: liquid held back dilutes the start by {100 * share:0.#} %, more than the uncertainty of its removal. Correct C0 or rinse and dry."), vessel.Vessel.Code);
            }
        }
    }
}

/// <summary>The cycles of one series.</summary>
/// <param name="Source">The series.</param>
/// <param name="Cycles">Cycles by number.</param>
/// <param name="Trend">Trend over the cycles, or null when there is none to judge.</param>
/// <param name="Pooled">Scatter of vessels pooled over all cycles, or null without replicates.</param>
/// <param name="Linear">The same loss in each cycle, fitted.</param>
/// <param name="Geometric">The same share kept in each cycle, fitted.</param>
/// <param name="Findings">Caveats.</param>
public sealed record ReuseSeries(
    Series Source, ImmutableArray<ReuseCycle> Cycles, CycleTrend? Trend, OneWay? Pooled, FitResult Linear, FitResult Geometric, ImmutableArray<Finding> Findings)
{
    /// <summary>Name of the series.</summary>
    public string Name => Source.Name;

    /// <summary>
    /// Share of what was on the powder that the eluent took off in a cycle, from the means of the cycles up to it; null when an eluate before it was
    /// not analysed. What stays on the powder is counted into the next cycle.
    /// </summary>
    /// <param name="cycle">Number of the cycle.</param>
    public double? DesorptionEfficiency(int cycle)
    {
        Number left = 0;
        foreach (var c in Cycles)
        {
            if (c.MeanEluted is not { } eluted)
                return null;
            var sorbed = c.Vessels.Average(v => v.OnFirstMass);
            if (c.Number == cycle)
                return CycleQuantities.DesorptionEfficiency<Number>(left, sorbed, eluted).Value;
            left = CycleQuantities.LeftOn<Number>(left, sorbed, eluted);
        }

        return null;
    }

    /// <summary>Metal left on the powder after the last cycle, mg/g of the first mass, or null when an eluate was not analysed.</summary>
    public double? LeftAtTheEnd
        => Cycles.All(c => c.MeanEluted is not null) ? Cycles.Sum(c => c.Vessels.Average(v => v.OnFirstMass) - c.MeanEluted!.Value) : null;
}

/// <summary>One cycle.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Vessels">Its vessels.</param>
public sealed record ReuseCycle(int Number, ImmutableArray<ReuseVessel> Vessels)
{
    /// <summary>True when every vessel's powder was weighed in this cycle; the first cycle's mass is the one weighed in.</summary>
    public bool MassIsKnown => Number == 1 || Vessels.All(v => v.MassPresent is > 0);

    /// <summary>Mean of what the eluent took off, mg/g of the first mass, or null when one eluate was not analysed.</summary>
    public double? MeanEluted => Vessels.All(v => v.Eluted is not null) ? Vessels.Average(v => v.Eluted!.Value) : null;
}

/// <summary>One vessel of one cycle.</summary>
/// <param name="Vessel">The vessel.</param>
/// <param name="Uptake">Uptake, mg/g of the mass present where it was weighed, otherwise of the first mass.</param>
/// <param name="Eluted">What the eluent took off, mg/g, or null.</param>
/// <param name="MassPresent">Mass present, mg, or null.</param>
/// <param name="Portion">Name of the portion of powder carried through, or null.</param>
/// <param name="HeldBack">Liquid held back, mL, or null.</param>
public sealed record ReuseVessel(Vessel Vessel, Measured Uptake, double? Eluted, double? MassPresent, string? Portion, double? HeldBack)
{
    /// <summary>Uptake on the mass weighed in at first, mg/g.</summary>
    public double OnFirstMass => Vessel.Uptake!.Value.Value;
}
