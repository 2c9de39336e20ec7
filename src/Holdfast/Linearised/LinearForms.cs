using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Linearised;

/// <summary>The linear forms that people report, one row each.</summary>
public static class LinearForms
{
    private const string BothAxes = "the same reading stands on both axes, which makes a line by construction";
    private const string LogError = "logarithms turn a constant error into one that grows towards low uptake";

    /// <summary>Every form.</summary>
    public static IReadOnlyList<LinearForm> All { get; } =
    [
        new(Langmuir.Card.Name, "C", "C/q", null, "C stands on both axes; low concentrations hardly count",
            (c, _, _) => c, (c, q, _) => c / q, (l, _) => [1 / l.Slope, l.Slope / l.Intercept]),
        new(Langmuir.Card.Name, "1/C", "1/q", null, "the lowest points, the worst known, decide the line",
            (c, _, _) => 1 / c, (_, q, _) => 1 / q, (l, _) => [1 / l.Intercept, l.Intercept / l.Slope]),
        new(Langmuir.Card.Name, "q/C", "q", null, BothAxes, (c, q, _) => q / c, (_, q, _) => q, (l, _) => [l.Intercept, -1 / l.Slope]),
        new(Langmuir.Card.Name, "q", "q/C", null, BothAxes, (_, q, _) => q, (c, q, _) => q / c, (l, _) => [-l.Intercept / l.Slope, -l.Slope]),
        new(Freundlich.Card.Name, "ln C", "ln q", null, LogError,
            (c, _, _) => Math.Log(c), (_, q, _) => Math.Log(q), (l, _) => [Math.Exp(l.Intercept), 1 / l.Slope]),
        new(Temkin.Card.Name, "ln C", "q", null, "none for exact C: this form is the curve itself",
            (c, _, _) => Math.Log(c), (_, q, _) => q, (l, _) => [l.Slope, Math.Exp(l.Intercept / l.Slope)]),
        new(DubininRadushkevich.Card.Name, "ln²(C/Cs)", "ln q", null, LogError,
            (x, _, _) => x < 1 ? Math.Pow(Math.Log(x), 2) : double.NaN, (_, q, _) => Math.Log(q), (l, _) => [Math.Exp(l.Intercept), -l.Slope]),
        new(Sips.Card.Name, "ln C", "ln(q/(qm − q))", "qm", "needs qm first and drops every reading above it",
            (c, _, _) => Math.Log(c), (_, q, qm) => Math.Log(q / (qm - q)), (l, qm) => [qm, Math.Exp(l.Intercept / l.Slope), l.Slope]),
        new(RedlichPeterson.Card.Name, "ln C", "ln(KR·C/q − 1)", "KR", "needs KR first and drops every reading above the starting slope",
            (c, _, _) => Math.Log(c), (c, q, kr) => Math.Log(kr * c / q - 1), (l, kr) => [kr, Math.Exp(l.Intercept), l.Slope]),
        new(LiquidBet.Card.Name, "C", "C/(q·(1 − KL·C))", "KL", "needs KL first; " + BothAxes,
            (c, _, _) => c, (c, q, kl) => kl * c < 1 ? c / (q * (1 - kl * c)) : double.NaN,

            // C/(q(1 − KL·C)) = 1/(qm·KS) + C·(KS − KL)/(qm·KS)
            (l, kl) => [1 / (l.Slope + kl * l.Intercept), l.Slope / l.Intercept + kl, kl]),
        new(PseudoFirstOrder.Card.Name, "t", "ln(qe − q)", "qe", "needs qe first, drops late readings and weighs those near qe wildly",
            (t, _, _) => t, (_, q, qe) => Math.Log(qe - q), (l, qe) => [qe, -l.Slope]),
        new(PseudoSecondOrder.Card.Name, "t", "t/q", null, "t stands on both axes: constant uptake with 5 % scatter gives R² near 0.997",
            (t, _, _) => t, (t, q, _) => t > 0 ? t / q : double.NaN, (l, _) => [1 / l.Slope, l.Slope * l.Slope / l.Intercept]),
        new(Elovich.Card.Name, "ln t", "q", null, "holds only where α·β·t is far above 1",
            (t, _, _) => Math.Log(t), (_, q, _) => q, (l, _) => [Math.Exp(l.Intercept / l.Slope) * l.Slope, 1 / l.Slope]),
        new(Avrami.Card.Name, "ln t", "ln(−ln(1 − q/qe))", "qe", "needs qe first, drops late readings",
            (t, _, _) => Math.Log(t), (_, q, qe) => Math.Log(-Math.Log(1 - q / qe)), (l, qe) => [qe, Math.Exp(l.Intercept / l.Slope), l.Slope]),
        new(WeberMorris.Card.Name, "√t", "q", null, "none: this form is the curve itself",
            (t, _, _) => Math.Sqrt(t), (_, q, _) => q, (l, _) => [l.Slope, l.Intercept]),
    ];

    /// <summary>The forms of one curve.</summary>
    /// <param name="curve">Name on the curve's card.</param>
    public static IEnumerable<LinearForm> Of(string curve) => All.Where(f => string.Equals(f.Curve, curve, StringComparison.Ordinal));
}
