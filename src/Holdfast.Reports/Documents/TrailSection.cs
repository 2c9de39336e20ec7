using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.Documents;

/// <summary>Notes with the trail of each number that the text refers to.</summary>
internal static class TrailSection
{
    private const int MostRows = 6;

    /// <summary>The section; null when no number was referred to. It comes last, when all references are known.</summary>
    public static Section? Of(Numbering numbering)
        => numbering.Trails.Count == 0 ? null : new(
            "trails",
            "Trails",
            [
                Prose.Paragraph("From a number back to the cell it was read in. Inputs are given ± standard uncertainty; shares are of the variance of the result."),
                .. numbering.Trails.Select(One),
            ]);

    private static Element One(NumberTrail trail, int index)
    {
        var number = (index + 1).ToString(CultureInfo.InvariantCulture);
        var id = Numbering.NoteId(index + 1);
        return Html.Element("article", [("class", "trail"), ("id", id), ("aria-labelledby", id + "-heading")],
            Html.Element("h3", [("id", id + "-heading")], $"[{number}] {SentenceCase.Of(trail.Name)}"),
            Prose.Paragraph(
                $"{InWords.Of(trail.Value, trail.Unit)}. Formula: {trail.Formula}. Address: {trail.Address}. ",
                Html.Element("a", [("href", "#" + id + "-from")], "Back to the text")),
            Html.Element("ul", trail.Inputs.Select(i => (Node)Html.Element("li", $"{i.Symbol} = {Input(i)}, from {i.From}{(i.Trail is null ? "" : $" (trail {i.Trail})")}"))),
            trail.Fit is { } fit ? Prose.Paragraph($"{SentenceCase.Of(fit.How)}. Points: {InWords.Listed(fit.Points.Select(p => p.Name))}.") : "",
            trail.Carried is { } carried ? Prose.Paragraph($"The inputs alone carry in a standard uncertainty of {InWords.Plain(carried.U, trail.Unit)}; the shares are of that.") : "",
            Shares(trail, number),
            trail.Readings.IsEmpty
                ? Prose.Paragraph("No reading is recorded behind it.")
                : trail.Fit is not null || trail.Samples.Length > 1 ? Prose.Paragraph($"Readings: {string.Join("; ", trail.Cells)}.")
                : Prose.Paragraph($"Readings: {string.Join("; ", trail.Readings.Select(r => $"{r.Id} shows {r.Written}{(r.Dilution == 1 ? "" : " at dilution " + InWords.Plain(r.Dilution))} in {r.Origin}"))}."));
    }

    private static Element Shares(NumberTrail trail, string number)
    {
        var rows = trail.Budget.Top(MostRows).Rows;
        if (rows.Count == 0)
            return Prose.Paragraph("It has no uncertainty, since nothing it rests on came with one.");
        var head = Html.Element("tr", new[] { "Source", "Share of the variance / %", "Recorded in" }.Select(h => (Node)Html.Element("th", [("scope", "col")], h)));
        var caption = $"Where the uncertainty of note {number} comes from";
        var grid = Html.Element("table",
            Html.Element("caption", caption),
            Html.Element("thead", head),
            Html.Element("tbody", rows.Select(r => (Node)Html.Element("tr",
                Html.Element("th", [("scope", "row"), ("class", "text")], r.Name),
                Html.Element("td", [("class", "number")], RoundedNumber.Fixed(r.Share, 1)),
                Html.Element("td", [("class", "text")], r.RecordedIn ?? "several places")))));
        return Numbering.Scrolling(Html.Element("div", [("class", "table-block")], grid), caption);
    }

    private static string Input(TrailInput input) => input.Value.U > 0
        ? $"({InWords.Raised(RoundedNumber.Of(input.Value.Value, input.Value.U).PlusMinus)}) {input.Unit}"
        : $"{InWords.Plain(input.Value.Value, input.Unit)} (no uncertainty recorded)";
}
