using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Heating;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Techniques.HeatingCurves;

/// <summary>Heating curves: what is lost in each step and what is left.</summary>
internal sealed class HeatingSection : IResultSection, IStudyTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["–"] = "no step: of the whole curve" };

    /// <inheritdoc/>
    public int Place => 7;

    /// <inheritdoc/>
    public string Name => HeatingFiles.TechniqueName;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var study = HeatingStudy.Of(dossier.Evidence);
        if (study.Curves.IsEmpty && study.Findings.IsEmpty)
            return null;
        var content = new List<Node> { Prose.Paragraph("Water, a linker and a carbonate may leave in one step: a step says how much goes between two temperatures, never what it was.") };
        content.AddRange(StudyFigure.Of<HeatingFigure>(dossier).Select(f => (Node)numbering.Figure(f)));
        if (!study.Curves.IsEmpty)
            content.Add(numbering.Table(() => Losses(study)));
        if (study.Findings.Concat(study.Curves.SelectMany(c => c.Findings)).ToArray() is { Length: > 0 } findings)
            content.Add(FindingSection.Grouped(findings));
        return new("heating-curves", "Heating curves", content);
    }

    /// <inheritdoc/>
    public IEnumerable<Table> Of(Evidence evidence) => HeatingStudy.Of(evidence) is { Curves.IsEmpty: false } study ? [Losses(study)] : [];

    private static Table Losses(HeatingStudy study) => new(
        "heating-losses", "Losses on heating",
        [
            new Column("powder", "Powder") { NamesRows = true }, new Column("curve", "Curve"), new Column("from", "From") { Unit = "°C" }, new Column("to", "To") { Unit = "°C" },
            new Column("fastest", "Fastest at") { Unit = "°C" }, new Column("loss", "Loss") { Unit = "%" }, new Column("left", "Left at the end") { Unit = "%" },
        ],
        [.. study.Curves.SelectMany(Rows)],
        Codes)
    {
        Notes = ["Value ± standard uncertainty, per cent of the first mass: scatter of the balance at both ends and buoyancy of up to "
            + HeatingCurve.Buoyancy.ToString(CultureInfo.InvariantCulture) + " mg where the mass is known. Steps meet where the loss per kelvin is least."],
    };

    private static IEnumerable<Row> Rows(PowderHeated heated)
    {
        foreach (var step in heated.Steps)
        {
            var loss = heated.Loss(step);
            yield return Row.Of(heated.Powder, heated.Measurement.Id, Degrees(step.From), Degrees(step.To), Degrees(step.Fastest), new MeasuredCell(loss.Value, loss.U) { Address = heated.Address(step) }, new MissingCell("–"));
        }

        var left = heated.Left;
        yield return Row.Of(heated.Powder, heated.Measurement.Id, Degrees(heated.Curve.Temperatures[0]), Degrees(heated.Curve.Temperatures[^1]), new MissingCell("–"), new MeasuredCell(100 - left.Value, left.U), new MeasuredCell(left.Value, left.U) { Address = heated.Residue });
    }

    private static NumberCell Degrees(double value) => new(value) { Decimals = 0 };
}
