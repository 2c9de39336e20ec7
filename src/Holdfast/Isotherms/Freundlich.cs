using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Freundlich: a power law, without capacity and without a straight start.</summary>
/// <remarks>H. Freundlich 1906 (from memory).</remarks>
public readonly struct Freundlich : ICurve<Freundlich>
{
    public static ModelCard Card { get; } = new(
        "Freundlich",
        "q = KF·C^(1/n)",
        [
            new("KF", Kind.Response, "{y}·({x})^(−1/n)", "uptake at C = 1 in the unit of the data; its unit depends on n", Above: 0),
            new("n", Kind.Exponent, "", "exponent: above 1 the curve bends down, below 1 it bends up", Above: 0),
        ],
        "H. Freundlich 1906, from memory",
        "Between the measured concentrations only: it has no capacity and no Henry limit. KF values compare only at equal n and unit. "
            + "A close fit does not show a spread of site energies.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * T.Pow(x, 1 / p[1]);

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => p[1] >= 1
            ? []
            : [Finding.Of("HF-478", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"Freundlich curves upward (1/n = {1 / p[1]:0.00} > 1): not favourable. Check for precipitation, partition or a wrong blank."))];
}
