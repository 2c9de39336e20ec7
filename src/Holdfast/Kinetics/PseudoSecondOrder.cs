using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Pseudo-second-order uptake.</summary>
/// <remarks>Y. S. Ho and G. McKay, Process Biochemistry 34 (1999) 451 (from memory).</remarks>
public readonly struct PseudoSecondOrder : ICurve<PseudoSecondOrder>
{
    public static ModelCard Card { get; } = new(
        "Pseudo-second-order",
        "q = k2·qe²·t / (1 + k2·qe·t)",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("k2", Kind.PerXAndResponse, "1/({y}·{x})", "rate constant; it changes with the starting concentration", Above: 0),
        ],
        "Y. S. Ho and G. McKay, Process Biochem. 34 (1999) 451, from memory",
        "Compare h = k2·qe² or k2·qe, not k2. Diffusion and first-order data give this curve too: it shows no chemisorption. "
            + "The line of t/q on t is straight by construction, since t stands on both axes.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var reduced = p[1] * p[0] * x;
        return p[0] * reduced / (1 + reduced);
    }

    /// <summary>The scan runs over k2·qe, which is one over a time.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = shapes[0] / c;
    }

    /// <summary>Initial rate h = k2·qe², uptake per time.</summary>
    /// <param name="qe">Uptake at equilibrium, in the unit of uptake.</param>
    /// <param name="k2">Rate constant, one over uptake and time.</param>
    public static T InitialRate<T>(T qe, T k2) where T : struct, IReal<T> => k2 * qe * qe;

    /// <summary>Time to half the uptake, 1 / (k2·qe).</summary>
    /// <param name="qe">Uptake at equilibrium, in the unit of uptake.</param>
    /// <param name="k2">Rate constant, one over uptake and time.</param>
    public static T HalfTime<T>(T qe, T k2) where T : struct, IReal<T> => 1 / (k2 * qe);
}
