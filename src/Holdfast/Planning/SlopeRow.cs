using Holdfast.Fitting;

namespace Holdfast.Planning;

/// <summary>
/// The row of slopes that a planned reading adds to <see cref="Information"/>: ∂y/∂θ over the reading's standard uncertainty, as a function of its level.
/// </summary>
public static class SlopeRow
{
    /// <summary>For a curve read directly: uptake at a concentration or a time.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="parameters">Parameters supposed, in its card's order.</param>
    /// <param name="uncertainty">Standard uncertainty of a reading at an abscissa, in the unit of y, above 0.</param>
    public static Func<double, double[]> OfCurve(Model curve, IReadOnlyList<double> parameters, Func<double, double> uncertainty)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(uncertainty);
        double[] p = [.. parameters];
        return x =>
        {
            var row = new double[p.Length];
            curve.Value(x, p, row);
            return Over(row, uncertainty(x));
        };
    }

    /// <summary>For a batch vessel, whose level is the starting concentration: the concentration left follows from the mass balance.</summary>
    /// <remarks>The bench sets C0, not Ce: ∂Ce/∂θ = −s·(∂q/∂θ)/(1 + s·q′(Ce)).</remarks>
    /// <param name="isotherm">The isotherm.</param>
    /// <param name="parameters">Parameters supposed, in its card's order.</param>
    /// <param name="dose">Sorbent per volume, above 0, in (unit of C)/(unit of q).</param>
    /// <param name="uncertainty">Standard uncertainty of the concentration left, from C0 and Ce, in their unit, above 0.</param>
    public static Func<double, double[]> OfBatch(Model isotherm, IReadOnlyList<double> parameters, double dose, Func<double, double, double> uncertainty)
    {
        ArgumentNullException.ThrowIfNull(isotherm);
        ArgumentNullException.ThrowIfNull(uncertainty);
        double[] p = [.. parameters];
        return c0 =>
        {
            var row = new double[p.Length];
            var ce = isotherm.ConcentrationLeft(c0, dose, p, row);
            return Over(row, uncertainty(c0, ce));
        };
    }

    private static double[] Over(double[] row, double u)
    {
        if (!(u > 0))
            throw new ArgumentOutOfRangeException(nameof(u), u, "An uncertainty is above 0.");
        for (var i = 0; i < row.Length; i++)
            row[i] /= u;
        return row;
    }
}
