using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Thermodynamics;

/// <summary>
/// Enthalpy and entropy from constants without unit at several temperatures: ln K = −ΔH°/(RT) + ΔS°/R. ΔH° survives a constant factor in K;
/// ΔG° and ΔS° do not: they belong to the standard state of K.
/// </summary>
/// <remarks>J. H. van 't Hoff's equation with ΔH° taken as constant over the range. ΔH° and ΔS° are one result twice: see <see cref="Correlation"/>.</remarks>
/// <param name="Line">The line of ln K on 1/T.</param>
public sealed record VantHoff(ReciprocalTemperatureLine Line)
{
    private const double Kilo = 1000;

    /// <summary>ΔH°, kJ/mol, by the scatter about the line with n − 2 degrees of freedom.</summary>
    public Estimate Enthalpy => Scaled(Line.Slope, -Constants.MolarGas / Kilo);

    /// <summary>ΔH°, kJ/mol, with the uncertainty that each ln K brought in.</summary>
    public Measured PropagatedEnthalpy => -Constants.MolarGas / Kilo * Line.PropagatedSlope;

    /// <summary>
    /// ΔH°, kJ/mol, by whichever way leaves the wider 95 % interval. Few temperatures make the first wide, poor constants the second; neither may
    /// hide the other.
    /// </summary>
    public Estimate WiderEnthalpy => Scaled(Line.WiderSlope, -Constants.MolarGas / Kilo);

    /// <summary>ΔS°, J/(mol K), by the scatter about the line.</summary>
    public Estimate Entropy => Scaled(Line.Intercept, Constants.MolarGas);

    /// <summary>Correlation of ΔH° and ΔS°: close to 1 by construction, so that a line of one on the other shows nothing; no unit.</summary>
    public double Correlation => -Line.Correlation;

    /// <summary>ΔG° = −RT·ln K from the line, kJ/mol, with the covariance of ΔH° and ΔS° taken into account.</summary>
    /// <param name="temperature">Temperature, K, above 0.</param>
    public Estimate FreeEnergy(double temperature) => Scaled(Line.At(temperature), -Constants.MolarGas * temperature / Kilo);

    /// <summary>ΔG° = −RT·ln K of one constant, kJ/mol.</summary>
    /// <param name="constant">K without unit, above 0.</param>
    /// <param name="temperature">Temperature, K, above 0.</param>
    public static T FreeEnergyOf<T>(T constant, double temperature) where T : struct, IReal<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        return -Constants.MolarGas * temperature / Kilo * T.Log(constant);
    }

    /// <summary>The line through constants without unit.</summary>
    /// <param name="temperatures">Temperatures, K.</param>
    /// <param name="constants">K without unit, all of one standard state, in the same order; above 0.</param>
    /// <param name="weighted">True to weigh by the uncertainty of each ln K.</param>
    /// <exception cref="ArgumentException">The lists differ in length, or a temperature is not above 0.</exception>
    public static Outcome<VantHoff> Of(IReadOnlyList<double> temperatures, IReadOnlyList<Measured> constants, bool weighted = false)
    {
        ArgumentNullException.ThrowIfNull(constants);
        return OfLogarithms(temperatures, [.. constants.Select(k => k.Value > 0 ? Measured.Log(k) : double.NaN)], weighted);
    }

    /// <summary>The line through logarithms of constants without unit.</summary>
    /// <param name="temperatures">Temperatures, K.</param>
    /// <param name="logarithms">ln K, in the same order.</param>
    /// <param name="weighted">True to weigh by the uncertainty of each ln K.</param>
    /// <exception cref="ArgumentException">The lists differ in length, or a temperature is not above 0.</exception>
    public static Outcome<VantHoff> OfLogarithms(IReadOnlyList<double> temperatures, IReadOnlyList<Measured> logarithms, bool weighted = false)
    {
        var line = ReciprocalTemperatureLine.Of(temperatures, logarithms, weighted);
        return new(line.Value is { } found ? new(found) : null, line.Findings);
    }

    /// <summary>Standard error of ΔH° that a plan with equal u(ln K) will reach, kJ/mol: R·u/√Σ(1/T − mean)².</summary>
    /// <param name="temperatures">Temperatures, K, two or more different ones.</param>
    /// <param name="u">Standard uncertainty of each ln K; no unit.</param>
    public static double PlannedError(IReadOnlyList<double> temperatures, double u)
    {
        Values.Require(temperatures);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(u);
        double[] x = [.. temperatures.Select(t => 1 / t)];
        var spread = CentredSums.SquaresAboutMean(x);
        if (!(spread > 0))
            throw new ArgumentException("A line needs two different temperatures.", nameof(temperatures));
        return Constants.MolarGas / Kilo * u / Math.Sqrt(spread);
    }

    private static Estimate Scaled(Estimate e, double factor) => e with { Value = factor * e.Value, StandardError = Math.Abs(factor) * e.StandardError };
}
