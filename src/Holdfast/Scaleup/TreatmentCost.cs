using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Scaleup;

/// <summary>
/// What it costs to treat a cubic metre, and to remove a gram: dose·(price/uses + disposal) + eluent·price/uses + energy + labour. A working dose and cycles
/// that were shown, not a capacity and cycles hoped for. All money in one currency of one date.
/// </summary>
/// <param name="Dose">Sorbent, kg per m³ (the same number as g/L).</param>
/// <param name="Price">Sorbent as made or bought, per kg.</param>
/// <param name="Uses">Times the sorbent is used; no unit.</param>
/// <param name="Disposal">Disposal of loaded sorbent, per kg.</param>
/// <param name="Eluent">Eluent, L per m³ treated.</param>
/// <param name="EluentPrice">Eluent, per L.</param>
/// <param name="EluentUses">Times the eluent is used; no unit.</param>
/// <param name="Energy">Energy, per m³.</param>
/// <param name="Labour">Labour, per m³.</param>
public readonly record struct TreatmentCost<T>(T Dose, T Price, T Uses, T Disposal, T Eluent, T EluentPrice, T EluentUses, T Energy, T Labour)
    where T : struct, IReal<T>
{
    /// <summary>Cost per cubic metre.</summary>
    public T PerCubicMetre => Dose * (Price / Uses + Disposal) + Eluent * EluentPrice / EluentUses + Energy + Labour;

    /// <summary>Cost per gram removed.</summary>
    /// <param name="removed">Removed, g per m³ (the same number as mg/L), above 0.</param>
    public T PerGram(T removed) => PerCubicMetre / removed;
}

/// <summary>Cost over the ranges of its inputs, by drawing them.</summary>
public static class CostDraws
{
    /// <summary>A number known between two limits, any value as likely.</summary>
    /// <param name="id">Stable identity.</param>
    /// <param name="name">In words, for the budget.</param>
    /// <param name="low">Lower limit, in its unit.</param>
    /// <param name="high">Upper limit, in the same unit, not below the lower.</param>
    /// <param name="unit">Unit.</param>
    public static Measured Between(string id, string name, double low, double high, string unit)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(high, low);
        return Measured.From(0.5 * (low + high), TypeB.Tolerance(id, name, 0.5 * (high - low), Shape.Rectangular, unit));
    }

    /// <summary>Cost per gram removed, by propagation of distributions.</summary>
    /// <param name="cost">The inputs with their ranges.</param>
    /// <param name="removed">Removed, g per m³.</param>
    /// <param name="stream">Random numbers; the same stream gives the same answer.</param>
    public static Outcome<PropagatedDistribution> PerGram(TreatmentCost<Measured> cost, Measured removed, SeededStream stream)
        => MonteCarlo.Propagate([.. Inputs(cost), removed], x => Read(x).PerGram(x[9]).Value, stream);

    /// <summary>
    /// Own cost per gram less the rival's, by propagation of distributions, with 90 % coverage: cheaper in 95 of 100 draws when the upper end is below 0.
    /// </summary>
    /// <param name="cost">The inputs with their ranges.</param>
    /// <param name="removed">Removed, g per m³.</param>
    /// <param name="rival">What the rival costs per gram removed.</param>
    /// <param name="stream">Random numbers; the same stream gives the same answer.</param>
    public static Outcome<PropagatedDistribution> AgainstRival(TreatmentCost<Measured> cost, Measured removed, Measured rival, SeededStream stream)
        => MonteCarlo.Propagate([.. Inputs(cost), removed, rival], x => Read(x).PerGram(x[9]).Value - x[10], stream, confidence: 0.90);

    /// <summary>Whether a sorbent is cheaper: in at least 95 % of the draws; contradicted in at most 5 %.</summary>
    /// <param name="difference">From <see cref="AgainstRival"/>.</param>
    public static Ruling Cheaper(PropagatedDistribution difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return difference.EqualTails.High < 0 ? Ruling.Holds : difference.EqualTails.Low > 0 ? Ruling.Contradicted : Ruling.NotShownYet;
    }

    /// <summary>The inputs by their share of the variance of the cost per gram, largest first: measure the first one next.</summary>
    /// <param name="cost">The inputs with their ranges.</param>
    /// <param name="removed">Removed, g per m³.</param>
    public static Budget Shares(TreatmentCost<Measured> cost, Measured removed) => Budget.BySource(cost.PerGram(removed));

    /// <summary>Warns of uses that no reuse test has shown (rule E6).</summary>
    /// <param name="uses">Uses that the cost assumes.</param>
    /// <param name="cyclesShown">Cycles shown to keep the capacity; 1 when none were run.</param>
    public static Finding? UsesNotShown(double uses, int cyclesShown)
        => uses > cyclesShown
            ? Finding.Of("HF-646", Weight.Caution, FormattableString.Invariant(
                $"The cost counts on {uses:G3} uses, the reuse test shows {cyclesShown}. Run the cycles, or count on those shown."))
            : null;

    private static Measured[] Inputs(TreatmentCost<Measured> c)
        => [c.Dose, c.Price, c.Uses, c.Disposal, c.Eluent, c.EluentPrice, c.EluentUses, c.Energy, c.Labour];

    private static TreatmentCost<Number> Read(ReadOnlySpan<double> x) => new(x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8]);
}
