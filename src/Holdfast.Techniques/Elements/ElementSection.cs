using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Techniques.Elements;

/// <summary>Composition of the powders: atomic percent place by place, shares with their scatter, and what such a table does not say.</summary>
internal sealed class ElementSection : IResultSection
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["n.m."] = "not in the table of that place", ["one"] = "one place alone: no scatter" };

    /// <inheritdoc/>
    public int Place => 7;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var study = ElementStudy.Of(dossier.Evidence);
        if (study.Powders.IsEmpty)
            return null;
        var content = new List<Node>();
        foreach (var powder in study.Powders)
        {
            content.Add(Prose.Heading(powder.Name));
            content.Add(Prose.Paragraph($"{(powder.IsDissolved ? "Dissolved and read" : "Analysed")} in {InWords.Count(powder.Places.Length, powder.IsDissolved ? "portion" : "place")}; atoms follow from {(powder.Places[0].ByMass ? $"the masses ({powder.Places[0].Heading}) by the standard atomic weights" : powder.Places[0].Heading)}."));
            content.Add(numbering.Table(() => Atoms(powder)));
            if (!powder.Shares.IsEmpty)
                content.Add(numbering.Table(() => Shares(powder)));
            if (!powder.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(powder.Findings));
        }

        return new("composition", "Composition", content);
    }

    /// <summary>Atomic percent of each place, with the mean.</summary>
    /// <param name="powder">The powder.</param>
    internal static Table Atoms(AnalysedPowder powder)
    {
        var elements = powder.Elements;
        return new(
            StudyFigure.Id("composition", powder.Name), $"Atoms of each element in {powder.Name}, of all that were looked for",
            [new Column("place", powder.IsDissolved ? "Portion" : "Place") { NamesRows = true }, .. elements.Select(e => new Column(e.Symbol.ToLowerInvariant(), e.Symbol) { Unit = "%", Spoken = e.Name })],
            [.. powder.Places.Select(p => Row.Of(elements.Select(e => Cell(p, e)).Prepend(p.Name)))],
            Codes)
        {
            Notes = ["Atomic percent, normalised to the elements in the table: what was not looked for is not in it."],
        };
    }

    /// <summary>Shares of a site with their scatter over the places.</summary>
    /// <param name="powder">The powder.</param>
    internal static Table Shares(AnalysedPowder powder) => new(
        StudyFigure.Id("shares", powder.Name), $"Shares of atoms in {powder.Name}",
        [
            new Column("share", "Share") { NamesRows = true }, new Column("mean", "Mean"), new Column("sd", "Standard deviation of places"), new Column("low", "95 % from"), new Column("high", "to"), new Column("places", "n"),
        ],
        [.. powder.Shares.Select(s =>
        {
            var values = powder.Ratios(s);
            var mean = powder.Mean(s);
            var whole = powder.Whole(s);
            var half = whole is { } known ? ExpandedUncertainty.Of(known).U : (double?)null;
            return Row.Of(
                s.ToString(),
                mean is null ? new NumberCell(values[0].Value.Value) : new MeasuredCell(mean.Value, whole!.Value.U) { Address = ElementNumbers.Address(powder, s) },
                mean is null ? new MissingCell("one") : new NumberCell(mean.StandardError * Math.Sqrt(mean.N)),
                half is { } down ? new NumberCell(mean!.Value - down) : new MissingCell("one"), half is { } up ? new NumberCell(mean!.Value + up) : new MissingCell("one"), new NumberCell(values.Length) { Decimals = 0 });
        })],
        Codes)
    {
        Notes =
        [
            $"Mean ± standard uncertainty: scatter over the places, and {InWords.Plain(100 * powder.Bias, "%")} at two standard uncertainties by which {(powder.IsDissolved ? "a digest read against standards" : "X-ray analysis without standards")} may be off in all of them. The interval has both.",
        ],
    };

    private static Cell Cell(AnalysedPlace place, Composition.Element element)
        => place.Atoms.Where(a => a.Key.Number == element.Number).Select(a => (Cell)new NumberCell(a.Value.Value)).FirstOrDefault(new MissingCell("n.m."));
}
