using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;

namespace Holdfast.BatchSorption;

/// <summary>One point of the dose curve that an isotherm predicts, from C0 − Ce = s·q(Ce).</summary>
/// <remarks>
/// For every rising isotherm removal rises and uptake falls with dose, always: dCe/ds = −q/(1 + s·q′(Ce)). So a dose series has no
/// optimum of its own, and where the two curves cross depends on the scales of the two axes.
/// </remarks>
/// <param name="Dose">Dose s, g/L.</param>
/// <param name="Ce">Concentration at equilibrium, mg/L.</param>
/// <param name="Removal">Removal, percent.</param>
/// <param name="Uptake">Uptake, mg/g.</param>
/// <param name="SlopeOfCe">dCe/ds, mg/L for each g/L; never positive.</param>
public sealed record DosePoint(Measured Dose, Measured Ce, Measured Removal, Measured Uptake, double SlopeOfCe)
{
    /// <summary>Below this probability the isotherm does not explain a dose series (rule D4).</summary>
    public const double LowestP = 0.05;

    /// <summary>Predicts one dose; what C0 and the parameters share with other points stays correlated, which gives the band.</summary>
    /// <param name="c0">Start concentration, mg/L.</param>
    /// <param name="dose">Dose, g/L.</param>
    /// <param name="parameters">Parameters of the isotherm with their covariance (<see cref="CorrelatedInputs"/>), in its card's order, for mg/L and mg/g.</param>
    public static DosePoint Predict<TCurve>(Measured c0, Measured dose, ReadOnlySpan<Measured> parameters) where TCurve : struct, ICurve<TCurve>
    {
        var ce = BatchEquilibrium.Concentration<TCurve, Measured>(c0, dose, parameters);
        Span<Slopes> plain = stackalloc Slopes[parameters.Length];
        for (var i = 0; i < plain.Length; i++)
            plain[i] = parameters[i].Value;
        var slope = BatchEquilibrium.Concentration<TCurve, Slopes>(c0.Value, Slopes.Parameter(dose.Value, 0), plain)[0];
        return new(dose, ce, BatchQuantities.Removal(c0, ce), (c0 - ce) / dose, slope);
    }

    /// <summary>The dose that leaves a target concentration, s = (C0 − C)/q(C), g/L. Its upper 95 % limit is value + 1.645 u.</summary>
    /// <param name="c0">Start concentration, mg/L, above the target.</param>
    /// <param name="target">Concentration wanted at the end, mg/L, above 0; refuse it when it lies below the lowest one measured.</param>
    /// <param name="parameters">Parameters of the isotherm, in its card's order, for mg/L and mg/g.</param>
    public static T Needed<TCurve, T>(T c0, T target, ReadOnlySpan<T> parameters)
        where TCurve : struct, ICurve<TCurve>
        where T : struct, IReal<T>
    {
        if (!(target.Value > 0 && c0.Value > target.Value))
            throw new ArgumentOutOfRangeException(nameof(target), target.Value, "The target lies above 0 and below the start concentration.");
        return (c0 - target) / TCurve.Value(target, parameters);
    }

    /// <summary>Compares measured end concentrations with the predicted ones (rule D4); failure points to a solids effect, a drift of pH or a lack of time.</summary>
    /// <param name="measured">Measured end concentrations, mg/L, with their uncertainties.</param>
    /// <param name="predicted">The prediction for each, in the same order.</param>
    public static Agreement Compare(ReadOnlySpan<Measured> measured, IReadOnlyList<DosePoint> predicted)
    {
        ArgumentNullException.ThrowIfNull(predicted);
        if (measured.Length != predicted.Count)
            throw new ArgumentException($"{measured.Length} measured, {predicted.Count} predicted.", nameof(predicted));
        var differences = new Measured[measured.Length];
        for (var i = 0; i < differences.Length; i++)
            differences[i] = measured[i] - predicted[i].Ce;
        return Agreement.Of(differences);
    }

    /// <summary>"The isotherm explains the dose series" (rule D4).</summary>
    /// <param name="p">Probability from <see cref="Compare"/>.</param>
    public static Ruling Explains(double p) => p < LowestP ? Ruling.Contradicted : Ruling.Holds;
}
