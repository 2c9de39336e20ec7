using System.Globalization;
using System.Text.Json;

namespace Holdfast.Cli.Tests;

public class DemoTests
{

    [Fact]
    public void Demo_InAnEmptyFolder_EndsWithVerdictsAndAReport()
    {
        using var line = new Typed();
        Assert.Equal(Exit.Done, line.Type("demo"));
        Assert.Contains("INVENTED demo data", line.Out, StringComparison.Ordinal);
        Assert.Contains("not shown yet   Equilibrium is reached within 120 min at 20 mg/L.", line.Out, StringComparison.Ordinal);
        Assert.Contains("holds           Equilibrium is reached within 120 min at 5 mg/L.", line.Out, StringComparison.Ordinal);
        var report = Path.Combine(line.Folder, "holdfast-demo", "report.html");
        Assert.Contains(report, line.Out, StringComparison.Ordinal);
        Assert.Contains("Invented demo data", File.ReadAllText(report), StringComparison.Ordinal);
    }

    [Fact]
    public void Demo_Twice_OpensTheStudyThatIsThere()
    {
        using var line = new Typed();
        line.Type("demo");
        Assert.Equal(Exit.Done, line.Type("demo"));
        Assert.Contains("there already", line.Out, StringComparison.Ordinal);
    }

    // design.md decision 11: same study, same bytes, whatever the machine's language.
    [Fact]
    public void Outputs_InAnotherCulture_AreTheSameBytes()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        var plain = AllOutputs(line);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal(plain, AllOutputs(line));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static string[] AllOutputs(Typed line)
            => [.. new[] { "defend --as json", "reduce", "fit isotherm --as csv", "trail q:ISO-20-1" }
                .Select(words =>
                {
                    line.Type(words.Split(' '));
                    return line.Out;
                })];
    }

    [Fact]
    public void Json_OfEveryVerb_ParsesWithItsSchemaAndHoldsNoNaN()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        foreach (var words in new[] { "defend", "reduce", "fit kinetics", "fit isotherm", "trail q:ISO-20-1", "list", "list readings", "list daybook" })
        {
            line.Type([.. words.Split(' '), "--as", "json", "--quiet"]);
            using var json = JsonDocument.Parse(line.Out);
            Assert.Equal("holdfast/1", json.RootElement.GetProperty("schema").GetString());
            Assert.DoesNotMatch(@"\bNaN\b|Infinity|∞", line.Out);
        }
    }

    [Fact]
    public void Strike_ThenUndo_BringsEveryNumberBack()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        line.Type("reduce", "ISO-298", "--as", "json");
        var before = line.Out;
        Assert.Equal(Exit.Done, line.Type("strike", "ISO-20-1", "--because", "stopper leaked"));
        line.Type("reduce", "ISO-298", "--as", "csv");
        Assert.Contains("ISO-20-1", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("undo"));
        line.Type("reduce", "ISO-298", "--as", "json");
        Assert.Equal(before, line.Out);
        line.Type("list", "daybook");
        Assert.Contains("strike ISO-20-1", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Strike_RehearsedThenDone_ChangesWhatTheRehearsalSaid()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        Assert.Equal(Exit.NoSuchThing, line.Type("strike", "V-99", "--rehearse"));
        Assert.Equal(Exit.Done, line.Type("strike", "K20-120-1", "--rehearse", "--as", "csv"));
        var rehearsed = line.Out;
        Assert.Contains("KIN-20", rehearsed, StringComparison.Ordinal);
        line.Type("list", "daybook");
        Assert.DoesNotContain("strike K20-120-1", line.Out, StringComparison.Ordinal);
        line.Type("mark", "before the strike");
        line.Type("strike", "K20-120-1", "--because", "stopper leaked");
        Assert.Equal(Exit.Done, line.Type("since", "before the strike", "--as", "csv"));
        Assert.Equal(rehearsed.Split('\n')[1..], line.Out.Split('\n')[1..]);
        Assert.Contains("strike K20-120-1", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NoSuchThing, line.Type("since", "never"));
    }

    [Fact]
    public void Write_Everything_GivesReportTablesAndFiguresOnce()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        Assert.Equal(Exit.Done, line.Type("write", "--html", "r.html", "--csv", "tables", "--figures", "svg,pdf", "--width", "85,174"));
        Assert.True(File.Exists(Path.Combine(line.Folder, "r.html")));
        Assert.Equal(Exit.Done, line.Type("write", "--docx", "chapter.docx", "--xlsx", "workbook.xlsx"));
        Assert.Equal(Exit.Done, line.Type("write", "--document", "record", "--docx", "record.docx", "--html", "record.html"));
        Assert.Contains("Every vessel", File.ReadAllText(Path.Combine(line.Folder, "record.html")), StringComparison.OrdinalIgnoreCase);
        // The first bytes of every zip package (APPNOTE 4.3.7).
        Assert.All(["chapter.docx", "record.docx", "workbook.xlsx"], f => Assert.Equal("PK\u0003\u0004"u8.ToArray(), File.ReadAllBytes(Path.Combine(line.Folder, f))[..4]));
        Assert.NotEqual(Exit.Done, line.Type("write", "--document", "thesis", "--docx", "t.docx"));
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(line.Folder, "tables"), "*.csv"));
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(line.Folder, "figures"), "*-85mm.svg"));
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(line.Folder, "figures"), "*-174mm.pdf"));
        Assert.Equal(Exit.NeedsDecision, line.Type("write", "--html", "r.html"));
        Assert.Contains("is there already", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Reduce_AStruckVessel_KeepsItsRowAndSaysSo()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        line.Type("strike", "K20-120-1", "--because", "stopper leaked");
        Assert.Equal(Exit.Done, line.Type("reduce", "KIN-20"));
        Assert.Contains("K20-120-1 (struck)", line.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("K20-120-2 (struck)", line.Out, StringComparison.Ordinal);
        line.Type("reduce", "KIN-20", "--as", "json");
        using var json = System.Text.Json.JsonDocument.Parse(line.Out);
        var struck = Assert.Single(json.RootElement.GetProperty("rows").EnumerateArray(), r => r.TryGetProperty("struck", out _));
        Assert.Equal("K20-120-1", struck.GetProperty("sample").GetString());
    }
}
