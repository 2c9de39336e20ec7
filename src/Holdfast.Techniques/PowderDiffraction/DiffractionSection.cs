using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Diffraction;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Powder diffraction: lines, phases, lattice and crystallite size of each powder.</summary>
internal sealed class DiffractionSection : IResultSection
{
    private const int MostNamed = 8;

    /// <inheritdoc/>
    public int Place => 3;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var study = DiffractionStudy.Of(dossier.Evidence);
        if (study.Patterns.IsEmpty && study.Findings.IsEmpty)
            return null;
        var content = new List<Node>();
        var figures = StudyFigure.Of<PatternFigure>(dossier).ToDictionary(f => f.RestsOn[0], StringComparer.Ordinal);
        foreach (var pattern in study.Patterns)
        {
            content.Add(Prose.Heading(pattern.IsStandard ? $"{pattern.Sample}, standard for the width of the instrument" : pattern.Sample));
            if (figures.GetValueOrDefault(pattern.Measurement.Id) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(Html.Element("ul", Words(pattern, numbering).Select(w => (Node)Html.Element("li", w))));
            if (!pattern.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(pattern.Findings));
            content.Add(numbering.Table(() => DiffractionTables.Lines(pattern)));
        }

        if (!study.Findings.IsEmpty)
            content.Add(FindingSection.Grouped(study.Findings));
        if (!study.Patterns.IsEmpty)
            content.Add(numbering.Table(() => DiffractionTables.Numbers(study)));
        return new("powder-diffraction", "Powder diffraction", content);
    }

    private static IEnumerable<Node[]> Words(PatternFound pattern, Numbering numbering)
    {
        var id = pattern.Measurement.Id;
        if (pattern.Main is { } main)
        {
            yield return [$"{id}: {InWords.Count(main.Match.Matched.Length, "line")} of {pattern.Lines.Length} lie where {main.Name} has its own"
                + (main.HasIntensities ? main.Match.Missing.IsEmpty ? "; all of its lines above 10 % of the strongest are there." : $"; {InWords.Count(main.Match.Missing.Length, "line")} above 10 % of the strongest, with d = {Spacings(main.Match.Missing.Select(m => m.Spacing))}, {(main.Match.Missing.Length == 1 ? "is" : "are")} missing." : ".")];
            if (pattern.Phases.Length > 1)
                yield return [$"Lines of {InWords.Listed(pattern.Phases.Skip(1).Select(p => p.Name))} are there as well."];
            yield return [pattern.Fitted is null ? ListedStrangers(pattern) : pattern.Strangers.IsEmpty
                ? $"No line of another phase with z of {InWords.Plain(LineMatch.SecondPhase)} or more. A line of {InWords.Plain(main.Match.DetectionLimit, "%")} of the strongest would have been seen, usually 1 to 5 % by mass of a crystalline phase; amorphous matter is not seen."
                : $"{InWords.Count(pattern.Strangers.Length, "line")} of no known phase, a possible second phase: {string.Join("; ", pattern.Strangers.Take(MostNamed).Select(l => string.Create(CultureInfo.InvariantCulture, $"2θ {l.TwoTheta:0.00}°, d {l.Spacing:0.000} Å, z {l.Significance:0}")))}."];
        }
        else
        {
            yield return [$"{id}: {InWords.Count(pattern.Lines.Length, "line")}{(pattern.Fitted is null ? " as listed" : "")}, none compared: no structure of a phase that fits is in the study. Take the structure in as CIF, or state a cell."];
            if (!pattern.Cubic.IsEmpty)
                yield return [$"The lines fit {string.Join(" or ", pattern.Cubic.Take(3).Select(c => string.Create(CultureInfo.InvariantCulture, $"a cubic {c.Lattice} cell of about {c.A:0.000} Å")))}; other cells are not excluded."];
        }

        if (pattern.Lattice is { } lattice)
        {
            foreach (var (p, i) in lattice.Parameters.Select((p, i) => (p, i)))
                yield return [$"{p.Symbol} = {InWords.Of(DiffractionNumbers.Of(pattern, i), p.Unit)}", .. numbering.Trail(DiffractionNumbers.Cell(id, p.Symbol)), i == 0 ? $", with the height of the sample refined; a zero error instead would give {InWords.Setting(Math.Round(lattice.Other.Parameters[0].Value, 5), p.Unit)}. The two cannot be told apart, so half their difference is in the uncertainty; an internal standard would settle it." : "."];
            if (pattern.Radius is { } radius && lattice.Displacement(radius) is var (value, u))
                yield return [$"The sample lay {InWords.Of(Measured.From(value, new Source(id + " height", "refined", u)), "mm")} below the axis", .. numbering.Trail(DiffractionNumbers.Displacement(id)), ", if it was not the zero of the scale."];
        }

        if (pattern.Size is { } size && !pattern.IsStandard)
        {
            var (low, high) = size.Range;
            yield return size.IsLimit
                ? [$"Crystallites: larger than {Nanometres(low)} nm (Scherrer, K = {InWords.Plain(Scherrer.UsualK)}). {(size.HasInstrument ? "The lines are hardly broader than those of the instrument." : "No pattern of a standard gives the width of the instrument, so there is no upper limit.")}"]
                : [$"Crystallites: {Nanometres(low)} to {Nanometres(high)} nm", .. numbering.Trail(DiffractionNumbers.Size(id)), $", K = {InWords.Plain(Scherrer.UsualK)}, {InWords.Count(size.Lines.Length, "line")}, by {(size.IsSeparated ? "Williamson and Hall, size apart from strain" : "Scherrer; strain, if any, makes them look smaller")}. The bracket is between both ways to take the instrument off. It is a length of coherent columns, not the size of particles."];
        }
    }

    private static string ListedStrangers(PatternFound pattern)
        => pattern.Strangers.IsEmpty ? "No line of the list belongs to another phase; what the list leaves out is not known."
            : $"{InWords.Count(pattern.Strangers.Length, "line")} of no known phase, a possible second phase: {string.Join("; ", pattern.Strangers.Take(MostNamed).Select(l => string.Create(CultureInfo.InvariantCulture, $"2θ {l.TwoTheta:0.00}°, d {l.Spacing:0.000} Å")))}.";

    // Two figures: more than a size from breadths can carry.
    private static string Nanometres(double size)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(size)) - 1);
        return (Math.Round(size / step) * step).ToString("G4", CultureInfo.InvariantCulture);
    }

    private static string Spacings(IEnumerable<double> d) => string.Join(", ", d.Take(MostNamed).Select(s => s.ToString("0.000", CultureInfo.InvariantCulture))) + " Å";
}
