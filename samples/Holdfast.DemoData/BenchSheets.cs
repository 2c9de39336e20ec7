namespace Holdfast.DemoData;

/// <summary>The sheets that the student kept at the bench.</summary>
public static class BenchSheets
{
    private const string Invented = "invented demo data";
    private const string Batch = "B1";
    private const string Material = "EHA-2";

    /// <summary>One row for each vessel.</summary>
    /// <param name="study">The invented study.</param>
    public static DemoFile Vessels(InventedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return DemoFile.Text("vessels.csv",
        [
            "sample,series,role,sorbent batch,material,C0 (mg/L),V (mL),m (mg),t (min),pH start,pH end,temperature (°C),water,remark",
            .. study.ReadVessels.Select(v => Dialect.Comma.Line(
                v.Code, v.Series, v.Role, v.Mass is null ? null : Batch, v.Mass is null ? null : Material,
                v.C0, v.Volume, v.Mass, v.Minutes, v.StartPh, v.EndPh, v.Celsius, v.Matrix, Invented)),
            .. study.Digests.Select(d => Solid(d.Code, "DIGEST", "digest")),
            .. study.Cycles.Select(c => Solid(c.Code, "REUSE", "vessel")),
        ]);
    }

    /// <summary>What was found in loaded powder after it was dissolved.</summary>
    /// <param name="study">The invented study.</param>
    public static DemoFile Solids(InventedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return DemoFile.Text("solids.csv",
        [
            "sample;q by digestion (mg/g);remark",
            .. study.Digests.Select(d => Dialect.Semicolon.Line(d.Code, d.Uptake, Invented)),
        ]);
    }

    /// <summary>Sorption and elution cycles, worked out in the student's own spreadsheet.</summary>
    /// <param name="study">The invented study.</param>
    public static DemoFile Cycles(InventedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return DemoFile.Text("cycles.csv",
        [
            "sample,cycle,Ce (mg/L),eluted (mg/g),remark",
            .. study.Cycles.Select(c => Dialect.Comma.Line(c.Code, c.Number, c.Left, c.Eluted, Invented)),
        ]);
    }

    /// <summary>Calcium in the liquid.</summary>
    /// <param name="study">The invented study.</param>
    public static DemoFile Calcium(InventedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return DemoFile.Text("calcium.csv",
        [
            "sample,role,pH start,V (mL),m (mg),dissolved Ca (mg/L),remark",
            .. study.Calcium.Select(c => Dialect.Comma.Line(c.Code, c.Role, c.StartPh, 25, 50, c.Calcium, Invented)),
        ]);
    }

    /// <summary>Nickel and a second metal in one vessel.</summary>
    /// <param name="study">The invented study.</param>
    public static DemoFile Mixtures(InventedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return DemoFile.Text("mixtures.csv",
        [
            "sample,rival,C0 of each (mmol/L),V (mL),m (mg),Ni left (mmol/L),rival left (mmol/L),remark",
            .. study.Mixtures.Select(m => Dialect.Comma.Line(m.Code, m.Rival, Mixture.Start, 25, 50, m.Nickel, m.Other, Invented)),
        ]);
    }

    private static string Solid(string code, string series, string role)
        => Dialect.Comma.Line(code, series, role, Batch, Material, 20, 25, 50, 1440, 6, null, 25, "0.01 mol/L NaNO3", Invented);
}
