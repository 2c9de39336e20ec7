using Holdfast.Reports.Figures;
using Holdfast.Thermodynamics;

namespace Holdfast.Reports.StudyFigures;

/// <summary>A logarithm against the reciprocal temperature: the constants with their bars, the line and its 95 % band by the scatter about it.</summary>
internal static class ReciprocalTemperaturePanel
{
    private const int Steps = 60;
    private const double Kilo = 1000;

    /// <summary>The panel of one line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="y">The axis of the logarithm.</param>
    public static Panel Of(ReciprocalTemperatureLine line, Axis y)
    {
        Mark[] marks = [.. line.Temperatures.Zip(line.Logarithms, (t, k) => new Mark(Kilo / t, k.Value) { YBar = StudyFigure.Bar(k) })];
        var (low, high) = (marks.Min(m => m.X), marks.Max(m => m.X));
        var band = Enumerable.Range(0, Steps + 1).Select(i => low + (high - low) * i / Steps).Select(x => (X: x, At: line.At(Kilo / x))).ToArray();
        return new Panel(new Axis("1000/*T*", "K^-1", "thousand over temperature"), y,
        [
            new Band([.. band.Select(p => (p.X, p.At.Interval().Low, p.At.Interval().High))]) { Slot = 1 },
            new ModelCurve([.. band.Select(p => (p.X, p.At.Value))], low, high) { Slot = 1 },
            new Marks(marks),
        ]);
    }
}
