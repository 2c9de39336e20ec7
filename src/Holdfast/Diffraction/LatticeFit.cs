using System.Collections.Immutable;
using Holdfast.Fitting;
using Holdfast.Fitting.Solving;

namespace Holdfast.Diffraction;

/// <summary>A cell refined from the places of indexed lines under one model of the shift.</summary>
/// <param name="System">Crystal system: which lengths and angles are free.</param>
/// <param name="Shift">Model of the shift.</param>
/// <param name="Cell">Refined cell.</param>
/// <param name="Parameters">Its free lengths and angles with standard uncertainties: √diag((J′WJ)⁻¹·s²).</param>
/// <param name="ShiftAmount">The shift, degrees of 2θ (for a displacement the amplitude D of D·cos θ); null without one.</param>
/// <param name="Scatter">Scatter of the lines about the fit, √(RSS/(n − p)), degrees of 2θ.</param>
/// <param name="DegreesOfFreedom">Lines less parameters.</param>
/// <param name="Residuals">Measured less computed 2θ of each line, degrees.</param>
/// <remarks>
/// Minimises Σ(2θ − 2θ(cell, shift))²/(u² + τ²). τ is the scatter that profile uncertainties do not explain (steps of the goniometer, asymmetry), chosen so that
/// χ²ᵣ is 1; without uncertainties all lines weigh the same.
/// </remarks>
public sealed record LatticeFit(
    CrystalSystem System, ShiftModel Shift, UnitCell Cell, ImmutableArray<LatticeParameter> Parameters, LatticeParameter? ShiftAmount,
    double Scatter, int DegreesOfFreedom, ImmutableArray<double> Residuals)
{
    private const int MostSteps = 100;
    private const int ScatterSteps = 60;

    /// <summary>Number of free lengths and angles of a system.</summary>
    /// <param name="system">The system.</param>
    public static int FreeParameters(CrystalSystem system) => Symbols(system).Length;

    /// <summary>Refines.</summary>
    /// <param name="lines">Indexed lines, more than there are parameters.</param>
    /// <param name="system">System whose conditions hold.</param>
    /// <param name="start">A cell near the answer.</param>
    /// <param name="wavelength">Wavelength of the places, ångström.</param>
    /// <param name="shift">Model of the shift.</param>
    /// <returns>The refined cell, or null when the lines cannot tell all parameters (too few, or all of one kind such as 00l).</returns>
    public static LatticeFit? Of(IReadOnlyList<IndexedLine> lines, CrystalSystem system, UnitCell start, double wavelength, ShiftModel shift)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(start);
        var symbols = Symbols(system);
        var count = symbols.Length + (shift == ShiftModel.None ? 0 : 1);
        if (lines.Count <= count)
            return null;
        double[] theta = [.. Free(start, system), .. shift == ShiftModel.None ? Array.Empty<double>() : [0.0]];
        double[] y = [.. lines.Select(l => l.TwoTheta)];
        double[] u2 = [.. lines.Select(l => l.U * l.U)];
        var known = u2.All(u => u > 0);
        var residuals = new Places(lines, system, wavelength, shift);
        var coordinates = new Coordinates([.. theta.Select(_ => double.NegativeInfinity)], [.. theta.Select(_ => double.PositiveInfinity)]);
        var memory = new Workspace(y.Length, count);
        var extra = 0.0;
        LevenbergMarquardt.End Run(double tau2)
            => LevenbergMarquardt.Run(residuals, coordinates, y, [.. u2.Select(u => known ? 1 / (u + tau2) : 1)], theta, 0, MostSteps, memory);
        var end = Run(0);
        var freedom = y.Length - count;
        if (known && end.S > freedom)
        {
            // χ² falls as τ grows: halving between 0 and what alone would explain all scatter.
            var (low, high) = (0.0, y.Length * Plain(memory, u2, 0) / freedom + u2.Max());
            for (var k = 0; k < ScatterSteps && high - low > 1e-6 * high; k++)
            {
                extra = (low + high) / 2;
                end = Run(extra);
                (low, high) = end.S > freedom ? (extra, high) : (low, extra);
            }
        }

        var free = LevenbergMarquardt.Factorise(coordinates, theta, 0, memory);
        if (!double.IsFinite(end.S) || end.Stop is StopReason.Refused || free < count || IsSingular(memory, count))
            return null;
        var covariance = Householder.Inverse(memory.Factor, y.Length, count);
        var scale = known ? Math.Max(1, end.S / freedom) : end.S / freedom;
        double U(int j) => Math.Sqrt(covariance[j, j] * scale);
        var cell = CellOf(theta, system);
        if (!cell.IsSound)
            return null;
        ImmutableArray<double> left = [.. memory.Residual.Select((r, i) => r / memory.RootWeight[i])];
        return new(system, shift, cell, [.. symbols.Select((s, j) => new LatticeParameter(s, theta[j], U(j), s.Length == 1 && char.IsAsciiLetter(s[0]) ? "Å" : "°"))],
            shift == ShiftModel.None ? null : new(shift == ShiftModel.Zero ? "zero" : "D", theta[^1], U(count - 1), "°"),
            Math.Sqrt(left.Sum(r => r * r) / freedom), freedom, left);
    }

    /// <summary>Computed 2θ of a set of planes under this fit, shift included, degrees; null where it cannot diffract.</summary>
    /// <param name="planes">Indices.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public double? Place(Miller planes, double wavelength)
        => Bragg.TwoTheta(Cell.Spacing(planes), wavelength) is { } at ? at + Moves(Shift, at) * (ShiftAmount?.Value ?? 0) : null;

    private static string[] Symbols(CrystalSystem system) => system switch
    {
        CrystalSystem.Cubic => ["a"],
        CrystalSystem.Tetragonal or CrystalSystem.Hexagonal => ["a", "c"],
        CrystalSystem.Rhombohedral => ["a", "α"],
        CrystalSystem.Orthorhombic => ["a", "b", "c"],
        CrystalSystem.Monoclinic => ["a", "b", "c", "β"],
        _ => ["a", "b", "c", "α", "β", "γ"],
    };

    private static double[] Free(UnitCell c, CrystalSystem system) => system switch
    {
        CrystalSystem.Cubic => [c.A],
        CrystalSystem.Tetragonal or CrystalSystem.Hexagonal => [c.A, c.C],
        CrystalSystem.Rhombohedral => [c.A, c.Alpha],
        CrystalSystem.Orthorhombic => [c.A, c.B, c.C],
        CrystalSystem.Monoclinic => [c.A, c.B, c.C, c.Beta],
        _ => [c.A, c.B, c.C, c.Alpha, c.Beta, c.Gamma],
    };

    private static UnitCell CellOf(ReadOnlySpan<double> p, CrystalSystem system) => system switch
    {
        CrystalSystem.Cubic => new(p[0], p[0], p[0], 90, 90, 90),
        CrystalSystem.Tetragonal => new(p[0], p[0], p[1], 90, 90, 90),
        CrystalSystem.Hexagonal => new(p[0], p[0], p[1], 90, 90, 120),
        CrystalSystem.Rhombohedral => new(p[0], p[0], p[0], p[1], p[1], p[1]),
        CrystalSystem.Orthorhombic => new(p[0], p[1], p[2], 90, 90, 90),
        CrystalSystem.Monoclinic => new(p[0], p[1], p[2], 90, p[3], 90),
        _ => new(p[0], p[1], p[2], p[3], p[4], p[5]),
    };

    private static double Moves(ShiftModel shift, double twoTheta) => shift switch
    {
        ShiftModel.Zero => 1,
        ShiftModel.Displacement => Math.Cos(Bragg.Theta(twoTheta)),
        _ => 0,
    };

    // Largest squared residual in degrees.
    private static double Plain(Workspace memory, double[] u2, double tau2)
        => memory.Residual.Select((r, i) => r * r * (u2[i] + tau2)).Max();

    private static bool IsSingular(Workspace memory, int count)
    {
        double Diagonal(int j) => Math.Abs(memory.Factor[j * memory.Rows + j]) / Math.Sqrt(memory.Scale[j] + double.Epsilon);
        return Enumerable.Range(0, count).Any(j => !(Diagonal(j) > 1e-9));
    }

    private readonly struct Places(IReadOnlyList<IndexedLine> lines, CrystalSystem system, double wavelength, ShiftModel shift) : IResiduals
    {
        // Central differences: the places are smooth, and the step leaves nine digits.
        private const double RelativeStep = 1e-5;

        public double Evaluate(ReadOnlySpan<double> theta, ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight, Span<double> residual, Span<double> jacobian)
        {
            var n = y.Length;
            var sum = 0.0;
            Span<double> at = stackalloc double[n], up = stackalloc double[n], down = stackalloc double[n];
            double[] moved = [.. theta];
            if (!Compute(moved, at))
                return double.NaN;
            for (var i = 0; i < n; i++)
            {
                residual[i] = rootWeight[i] * (y[i] - at[i]);
                sum += residual[i] * residual[i];
            }

            for (var j = 0; j < theta.Length; j++)
            {
                var step = RelativeStep * Math.Max(Math.Abs(theta[j]), 1);
                moved[j] = theta[j] + step;
                var sound = Compute(moved, up);
                moved[j] = theta[j] - step;
                if (!sound || !Compute(moved, down))
                    return double.NaN;
                moved[j] = theta[j];
                for (var i = 0; i < n; i++)
                    jacobian[j * n + i] = rootWeight[i] * (up[i] - down[i]) / (2 * step);
            }

            return sum;
        }

        public double Size(ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight)
        {
            double sum = 0;
            for (var i = 0; i < y.Length; i++)
                sum += rootWeight[i] * rootWeight[i] * y[i] * y[i];
            return sum;
        }

        private bool Compute(double[] theta, Span<double> places)
        {
            var cell = CellOf(theta, system);
            if (!cell.IsSound)
                return false;
            for (var i = 0; i < places.Length; i++)
            {
                if (Bragg.TwoTheta(cell.Spacing(lines[i].Planes), wavelength) is not { } at)
                    return false;
                places[i] = at + (shift == ShiftModel.None ? 0 : theta[^1] * Moves(shift, at));
            }

            return true;
        }
    }
}
