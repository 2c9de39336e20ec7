using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>
/// Sips, which is Hill and Koble-Corrigan in other letters: one curve, counted once. Langmuir at n = 1, a spread of sites below, an S above.
/// </summary>
/// <remarks>R. Sips 1948; A. V. Hill 1910; R. A. Koble and T. E. Corrigan 1952 (all from memory).</remarks>
public readonly struct Sips : ICurve<Sips>
{
    public static ModelCard Card { get; } = new(
        "Sips",
        "q = qm·(a·C)^n / (1 + (a·C)^n)",
        [
            new("qm", Kind.Response, "{y}", "capacity: uptake with every site filled", Above: 0),
            new("a", Kind.PerX, "1/({x})", "affinity: half the sites are filled at C = 1/a", Above: 0),
            new("n", Kind.Exponent, "", "exponent: 1 is Langmuir, below 1 a spread of sites, above 1 an S-shape", Above: 0),
        ],
        "R. Sips 1948; as Hill 1910 and Koble-Corrigan 1952; from memory",
        "No Henry limit unless n = 1. Needs at least seven levels. An exponent whose interval contains 1 does not show a spread of sites; "
            + "one above 1 does not show cooperation: precipitation or a ligand in solution bend the same way.")
    {
        Aliases = ["Hill", "Koble-Corrigan", "Langmuir-Freundlich"],
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var reduced = p[1] * x;
        if (reduced.Value <= 1)
        {
            var power = T.Pow(reduced, p[2]);
            return p[0] * power / (1 + power);
        }

        // The same curve from the other side, so that a huge (a·C)^n cannot overflow.
        return p[0] / (1 + T.Pow(reduced, -p[2]));
    }

    /// <summary>Hill's constant KD = a^(−n), in the unit of concentration to the power n: q = qm·C^n / (KD + C^n).</summary>
    /// <param name="a">Affinity, one over the unit of concentration.</param>
    /// <param name="n">Exponent, without unit.</param>
    public static T HillConstant<T>(T a, T n) where T : struct, IReal<T> => T.Pow(a, -n);

    /// <summary>The affinity a from Hill's constant.</summary>
    /// <param name="kd">Hill's constant, in the unit of concentration to the power n.</param>
    /// <param name="n">Exponent, without unit.</param>
    public static T AffinityFromHill<T>(T kd, T n) where T : struct, IReal<T> => T.Pow(kd, -1 / n);

    /// <summary>Koble and Corrigan's B = a^n: q = A·C^n / (1 + B·C^n).</summary>
    /// <param name="a">Affinity, one over the unit of concentration.</param>
    /// <param name="n">Exponent, without unit.</param>
    public static T KobleCorriganB<T>(T a, T n) where T : struct, IReal<T> => T.Pow(a, n);

    /// <summary>Koble and Corrigan's A = qm·a^n.</summary>
    /// <param name="qm">Capacity, in the unit of uptake.</param>
    /// <param name="a">Affinity, one over the unit of concentration.</param>
    /// <param name="n">Exponent, without unit.</param>
    public static T KobleCorriganA<T>(T qm, T a, T n) where T : struct, IReal<T> => qm * T.Pow(a, n);
}
