using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;
using Holdfast.SurfaceCharge;

namespace Holdfast.Reports.Documents;

/// <summary>Point of zero charge by drift, and uptake at several ionic strengths.</summary>
internal sealed class SurfaceChargeSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 61;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var study = DriftStudy.Of(dossier.Evidence);
        if (study.Tests.IsEmpty && study.Ionic.IsEmpty)
            return null;
        var content = new List<Node>();
        if (!study.Tests.IsEmpty)
        {
            content.Add(Prose.Heading("Drift of pH"));
            content.AddRange(StudyFigure.Of<DriftFigure>(dossier).Select(f => (Node)numbering.Figure(f)));
            content.Add(Html.Element("ul", study.Tests.Select(t => (Node)Html.Element("li", [.. Prose.Marked(Words(t)), .. t.ZeroCharge is null ? [] : numbering.Trail(SurfaceChargeNumbers.Address(t))]))));
            content.Add(Prose.Paragraph($"One pH was taken as known to {InWords.Plain(study.Tests[0].U)} (standard uncertainty{(study.Tests[0].IsAssumed ? ", assumed: none came with the electrode" : ", from the apparatus sheet")}). {Agreement(study.Tests)}".TrimEnd()));
            if (study.Tests.Any(t => !t.Findings.IsEmpty))
                content.Add(FindingSection.Grouped(study.Tests.SelectMany(t => t.Findings)));
        }

        foreach (var ionic in study.Ionic)
        {
            content.Add(Prose.Heading($"Ionic strength, series {ionic.Source.Name}"));
            content.Add(Prose.Paragraph($"Uptake changes by {InWords.Of(ionic.Trend.PerDecade, "mg/g")} per tenfold ionic strength ({InWords.Count(ionic.Vessels.Length, "vessel")}). "
                + (ionic.Trend.Falls == Ruling.Holds
                    ? "A fall fits ions held by charge or by exchange; ligands in the salt can fake one."
                    : "No change is compatible with a bond to the surface and shows none: only spectra do.")));
        }

        return new("surface-charge", "Surface charge", content);
    }

    private static string Agreement(IEnumerable<DriftTest> tests)
    {
        var named = tests.Where(t => t.ZeroCharge is not null).OrderBy(t => t.Salt).ToArray();
        return named.Length < 2 ? ""
            : PhDrift.Agree(named[0].ZeroCharge!, named[^1].ZeroCharge!) == Ruling.Contradicted
                ? "The crossings of the salt levels differ by more than twice their uncertainty: an ion of the salt sorbs, and none of them is the point of zero charge."
                : "The crossings of the salt levels agree within twice their uncertainty.";
    }

    private static string Words(DriftTest test)
    {
        var salt = test.Salt is { } s ? $"{InWords.Plain(s, "mol/L")} salt" : $"salt level {Prose.NotRecorded}";
        return test.ZeroCharge is { } zero
            ? $"{test.Series}, {salt}: the drift falls through 0 once, at pH {InWords.Of(zero.Ph, zero.Ph - 2 * zero.U, zero.Ph + 2 * zero.U, "")} (± twice the standard uncertainty)"
            : $"{test.Series}, {salt}: {InWords.Count(test.Crossings.Length, "crossing")}, so that no point of zero charge is named";
    }
}
