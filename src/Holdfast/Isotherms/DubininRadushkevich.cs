using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>
/// Dubinin-Radushkevich over the relative concentration x = C/Cs, Cs being the solubility. This is the only form offered: the usual
/// ε = RT·ln(1 + 1/C) takes the logarithm of a number with a unit, and then E follows the unit chosen.
/// </summary>
/// <remarks>M. M. Dubinin and L. V. Radushkevich 1947 (from memory). With the potential ε = RT·ln(Cs/C): q = qs·exp(−k·ε²), so that b = k·(RT)².</remarks>
public readonly struct DubininRadushkevich : ICurve<DubininRadushkevich>
{
    // R in kJ/(mol·K).
    private const double GasConstant = Constants.MolarGas / 1000;

    public static ModelCard Card { get; } = new(
        "Dubinin-Radushkevich",
        "q = qs·exp(−b·ln²(C/Cs))",
        [
            new("qs", Kind.Response, "{y}", "uptake at the solubility", Above: 0),
            new("b", Kind.Other, "", "width: b = k·(RT)², with k in mol²/kJ²", Above: 0),
        ],
        "M. M. Dubinin and L. V. Radushkevich 1947, from memory",
        "Needs the solubility Cs of the same species at the same pH and temperature, with C below Cs. "
            + "E = RT/√(2b) moves with the chosen Cs and shows no mechanism.")
    {
        Abscissa = "C/Cs",
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        if (x.Value <= 0)
            return 0;
        var log = T.Log(x);
        return p[0] * T.Exp(-p[1] * log * log);
    }

    /// <summary>The constant k = b/(RT)² in mol²/kJ².</summary>
    /// <param name="b">Fitted width, without unit.</param>
    /// <param name="temperature">Temperature, K.</param>
    public static T Constant<T>(T b, double temperature) where T : struct, IReal<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        var rt = GasConstant * temperature;
        return b / (rt * rt);
    }

    /// <summary>The "mean free energy" E = RT/√(2b) in kJ/mol. It follows the choice of Cs and shows no mechanism.</summary>
    /// <param name="b">Fitted width, without unit.</param>
    /// <param name="temperature">Temperature, K.</param>
    public static T Energy<T>(T b, double temperature) where T : struct, IReal<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        return GasConstant * temperature / T.Sqrt(2 * b);
    }
}
