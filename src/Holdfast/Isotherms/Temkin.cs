using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Temkin: uptake in proportion to the logarithm of concentration, for middle coverages.</summary>
/// <remarks>M. I. Temkin and V. Pyzhev 1940 (from memory). B is often written RT/b; b is an energy only if q is a coverage.</remarks>
public readonly struct Temkin : ICurve<Temkin>
{
    public static ModelCard Card { get; } = new(
        "Temkin",
        "q = B·ln(A·C)",
        [
            new("B", Kind.Response, "{y}", "rise of uptake for each e-fold of concentration", Above: 0),
            new("A", Kind.PerX, "1/({x})", "one over the concentration at which the curve crosses zero", Above: 0),
        ],
        "M. I. Temkin and V. Pyzhev 1940, from memory",
        "Middle coverage only: negative below C = 1/A, without limit above. B is no heat of adsorption in the units of the data. "
            + "A close fit does not show that the heat falls with coverage.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * T.Log(p[1] * x);

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => lowestX * p[1] >= 1
            ? []
            : [Finding.Of("HF-474", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"Temkin gives negative uptake {(double.IsFinite(1 / p[1]) ? $"below C = {1 / p[1]:G4}" : "at every concentration")}, and the data start at {lowestX:G4}. Use another curve or only higher concentrations."))];
}
