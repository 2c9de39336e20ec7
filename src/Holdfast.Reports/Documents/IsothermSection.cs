using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Isotherms;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Uptake against the concentration left.</summary>
internal sealed class IsothermSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 50;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        if (dossier.Evidence.Isotherms.IsEmpty)
            return null;
        var figures = StudyFigure.Of<IsothermFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>
        {
            Prose.Paragraph("Every isotherm of the list was fitted to the concentration left in single vessels, predicted through the mass balance, with one error model for all of them, so that their AICc compare. A vessel below the detection limit enters with its signed reading and its uncertainty, not with the limit; one that is only reported as below a limit does not enter."),
        };
        foreach (var fitted in dossier.Evidence.Isotherms)
        {
            content.AddRange(FittedText.Of(fitted, "isotherm", figures.GetValueOrDefault(StudyFigure.Id("isotherm", fitted.Series.Name)), numbering, dossier.Evidence));
            if (Coverage(fitted) is { } coverage)
                content.Add(Prose.Paragraph(coverage));
        }

        content.AddRange(LinearText.Of(dossier.Evidence.Isotherms, "isotherm", numbering, trap: null));
        return new("isotherms", "Concentration", content);
    }

    /// <inheritdoc/>
    public IEnumerable<Node> InChapter(Dossier dossier, Numbering numbering) => FittedText.InChapter(dossier.Evidence.Isotherms, dossier.Verdicts, "isotherms", numbering);

    private static string? Coverage(FittedSeries fitted)
    {
        if (fitted.Fits.FirstOrDefault(f => f.IsFit && f.Card.Name == Langmuir.Card.Name) is not { } fit)
            return null;
        var (qm, k) = (fit["qm"], fit["K"].Value);
        var highest = fit.Points.X.Max();
        var share = k * highest / (1 + k * highest);
        if (!double.IsFinite(share))
            return null;
        var closed = qm.Profile?.IsClosed == true;
        return $"By the Langmuir fit the vessels reach {RoundedNumber.Fixed(100 * share, 0)} % of the capacity at the highest concentration left, {InWords.Plain(highest, "mg/L")}. "
            + (closed && share >= Capacity.Limits.Coverage
                ? "That is far enough for the capacity to be measured rather than extrapolated."
                : "The capacity is extrapolated and not shown: measure at higher concentrations.");
    }
}
