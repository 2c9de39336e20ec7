using System.Globalization;
using System.Text;

namespace Holdfast.Cli.Tests;

/// <summary>Every verb on studies that say little: none of them ends the program (HF-450), and no part of any falls (HF-451).</summary>
public class FuzzTests
{
    private static readonly string[][] Verbs =
    [
        ["list"], ["list", "readings"], ["list", "daybook", "--as", "json"], ["reduce"], ["reduce", "--as", "json"],
        ["fit", "kinetics", "--resample", "100"], ["fit", "isotherm", "--as", "json"], ["fit", "quenching"],
        ["defend"], ["defend", "--as", "json"], ["trail", "q:V-1"], ["trail", "Ce:I0-1", "--as", "json"], ["trail", "qm:ISO@langmuir"],
        ["find", "ISO"], ["plan"], ["plan", "design", "--show", "capacity", "--seed", "1"], ["margin"], ["limits"], ["cautions", "Pb"],
        ["write", "--html", "chapter.html", "--docx", "chapter.docx", "--pdf", "chapter.pdf", "--latex", "tex", "--xlsx", "workbook.xlsx", "--replace"],
        ["write", "--document", "record", "--html", "report.html", "--csv", "tables", "--figures", "svg", "--replace"],
        ["strike", "K3-1", "--rehearse"], ["strike", "K3-1", "--because", "spilt"], ["defend", "--brief"], ["since", "1"], ["undo"], ["redo"], ["mark", "sent"], ["inspect"],
    ];

    /// <summary>Shapes of studies.</summary>
    public static TheoryData<string> Shapes => [.. OddStudies.Names];

    [Theory, MemberData(nameof(Shapes))]
    public void Verbs_OnAStudyThatSaysLittle_NeverFall(string shape)
    {
        using var line = new Typed();
        line.Begin();
        var fallen = new List<string>();
        line.TakeAsItStands(line.File("vessels.csv", OddStudies.Sheet(shape, seed: 7)));
        Watch(line, ["defend"], fallen);
        foreach (var claim in OddStudies.Claims())
            Watch(line, claim, fallen);
        All(line, fallen);
        Assert.True(fallen.Count == 0, string.Join("\n", fallen));
    }

    [Fact]
    public void Verbs_OnAnEmptyStudy_NeverFall()
    {
        using var line = new Typed();
        line.Begin();
        var fallen = new List<string>();
        All(line, fallen);
        foreach (var claim in OddStudies.Claims())
            Watch(line, claim, fallen);
        All(line, fallen);
        Assert.True(fallen.Count == 0, string.Join("\n", fallen));
    }

    [Theory]
    [InlineData("kinetics", "x,y\n0,10\n5,8\n15,6.1\n30,4.4\n60,3\n120,2.2\n")]
    [InlineData("isotherm", "x,y\n1.2,10.1\n2.3,8.2\n4.1,6.3\n8.4,4.1\n16.2,2.2\n32.7,1.1\n")]
    [InlineData("quenching", "Q (µmol/L),F (a.u.)\n0,1e300\n2,1e-300\n5,1e300\n10,1e-300\n20,1e300\n")]
    [InlineData("quenching", "Q (µmol/L),F (a.u.)\n0,1e-310\n2,1e-311\n5,1e-312\n10,1e-313\n20,1e-314\n")]
    [InlineData("quenching", "Q (µmol/L),F (a.u.)\n1e300,1\n2e300,2\n5e300,1\n7e300,3\n9e300,2\n")]
    [InlineData("kinetics", "x,y\n1e300,1e300\n2e300,2e300\n5e300,1e300\n7e300,3e300\n9e300,2e300\n9.5e300,2e300\n")]
    [InlineData("isotherm", "x,y\n1e-300,1e-300\n2e-300,2e-300\n5e-300,3e-300\n7e-300,3e-300\n9e-300,4e-300\n")]
    [InlineData("isotherm", "x,y\n0,0\n0,0\n0,0\n0,0\n0,0\n0,0\n")]
    [InlineData("isotherm", "x,y\n5,1\n5,2\n5,3\n5,4\n5,5\n5,6\n")]
    public void Fit_OfPointsThatFollowNoCurve_NeverFalls(string family, string text)
    {
        using var line = new Typed();
        var fallen = new List<string>();
        var path = line.File("points.csv", text);
        foreach (var form in new[] { "text", "csv", "json" })
            Watch(line, ["fit", family, path, "--as", form], fallen);
        Watch(line, ["fit", family, path, "--resample", "100"], fallen);
        Assert.True(fallen.Count == 0, string.Join("\n", fallen));
    }

    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void Fit_OfRandomPoints_NeverFalls(int seed)
    {
        var random = new Random(seed);
        using var line = new Typed();
        var fallen = new List<string>();
        for (var round = 0; round < 8; round++)
        {
            var text = new StringBuilder();
            var n = random.Next(0, 12);
            for (var i = 0; i < n; i++)
                text.Append(CultureInfo.InvariantCulture, $"{Number(random)},{Number(random)}\n");
            foreach (var (family, head) in new[] { ("kinetics", "x,y\n"), ("isotherm", "x,y\n"), ("quenching", "Q (µmol/L),F (a.u.)\n") })
                Watch(line, ["fit", family, line.File("points.csv", head + text)], fallen);
        }

        Assert.True(fallen.Count == 0, string.Join("\n", fallen));
    }

    private static double Number(Random random) => random.Next(5) switch
    {
        0 => 0,
        1 => -random.NextDouble(),
        2 => Math.Pow(10, random.Next(-12, 12)),
        _ => 100 * random.NextDouble(),
    };

    private static void All(Typed line, List<string> fallen)
    {
        foreach (var words in Verbs)
            Watch(line, words, fallen);
        var report = Path.Combine(line.Folder, "report.html");
        foreach (var written in Directory.EnumerateFiles(line.Folder, "*", SearchOption.AllDirectories).Where(f => f.EndsWith(".html", StringComparison.Ordinal) || f.EndsWith(".csv", StringComparison.Ordinal)))
        {
            if (Fallen(File.ReadAllText(written)) is { } where)
                fallen.Add($"{Path.GetRelativePath(line.Folder, written)}: {where}");
        }

        if (!File.Exists(report))
            fallen.Add("no report was written");
    }

    // A part that fell, or a number that is none, with the words around it; the typeface in a report is letters by chance.
    private static string? Fallen(string text)
    {
        text = text.Replace("NaNO", "", StringComparison.Ordinal);
        foreach (var what in new[] { "HF-451", "NaN", "∞", "Infinity" })
        {
            for (var at = text.IndexOf(what, StringComparison.Ordinal); at >= 0; at = text.IndexOf(what, at + 1, StringComparison.Ordinal))
            {
                if (!Base64(text, at - 1) && !Base64(text, at + what.Length))
                    return text[Math.Max(0, at - 200)..Math.Min(text.Length, at + 300)];
            }
        }

        return null;

        static bool Base64(string text, int at) => at >= 0 && at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '+' or '/');
    }

    private static void Watch(Typed line, string[] words, List<string> fallen)
    {
        var code = line.Type(words);
        var all = line.Out + line.Error;
        if (code == Exit.Fault)
            fallen.Add($"{string.Join(' ', words)}: exit {code}: {line.Error} {Report(line.Error)}");
        else if (Fallen(all) is { } where)
            fallen.Add($"{string.Join(' ', words)}: {where}");
    }

    // What a fault wrote beside the message, so that a failing test says where it fell.
    private static string Report(string error)
    {
        var at = error.IndexOf("The details are in ", StringComparison.Ordinal);
        var path = at < 0 ? "" : error[(at + "The details are in ".Length)..].Trim().TrimEnd('.');
        return File.Exists(path) ? string.Join(" | ", File.ReadLines(path).Take(6)) : "";
    }
}
