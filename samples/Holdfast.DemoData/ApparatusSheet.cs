namespace Holdfast.DemoData;

/// <summary>What the student measured with, and how well each thing is known.</summary>
public static class ApparatusSheet
{
    /// <summary>The sheet: one standard uncertainty for each thing, absolute or relative.</summary>
    public static DemoFile Of() => DemoFile.Text("apparatus.csv",
    [
        "apparatus,serves,u,unit,relative u (%),shared,basis,remark",
        Absolute("balance B-1", "mass", 0.1, "mg", "no", "certificate: 0.1 mg standard uncertainty"),
        Absolute("pipette 25 mL class A", "volume", 0.012, "mL", "yes", "tolerance 0.03 mL, triangular"),
        Absolute("pH meter P-1", "start-ph", 0.02, "", "yes", "buffer certificate and slope, common practice"),
        Absolute("bath thermometer T-1", "temperature", 0.2, "K", "yes", "certificate"),
        Absolute("stopwatch", "contact-time", 0.25, "min", "no", "time to pour and filter, common practice"),
        Relative("stock and flasks", "initial-concentration", 0.5, "yes", "stock certificate and two flasks, common practice"),
        Relative("diluting pipettes", "dilution", 0.6, "no", "ten weighed dilutions"),
    ]);

    private static string Absolute(string name, string serves, double u, string unit, string shared, string basis)
        => Dialect.Comma.Line(name, serves, u, unit, null, shared, basis, "invented demo data");

    private static string Relative(string name, string serves, double percent, string shared, string basis)
        => Dialect.Comma.Line(name, serves, null, "", percent, shared, basis, "invented demo data");
}
