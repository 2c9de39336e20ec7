using Holdfast.DemoData;
using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>The later series of the invented demo study: rates, beds, point of zero charge.</summary>
public class LaterDemoDataTests
{
    private static readonly InventedStudy Study = InventedStudy.FromSeed();

    // reference/demo-later/values.csv: the same recipe in Python 3.11, its standard library alone; bar 1e-9 relative.
    [Fact]
    public void InventedValues_OfTheLaterSeries_EqualTheIndependentProgram()
    {
        var ours = Values().ToDictionary(v => (v.Series, v.Code, v.Quantity), v => v.Value);
        var rows = ReferenceTable.Read("demo-later", "values.csv");
        Assert.Equal(rows.Count, ours.Count);
        Assert.All(rows, r => Agree.Relative(1e-9, r.Number("value"), ours[(r["series"], r["code"], r["quantity"])], r["code"]));
    }

    // Flow over the cross-section of a tube of 10 mm inner diameter: geometry.
    [Fact]
    public void Velocity_OfEveryBed_IsTheFlowOverTheCrossSection()
        => Agree.Relative(2e-4, PackedBed.Flow / (Math.PI * 0.25), PackedBed.Velocity);

    [Fact]
    public void Codes_OfLaterSamples_AreUniqueInTheWholeStudyAlsoWithoutHyphens()
    {
        var codes = Study.ReadVessels.Select(v => v.Code).Concat(Study.Rates.Select(v => v.Code)).Concat(Study.Outlets.Select(p => p.Code)).Concat(Study.ZeroCharges.Select(z => z.Code)).ToList();
        Assert.Equal(codes.Count, codes.Select(c => c.Replace("-", "", StringComparison.Ordinal)).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    private static IEnumerable<(string Series, string Code, string Quantity, double Value)> Values()
    {
        foreach (var vessel in Study.Rates)
            yield return (vessel.Series, vessel.Code, "concentration mg/L", vessel.Portion!.Concentration);
        foreach (var bed in PackedBed.All)
            yield return (bed.Name, "", "half time min", bed.Half);
        foreach (var portion in Study.Outlets)
        {
            yield return (portion.Bed.Name, portion.Code, "outlet mg/L", portion.Concentration);
            yield return (portion.Bed.Name, portion.Code, "u mg/L", portion.U);
        }

        foreach (var vessel in Study.ZeroCharges)
            yield return ("DRIFT", vessel.Code, "end pH", vessel.EndPh);
    }
}
