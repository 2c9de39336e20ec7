using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>
/// Concentrations by titration with EDTA, one to one (common practice): c = (V − V0) · c(EDTA) · M / V(aliquot), with M(Ni) = 58.6934 g/mol (CIAAW, abridged 58.693). All sheets are invented; the expected numbers are
/// worked out by hand from that formula.
/// </summary>
public class TitrationTests
{
    private const string Rows = "start;;;8.40\nA1;20.3;50;5.10\nA2;40.1;50;3.30\nA3;60.2;50;2.10\n";

    [Theory]
    [InlineData("EDTA 0.01000 mol/L; aliquot 10 mL; blank 0.10 mL", 0.10)]
    [InlineData("titrated with 10 mM EDTA; 10 mL aliquots; blank titre 0.10 mL", 0.10)]
    [InlineData("EDTA (mol/L): 0.01; aliquot (mL): 10; reagent blank: 0.10 mL, already subtracted", 0)]
    [InlineData("EDTA 0.0100 M, 1 : 1; pipetted 10.0 mL each; blank 0.10 mL, not subtracted yet", 0.10)]
    [InlineData("EDTA-Maßlösung 0.0100 mol/L; Aliquote 10 mL; Blindwert 0.10 mL, noch nicht abgezogen", 0.10)]
    public void Titre_WithItsTitrant_BecomesAConcentration(string line, double blank)
    {
        var read = Read.Text($"{line}\n\nflask;powder (mg);water (mL);EDTA used (mL)\n{Rows}");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        double[] titres = [8.40, 5.10, 3.30, 2.10];
        Assert.Equal(titres.Select(v => Math.Round((v - blank) * 0.01 * 58.6934e3 / 10, 1)), read.Proposal!.Readings.Select(r => Math.Round(r.Value!.Value, 1)));
        Assert.All(read.Proposal.Readings, r => Assert.Equal(SpectrometryProperties.ReportedConcentration.Name, r.Signal));
        Assert.Equal(50, read.Value("A1", BatchProperties.Volume.Name));
        Assert.Equal(SampleRole.StartSolution, read.Proposal.Samples.Single(s => s.Code == "start").Role);
        // The trail tells what the burette gave.
        Assert.Contains("5.1", read.Proposal.Readings[1].Written, StringComparison.Ordinal);
    }

    [Fact]
    public void Burette_BeforeAndAfter_AndALegendBesideTheTable_AreRead()
    {
        var read = Read.Text("frasco;pó (mg);solução (mL);alíquota (mL);bureta antes (mL);bureta depois (mL);;EDTA (mol/L);0,0100\ninicial;;;10;0,20;8,60;;branco (mL);0,10\nA1;20,3;50;10;8,60;13,70;;;\nA2;40,1;50;20;0,00;6,50;;;\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal([0.83, 0.5, 0.32], read.Proposal!.Readings.Select(r => Math.Round(r.Value!.Value / (0.01 * 58.6934e3), 4)));
    }

    [Theory]
    [InlineData("aliquot 10 mL; blank 0.10 mL", "mol/L")]
    [InlineData("EDTA 0.01000 mol/L; blank 0.10 mL", "aliquot")]
    [InlineData("Ni : EDTA = 1 : 2; EDTA 0.01000 mol/L; aliquot 10 mL", "mol/L")]
    public void Titre_ThatLacksSomething_GivesNoNumber_AndSaysWhat(string line, string lacks)
    {
        var read = Read.Text($"{line}\n\nflask;powder (mg);water (mL);EDTA used (mL)\n{Rows}");
        Assert.True(read.Proposal is null || read.Proposal.Readings.IsEmpty);
        Assert.Contains(read.Findings, f => f.Concerns.Contains("EDTA used (mL)") && f.Sentence.Contains(lacks, StringComparison.Ordinal));
    }

    [Fact]
    public void Volume_OfATitration_IsNoVesselsVolume()
    {
        var read = Read.Text("EDTA 0.01000 mol/L; 10 mL aliquots\n\nflask;powder (mg);EDTA used (mL)\nA1;20.3;5.10\nA2;40.1;3.30\nA3;60.2;2.10\n");
        Assert.Null(read.Value("A1", BatchProperties.Volume.Name));
    }
}
