using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>ln k against the reciprocal temperature, one panel for each constant that may be meant, with the line and its 95 % band by the scatter about it.</summary>
internal sealed class ArrheniusFigure : IStudyFigure
{
    public const string Kind = "arrhenius";

    public int Place => 61;

    public IEnumerable<Figure> Of(Dossier dossier)
        => RateStudy.Of(dossier.Evidence).Families.Where(f => !f.Energies.IsEmpty).Select(f => One(f, dossier));

    private static Figure One(RateFamily family, Dossier dossier) => new(
        StudyFigure.Id(Kind, family.Series[0].Name),
        $"Rate constants against temperature, {family.Name}",
        $"ln k against 1000/T at {InWords.Count(family.Temperatures.Length, "temperature")}. " + string.Join(" ", family.Energies.Select(Spoken)),
        [.. family.Energies.Select(e => ReciprocalTemperaturePanel.Of(e.Line.Line, new Axis($"ln {(e.Constant.Contains('·', StringComparison.Ordinal) ? $"({Symbol(e)})" : Symbol(e))}", null, $"logarithm of {e.Constant} in {e.Unit}")))])
    {
        Notes =
        [
            RichText.Parse($"Marks: constants of the {family.Curve.ToLowerInvariant()} curve, one series each, as numbers in "
                + InWords.Listed(family.Energies.Select(e => $"{e.Unit} for {Symbol(e)}")) + "; bars: 95 % interval from the fit of that series."),
            .. family.Energies.Select(e => RichText.Parse($"Apparent activation energy by {Symbol(e)}: {InWords.Of(e.Line.WiderActivationEnergy, "kJ/mol")}, 95 % interval, the wider of scatter and propagated uncertainty.")),
            string.Create(CultureInfo.InvariantCulture, $"Band: 95 % confidence by the scatter about the line; degrees of freedom: {family.Energies[0].Line.Line.Slope.DegreesOfFreedom:0}."),
        ],
        RestsOn = [.. family.Series.SelectMany(s => s.Vessels).Select(v => v.Code)],
        MadeFrom = StudyFigure.MadeFrom(dossier),
    };

    private static string Spoken(RateEnergy energy)
    {
        var (value, interval) = (energy.Line.ActivationEnergy.Value, energy.Line.WiderActivationEnergy.Interval());
        return string.Create(CultureInfo.InvariantCulture, $"The slope of {energy.Constant} gives an apparent activation energy of {value:0.0} kJ/mol with a 95 % interval from {interval.Low:0.0} to {interval.High:0.0}.");
    }

    // Letters in italics, what tells them apart below: "k2·qe" is k₂ q_e.
    private static string Symbol(RateEnergy energy) => energy.Constant.Replace("k", "*k*_", StringComparison.Ordinal).Replace("·q", " *q*_", StringComparison.Ordinal);
}
