using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Composition;
using Holdfast.Diffraction;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import.Cif;

/// <summary>A crystal structure as a CIF tells it.</summary>
/// <param name="Name">What it is called there: mineral, name or formula.</param>
/// <param name="Structure">The structure.</param>
/// <param name="Cautions">What does not fit together in the file, in words.</param>
public sealed record CifStructure(string Name, CrystalStructure Structure, ImmutableArray<string> Cautions)
{
    // Longest cell edge whose lines are still counted one by one, ångström.
    private const double LongestEdge = 60;

    // Atoms in the cell against formula × Z: rounding of occupancies.
    private const double CountTolerance = 0.02;

    private const double EightPiSquared = 8 * Math.PI * Math.PI;

    /// <summary>True when a block holds cell lengths and atoms.</summary>
    /// <param name="block">The block.</param>
    public static bool IsIn(CifBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        return block.Said("_cell_length_a", "_cell.length_a") is not null && block.Table("_atom_site_fract_x", "_atom_site.fract_x") is not null;
    }

    /// <summary>The structure of a block.</summary>
    /// <param name="block">The block.</param>
    /// <param name="fileName">Its file, for messages.</param>
    /// <exception cref="StudyException">Something it needs is missing or no number (HF-406): cell, symmetry operations, places.</exception>
    public static CifStructure Of(CifBlock block, string fileName)
    {
        ArgumentNullException.ThrowIfNull(block);
        double Needed(string tag) => block.Said($"_cell_{tag}", $"_cell.{tag}")?.Number?.Value ?? throw Missing(fileName, block, $"_cell_{tag}");
        var cell = new UnitCell(
            Needed("length_a"), Needed("length_b"), Needed("length_c"), Needed("angle_alpha"), Needed("angle_beta"), Needed("angle_gamma"));
        if (!cell.IsSound)
            throw CifTokens.Unreadable(fileName, block.Line, "the lengths and angles make no cell");
        if (Math.Max(cell.A, Math.Max(cell.B, cell.C)) > LongestEdge)
            throw Limits.Exceeded(fileName, $"a cell edge longer than {LongestEdge.ToString(CultureInfo.InvariantCulture)} ångström");
        var sites = Sites(block, fileName);
        CrystalStructure structure;
        try
        {
            structure = new(cell, Operations(block, fileName), sites);
        }
        catch (ArgumentException e)
        {
            throw CifTokens.Unreadable(fileName, block.Line, e.Message);
        }

        var formula = block.Said("_chemical_formula_sum")?.Text;
        var name = block.Said("_chemical_name_mineral", "_chemical_name_common", "_pd_phase_name", "_chemical_name_systematic")?.Text ?? formula ?? block.Name;
        return new(name, structure, Unlike(block, structure, formula) is { } unlike ? [unlike] : []);
    }

    private static IReadOnlyList<SymmetryOperation> Operations(CifBlock block, string fileName)
    {
        string[] tags = ["_space_group_symop_operation_xyz", "_symmetry_equiv_pos_as_xyz", "_space_group_symop.operation_xyz", "_symmetry_equiv.pos_as_xyz"];
        if (block.Table(tags) is { } loop && tags.Select(loop.Column).First(c => c is not null) is { Length: > 0 } written)
        {
            return [.. written.Select(w => SymmetryOperation.Parse(w.Text)
                ?? throw CifTokens.Unreadable(fileName, w.Line, $"\"{w.Text}\" is no symmetry operation"))];
        }

        return block.Said(tags) is { } single && SymmetryOperation.Parse(single.Text) is { } only ? [only]
            : throw CifTokens.Unreadable(fileName, block.Line,
                "the symmetry operations are not listed, and the name of a space group does not say which origin is meant");
    }

    private static List<AtomSite> Sites(CifBlock block, string fileName)
    {
        var loop = block.Table("_atom_site_fract_x") ?? throw Missing(fileName, block, "_atom_site_fract_x");
        var sites = new List<AtomSite>();
        for (var row = 0; row < loop.Rows; row++)
        {
            CifValue? Cell(string name) => loop.Tags.IndexOf($"_atom_site_{name}") is var at and >= 0
                && loop.Values[row * loop.Tags.Length + at] is { IsSaid: true } said ? said : null;
            double Place(string axis) => Cell($"fract_{axis}")?.Number?.Value
                ?? throw CifTokens.Unreadable(fileName, loop.Values[row * loop.Tags.Length].Line, $"an atom has no _atom_site_fract_{axis}");
            // "." and "?" in the places of an atom mean that it was not located (hydrogen): it is not there for the rays.
            if (Cell("fract_x") is null && Cell("fract_y") is null)
                continue;
            var label = Cell("label")?.Text ?? Ordinal.Text(row + 1);
            var element = ElementOf(Cell("type_symbol")?.Text) ?? ElementOf(label)
                ?? throw CifTokens.Unreadable(fileName, loop.Values[row * loop.Tags.Length].Line, $"\"{label}\" names no element");
            var b = Cell("b_iso_or_equiv")?.Number?.Value ?? EightPiSquared * (Cell("u_iso_or_equiv")?.Number?.Value ?? 0);
            var occupancy = Cell("occupancy")?.Number?.Value ?? 1;
            if (occupancy is < 0 or > 1.001)
                throw CifTokens.Unreadable(fileName, loop.Values[row * loop.Tags.Length].Line, $"the occupancy of {label} is not between 0 and 1");
            sites.Add(new(label, element, Place("x"), Place("y"), Place("z"), occupancy, Math.Max(b, 0)));
        }

        return sites.Count > 0 ? sites : throw Missing(fileName, block, "_atom_site_fract_x");
    }

    // "Si4+" and "FeT" and "OH1" and "Wat": charge, tag, hydroxide and water mean the atom that scatters.
    private static string? ElementOf(string? text)
    {
        if (text is null)
            return null;
        var letters = string.Concat(text.TakeWhile(char.IsAsciiLetter));
        if (letters.StartsWith("wat", StringComparison.OrdinalIgnoreCase))
            return "O";
        if (letters.Length > 1 && $"{char.ToUpperInvariant(letters[0])}{char.ToLowerInvariant(letters[1])}" is var two && two != "Oh" && Element.Find(two) is not null
            && !(char.IsUpper(letters[1]) && letters.Length > 2 && char.IsUpper(letters[2])))
            return two;
        return letters.Length > 0 && $"{char.ToUpperInvariant(letters[0])}" is var one && (one == "D" || Element.Find(one) is not null) ? one : null;
    }

    // Atoms per cell against formula × Z: the check that finds doubled and missing atoms.
    private static string? Unlike(CifBlock block, CrystalStructure structure, string? formula)
    {
        if (formula is null || block.Said("_cell_formula_units_z")?.Number?.Value is not { } z
            || Formula.Read(formula.Replace(" ", "", StringComparison.Ordinal)).Value is not { } read)
            return null;
        foreach (var (element, count) in structure.AtomsPerCell)
        {
            if (Math.Abs(count - z * read.Count(element)) > CountTolerance * Math.Max(1, z * read.Count(element)) + CountTolerance)
            {
                return string.Create(CultureInfo.InvariantCulture,
                    $"the cell holds {count:0.##} atoms of {element}, while {formula} with Z = {z:0.##} asks for {z * read.Count(element):0.##}: computed intensities may be wrong");
            }
        }

        return null;
    }

    private static StudyException Missing(string fileName, CifBlock block, string tag)
        => CifTokens.Unreadable(fileName, block.Line, $"data_{block.Name} does not give {tag}");
}
