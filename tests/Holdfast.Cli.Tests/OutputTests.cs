using System.Text.Json;
using System.Text.RegularExpressions;

namespace Holdfast.Cli.Tests;

/// <summary>What programs read: JSON as docs/output.schema.json says, advice that one person can follow, and what cannot be said first.</summary>
public class OutputTests
{
    private static readonly string[][] Verbs =
    [
        ["reduce"], ["fit", "kinetics"], ["fit", "isotherm"], ["fit", "isotherm", "--resample", "100"], ["defend"], ["trail", "q:K3-1"], ["list"], ["list", "readings"], ["list", "daybook"], ["plan"],
        ["plan", "design", "--show", "capacity", "--show", "optimum-ph"], ["plan", "settings"], ["limits", "Pb"],
    ];

    [Theory, InlineData("flat"), InlineData("random"), InlineData("exact"), InlineData("censored"), InlineData("one-vessel"), InlineData("no-readings")]
    public void Json_OfEveryVerb_IsAsTheSchemaSays(string shape)
    {
        using var line = new Typed();
        line.Begin();
        line.TakeAsItStands(line.File("vessels.csv", OddStudies.Sheet(shape, seed: 5)));
        Hold(line, Verbs);
    }

    [Fact]
    public void Json_OfTheDemo_IsAsTheSchemaSays()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        Hold(line, [["reduce"], ["fit", "kinetics"], ["fit", "isotherm"], ["fit", "quenching"], ["defend"], ["trail", "q:ISO-20-1"], ["trail", "dH:TEMP-298"], ["list"]]);

        // The layout that other programs rely on: rows with these names, each a number with value and unit.
        line.Type("reduce", "ISO-298", "--as", "json");
        using var table = JsonDocument.Parse(line.Out);
        var row = table.RootElement.GetProperty("rows")[0];
        Assert.Equal("ISO-02-1", row.GetProperty("sample").GetString());
        Assert.Equal("ISO-298", row.GetProperty("series").GetString());
        Assert.Equal("vessel", row.GetProperty("role").GetString());
        foreach (var (name, unit) in new[] { ("ce", "mg/L"), ("removal", "%"), ("q", "mg/g"), ("t", "min") })
            Assert.Equal(unit, row.GetProperty(name).GetProperty("unit").GetString());
        var q = row.GetProperty("q");
        Assert.Equal(0.95, q.GetProperty("level").GetDouble());
        Assert.InRange(q.GetProperty("value").GetDouble(), q.GetProperty("low").GetDouble(), q.GetProperty("high").GetDouble());
        Assert.True(q.GetProperty("high").GetDouble() - q.GetProperty("value").GetDouble() > 1.9 * q.GetProperty("u").GetDouble());
    }

    // A puzzle of its own kind: a curve far from its points has no interval, and says why.
    [Fact]
    public void Json_OfAParameterThatIsNotDetermined_IsNullAndSaysWhy()
    {
        using var line = new Typed();
        line.Type("fit", "isotherm", line.File("points.csv", "x,y\n1.2,10.1\n2.3,8.2\n4.1,6.3\n8.4,4.1\n16.2,2.2\n32.7,1.1\n"), "--as", "json");
        using var json = JsonDocument.Parse(line.Out);
        JsonElement[] parameters = [.. json.RootElement.GetProperty("fits").EnumerateArray().SelectMany(f => f.GetProperty("parameters").EnumerateArray())];
        Assert.Contains(parameters, p => p.GetProperty("value").ValueKind == JsonValueKind.Null && p.GetProperty("why").GetString()!.Length > 0);
    }

    // Balance of one vessel: removal = 100·D·q/C0 and Ce = C0 − D·q, whatever the curve (by hand).
    [Fact]
    public void Fit_AskedToPredict_GivesIntervalsThatCloseTheBalance()
    {
        using var line = new Typed();
        line.Begin();
        line.TakeAsItStands(line.File("vessels.csv", OddStudies.Sheet("exact", seed: 5)));
        Assert.Equal(Exit.NotUnderstood, line.Type("fit", "isotherm", "--share", "120"));
        line.Type("fit", "isotherm", "--start", "50", "--dose", "1", "--as", "json");
        using var json = JsonDocument.Parse(line.Out);
        var predictions = json.RootElement.GetProperty("fits").EnumerateArray().Select(f => f.GetProperty("predictions").EnumerateArray().ToArray()).First(p => p.Length > 0);
        Assert.Equal(6, predictions.Length);
        double q = Value("uptake"), removal = Value("removal"), left = Value("concentration left");
        Assert.Equal(100 * q / 50, removal, 9);
        Assert.Equal(50 - q, left, 9);
        Assert.All(predictions, p => Assert.InRange(p.GetProperty("value").GetDouble(), p.GetProperty("low").GetDouble(), p.GetProperty("high").GetDouble()));

        double Value(string quantity) => predictions.First(p => p.GetProperty("quantity").GetString() == quantity).GetProperty("value").GetDouble();
    }

    [Theory]
    [InlineData("V-1,KIN,0.02,25,40,60,12", "take up more than 1000 mg/g")]
    [InlineData("V-1,KIN,50000,25,40,60,12", "hold more than 60 g/L of powder")]
    [InlineData("V-1,KIN,20,25,40,60,60", "remove less than")]
    [InlineData("V-1,KIN,20,25,40,60,60\nV-2,KIN,20,25,40,90,61\nV-3,KIN,20,25,40,120,62", "C0 and Ce are exchanged")]
    public void ImpossibleResults_AreSaidFirst(string rows, string says)
    {
        using var line = new Typed();
        line.Begin();
        Take(line, rows);
        line.Type("reduce");
        Assert.Contains("HF-453", line.Error.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains(says, line.Error, StringComparison.Ordinal);
        line.Type("write", "--html", "report.html");
        var report = File.ReadAllText(Path.Combine(line.Folder, "report.html"));
        Assert.InRange(report.IndexOf("Look at this first", StringComparison.Ordinal), 1, report.IndexOf("HF-453", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("V-1,KIN,20,25,40,60,12")]
    [InlineData("V-1,KIN,1500,25,40,60,12")]
    [InlineData("V-1,KIN,20,25,40,60,43.9")]
    public void PossibleResults_OnTheNearSideOfEachLimit_AreLeftAlone(string rows)
    {
        using var line = new Typed();
        line.Begin();
        Take(line, rows);
        line.Type("reduce");
        Assert.DoesNotContain("HF-453", line.Error, StringComparison.Ordinal);
    }

    // Twenty-four vessels a claim is written once, as the margin "effort"; a study may fix another.
    [Fact]
    public void Advice_BeyondWhatOnePersonCanRun_SaysWhatScatterWouldDo()
    {
        var vessels = new Regex("\"vessels\": (?<n>[0-9]+)", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture);
        using var line = new Typed();
        line.Begin();
        line.TakeAsItStands(line.File("vessels.csv", OddStudies.Sheet("random", seed: 3)));
        foreach (var claim in OddStudies.Claims())
            line.Type(claim);
        line.Type("claim", "equilibrium-reached", "series=KIN", "time=40 min");
        line.Type("claim", "optimum-dose", "series=DOSE", "dose=1.2 g/L");
        line.Type("defend", "--as", "json");
        Assert.Contains("Not decidable with this scatter", line.Out, StringComparison.Ordinal);
        Assert.Contains("and one person runs 24 for a claim", line.Out, StringComparison.Ordinal);
        line.Type("margin", "effort", "--from", "1", "--to", "100000");
        line.Type("defend", "--as", "json");
        Assert.DoesNotContain("Not decidable with this scatter", line.Out, StringComparison.Ordinal);
        Assert.Contains(vessels.Matches(line.Out), m => int.Parse(m.Groups["n"].Value, System.Globalization.CultureInfo.InvariantCulture) > 24);
    }

    private static void Take(Typed line, string rows)
        => line.TakeAsItStands(line.File("v.csv", "sample,series,m (mg),V (mL),C0 (mg/L),t (min),Ce (mg/L)\n" + rows + "\n"));

    private static void Hold(Typed line, IEnumerable<string[]> verbs)
    {
        var schema = new Schema();
        var odd = new List<string>();
        foreach (var words in verbs)
        {
            line.Type([.. words, "--as", "json"]);
            if (line.Out.Length > 0)
                odd.AddRange(schema.Odd(line.Out).Take(5).Select(o => $"{string.Join(' ', words)}: {o}"));
        }

        Assert.True(odd.Count == 0, string.Join("\n", odd));
    }
}
