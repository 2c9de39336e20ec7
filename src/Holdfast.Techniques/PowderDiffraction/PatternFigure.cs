using Holdfast.Claims;
using Holdfast.Diffraction;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A pattern with the lines of its phases as sticks under it, and below what the fitted profiles leave over.</summary>
internal sealed class PatternFigure : IStudyFigure
{
    // Sticks hang below the pattern by this part of its height: they are there to compare places.
    private const double StickShare = 0.2;

    // Reference lines weaker than this draw no stick, per cent.
    private const double LeastStick = 1;

    /// <inheritdoc/>
    public int Place => 3;

    /// <inheritdoc/>
    public IEnumerable<Figure> Of(Dossier dossier) => DiffractionStudy.Of(dossier.Evidence).Patterns.Select(p => p.Fitted is var (scan, fit) ? One(p, scan, fit, dossier) : Listed(p, dossier));

    private static Figure One(PatternFound pattern, PowderScan scan, ProfileFit fit, Dossier dossier)
    {
        var (id, name) = (pattern.Measurement.Id, pattern.Sample);
        var (angles, counts) = (scan.TwoTheta.ToArray(), scan.Counts.ToArray());
        var top = counts.Max();
        var x = new Axis("2θ", "°", "diffraction angle") { Min = angles[0], Max = angles[^1], Chosen = true };
        var unit = pattern.Measurement.Column(ScanNames.Counts)?.Unit is { Length: > 0 } said ? said : null;
        PhaseFound[] drawn = [.. pattern.Phases.Take(Layer.Slots - 1)];
        var fitted = Enumerable.Range(0, angles.Length).Where(i => fit.Model[i] is not null).ToArray();
        var rest = Runs(fitted).Select(run => run.Select(i => (X: angles[i], Y: counts[i] - fit.Model[i]!.Value)).ToArray()).ToArray();
        return new Figure(
            StudyFigure.Id("pattern", name + "-" + id), $"Diffraction pattern of {name} ({id})",
            $"Intensity against 2θ with {InWords.Count(fit.Lines.Length, "fitted line")}"
                + (drawn.Length > 0 ? $"; sticks mark the lines of {InWords.Listed(drawn.Select(p => p.Name))}." : "; no known phase is matched.") + (rest.Length > 0 ? " The lower panel shows what the fitted profiles leave over." : ""),
            [
                new Panel(x, new Axis("I", unit, "intensity") { Min = drawn.Length > 0 ? -1.1 * StickShare * top : 0 },
                [
                    new Trace([.. angles.Zip(counts)]) { Slot = 0, Label = drawn.Length > 0 ? RichText.Literal("measured") : null },
                    .. drawn.Select((p, i) => new Sticks([.. Shares(p, pattern).Select(s => (s.X, -StickShare * top * s.Percent / 100))]) { Slot = i + 1, Label = RichText.Literal(p.Name) }),
                ]),
                .. rest.Length > 0 ? [new Panel(x, new Axis("ΔI", unit, "measured less fitted"), [.. rest.Select(r => new Trace(r) { Slot = 0 }), new Reports.Figures.ReferenceLine(AxisName.Y, 0, "nothing left over")])] : Array.Empty<Panel>(),
            ])
        {
            Caption = $"Powder pattern of {name} ({id}), {pattern.Radiation.Name}, λ = {InWords.Setting(pattern.Radiation.Ka1, "Å")}.",
            Notes =
            [
                "Readings as measured, nothing smoothed or taken off.",
                .. drawn.Length > 0 ? [RichText.Literal("Sticks: places under the refined cell where there is one; lengths are computed intensities, equal where only a cell is known. Texture changes lengths, not places.")] : Array.Empty<RichText>(),
                .. rest.Length > 0 ? [RichText.Literal("Difference: only where lines were fitted.")] : Array.Empty<RichText>(),
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
            RestsOn = [id],
        };
    }

    // A list has no readings: its lines stand as sticks, those of its phases in a panel below.
    private static Figure Listed(PatternFound pattern, Dossier dossier)
    {
        var (id, name) = (pattern.Measurement.Id, pattern.Sample);
        var hasHeights = pattern.Lines.All(l => l.Height > 0);
        var (from, to) = pattern.Range;
        var x = new Axis("2θ", "°", "diffraction angle") { Min = from, Max = to, Chosen = true };
        PhaseFound[] drawn = [.. pattern.Phases.Take(Layer.Slots - 1)];
        return new Figure(
            StudyFigure.Id("pattern", name + "-" + id), $"Diffraction lines of {name} ({id})",
            $"{SentenceCase.Of(InWords.Count(pattern.Lines.Length, "line"))} at their 2θ, as listed" + (drawn.Length > 0 ? $"; the lower panel marks the lines of {InWords.Listed(drawn.Select(p => p.Name))}." : "; no known phase is matched."),
            [
                new Panel(x, hasHeights ? new Axis("I", null, "intensity as listed") : new Axis("places", null, "places only, no intensity is listed"), [new Sticks([.. pattern.Lines.Select(l => (l.TwoTheta, hasHeights ? l.Height : 1))]) { Slot = 0 }]),
                .. drawn.Length == 0 ? Array.Empty<Panel>() : [new Panel(x, drawn.All(p => p.HasIntensities) ? new Axis("I", "%", "intensity of the phase") : new Axis("places", null, "places only, their lengths say nothing"), [.. drawn.Select((p, i) => new Sticks([.. Shares(p, pattern)]) { Slot = i + 1, Label = RichText.Literal(p.Name) })])],
            ])
        {
            Caption = $"Lines of {name} as listed ({id}), {pattern.Radiation.Name}, λ = {InWords.Setting(pattern.Radiation.Ka1, "Å")}; the pattern itself is not in the study.",
            Notes = ["A list states no uncertainty, no background and no line that its author left out."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
            RestsOn = [id],
        };
    }

    // Stretches without a gap: no line is drawn across what was not fitted.
    private static IEnumerable<int[]> Runs(int[] indices)
    {
        for (int from = 0, to; from < indices.Length; from = to)
        {
            for (to = from + 1; to < indices.Length && indices[to] == indices[to - 1] + 1; to++)
                continue;
            if (to - from > 1)
                yield return indices[from..to];
        }
    }

    // Places and intensities of the lines that a phase shows, per cent of its strongest.
    private static (double X, double Percent)[] Shares(PhaseFound phase, PatternFound pattern)
        => [.. phase.Lines.Where(l => !(l.Intensity < LeastStick) && (phase.HasIntensities || phase.Match.Matched.Any(m => m.Reference == l)))
            .Select(l => (X: At(phase, l, pattern.Radiation), Percent: l.Intensity ?? 50)).Where(l => l.X is not null).Select(l => (l.X!.Value, l.Percent))];

    private static double? At(PhaseFound phase, Diffraction.ReferenceLine line, Radiation radiation)
        => phase.Match.Lattice is { } lattice && line.Planes is { } planes ? lattice.Fit.Place(planes, radiation.Ka1)
            : Bragg.TwoTheta(line.Spacing, radiation.Ka1) is { } at ? at + phase.Match.Displacement * Math.Cos(at * Math.PI / 360) : null;
}
