using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Scaleup;

/// <summary>The ways to treat one water, side by side, from one fitted isotherm.</summary>
/// <param name="Inlet">Inlet concentration, in the isotherm's unit.</param>
/// <param name="Target">Target concentration, in the same unit.</param>
/// <param name="Single">Dose of one stage, in (unit of C)/(unit of q).</param>
/// <param name="Cross">Two stages, fresh sorbent in each.</param>
/// <param name="Counter">Two stages, sorbent against the water.</param>
/// <param name="Floor">Dose that no number of stages undercuts while the isotherm is concave.</param>
public sealed record Stages(Measured Inlet, double Target, Measured Single, CrossCurrent Cross, CounterCurrent Counter, Measured Floor)
{
    /// <summary>Plans the stages; refuses a target below the lowest concentration that the isotherm was measured at (rule E1).</summary>
    /// <param name="isotherm">A fitted isotherm.</param>
    /// <param name="name">What the fit is called in the budget.</param>
    /// <param name="inlet">Inlet concentration, in the isotherm's unit.</param>
    /// <param name="target">Target concentration, in the same unit, above 0 and below the inlet.</param>
    /// <param name="lowest">Lowest equilibrium concentration measured, in the same unit.</param>
    /// <param name="highest">Highest equilibrium concentration measured, in the same unit.</param>
    public static Outcome<Stages> Of(FitResult isotherm, string name, Measured inlet, double target, double lowest, double highest)
    {
        ArgumentNullException.ThrowIfNull(isotherm);
        if (isotherm.Model is not { } model || !isotherm.IsFit || isotherm.Covariance is null)
            return Outcome<Stages>.None(Finding.Of("HF-640", Weight.Stop, "There is no fitted isotherm with uncertainties: no dose can be planned."));
        Require(model, inlet, target);
        if (WithinData(target, lowest) != Ruling.Holds)
        {
            return Outcome<Stages>.None(Finding.Of("HF-641", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"The target {target:G4} lies below the lowest concentration measured, {lowest:G4}: measure the isotherm there before planning a dose.")));
        }

        Measured[] p = [.. isotherm.MeasuredParameters(name, name)];
        var findings = inlet.Value > highest
            ? new[]
            {
                Finding.Of("HF-642", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                    $"The inlet {inlet.Value:G4} lies above the highest concentration measured, {highest:G4}: the floor is extrapolated. Measure the isotherm up to the inlet.")),
            }
            : [];
        return new(
            new(inlet, target, SingleStage.Dose(model, p, inlet, target), CrossCurrent.Of(model, p, inlet, target), CounterCurrent.Of(model, p, inlet, target),
                SingleStage.Floor(model, p, inlet, target)),
            findings);
    }

    /// <summary>Whether a target lies where the isotherm was measured.</summary>
    /// <param name="target">Target concentration.</param>
    /// <param name="lowest">Lowest concentration measured, same unit.</param>
    public static Ruling WithinData(double target, double lowest) => target >= lowest ? Ruling.Holds : Ruling.NotShownYet;

    internal static double[] Plain(ReadOnlySpan<Measured> p)
    {
        var plain = new double[p.Length];
        for (var i = 0; i < p.Length; i++)
            plain[i] = p[i].Value;
        return plain;
    }

    internal static void Require(Model isotherm, Measured inlet, double target)
    {
        ArgumentNullException.ThrowIfNull(isotherm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(target);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(target, inlet.Value, nameof(target));
    }
}
