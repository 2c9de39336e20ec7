namespace Holdfast.Studies;

/// <summary>
/// How far two recorded settings may lie apart and still count as one: weighed masses, set pH and thermostats differ a little between vessels of one level.
/// Written once for the whole house; common practice.
/// </summary>
public static class Tolerances
{
    /// <summary>Two pH that count as one, at start or end.</summary>
    public const double Ph = 0.25;

    /// <summary>Two temperatures that count as one, K.</summary>
    public const double Temperature = 2;

    /// <summary>Two start concentrations that count as one, as a share of the first; no unit.</summary>
    public const double Start = 0.05;

    /// <summary>Two doses that count as one, as a share of the first; no unit.</summary>
    public const double Dose = 0.06;

    /// <summary>Readings of one solution, or what was read of it and what it was made up to, as a share of the larger; beyond it they are two solutions, or a slip. No unit.</summary>
    public const double Solution = 0.15;

    // A difference that is the tolerance to the last bit is inside it: 6.25 and 6 are one pH, however the subtraction rounds.
    private const double Rounding = 1e-9;

    /// <summary>Whether two pH count as one.</summary>
    /// <param name="a">One pH.</param>
    /// <param name="b">The other.</param>
    public static bool SamePh(double a, double b) => Math.Abs(a - b) <= Ph + Rounding;

    /// <summary>Whether two temperatures count as one.</summary>
    /// <param name="a">One temperature, K.</param>
    /// <param name="b">The other, K.</param>
    public static bool SameTemperature(double a, double b) => Math.Abs(a - b) <= Temperature + Rounding;

    /// <summary>Whether two start concentrations count as one.</summary>
    /// <param name="a">The first, above 0.</param>
    /// <param name="b">The other, in the same unit.</param>
    public static bool SameStart(double a, double b) => Math.Abs(a - b) <= (Start + Rounding) * Math.Abs(a);

    /// <summary>Whether levels up to one concentration speak of a range up to another: it is reached, or missed by no more than two start concentrations that count as one.</summary>
    /// <param name="highest">Highest level tested.</param>
    /// <param name="wanted">Where the range ends, in the same unit.</param>
    public static bool Reaches(double highest, double wanted) => highest >= (1 - Start - Rounding) * wanted;

    /// <summary>Whether two doses count as one.</summary>
    /// <param name="a">The first, above 0.</param>
    /// <param name="b">The other, in the same unit.</param>
    public static bool SameDose(double a, double b) => Math.Abs(a - b) <= (Dose + Rounding) * Math.Abs(a);

    /// <summary>Whether two concentrations may be of one solution.</summary>
    /// <param name="a">One, above 0.</param>
    /// <param name="b">The other, in the same unit.</param>
    public static bool SameSolution(double a, double b) => Math.Abs(a - b) <= (Solution + Rounding) * Math.Max(Math.Abs(a), Math.Abs(b));
}
