using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyFigures;

/// <summary>The dose curve that the isotherm of the same water and temperature predicts for a dose series, with its band.</summary>
/// <remarks>Removal and uptake follow from C0 − Ce = s·q(Ce); the covariance of the isotherm's parameters and the error of C0 give the band.</remarks>
internal sealed class DosePrediction
{
    private readonly FitResult fit;
    private readonly string isotherm;
    private readonly Measured start;
    private readonly Measured[] parameters;
    private readonly Series series;
    private readonly double? standard;

    private DosePrediction(Series series, Series isotherm, FitResult fit, Measured start)
    {
        (this.series, this.isotherm, this.fit, this.start) = (series, isotherm.Name, fit, start);
        var doses = isotherm.Vessels.Select(v => v.Sample.Number(BatchProperties.Dose) ?? v.Dose?.Value).OfType<double>().Distinct().ToArray();
        standard = doses.Length == 1 ? doses[0] : null;
        parameters = [.. fit.MeasuredParameters(isotherm.Name)];
    }

    /// <summary>Name of the curve used.</summary>
    public string Curve => fit.Card.Name;

    /// <summary>Name of the isotherm series it comes from.</summary>
    public string From => isotherm;

    /// <summary>The prediction for a dose series; null without an isotherm taken in the same water at the same temperature.</summary>
    public static DosePrediction? Of(Evidence evidence, Series series)
    {
        var vessels = series.Vessels.Where(v => v.Start is { Value: > 0 } && v.End?.Value is not null && v.Dose is not null).ToArray();
        if (vessels.Length == 0 || vessels.Select(v => v.Start!.Value.Value).Distinct().Count() != 1)
            return null;
        var alike = evidence.Isotherms
            .Where(i => Conditions(i.Series).SetEquals(Conditions(series)))
            .OrderByDescending(i => i.Series.Vessels.Count())
            .FirstOrDefault(i => Usable(i) is not null);
        return alike is null ? null : new(series, alike.Series, Usable(alike)!, vessels[0].Start!.Value);
    }

    /// <summary>Removal in % and uptake in mg/g at a dose, each with its uncertainty.</summary>
    /// <param name="dose">Dose, g/L, above 0.</param>
    public (Measured Removal, Measured Uptake) At(Measured dose)
    {
        var left = Left(dose);
        return (BatchQuantities.Removal(start, left), (start - left) / dose);
    }

    /// <summary>What the prediction says beside the measured vessels (rule D4).</summary>
    public string Sentence
    {
        get
        {
            var vessels = series.Vessels.Where(v => v.End?.Value is not null && v.Dose is not null).ToArray();
            var agreement = Agreement.Of([.. vessels.Select(v => v.End!.Value!.Value - Left(v.Dose!.Value))]);
            var text = $"The {Curve} isotherm of {isotherm} predicts this series with nothing fitted to it. ";
            if (standard is { } dose)
                text += $"At the dose of that isotherm, {InWords.Setting(dose, "g/L")}, it predicts a removal of {InWords.Of(At(dose).Removal, "%")}. ";
            return text + (DosePoint.Explains(agreement.P) == Ruling.Holds
                ? $"The vessels agree with it within their uncertainty ({InWords.P(agreement.P)})."
                : $"The vessels do not agree with it within their uncertainty ({InWords.P(agreement.P)}): something besides the isotherm acts, such as clumping at high dose, a drift of pH or too little time.");
        }
    }

    private Measured Left(Measured dose) => fit.Model!.ConcentrationLeft(start, dose, parameters);

    private static FitResult? Usable(FittedSeries fitted)
        => fitted.Fits.Where(f => f is { IsFit: true, Aicc: not null, Covariance: not null, Model: not null }).MinBy(f => f.Aicc!.Value);

    private static HashSet<string> Conditions(Series series)
        => [.. series.Vessels.SelectMany(v => new[]
        {
            "T " + (v.Sample.Number(BatchProperties.Temperature) is { } t ? InWords.Plain(t) : ""),
            "water " + v.Sample.Words(SampleProperties.Matrix),
            "batch " + v.Sample.Batch,
        })];
}
