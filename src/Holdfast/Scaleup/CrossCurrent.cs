using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.Scaleup;

/// <summary>Two stirred tanks, each with fresh sorbent, split so that the total is least.</summary>
/// <param name="Between">Concentration between the stages at the best split, in the isotherm's unit.</param>
/// <param name="First">Dose of the first stage, in (unit of C)/(unit of q).</param>
/// <param name="Second">Dose of the second stage, in the same unit.</param>
/// <param name="Total">Total dose, in the same unit.</param>
public sealed record CrossCurrent(double Between, Measured First, Measured Second, Measured Total)
{
    /// <summary>
    /// The best split: (C_in − C1)/q(C1) + (C1 − C_t)/q(C_t) is least where its slope in C1 is 0. At the minimum the split's own uncertainty does not
    /// matter to first order, so that the doses carry that of the isotherm and the inlet.
    /// </summary>
    /// <param name="isotherm">A rising isotherm.</param>
    /// <param name="p">Its parameters, in the card's order.</param>
    /// <param name="inlet">Inlet concentration, in the isotherm's unit.</param>
    /// <param name="target">Target concentration, in the same unit, above 0 and below the inlet.</param>
    public static CrossCurrent Of(Model isotherm, ReadOnlySpan<Measured> p, Measured inlet, double target)
    {
        Stages.Require(isotherm, inlet, target);
        double[] plain = Stages.Plain(p);
        var atTarget = isotherm.Value(target, plain);
        var between = Root.Of(c =>
        {
            var q = isotherm.Value(c, plain);
            return 1 / atTarget - 1 / q - (inlet.Value - c) * isotherm.SlopeAt(c, plain) / (q * q);
        }, target, inlet.Value);
        var first = (inlet - between) / isotherm.Value((Measured)between, p);
        var second = (between - target) / isotherm.Value((Measured)target, p);
        return new(between, first, second, first + second);
    }
}
