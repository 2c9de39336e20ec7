using Holdfast.Claims.Analyses;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.HeatingCurves;

/// <summary>Trails of heating curves: "loss:M-0001@30-200" and "residue:M-0001".</summary>
internal sealed class HeatingNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence) => HeatingStudy.Of(evidence).Curves.SelectMany(Of);

    private static IEnumerable<NumberTrail> Of(PowderHeated heated)
    {
        var from = heated.Measurement.Origin.ToString();
        TrailInput At(double t) => new(System.FormattableString.Invariant($"m({t:0} °C)"), heated.Curve.At(t), "%", from);
        foreach (var step in heated.Steps)
            yield return new(heated.Address(step), $"loss of {heated.Powder} in a step ({heated.Measurement.Id})", heated.Loss(step), "%", "loss = m(from) − m(to), per cent of the first mass", [At(step.From), At(step.To)], []) { Samples = [heated.Measurement.Id] };
        yield return new(heated.Residue, $"what is left of {heated.Powder} ({heated.Measurement.Id})", heated.Left, "%", "residue = m(end), per cent of the first mass", [At(heated.Curve.Temperatures[0]), At(heated.Curve.Temperatures[^1])], []) { Samples = [heated.Measurement.Id] };
    }
}
