using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using Holdfast.DemoData;
using Holdfast.Testing;
using static System.FormattableString;

namespace Holdfast.Conventions;

public class DemoDataTests
{
    private static readonly InventedStudy Study = InventedStudy.FromSeed();

    // reference/design/demo-seed-1589-values.csv: the same recipe in Python (numpy 1.24.2, scipy 1.10.1); bar 1e-9 relative.
    [Theory]
    [InlineData("AAS-CAL"), InlineData("AAS-BLANK"), InlineData("ISO-298"), InlineData("DOSE"), InlineData("KIN-05"), InlineData("KIN-20")]
    [InlineData("TEMP-298"), InlineData("TEMP-308"), InlineData("TEMP-318"), InlineData("PH"), InlineData("PH-BLANK")]
    [InlineData("DIGEST"), InlineData("WATER-rinse"), InlineData("WATER-roof"), InlineData("REUSE")]
    [InlineData("FLUOR"), InlineData("FLUOR-BLANK"), InlineData("SPIKE")]
    public void InventedValues_OfASeries_EqualTheIndependentProgram(string series)
    {
        var ours = Values().ToDictionary(v => (v.Series, v.Level, v.Replicate, v.Quantity), v => v.Value);
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == series && r["replicate"] != "0").ToList();
        Assert.NotEmpty(rows);
        foreach (var row in rows)
        {
            var key = (series, row["level"], (int)row.Number("replicate"), row["quantity"]);
            Assert.True(ours.TryGetValue(key, out var value), Invariant($"The program has no {key}."));
            Agree.Relative(1e-9, row.Number("value"), value, key.ToString());
        }

        Assert.Equal(rows.Count, ours.Keys.Count(k => k.Series == series));
    }

    // Same table, rows of replicate 0: the true uptake, or the true concentration left, behind the noise.
    [Fact]
    public void TrueValues_BehindTheNoise_EqualTheIndependentProgram()
    {
        Truth("ISO-298", "30 mg/L", "true q mg/g", (30 - Sorption.Equilibrium(30, 2)) / 2);
        Truth("DOSE", "4 g/L", "true Ce mg/L", Sorption.Equilibrium(20, Sorption.EffectiveDose(4)));
        Truth("KIN-20", "45 min", "true q mg/g", (20 - Sorption.Equilibrium(20, 2)) / 2 * Sorption.Reached(45, new Pace(0.62, 0.10, 0.009)));
        Truth("TEMP-318", "50 mg/L", "true q mg/g", (50 - Sorption.Equilibrium(50, 2, Sorption.AffinityAt(318.15))) / 2);
    }

    [Fact]
    public void DemoFolder_HoldsExactlyWhatTheProgramWrites()
    {
        foreach (var file in DemoFiles.Of(Study))
        {
            var kept = File.ReadAllBytes(Repository.Path("samples", "demo", file.Name));
            Assert.True(file.Bytes.AsSpan().SequenceEqual(kept), $"samples/demo/{file.Name} differs: run samples/Holdfast.DemoData again.");
        }

        var names = DemoFiles.Of(Study).Select(f => f.Name).Append("README.md");
        Assert.Equal(names.Order(StringComparer.Ordinal), Directory.EnumerateFiles(Repository.Path("samples", "demo")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void PowderFolder_HoldsExactlyWhatTheProgramWrites()
    {
        foreach (var file in PowderSheets.Of(InventedStudy.Seed))
            Assert.True(file.Bytes.AsSpan().SequenceEqual(File.ReadAllBytes(Repository.Path("samples", "demo-powder", file.Name))), $"{file.Name} differs: run samples/Holdfast.DemoData again.");
        Assert.Equal(PowderSheets.Of(InventedStudy.Seed).Select(f => f.Name).Order(StringComparer.Ordinal), Directory.EnumerateFiles(Repository.Path("samples", "demo-powder")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    // reference/design/demo-seed-1589-values.csv: an independent program drew the same values from the scenario's text.
    [Fact]
    public void Powders_LengthsAndRatios_AreThoseOfTheIndependentProgram()
    {
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv");
        double[] Given(string series, string level) => [.. rows.Where(r => r["series"] == series && r["level"] == level).Select(r => r.Number("value"))];
        var rods = Powders.Rods(InventedStudy.Seed).ToLookup(r => r.Powder, r => r.Length);
        Assert.All(Given("TEM-HA0", "particle").Zip(rods[Powders.Parent]), v => Assert.Equal(1, v.Second / v.First, 9));
        Assert.All(Given("TEM-EHA2", "particle").Zip(rods[Powders.Doped]), v => Assert.Equal(1, v.Second / v.First, 9));
        Assert.Equal((60, 55), (rods[Powders.Parent].Count(), rods[Powders.Doped].Count()));
        var fields = Powders.Fields(InventedStudy.Seed).ToArray();
        Assert.Equal(5, fields.Length);
        Assert.All(Given("EDX", "EHA-2").Zip(fields), v => Assert.Equal(v.First, (v.Second.Ca + v.Second.Eu) / v.Second.P, 8));
        // The scenario's check of the isotherm without noise, EHA-2 at five pressures, mmol/g; its constants are rounded to four figures.
        foreach (var (x, n) in ((double, double)[])[(0.05, 0.66087), (0.20, 0.90341), (0.50, 1.41985), (0.80, 2.37523), (0.95, 9.81742)])
            Agree.Relative(1e-4, n, Powders.Amount(x, 0.75339, 8.941, 0.90), Invariant($"n at {x}"));
    }

    [Fact]
    public void DemoFiles_AllOfThem_SayThatTheyAreInvented()
        => Assert.All(DemoFiles.Of(Study).Concat(PowderSheets.Of(InventedStudy.Seed)), f => Assert.Contains("invented", System.Text.Encoding.UTF8.GetString(f.Bytes), StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void VesselCodes_AcrossTheStudy_AreUniqueAndStaySoWithoutHyphens()
    {
        var codes = Study.ReadVessels.Select(v => v.Code).Concat(Study.Digests.Select(d => d.Code)).Concat(Study.Cycles.Select(c => c.Code)).ToList();
        Assert.Equal(180, codes.Count);
        Assert.Equal(codes.Count, codes.Select(c => c.Replace("-", "", StringComparison.Ordinal)).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    // The schema rules are those of the DocumentFormat.OpenXml package, not ours.
    [Fact]
    public void DemoWorkbook_AgainstTheFormatsSchema_HasNoErrors()
    {
        using var book = SpreadsheetDocument.Open(Repository.Path("samples", "demo", "aas-run3.xlsx"), isEditable: false);
        Assert.Empty(new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(book, TestContext.Current.CancellationToken).Select(e => e.Description));
    }

    private static void Truth(string series, string level, string quantity, double ours)
    {
        var row = ReferenceTable.Read("design", "demo-seed-1589-values.csv")
            .Single(r => r["series"] == series && r["level"] == level && r["quantity"] == quantity);
        Agree.Relative(1e-9, row.Number("value"), ours, series);
    }

    private static IEnumerable<(string Series, string Level, int Replicate, string Quantity, double Value)> Values()
    {
        for (var i = 0; i < Study.Standards.Readings.Length; i++)
            yield return ("AAS-CAL", Invariant($"{Study.Standards.Readings[i].C} mg/L"), i % 3 + 1, "absorbance", Study.Standards.Readings[i].A);
        for (var i = 0; i < Study.Standards.Blanks.Length; i++)
            yield return ("AAS-BLANK", "0", i + 1, "absorbance", Study.Standards.Blanks[i]);
        foreach (var value in Study.ReadVessels.SelectMany(OfVessel))
            yield return value;
        foreach (var digest in Study.Digests)
            yield return ("DIGEST", "loaded at 20 mg/L", digest.Replicate, "q by digestion mg/g", digest.Uptake);
        foreach (var cycle in Study.Cycles)
            yield return ("REUSE", Invariant($"cycle {cycle.Number}"), cycle.Replicate, "q mg/g", cycle.Uptake);
        foreach (var vessel in Study.Sensor.Quenching)
            yield return ("FLUOR", Invariant($"{vessel.Quencher} umol/L"), vessel.Replicate, "intensity", vessel.Read);
        foreach (var (vessel, i) in Study.Sensor.Blanks.Select((v, i) => (v, i)))
            yield return ("FLUOR-BLANK", "0", i + 1, "intensity", vessel.Read);
        foreach (var spike in Study.Sensor.Spikes)
            yield return ("SPIKE", Invariant($"{spike.Series["SPIKE-".Length..]} + {spike.Added} umol/L"), spike.Replicate, "found umol/L", spike.Read);
    }

    private static IEnumerable<(string Series, string Level, int Replicate, string Quantity, double Value)> OfVessel(Vessel vessel)
    {
        var portion = vessel.Portion!;
        for (var i = 0; i < portion.Readings.Length; i++)
            yield return (vessel.Stream, vessel.Level, vessel.Replicate, Invariant($"absorbance reading {i + 1} (dilution {portion.Dilution})"), portion.Readings[i]);
        yield return (vessel.Stream, vessel.Level, vessel.Replicate, "measured concentration mg/L", portion.Concentration);
        if (vessel.Stream is "DOSE" or "PH")
            yield return (vessel.Stream, vessel.Level, vessel.Replicate, "removal %", vessel.Removal!.Value);
        else if (vessel.Stream is "PH-BLANK")
            yield return (vessel.Stream, vessel.Level, vessel.Replicate, "loss %", vessel.Removal!.Value);
        else if (!vessel.Stream.StartsWith("WATER", StringComparison.Ordinal))
            yield return (vessel.Stream, vessel.Level, vessel.Replicate, "q mg/g", vessel.Uptake!.Value);
    }
}
