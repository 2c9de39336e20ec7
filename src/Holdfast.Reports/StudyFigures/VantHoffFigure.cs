using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>ln K against the reciprocal temperature, with the line and its 95 % band by the scatter about it.</summary>
internal sealed class VantHoffFigure : IStudyFigure
{
    private const int Steps = 60;
    private const double Kilo = 1000;

    public int Place => 60;

    public IEnumerable<Figure> Of(Dossier dossier)
        => TemperatureStudy.Of(dossier.Evidence).Families.Where(f => f.Line is not null).Select(f => One(f, dossier));

    private static Figure One(TemperatureFamily family, Dossier dossier)
    {
        var line = family.Line!;
        double[] places = [.. line.Line.Temperatures.Select(t => Kilo / t)];
        var (low, high) = (places.Min(), places.Max());
        var band = Enumerable.Range(0, Steps + 1).Select(i => low + (high - low) * i / Steps).Select(x => (X: x, At: line.Line.At(Kilo / x))).ToArray();
        Mark[] marks = [.. line.Line.Temperatures.Zip(line.Line.Logarithms, (t, k) => new Mark(Kilo / t, k.Value) { YBar = k.U > 0 ? ErrorBar.Around(k.Value, ExpandedUncertainty.Of(k).U) : null })];
        var interval = line.WiderEnthalpy.Interval();
        return new Figure(
            StudyFigure.Id("van-t-hoff", family.Isotherms[0].Fitted.Series.Name),
            $"Constants against temperature, {family.Name}",
            string.Create(CultureInfo.InvariantCulture, $"ln K against 1000/T at {marks.Length} temperatures; the slope gives an enthalpy of {line.Enthalpy.Value:0.0} kJ/mol with a 95 % interval from {interval.Low:0.0} to {interval.High:0.0}."),
            [
                new Panel(new Axis("1000/*T*", "K^-1", "thousand over temperature"), new Axis("ln *K*", null, "logarithm of the constant"),
                [
                    new Band([.. band.Select(p => (p.X, p.At.Interval().Low, p.At.Interval().High))]) { Slot = 1 },
                    new ModelCurve([.. band.Select(p => (p.X, p.At.Value))], low, high) { Slot = 1 },
                    new Marks(marks),
                ]),
            ])
        {
            Notes =
            [
                "Marks: Langmuir constants of one isotherm each; bars: 95 % interval from the fit of that isotherm.",
                string.Create(CultureInfo.InvariantCulture, $"Band: 95 % confidence by the scatter about the line; degrees of freedom: {line.Line.Slope.DegreesOfFreedom:0}."),
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
