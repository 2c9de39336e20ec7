using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.Trails;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Techniques.Tests.PowderDiffraction;

/// <summary>What a reader sees of the patterns of a study.</summary>
public class SectionTests
{
    private static readonly Dossier Dossier = Dossier.Of(RuleTests.Study());

    [Fact]
    public void Section_SaysLatticeSizeAndWhatIsNotKnown()
    {
        var section = new DiffractionSection().Of(Dossier, new Numbering(Dossier))!;
        var text = string.Concat(section.Content.Select(n => NodeWriter.Write(n, Syntax.Html)));
        Assert.Contains("ZF-3", text, StringComparison.Ordinal);
        Assert.Contains("standard for the width of the instrument", text, StringComparison.Ordinal);
        Assert.Contains("half their difference is in the uncertainty", text, StringComparison.Ordinal);
        Assert.Contains("not the size of particles", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.Null(new DiffractionSection().Of(Dossier.Of(Intake.Nothing), new Numbering(Dossier)));
    }

    [Fact]
    public void Figure_OfAPattern_DrawsReadingsAndWhatIsLeftOver()
    {
        var figures = StudyFigure.Of<PatternFigure>(Dossier).ToArray();
        Assert.Equal(4, figures.Length);
        Assert.All(figures, f => Assert.Equal(2, f.Panels.Count));
        Assert.All(figures, f => Assert.IsType<Trace>(f.Panels[0].Layers[0]));
    }

    [Fact]
    public void Trails_OfEveryNumber_OpenByTheirAddress()
    {
        var evidence = Evidence.Of(RuleTests.Study());
        var pattern = DiffractionStudy.Of(evidence).Of("ZF-3")!;
        var trail = NumberTrail.Of(evidence, DiffractionNumbers.Cell(pattern.Measurement.Id, "a"))!;
        Assert.Equal(pattern.Lattice!.Parameters[0].Value, trail.Value.Value);
        Assert.Equal(pattern.Lattice.Parameters[0].U, trail.Value.U, 1e-12);
        Assert.NotNull(NumberTrail.Of(evidence, DiffractionNumbers.Displacement(pattern.Measurement.Id)));
        Assert.NotNull(NumberTrail.Of(evidence, DiffractionNumbers.Size(pattern.Measurement.Id)));
        Assert.NotNull(NumberTrail.Of(evidence, DiffractionNumbers.Line(pattern.Measurement.Id, pattern.TrueLines.First())));
    }

    [Fact]
    public void Tables_OfLinesAndNumbers_HaveARowEach()
    {
        var study = DiffractionStudy.Of(Dossier.Evidence);
        Assert.Equal(4, DiffractionTables.Numbers(study).Rows.Count);
        Assert.All(study.Patterns, p => Assert.Equal(p.Lines.Length, DiffractionTables.Lines(p).Rows.Count));
    }
}
