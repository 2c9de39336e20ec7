using System.Text.RegularExpressions;

namespace Holdfast.Cli.Tests;

/// <summary>What the program advises is typed back to it, word for word: it must be understood, and an answer that nothing asks for must be refused by name.</summary>
public class SuggestionTests
{
    // "answer with --answer "Q=A|B"", "unit:C0=mg/L", "Answer sheet:Notes=take", "holdfast take -h".
    private static readonly Regex Offered = new("--answer \"(?<question>[^\"=]+)=(?<answers>[^\"]+)\"", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture);
    private static readonly Regex Advised = new(@"(?<question>(unit|sheet|column|match|role|values|row|rows):[^=\n]{1,60})=(?<answers>[^\s,;()]+)", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture);

    /// <summary>Files that raise questions or advice of every kind: no unit, an unknown unit, ppm, a comma, a date, a role, a struck-out code, two signals.</summary>
    public static TheoryData<string> Files =>
    [
        "sample,Intensity (V)\nB1,10\nB2,12\n",
        "sample,Intensity\nB1,10\nB2,12\n",
        "sample,intensity (furlong),quencher (µmol/L)\nB1,10,0\nB2,12,5\n",
        "sample,m,V,C0\nV-1,20,25,40\nV-2,20,25,40\n",
        "sample,m (mg),V (mL),C0 (ppm)\nV-1,20,25,40\nV-2,20,25,40\n",
        "sample,m (mg),V (mL),C0 (blub)\nV-1,20,25,40\n",
        "sample;m (mg);V (mL);C0 (mg/L)\nV-1;1,234;25;40\nV-2;1.234;25;40\n",
        "sample,role,m (mg),V (mL),C0 (mg/L)\nV-1,wizard,20,25,40\nV-2,vessel,20,25,40\n",
        "sample,date,m (mg),V (mL),C0 (mg/L)\nV-1,03/04/2026,20,25,40\n",
        "sample,m (mg),V (mL),C0 (mg/L)\nV-1,20,25,40\nV-1,30,25,40\n,30,25,40\n",
        "sample,m (mg),V (mL),C0 (mg/L)\nV-1,20,25,40,9,9\nV-2,20,25,40\n",
        "sample,m (mg),V (mL),C0 (mg/L),pH start\nV-1,-20,25,40,19\nV-2,20,25,40,6\n",
        "sample,abs,dilution\nB7,0.1,0.5\nB8,0.2,2\n",
        "label,Abs\nB7,0.1\nB8,0.2\n",
        "wavelength,B1,B2\n500,1,2\n501,2,3\n502,3,4\n503,2,3\n504,1,2\n",
        "wavelength (nm),B1,B2\n500,1,2\n501,2,3\n502,3,4\n503,2,3\n504,1,2\n",
        "Ce,q\n1,2\n2,3\n3,4\n",
    ];

    [Theory, MemberData(nameof(Files))]
    public void Advice_TypedBack_IsUnderstood(string text)
    {
        using var line = new Typed();
        line.Begin();
        var path = line.File("file.csv", text);
        var odd = new List<string>();
        line.Type("take", path, "--rehearse");
        var said = line.Out + line.Error;
        foreach (var advice in Suggestions(said))
        {
            var code = line.Type("take", path, "--rehearse", "--answer", advice);
            var all = line.Out + line.Error;
            if (code is not (Exit.Done or Exit.NeedsDecision) || all.Contains("is no answer to", StringComparison.Ordinal)
                || all.Contains("Nothing in these files asks for", StringComparison.Ordinal) || all.Contains("HF-45", StringComparison.Ordinal))
                odd.Add($"{advice}: exit {code}: {all}");
        }

        Assert.True(odd.Count == 0, string.Join("\n", odd));
    }

    // What taking a file of the powder in says to look at next is there to be looked at.
    [Fact]
    public void TablesOfferedAfterAFileIsTaken_ArePrinted()
    {
        using var line = new Typed();
        line.Begin();
        var lines = string.Concat(new[] { "25.88;3.4401;40", "31.77;2.8143;100", "32.20;2.7777;60", "32.90;2.7202;65", "34.05;2.6309;25", "39.82;2.2619;20" }.Select(l => l + "\n"));
        Assert.Equal(Exit.Done, line.Type("take", line.File("EHA-2.csv", "lines of EHA-2\n2theta;d (A);I\n" + lines)));
        var offered = Regex.Matches(line.Out, "holdfast reduce (?<table>[a-z-]+)").Select(m => m.Groups["table"].Value).ToArray();
        Assert.NotEmpty(offered);
        Assert.All(offered, t => Assert.Equal(Exit.Done, line.Type("reduce", t)));
    }

    [Theory, MemberData(nameof(Files))]
    public void AnswersNobodyKnows_AreRefusedByName(string text)
    {
        using var line = new Typed();
        line.Begin();
        var path = line.File("file.csv", text);
        line.Type("take", path, "--rehearse");
        var questions = Suggestions(line.Out + line.Error).Select(s => s[..s.IndexOf('=', StringComparison.Ordinal)]).Distinct().ToArray();
        foreach (var question in (string[])[.. questions, "column:" + text.Split(',', ';', '\n')[1].Split(' ')[0], "column:nothing", "unit:nothing", "foo", "sheet:foo", "decimal"])
        {
            var code = line.Type("take", path, "--answer", question + "=frobnicate");
            Assert.True(code is Exit.NeedsDecision or Exit.NotUnderstood, $"{question}: exit {code} {line.Out}{line.Error}");
            Assert.DoesNotContain("HF-45", line.Out + line.Error, StringComparison.Ordinal);
        }

        line.Type("list", "daybook");
        Assert.DoesNotContain("take in", line.Out, StringComparison.Ordinal);
    }

    // Every command that any message names, in a study and outside one, is a verb with options that it has.
    [Fact]
    public void CommandsNamedInTheSource_AreVerbsWithTheirOptions()
    {
        var named = new Regex(@"holdfast (?<verb>[a-z][a-z-]+)(?<rest>( --?[a-z-]+)*)", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture);
        var door = new Door(TextWriter.Null, TextWriter.Null, TimeProvider.System, "", "", false);
        var verbs = CommandLine.Verbs.Select(v => v.Command(door)).ToDictionary(c => c.Name, StringComparer.Ordinal);
        var wrong = new List<string>();
        var found = 0;
        foreach (var file in Directory.EnumerateFiles(Testing.Repository.Path("src"), "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains("/obj/", StringComparison.Ordinal)))
        {
            foreach (Match match in named.Matches(File.ReadAllText(file)))
            {
                found++;
                if (match.Groups["verb"].Value == "has")
                    continue;
                if (!verbs.TryGetValue(match.Groups["verb"].Value, out var command))
                    wrong.Add($"{Path.GetFileName(file)}: {match.Value}");
                else
                    wrong.AddRange(match.Groups["rest"].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(o => o != "-h" && command.Options.All(k => k.Name != o)).Select(o => $"{Path.GetFileName(file)}: {match.Value}: no option {o}"));
            }
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        Assert.InRange(found, 20, int.MaxValue);
    }

    private static string[] Suggestions(string said)
        => [.. Offered.Matches(said).SelectMany(m => m.Groups["answers"].Value.Split('|').Where(a => a != "…").Select(a => $"{m.Groups["question"].Value}={a}"))
            .Concat(Advised.Matches(said).SelectMany(m => m.Groups["answers"].Value.TrimEnd('.', '"').Split('|').Where(a => a != "CODE").Select(a => $"{m.Groups["question"].Value}={a}")))
            .Distinct(StringComparer.Ordinal)];
}
