using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.Thermodynamics;

/// <summary>Heat of sorption at one fixed uptake: the slope of ln C on 1/T at equal q. It needs no constant and no standard state.</summary>
/// <remarks>Clausius and Clapeyron for a dilute solute: ΔH = R·d(ln C)/d(1/T). On mixed sites it changes with uptake: give it as a curve.</remarks>
public static class IsostericHeat
{
    private const double Kilo = 1000;

    /// <summary>From two temperatures, kJ/mol: R·[ln C(T2) − ln C(T1)]/(1/T2 − 1/T1). It has no degree of freedom to judge itself by.</summary>
    /// <param name="firstTemperature">T1, K, above 0.</param>
    /// <param name="first">Concentration (or pressure) that gives the uptake at T1, any unit.</param>
    /// <param name="secondTemperature">T2, K, above 0 and not T1.</param>
    /// <param name="second">Concentration that gives the same uptake at T2, same unit.</param>
    public static T OfTwo<T>(double firstTemperature, T first, double secondTemperature, T second) where T : struct, IReal<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(firstTemperature);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(secondTemperature);
        ArgumentOutOfRangeException.ThrowIfEqual(secondTemperature, firstTemperature);
        return Constants.MolarGas / Kilo / (1 / secondTemperature - 1 / firstTemperature) * (T.Log(second) - T.Log(first));
    }

    /// <summary>From three temperatures or more, kJ/mol, by the scatter about the line of ln C on 1/T.</summary>
    /// <param name="temperatures">Temperatures, K.</param>
    /// <param name="concentrations">Concentrations (or pressures) that give the same uptake, one unit, above 0.</param>
    public static Outcome<Estimate> Of(IReadOnlyList<double> temperatures, IReadOnlyList<Measured> concentrations)
    {
        ArgumentNullException.ThrowIfNull(concentrations);
        var line = ReciprocalTemperatureLine.Of(temperatures, [.. concentrations.Select(c => c.Value > 0 ? Measured.Log(c) : double.NaN)]);
        return new(line.Value is { } found
            ? found.Slope with { Method = "isosteric heat, scatter about the line", Value = Constants.MolarGas / Kilo * found.Slope.Value, StandardError = Constants.MolarGas / Kilo * found.Slope.StandardError }
            : null, line.Findings);
    }

    /// <summary>
    /// The concentration at which a fitted isotherm reaches an uptake, with the covariance of the fit carried through; none outside the concentrations
    /// that were measured, since a curve is not evidence beyond its data.
    /// </summary>
    /// <param name="isotherm">A rising isotherm as fitted.</param>
    /// <param name="uptake">q, in the unit of the fit, above 0.</param>
    /// <param name="name">What the fit is called in the budget.</param>
    public static Outcome<ConcentrationAtUptake> ConcentrationAt(FitResult isotherm, double uptake, string name)
    {
        ArgumentNullException.ThrowIfNull(isotherm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(uptake);
        if (isotherm.Model is not { } model || !isotherm.IsFit || isotherm.Covariance is null)
        {
            return Outcome<ConcentrationAtUptake>.None(Finding.Of("HF-628", Weight.Stop,
                $"There is no fitted isotherm of {name}: no concentration can be read off it."));
        }

        var (low, high) = (isotherm.Points.X.Where(x => x > 0).DefaultIfEmpty(0).Min(), isotherm.Points.X.Max());
        if (low <= 0 || isotherm.ValueAt(low) > uptake || isotherm.ValueAt(high) < uptake)
        {
            return Outcome<ConcentrationAtUptake>.None(Finding.Of("HF-629", Weight.Stop,
                FormattableString.Invariant($"{name} did not measure the uptake {uptake:G4}: a heat at it would be extrapolated. Choose an uptake inside all series.")));
        }

        var root = Root.Of(c => isotherm.ValueAt(c) - uptake, low, high);
        Measured[] p = [.. isotherm.MeasuredParameters(name, name)];

        // One Newton step in measured numbers from the plain root carries the covariance exactly to first order.
        var c = root - (model.Value((Measured)root, p) - uptake) / model.SlopeAt(root, [.. isotherm.Values]);
        return new(new(uptake, c), []);
    }
}

/// <summary>A concentration read off an isotherm.</summary>
/// <param name="Uptake">The uptake it belongs to, in the unit of the fit.</param>
/// <param name="Concentration">The concentration, in the unit of the fit.</param>
public sealed record ConcentrationAtUptake(double Uptake, Measured Concentration);
