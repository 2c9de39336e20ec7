using System.Globalization;
using System.Text.Json;
using Holdfast.Diffraction;
using Holdfast.Studies.Import.Cif;
using Holdfast.Testing;

namespace Holdfast.Studies.Tests.Import.Cif;

/// <summary>
/// Structures read from CIFs and the patterns computed from them, against reference/characterisation/xrd/computed (brute-force expansion whose
/// |F| equals gemmi 0.5.7 to 1e-12). The CIFs are not in the repository.
/// </summary>
public class CifStructureTests
{
    private static readonly string[] Folder = ["characterisation", "xrd", "cif"];

    /// <summary>Every structure with a computed pattern.</summary>
    public static TheoryData<string> Known
        => [.. Directory.GetFiles(Repository.Path("reference", "characterisation", "xrd", "computed"), "*.csv").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    // Positions 1e-4 degrees, multiplicities exact, intensities 0.5 % of the strongest line: Waasmaier-Kirfel without dispersion, and with dispersion
    // against the four-term factors (which differ from ours by less than that).
    [Theory, MemberData(nameof(Known))]
    public void Pattern_OfAStructure_AgreesWithTheComputedTable(string name)
    {
        var structure = Read(name);
        var radiation = Radiation.Of("Cu")!;
        var plain = ComputedPattern.Of(structure.Structure, radiation, 5, 90, dispersion: false);
        var full = ComputedPattern.Of(structure.Structure, radiation, 5, 90);
        foreach (var row in ReferenceTable.Read("characterisation", "xrd", "computed", $"{name}.csv"))
        {
            int Index(string axis) => int.Parse(row[axis], CultureInfo.InvariantCulture);
            var family = Family(structure.Structure, new(Index("h"), Index("k"), Index("l")));
            // A family weaker than a millionth of the strongest line counts as absent here.
            if (plain.SingleOrDefault(l => family.Contains(l.Planes!.Value)) is not { } line)
            {
                Assert.True(row.Number("I_wk") < 1e-3, row["two_theta_deg"]);
                continue;
            }

            Assert.Equal(row.Number("two_theta_deg"), Bragg.TwoTheta(line.Spacing, radiation.Ka1)!.Value, 1e-4);
            Assert.Equal(row.Number("d_angstrom"), line.Spacing, 1e-5);
            Assert.Equal(Index("multiplicity"), line.Multiplicity);
            Assert.Equal(row.Number("I_wk"), line.Intensity!.Value, 0.5);
            Assert.Equal(row.Number("I_it92_dispersion"), full.FirstOrDefault(l => family.Contains(l.Planes!.Value))?.Intensity ?? 0, 0.5);
        }

        Assert.Empty(structure.Cautions);
    }

    [Theory, MemberData(nameof(Known))]
    public void AtomsPerCell_OfAStructure_AgreeWithTheTable(string name)
    {
        using var summary = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "xrd", "computed", "summary.json")));
        var expected = summary.RootElement.GetProperty(name);
        var structure = Read(name).Structure;
        Assert.Equal(expected.GetProperty("volume_angstrom3").GetDouble(), structure.Cell.Volume, 1e-3);
        foreach (var atom in expected.GetProperty("atoms_per_cell").EnumerateObject())
            Assert.Equal(atom.Value.GetDouble(), Assert.Single(structure.AtomsPerCell, a => a.Element == atom.Name).Count, 1e-3);
    }

    // International Tables C (2006), table 5.2.11.1: measured intensities of SRM 674 against the strongest line; texture and the tube make them differ by up to 20 %.
    [Fact]
    public void Intensities_AgainstMeasuredOnes_AreWithinTheStatedTolerance()
    {
        using var published = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "xrd", "published-intensities.json")));
        foreach (var phase in published.RootElement.GetProperty("measured").EnumerateArray())
        {
            var structure = Read(Path.GetFileNameWithoutExtension(phase.GetProperty("cif").GetString()!)).Structure;
            var lines = ComputedPattern.Of(structure, Radiation.Of("Cu")!, 5, 90);
            double Of(string hkl) => lines.Single(l => Family(structure, new(hkl[0] - '0', hkl[1] - '0', hkl[2] - '0')).Contains(l.Planes!.Value)).Intensity!.Value;
            foreach (var line in phase.GetProperty("lines").EnumerateObject())
            {
                var computed = 100 * Of(line.Name) / Of(phase.GetProperty("reference_line").GetString()!);
                Agree.Relative(0.20, line.Value[0].GetDouble(), computed, line.Name);
                Agree.Relative(0.005, phase.GetProperty("computed_here").GetProperty(line.Name).GetDouble(), computed, line.Name);
            }
        }
    }

    [Fact]
    public void ADoubledAtom_IsSaid()
    {
        var text = Written.Replace("O1 O 0.333333 0.666667 0.3819", "O1 O 0.31 0.69 0.3819", StringComparison.Ordinal);
        Assert.Contains("6 atoms of O", Assert.Single(Parse(text).Cautions), StringComparison.Ordinal);
        Assert.Empty(Parse(Written).Cautions);
    }

    [Theory]
    [InlineData("_cell_length_b 3.24981\n", "", "does not give _cell_length_b")]
    [InlineData("_cell_angle_gamma 120", "_cell_angle_gamma 300", "make no cell")]
    [InlineData("'x-y,x,z+1/2'", "'x-y,x,w'", "\"x-y,x,w\" is no symmetry operation")]
    [InlineData("_space_group_symop_operation_xyz", "_other", "the symmetry operations are not listed")]
    [InlineData("O1 O 0.333333", "O1 O q", "an atom has no _atom_site_fract_x")]
    [InlineData("O1 O 0.333333", "Q1 Q 0.333333", "\"Q1\" names no element")]
    [InlineData("_cell_length_a 3.24981", "_cell_length_a 324.981", "longer than 60")]
    public void AStructureWithAHole_IsRefusedInWords(string before, string after, string words)
    {
        Assert.Contains(before, Written, StringComparison.Ordinal);
        var refused = Assert.Throws<StudyException>(() => Parse(Written.Replace(before, after, StringComparison.Ordinal)));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("FeT", "Fe")]
    [InlineData("OH1", "O")]
    [InlineData("Wat", "O")]
    [InlineData("Ca1", "Ca")]
    [InlineData("O1W", "O")]
    public void ALabelWithoutATypeSymbol_NamesItsElement(string label, string element)
    {
        var text = Written.Replace("_atom_site_type_symbol\n", "_atom_site_other\n", StringComparison.Ordinal).Replace("O1 O ", $"{label} x ", StringComparison.Ordinal);
        Assert.Equal(element, Parse(text).Structure.Sites[1].Element);
    }

    // Zinc oxide: cell of SRM 674 (International Tables C, table 5.2.11.1), oxygen at 0.3819 (from memory).
    private const string Written = """
        data_zno
        _chemical_formula_sum 'O Zn'
        _cell_formula_units_Z 2
        _cell_length_a 3.24981
        _cell_length_b 3.24981
        _cell_length_c 5.20653(13)
        _cell_angle_alpha 90
        _cell_angle_beta 90
        _cell_angle_gamma 120
        loop_
        _space_group_symop_operation_xyz
        'x,y,z' 'x-y,x,z+1/2' '-y,x-y,z' '-x,-y,z+1/2' '-x+y,-x,z' 'y,-x+y,z+1/2'
        'y,x,z+1/2' 'x,x-y,z' 'x-y,-y,z+1/2' '-y,-x,z' '-x,-x+y,z+1/2' '-x+y,y,z'
        loop_
        _atom_site_label
        _atom_site_type_symbol
        _atom_site_fract_x
        _atom_site_fract_y
        _atom_site_fract_z
        _atom_site_B_iso_or_equiv
        Zn1 Zn 0.333333 0.666667 0 0.6
        O1 O 0.333333 0.666667 0.3819 0.6
        """;

    private static CifStructure Parse(string text) => CifStructure.Of(CifText.Read(text, "zno.cif", TestContext.Current.CancellationToken)[0], "zno.cif");

    private static CifStructure Read(string name)
    {
        var path = Repository.Verbatim([.. Folder, $"{name}.cif"]);
        return CifStructure.Of(CifText.Read(File.ReadAllText(path), $"{name}.cif", TestContext.Current.CancellationToken)[0], $"{name}.cif");
    }

    private static HashSet<Miller> Family(CrystalStructure structure, Miller planes)
        => [.. structure.Operations.Select(o => o.Apply(planes)).SelectMany(p => new[] { p, p.Opposite })];
}
