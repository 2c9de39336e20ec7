using System.Collections.Immutable;
using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.Claims.Comparisons;

/// <summary>A fitted isotherm in a line.</summary>
/// <param name="Curve">Name of the curve.</param>
/// <param name="Parameters">Parameters, in the order of the curve's card and its units (mg/L, mg/g).</param>
/// <param name="Covariance">Their covariance, row after row.</param>
/// <param name="Freedom">Degrees of freedom of the covariance, the fewest of any parameter; null when it is taken as known.</param>
public sealed record CurveLine(string Curve, ImmutableArray<double> Parameters, ImmutableArray<double> Covariance, double? Freedom)
{
    /// <summary>True when it is a curve of this version that can be computed with.</summary>
    internal bool IsSound
        => Isotherms.Isotherm.Named(Curve) is { } model && !Parameters.IsDefault && !Covariance.IsDefault
            && Parameters.Length == model.Card.Parameters.Count && Covariance.Length == Parameters.Length * Parameters.Length
            && Parameters.Concat(Covariance).All(double.IsFinite) && (Freedom ?? 1) > 0;

    /// <summary>The line of a fit, or null when it has no uncertainty to go with it.</summary>
    /// <param name="fit">The fit.</param>
    internal static CurveLine? Of(FitResult fit)
    {
        if (fit.Covariance is not { } covariance || fit.Nu <= 0 || Isotherms.Isotherm.Named(fit.Card.Name) is null || !covariance.Cast<double>().All(double.IsFinite))
            return null;
        var freedom = fit.MeasuredParameters("fit").SelectMany(p => p.Contributions.ToArray()).Select(c => c.Source.DegreesOfFreedom).DefaultIfEmpty(fit.Nu).Min();
        return new(fit.Card.Name, [.. fit.Values], [.. covariance.Cast<double>()], double.IsFinite(freedom) ? freedom : null);
    }

    /// <summary>The curve at a concentration left, mg/g.</summary>
    /// <param name="left">Concentration left, mg/L.</param>
    internal Estimate At(double left)
    {
        var slopes = new double[Parameters.Length];
        var value = Isotherms.Isotherm.Named(Curve)!.Value(left, Parameters.AsSpan(), slopes);
        return Carried(value, slopes);
    }

    /// <summary>What is left of a start concentration, mg/L.</summary>
    /// <param name="start">Start concentration, mg/L.</param>
    /// <param name="dose">Dose, g/L.</param>
    internal Estimate Left(double start, double dose)
    {
        var slopes = new double[Parameters.Length];
        var value = Isotherms.Isotherm.Named(Curve)!.ConcentrationLeft(start, dose, Parameters.AsSpan(), slopes);
        return Carried(value, slopes);
    }

    private Estimate Carried(double value, double[] slopes)
    {
        var variance = 0.0;
        for (var i = 0; i < slopes.Length; i++)
        {
            for (var j = 0; j < slopes.Length; j++)
                variance += slopes[i] * Covariance[i * slopes.Length + j] * slopes[j];
        }

        return new(Curve, value, Math.Sqrt(Math.Max(variance, 0)), Freedom ?? double.PositiveInfinity, Parameters.Length);
    }
}
