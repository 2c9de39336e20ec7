using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>What borrowed instruments gave of the two powders, each file in the way of its laboratory, and what the student wants to write about them.</summary>
public static class PowderSheets
{
    private const string Invented = "INVENTED demo data: nothing was measured";

    private static readonly string[] Columns =
        ["claim", "powder", "parent", "phase", "smallest-line", "dopant", "powders", "contents", "cell-becomes", "size", "measurand", "ratio", "formula", "group", "before", "after", "wavenumber", "wording", "remark"];

    private static readonly (string Rule, string Wording, (string Name, string Words)[] Parameters)[] Claims =
    [
        ("phase-pure", "EHA-2 is phase-pure hydroxyapatite.", [("powder", Powders.Doped), ("phase", "hydroxyapatite"), ("smallest-line", "0.5 %")]),
        ("entered-lattice", "Europium entered the lattice.", [("dopant", "Eu"), ("parent", Powders.Parent), ("powders", Powders.Doped), ("contents", "2.0 %"), ("cell-becomes", "smaller")]),
        ("crystallite-size", "The crystallites of EHA-2 are 19 nm across.", [("powder", Powders.Doped), ("size", "19 nm")]),
        ("particles-unchanged", "Doping left the particles as they were.", [("powder", Powders.Doped), ("parent", Powders.Parent), ("measurand", "length")]),
        ("area-decreased", "Doping lowered the surface area.", [("powder", Powders.Doped), ("parent", Powders.Parent)]),
        ("composition-matches", "The composition is that of the formula.", [("powder", Powders.Doped), ("ratio", "(Ca+Eu)/P"), ("formula", "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2")]),
        ("group-shown", "The spectrum shows the hydroxide of the lattice.", [("powder", Powders.Doped), ("group", "structural hydroxide")]),
        ("group-shown", "The band at 1640 cm-1 shows an amide of the dispersant.", [("powder", Powders.Doped), ("group", "amide")]),
        ("band-shifts", "The phosphate band moves when nickel binds.", [("before", Powders.Doped), ("after", Powders.Loaded), ("wavenumber", "1035 cm-1")]),
    ];

    /// <summary>The files.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<DemoFile> Of(ulong seed)
    {
        foreach (var (powder, portion, up, down) in Powders.Isotherms(seed))
        {
            yield return DemoFile.Text(Invariant($"n2-{powder}-{portion}.csv"),
            [
                "Remark," + Invented,
                "Sample," + powder,
                Invariant($"Portion,{portion}"),
                Dialect.Comma.Line("Sample mass (g)", 0.140 + (0.003 * portion)),
                "Adsorptive,N2",
                Dialect.Comma.Line("Bath temperature (K)", Powders.Bath),
                "Degassing,120 °C 6 h",
                "Relative pressure (p/p0),Quantity adsorbed (cm3/g STP)",
                .. up.Concat(down).Select(p => Dialect.Comma.Line(p.X, p.Volume)),
            ]);
        }

        foreach (var powder in (string[])[Powders.Parent, Powders.Doped])
        {
            yield return DemoFile.Text($"xrd-{powder}.txt",
            [
                "# " + Invented,
                "# sample: " + powder,
                "# radiation: Cu K-alpha1, 0.154056 nm",
                "# step 0.02 deg",
                "# 2theta (deg)\tcounts",
                .. Powders.Pattern(powder, seed).Select(p => Dialect.Tab.Line(p.Angle, p.Counts)),
            ]);
        }

        foreach (var powder in (string[])[Powders.Parent, Powders.Doped, Powders.Loaded])
        {
            yield return DemoFile.Text($"ir-{powder.Replace(' ', '-')}.csv",
            [
                "Remark;" + Invented,
                "Probe;" + powder,
                "Auflösung;4 cm-1",
                "Wellenzahl (cm-1);Extinktion",
                .. Powders.Spectrum(powder, seed).Select(p => Dialect.Semicolon.Line(p.At, Math.Round(p.Absorbance, 6))),
            ]);
        }

        yield return DemoFile.Text("edx-EHA-2.csv",
        [
            "Remark," + Invented,
            "Sample," + Powders.Doped,
            "Quantification,standardless",
            "Field,Ca (at%),P (at%),Eu (at%),O (at%)",
            .. Powders.Fields(seed).Select((f, i) => Dialect.Comma.Line(Invariant($"field {i + 1}"), f.Ca, f.P, f.Eu, f.O)),
        ]);
        yield return DemoFile.Text("rods.csv",
        [
            "# " + Invented,
            "no,group,image,length (nm)",
            .. Powders.Rods(seed).Select((r, i) => Dialect.Comma.Line(i + 1, r.Powder, r.Image, r.Length)),
        ]);
        yield return DemoFile.Text("claims-powder.csv",
        [
            Dialect.Comma.Line([.. Columns]),
            .. Claims.Select(c => Dialect.Comma.Line([.. Columns.Select(column => (object?)(column switch
            {
                "claim" => c.Rule,
                "wording" => c.Wording,
                "remark" => "invented demo data",
                _ => c.Parameters.FirstOrDefault(p => p.Name == column).Words,
            }))])),
        ]);
        yield return DemoFile.Text("hydroxyapatite.cif", Structure);
    }

    // Cell of the handbook (Sudarsanan and Young, cited there); positions of the same structure rounded to four digits, hydrogen left out, displacements nominal.
    private static readonly string[] Structure =
    [
        "# Hydroxyapatite, hydrogen left out: written for the invented demo study",
        "data_hydroxyapatite",
        "_chemical_name_common 'hydroxyapatite'",
        "_chemical_formula_sum 'Ca10 H2 O26 P6'",
        "_cell_formula_units_Z 1",
        "_space_group_name_H-M_alt 'P 63/m'",
        "_space_group_IT_number 176",
        "_cell_length_a 9.424", "_cell_length_b 9.424", "_cell_length_c 6.879",
        "_cell_angle_alpha 90", "_cell_angle_beta 90", "_cell_angle_gamma 120",
        "loop_", "_space_group_symop_operation_xyz",
        "'x,y,z'", "'x-y,x,z+1/2'", "'-y,x-y,z'", "'-x,-y,z+1/2'", "'-x+y,-x,z'", "'y,-x+y,z+1/2'",
        "'-x,-y,-z'", "'-x+y,-x,-z+1/2'", "'y,-x+y,-z'", "'x,y,-z+1/2'", "'x-y,x,-z'", "'-y,x-y,-z+1/2'",
        "loop_", "_atom_site_label", "_atom_site_type_symbol", "_atom_site_fract_x", "_atom_site_fract_y", "_atom_site_fract_z", "_atom_site_occupancy", "_atom_site_B_iso_or_equiv",
        "Ca1 Ca 0.3333 0.6667 0.0015 1 0.7",
        "Ca2 Ca 0.2468 0.9934 0.2500 1 0.6",
        "P1 P 0.3987 0.3685 0.2500 1 0.4",
        "O1 O 0.3284 0.4848 0.2500 1 0.8",
        "O2 O 0.5873 0.4651 0.2500 1 1.0",
        "O3 O 0.3437 0.2579 0.0702 1 1.3",
        "O4 O 0 0 0.1979 0.5 1.2",
    ];
}
