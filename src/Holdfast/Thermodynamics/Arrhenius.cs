using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Thermodynamics;

/// <summary>Activation energy from rate constants at several temperatures: ln k = ln A − Ea/(RT).</summary>
/// <remarks>
/// S. Arrhenius 1889 (from memory). The same curve at every temperature; the second-order constant contains the plateau, so that Ea of k2, of the
/// initial rate and of k2·qe differ: say which was taken.
/// </remarks>
/// <param name="Line">The line of ln k on 1/T.</param>
public sealed record Arrhenius(ReciprocalTemperatureLine Line)
{
    /// <summary>Below this diffusion in water could set the pace, kJ/mol; from memory, a hint and no proof.</summary>
    public const double DiffusionBelow = 20;

    /// <summary>Above this a surface step could set the pace, kJ/mol; from memory, a hint and no proof.</summary>
    public const double SurfaceStepAbove = 40;

    /// <summary>Ea, kJ/mol, by the scatter about the line.</summary>
    public Estimate ActivationEnergy => Line.Slope with { Value = -Factor * Line.Slope.Value, StandardError = Factor * Line.Slope.StandardError };

    /// <summary>Ea, kJ/mol, with the uncertainty that each rate constant brought in.</summary>
    public Measured PropagatedActivationEnergy => -Factor * Line.PropagatedSlope;

    /// <summary>Ea, kJ/mol, by whichever way leaves the wider 95 % interval; see <see cref="ReciprocalTemperatureLine.WiderSlope"/>.</summary>
    public Estimate WiderActivationEnergy => Line.WiderSlope with { Value = -Factor * Line.WiderSlope.Value, StandardError = Factor * Line.WiderSlope.StandardError };

    /// <summary>ln A, in the logarithm of the unit of k. It lies far outside the data: an extrapolation to infinite temperature.</summary>
    public Estimate LogPreFactor => Line.Intercept;

    /// <summary>The line through rate constants of one kind and one unit.</summary>
    /// <param name="temperatures">Temperatures, K.</param>
    /// <param name="constants">Rate constants in one unit, in the same order, above 0.</param>
    public static Outcome<Arrhenius> Of(IReadOnlyList<double> temperatures, IReadOnlyList<Measured> constants)
    {
        ArgumentNullException.ThrowIfNull(constants);
        var line = ReciprocalTemperatureLine.Of(temperatures, [.. constants.Select(k => k.Value > 0 ? Measured.Log(k) : double.NaN)]);
        return new(line.Value is { } found ? new(found) : null, line.Findings);
    }

    private static double Factor => Constants.MolarGas / 1000;
}
