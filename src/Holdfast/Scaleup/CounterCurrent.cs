using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.Scaleup;

/// <summary>Two stirred tanks with the sorbent against the water: fresh sorbent polishes in the second stage, then loads up in the first.</summary>
/// <param name="Between">Concentration between the stages, in the isotherm's unit.</param>
/// <param name="Dose">Dose, in (unit of C)/(unit of q).</param>
public sealed record CounterCurrent(Measured Between, Measured Dose)
{
    /// <summary>Solves (C1 − C_t)·q(C1) = (C_in − C_t)·q(C_t); the dose is (C_in − C_t)/q(C1).</summary>
    /// <param name="isotherm">A rising isotherm.</param>
    /// <param name="p">Its parameters, in the card's order.</param>
    /// <param name="inlet">Inlet concentration, in the isotherm's unit.</param>
    /// <param name="target">Target concentration, in the same unit, above 0 and below the inlet.</param>
    /// <remarks>The root is found in plain numbers; one Newton step in measured numbers carries the covariance to first order.</remarks>
    public static CounterCurrent Of(Model isotherm, ReadOnlySpan<Measured> p, Measured inlet, double target)
    {
        Stages.Require(isotherm, inlet, target);
        double[] plain = Stages.Plain(p);
        var wanted = (inlet.Value - target) * isotherm.Value(target, plain);
        var root = Root.Of(c => (c - target) * isotherm.Value(c, plain) - wanted, target, inlet.Value);
        var slope = isotherm.Value(root, plain) + (root - target) * isotherm.SlopeAt(root, plain);
        var defect = (root - target) * isotherm.Value((Measured)root, p) - (inlet - target) * isotherm.Value((Measured)target, p);
        var between = root - defect / slope;
        return new(between, (inlet - target) / isotherm.Value(between, p));
    }
}
