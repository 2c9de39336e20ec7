using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Found against added in each spiked water, with the line through it and the line of full recovery.</summary>
internal sealed class RecoveryFigure : IStudyFigure
{
    public int Place => 115;

    public IEnumerable<Figure> Of(Dossier dossier)
    {
        var waters = Sensing.Of(dossier.Evidence).Waters;
        if (waters.IsEmpty)
            yield break;
        var x = new Axis("added", "µmol L^-1", "amount added") { Min = 0 };
        var y = new Axis("found", "µmol L^-1", "amount found") { Min = 0 };
        yield return new Figure(
            "recovery", "Found against added in real water",
            string.Join("; ", waters.Select(w => $"{w.Name}: found rises {InWords.Plain(Math.Round(w.Water.Slope.Value, 3))} per added")) + ".",
            Panel.Multiples(x, y, waters.Select(w => ((RichText)w.Name, (IReadOnlyList<Layer>)Layers(w)))))
        {
            Caption = $"Found against added in {InWords.Count(waters.Length, "real water", "real waters")}.",
            Notes = ["Marks: single vessels. Whole line: least squares. Dashed line: all that was added is found."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    private static List<Layer> Layers(SpikedSeries water)
    {
        var (native, slope) = (water.Water.Native.Value, water.Water.Slope.Value);
        return
        [
            new SlopingLine(native, 1, "all found"),
            ModelCurve.Of(added => native + slope * added, 0, water.Amounts.Max(a => a.Added)),
            new Marks([.. water.Amounts.Select((a, i) => new Mark(a.Added, a.Found) { Id = water.Samples[i].Code })]),
        ];
    }
}
