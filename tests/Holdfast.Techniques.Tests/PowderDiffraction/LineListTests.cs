using System.Globalization;
using Holdfast.Claims;
using Holdfast.Diffraction;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Techniques.PowderDiffraction;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests.PowderDiffraction;

/// <summary>Lists of lines instead of a pattern. Places and spacings of hydroxyapatite from reference/characterisation/xrd/computed (an independent program), rounded as lists are.</summary>
public class LineListTests
{
    private static readonly Radiation Copper = Radiation.Of("Cu")!;

    private static readonly (Miller Planes, double Spacing, double Intensity)[] Apatite =
        [.. ReferenceTable.Read("characterisation", "xrd", "computed", "hydroxyapatite.csv").Where(r => r.Number("I_it92_dispersion") > 5).DistinctBy(r => r.Number("d_angstrom")).Take(12)
            .Select(r => (new Miller((int)r.Number("h"), (int)r.Number("k"), (int)r.Number("l")), r.Number("d_angstrom"), r.Number("I_it92_dispersion")))];

    [Fact]
    public void List_WithIndices_GivesTheCellWithoutAWordOfTheRadiation()
    {
        var understood = Intake.Text("EHA-2.csv", "lines of EHA-2\n2theta;d (A);I;hkl\n" + Rows(Copper, ";", indices: true));
        Assert.Empty(understood.Questions.Where(q => q.IsOpen).Select(q => q.Text));
        var pattern = Assert.Single(Intake.Found(understood).Patterns);
        Assert.Null(pattern.Fitted);
        Assert.Equal("Cu", pattern.Radiation.Anode);
        Assert.Equal(Apatite.Length, pattern.Lines.Length);
        // The cell of the structure, from the spacings of its own table.
        var truth = CellOfPlanes.Of([.. Apatite.Select(l => (l.Planes, l.Spacing))])!;
        Assert.Equal(truth.A, pattern.Lattice!.Parameters[0].Value, 3 * pattern.Lattice.Parameters[0].U + 1e-4);
        Assert.Equal(truth.C, pattern.Lattice.Parameters[1].Value, 3 * pattern.Lattice.Parameters[1].U + 1e-4);
        Assert.InRange(pattern.Lattice.Parameters[0].U, 1e-5, 0.02);
        // A list states no uncertainty of its lines and no instrument: no size, no line of another phase that it could have shown.
        Assert.Null(pattern.Size);
        Assert.Empty(pattern.Strangers);
    }

    [Theory]
    [InlineData("tube: Cu", "Cu", true)]
    [InlineData("tube: Co", "Co", false)]
    public void Words_AgainstTheAngles_AreAskedAbout(string line, string anode, bool agree)
    {
        var text = line + "\n2theta (deg)\td (A)\tI\n" + Rows(Copper, "\t", indices: false);
        var understood = Intake.Text("EHA-2.txt", text);
        Assert.Equal(agree, understood.Questions.All(q => !q.IsOpen));
        if (agree)
            return;
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Contains("contradict", question.Text, StringComparison.Ordinal);
        Assert.Equal(["Cu Kα", anode + " Kα"], question.Choices);
        Assert.Equal(anode, Assert.Single(Intake.Found(Intake.Text("EHA-2.txt", text, (question.Id, anode + " Kα"))).Patterns).Radiation.Anode);
    }

    [Fact]
    public void Angles_WithoutSpacingsOrRadiation_AreAskedAbout()
    {
        var text = "peak list\n2theta,I,hkl\n" + string.Concat(Apatite.Select(l => string.Create(CultureInfo.InvariantCulture, $"{Bragg.TwoTheta(l.Spacing, Copper.Ka1):0.00},{l.Intensity:0},{l.Planes.H}{l.Planes.K}{l.Planes.L}\n")));
        var question = Assert.Single(Intake.Text("EHA-2.csv", text).Questions, q => q.IsOpen);
        Assert.Contains("radiation", question.Text, StringComparison.Ordinal);
        Assert.Single(Intake.Found(Intake.Text("EHA-2.csv", text, (question.Id, "Cu Kα1"))).Patterns);
    }

    // A list that says to be of a known phase is no powder of the study: patterns are compared with it.
    [Fact]
    public void ReferenceList_IsAPhaseToComparePatternsWith()
    {
        var cell = new UnitCell(4.2112, 4.2112, 4.2112, 90, 90, 90);
        var card = "reference lines of rock salt\nd (A),I,h,k,l\n" + string.Concat(new Miller[] { new(1, 1, 1), new(2, 0, 0), new(2, 2, 0), new(3, 1, 1), new(2, 2, 2) }
            .Select(p => string.Create(CultureInfo.InvariantCulture, $"{cell.Spacing(p):0.0000},{(p == new Miller(2, 0, 0) ? 100 : 40)},{p.H},{p.K},{p.L}\n")));
        var scan = Intake.Text("ZF-3.csv", "Sample: ZF-3\nCu Ka1 1.540593, Ka2 1.544427\n2theta,counts\n" + string.Concat(Made.Cubic(4.2112, Copper, displacement: -0.03).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.TwoTheta:0.000},{p.Counts:0}\n"))));
        var found = Intake.Found(scan, Intake.Text("reference rock salt.csv", card));
        var pattern = Assert.Single(found.Patterns);
        Assert.Equal("reference lines of rock salt", pattern.Main!.Name);
        Assert.True(pattern.Main.Match.Matched.Length >= 4);
        Assert.Equal(4.2112, pattern.Lattice!.Parameters[0].Value, 3 * pattern.Lattice.Parameters[0].U);
    }

    // Everything that is said and drawn of a list and of a heating curve can be: no room of the report falls out.
    [Fact]
    public void Report_OfAListAndAHeatingCurve_IsWhole()
    {
        var heated = "Sample: BW-6; air\nT (°C),m (mg)\n" + string.Concat(Enumerable.Range(0, 60).Select(i => string.Create(CultureInfo.InvariantCulture, $"{25 + 10 * i},{20 - 3 / (1 + Math.Exp(-(i - 20) / 2.0)):0.000}\n")));
        var study = Reading.Taken(null, ("EHA-2.csv", "lines of EHA-2\n2theta;d (A);I;hkl\n" + Rows(Copper, ";", indices: true)), ("BW-6.csv", heated));
        var dossier = Dossier.Of(study);
        var figures = StudyFigure.All(dossier);
        var listed = Assert.Single(figures, f => f.Title.Contains("EHA-2", StringComparison.Ordinal));
        Assert.Equal(2, listed.Panels.Count);
        Assert.All(listed.Panels, p => Assert.True(AxisRange.OfY(p).Low >= 0));
        Assert.Equal(Apatite.Length, Assert.Single(listed.Panels[0].Layers.OfType<Sticks>()).Points.Count);
        Assert.Single(Assert.Single(figures, f => f.Title.Contains("BW-6", StringComparison.Ordinal)).Panels[0].Layers.OfType<Zone>());
        var sections = ResultSections.OnPage(dossier, new PageLinks(_ => null, _ => null, _ => ""));
        Assert.Equal(["powder-diffraction", "heating-curves"], sections.Select(s => s.Id).Where(id => id is "powder-diffraction" or "heating-curves"));
        Assert.DoesNotContain(sections, s => string.Concat(s.Content.Select(c => c.ToString())).Contains("HF-451", StringComparison.Ordinal));
    }

    // Sizes by light scattering have a d and peaks too.
    [Fact]
    public void Diameters_AreNoSpacings()
        => Assert.DoesNotContain(Intake.Text("sizes.csv", "peak report\nd (nm),Intensity (%)\n10.1,5\n12.2,20\n15.3,40\n18.4,25\n22.0,10\n").Measurements(), m => m.Technique == DiffractionFiles.TechniqueName);

    private static string Rows(Radiation radiation, string separator, bool indices)
        => string.Concat(Apatite.Select(l => string.Create(CultureInfo.InvariantCulture, $"{Bragg.TwoTheta(l.Spacing, radiation.Ka1):0.00}{separator}{l.Spacing:0.0000}{separator}{l.Intensity:0}{(indices ? $"{separator}{l.Planes.H} {l.Planes.K} {l.Planes.L}" : "")}\n")));
}
