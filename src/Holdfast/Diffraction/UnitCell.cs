namespace Holdfast.Diffraction;

/// <summary>A unit cell.</summary>
/// <param name="A">a, ångström.</param>
/// <param name="B">b, ångström.</param>
/// <param name="C">c, ångström.</param>
/// <param name="Alpha">α, degrees.</param>
/// <param name="Beta">β, degrees.</param>
/// <param name="Gamma">γ, degrees.</param>
/// <remarks>1/d² = h′G*h with G* the inverse of the metric matrix: the one formula of all seven systems (International Tables A).</remarks>
public sealed record UnitCell(double A, double B, double C, double Alpha, double Beta, double Gamma)
{
    private const double AngleTolerance = 1e-3;
    private const double LengthTolerance = 1e-5;

    /// <summary>Volume, cubic ångström; not a number when the angles enclose no body.</summary>
    public double Volume
    {
        get
        {
            var (x, y, z) = Cosines();
            return A * B * C * Math.Sqrt(1 - x * x - y * y - z * z + 2 * x * y * z);
        }
    }

    /// <summary>True when lengths are above 0 and the angles enclose a body.</summary>
    public bool IsSound => A > 0 && B > 0 && C > 0 && new[] { Alpha, Beta, Gamma }.All(a => a is > 0 and < 180) && Volume is > 0 and < double.PositiveInfinity;

    /// <summary>The most symmetric system the cell fits by its numbers alone; lengths to 1 in 100,000, angles to 0.001°.</summary>
    public CrystalSystem System
    {
        get
        {
            bool Right(double angle) => Math.Abs(angle - 90) < AngleTolerance;
            bool Same(double x, double y) => Math.Abs(x - y) < LengthTolerance * x;
            return (Right(Alpha), Right(Beta), Right(Gamma)) switch
            {
                (true, true, true) => Same(A, B) ? Same(A, C) ? CrystalSystem.Cubic : CrystalSystem.Tetragonal : CrystalSystem.Orthorhombic,
                (true, true, false) when Same(A, B) && Math.Abs(Gamma - 120) < AngleTolerance => CrystalSystem.Hexagonal,
                (true, false, true) => CrystalSystem.Monoclinic,
                _ when Same(A, B) && Same(A, C) && Math.Abs(Alpha - Beta) < AngleTolerance && Math.Abs(Alpha - Gamma) < AngleTolerance => CrystalSystem.Rhombohedral,
                _ => CrystalSystem.Triclinic,
            };
        }
    }

    /// <summary>Spacing of a set of planes, ångström.</summary>
    /// <param name="planes">Indices, not all zero.</param>
    public double Spacing(Miller planes) => 1 / Math.Sqrt(InverseSquare(planes));

    /// <summary>1/d², per square ångström.</summary>
    /// <param name="planes">Indices.</param>
    public double InverseSquare(Miller planes)
    {
        var g = ReciprocalMetric();
        var (h, k, l) = planes;
        return h * h * g[0] + k * k * g[1] + l * l * g[2] + 2 * (h * k * g[3] + h * l * g[4] + k * l * g[5]);
    }

    /// <summary>G* as a*², b*², c*², a*b*cos γ*, a*c*cos β*, b*c*cos α*, per square ångström.</summary>
    internal double[] ReciprocalMetric()
    {
        var (x, y, z) = Cosines();
        var v = 1 - x * x - y * y - z * z + 2 * x * y * z;
        return
        [
            (1 - x * x) / (A * A * v), (1 - y * y) / (B * B * v), (1 - z * z) / (C * C * v),
            (x * y - z) / (A * B * v), (x * z - y) / (A * C * v), (y * z - x) / (B * C * v),
        ];
    }

    /// <summary>Squared length of a vector given in shares of the axes, square ångström.</summary>
    /// <param name="x">Share along a.</param>
    /// <param name="y">Share along b.</param>
    /// <param name="z">Share along c.</param>
    internal double SquaredLength(double x, double y, double z)
    {
        var (p, q, r) = Cosines();
        return A * A * x * x + B * B * y * y + C * C * z * z + 2 * (A * B * x * y * r + A * C * x * z * q + B * C * y * z * p);
    }

    private (double X, double Y, double Z) Cosines() => (Cosine(Alpha), Cosine(Beta), Cosine(Gamma));

    // Exact at 90° and 120°, so that symmetric families have exactly one spacing.
    private static double Cosine(double degrees) => degrees == 90 ? 0 : degrees == 120 ? -0.5 : Math.Cos(degrees * Math.PI / 180);
}
