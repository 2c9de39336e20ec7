using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Tests;

public class TechniqueTests
{
    // A snapshot: an addition is seen here, and nowhere else is anything edited for it.
    [Fact]
    public void Techniques_FoundByTheCatalogue_AreTheseWithTheirClaims()
        => Assert.Equal(
        [
            "elements: composition-matches",
            "heating-curve: ",
            "infrared: band-shifts, bond-formed, carboxylate-bound, group-shown, more-than-mixture",
            "micrograph: ",
            "nitrogen-sorption: area-decreased, pore-size",
            "particles: particles-changed, particles-unchanged",
            "powder-diffraction: crystallite-size, entered-lattice, lattice-changed, phase-pure",
        ], TechniqueTable.All.Rows.Select(r => $"{((TextCell)r.Cells[0]).Text}: {(r.Cells[3] is TextCell claims ? claims.Text : "")}"));

    [Fact]
    public void Catalogue_OfTheFrames_FindsWhatLiesInTheFolderOfATechnique()
    {
        Assert.Contains(Defence.Rules, r => r.Id == "area-decreased");
        Assert.Contains(ResultSections.Kinds, s => s.GetType().Name == "NitrogenSorptionSection");
        Assert.Contains(StudyFigure.Kinds, f => f.GetType().Name == "NitrogenIsothermFigure");
        Assert.Equal(Catalogue.Types.Select(t => t.FullName).Order(StringComparer.Ordinal), Catalogue.Types.Select(t => t.FullName));
    }

    // What tests make up reaches no program.
    [Fact]
    public void Catalogue_OfTestAssemblies_FindsNothing()
    {
        Assert.DoesNotContain(TechniqueList.All, t => t is MadeUp);
        Assert.DoesNotContain(Catalogue.Types, t => t.Assembly == typeof(TechniqueTests).Assembly);
    }

    private sealed class MadeUp : ITechnique
    {
        public string Name => "made-up";

        public string Title => "made up";

        public string Reads => "nothing";

        public Recognition Recognise(Studies.Import.Grid grid) => Recognition.None;

        public MeasurementDraft Read(MeasurementSource source) => throw new InvalidOperationException("A made-up technique was asked to read.");
    }
}
