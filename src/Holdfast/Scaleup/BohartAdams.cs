using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Scaleup;

/// <summary>Bohart and Adams in full: C/C0 = e^(kt)/(e^(kt) + e^(kτ) − 1), which starts at e^(−kτ) exactly. It becomes the logistic when k·τ is large.</summary>
/// <remarks>G. S. Bohart and E. Q. Adams 1920 (from memory). Written as 1/(1 + e^(k(τ−t)) − e^(−kt)), which does not overflow.</remarks>
public readonly struct BohartAdams : ICurve<BohartAdams>
{
    public static ModelCard Card { get; } = new(
        "Bohart-Adams, full",
        "C/C0 = exp(k·t) / (exp(k·t) + exp(k·τ) − 1)",
        [
            new("k", Kind.PerX, "1/({x})", "rate constant times inlet concentration", Above: 0),
            new("τ", Kind.X, "{x}", "time at which the bed would be full without a front", Above: 0),
        ],
        "G. S. Bohart and E. Q. Adams 1920, from memory",
        "Irreversible uptake, plug flow. Where k·τ is above 4.6 it cannot be told from the logistic.")
    {
        Abscissa = "t",
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        => 1 / (1 + T.Exp(p[0] * (p[1] - x)) - T.Exp(-(p[0] * x)));

    /// <summary>The plateau is the inlet itself and not free, so that the scan searches both parameters.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX, Kind.X];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p) => shapes.CopyTo(p);
}
