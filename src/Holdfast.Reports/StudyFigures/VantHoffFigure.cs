using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>ln K against the reciprocal temperature, with the line and its 95 % band by the scatter about it.</summary>
internal sealed class VantHoffFigure : IStudyFigure
{
    public int Place => 60;

    public IEnumerable<Figure> Of(Dossier dossier)
        => TemperatureStudy.Of(dossier.Evidence).Families.Where(f => f.Line is not null).Select(f => One(f, dossier));

    private static Figure One(TemperatureFamily family, Dossier dossier)
    {
        var line = family.Line!;
        var interval = line.WiderEnthalpy.Interval();
        return new Figure(
            StudyFigure.Id("van-t-hoff", family.Isotherms[0].Fitted.Series.Name),
            $"Constants against temperature, {family.Name}",
            string.Create(CultureInfo.InvariantCulture, $"ln K against 1000/T at {line.Line.Temperatures.Length} temperatures; the slope gives an enthalpy of {line.Enthalpy.Value:0.0} kJ/mol with a 95 % interval from {interval.Low:0.0} to {interval.High:0.0}."),
            [ReciprocalTemperaturePanel.Of(line.Line, new Axis("ln *K*", null, "logarithm of the constant"))])
        {
            Notes =
            [
                "Marks: Langmuir constants of one isotherm each; bars: 95 % interval from the fit of that isotherm.",
                string.Create(CultureInfo.InvariantCulture, $"Band: 95 % confidence by the scatter about the line; degrees of freedom: {line.Line.Slope.DegreesOfFreedom:0}."),
            ],
            RestsOn = [.. family.Isotherms.Where(i => i.Constant is not null).SelectMany(i => i.Fitted.Series.Vessels).Select(v => v.Code)],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
