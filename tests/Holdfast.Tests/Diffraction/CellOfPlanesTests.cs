using Holdfast.Diffraction;
using Holdfast.Testing;

namespace Holdfast.Tests.Diffraction;

/// <summary>Cells from indices and spacings, against reference/characterisation/xrd/computed: structures of the Crystallography Open Database and of certified powders, spacings by an independent program.</summary>
public class CellOfPlanesTests
{
    [Theory]
    [InlineData("si-srm640f.csv", CrystalSystem.Cubic, CrystalSystem.Cubic)]
    [InlineData("cod-9008678-halite.csv", CrystalSystem.Cubic, CrystalSystem.Cubic)]
    [InlineData("ceo2-srm674b.csv", CrystalSystem.Cubic, CrystalSystem.Cubic)]
    [InlineData("zno-srm674.csv", CrystalSystem.Hexagonal, CrystalSystem.Hexagonal)]
    [InlineData("al2o3-srm676a.csv", CrystalSystem.Hexagonal, CrystalSystem.Hexagonal)]
    [InlineData("hydroxyapatite.csv", CrystalSystem.Hexagonal, CrystalSystem.Hexagonal)]
    [InlineData("cod-9009086-anatase.csv", CrystalSystem.Tetragonal, CrystalSystem.Tetragonal)]
    // Two of its edges differ by 0.1 %, which rounded angles cannot tell: the simpler cell is taken.
    [InlineData("cod-9004096-anhydrite.csv", CrystalSystem.Orthorhombic, CrystalSystem.Tetragonal)]
    public void Cell_OfListedLines_IsThatOfTheStructure(string file, CrystalSystem system, CrystalSystem whenRounded)
    {
        var lines = Lines(file);
        var cell = CellOfPlanes.Of(lines)!;
        Assert.Equal(system, cell.System);
        Assert.All(lines, l => Assert.Equal(1, cell.Spacing(l.Planes) / l.Spacing, 1e-5));
        // Angles rounded to two digits, as lists have them.
        var rounded = lines.Select(l => (l.Planes, Bragg.Spacing(Math.Round(Bragg.TwoTheta(l.Spacing, Patterns.Copper.Ka1)!.Value, 2), Patterns.Copper.Ka1))).ToArray();
        Assert.Equal(whenRounded, CellOfPlanes.Of(rounded)!.System);
    }

    // Rhombohedral axes fit none of the systems up to monoclinic; too few lines tell no cell.
    [Fact]
    public void Cell_ThatCannotBeTold_IsNone()
    {
        Assert.Null(CellOfPlanes.Of(Lines("cod-1010914-corundum-rhombohedral.csv")));
        Assert.Null(CellOfPlanes.Of([]));
        Assert.Null(CellOfPlanes.Of([(new(1, 0, 0), 4.0)]));
        Assert.Null(CellOfPlanes.Of([(new(0, 0, 2), 3.0), (new(1, 1, 0), 2.0), (new(2, 1, 1), 4.4)]));
    }

    private static (Miller Planes, double Spacing)[] Lines(string file)
        => [.. ReferenceTable.Read("characterisation", "xrd", "computed", file).Take(14).Select(r => (new Miller((int)r.Number("h"), (int)r.Number("k"), (int)r.Number("l")), r.Number("d_angstrom")))];
}
