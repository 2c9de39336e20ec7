using System.Diagnostics;
using Holdfast.Cli.Shells;

namespace Holdfast.Cli.Tests;

/// <summary>Completions and the manual page say what the verbs are defined to take, no more and no less.</summary>
public class ShellTests
{
    private static readonly Door Nowhere = new(TextWriter.Null, TextWriter.Null, TimeProvider.System, "", "", false);

    [Theory, InlineData("bash"), InlineData("zsh"), InlineData("fish")]
    public void Complete_EachShell_NamesEveryVerbOptionAndChoice(string shell)
    {
        using var line = new Typed();
        Assert.Equal(Exit.Done, line.Type("complete", shell));
        foreach (var verb in VerbWords.All(Nowhere))
        {
            Assert.Contains(verb.Name, line.Out, StringComparison.Ordinal);
            foreach (var option in verb.Options)
                Assert.Contains(shell == "fish" ? "-l " + option.Name[2..] : option.Name, line.Out, StringComparison.Ordinal);
        }

        Assert.Contains("csv json text", line.Out, StringComparison.Ordinal);
        Assert.Contains("samples techniques", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Complete_AnUnknownShell_IsNotUnderstood()
    {
        using var line = new Typed();
        Assert.Equal(Exit.NotUnderstood, line.Type("complete", "abacus"));
        Assert.Contains("bash", line.Error, StringComparison.Ordinal);
        Assert.Empty(line.Out);
    }

    [Theory]
    [InlineData("def", "defend")]
    [InlineData("list --as c", "csv")]
    [InlineData("list tech", "techniques")]
    [InlineData("fit --res", "--resample")]
    [InlineData("complete f", "fish")]
    [InlineData("take some.cs", "")]
    public void Bash_WhatIsTypedHalf_IsCompleted(string typed, string expected)
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "There is no bash here.");
        var words = typed.Split(' ').Prepend("holdfast").ToArray();
        var script = ShellCompletion.Script("bash", VerbWords.All(Nowhere))
            + $"COMP_WORDS=({string.Join(' ', words)}); COMP_CWORD={words.Length - 1}; _holdfast_words; echo \"${{COMPREPLY[*]}}\"\n";
        using var bash = Process.Start(new ProcessStartInfo("/bin/bash") { ArgumentList = { "--norc", "-s" }, UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true })!;
        bash.StandardInput.Write(script);
        bash.StandardInput.Close();
        Assert.Equal(expected, bash.StandardOutput.ReadToEnd().Trim());
        bash.WaitForExit();
        Assert.Equal(0, bash.ExitCode);
    }

    [Fact]
    public void Manual_EveryVerb_StandsWithOptionsExamplesAndExits()
    {
        using var line = new Typed();
        Assert.Equal(Exit.Done, line.Type("manual"));
        var page = line.Out.Replace("\\-", "-", StringComparison.Ordinal).Replace("\\e", "\\", StringComparison.Ordinal);
        Assert.StartsWith(".TH HOLDFAST 1", page, StringComparison.Ordinal);
        foreach (var verb in CommandLine.Verbs)
        {
            var command = verb.Command(Nowhere);
            var at = page.IndexOf($".SS {command.Name}\n", StringComparison.Ordinal);
            Assert.True(at > 0, command.Name);
            var end = page.IndexOf("\n.S", at + 1, StringComparison.Ordinal);
            var section = page[at..end];
            Assert.All(command.Options, o => Assert.Contains($".B \"{o.Name}\"", section, StringComparison.Ordinal));
            Assert.All(verb.Examples, e => Assert.Contains(e, section, StringComparison.Ordinal));
            Assert.All(verb.Exits, e => Assert.Contains($"{e.Code} {e.Meaning}", section, StringComparison.Ordinal));
        }
    }

    // A line that begins with a point is a request; one the formatter does not know would swallow the words behind it.
    [Fact]
    public void Manual_Requests_AreThoseOfManualPages()
        => Assert.All(
            ManualPage.Of("0", Nowhere).Split('\n').Where(l => l.StartsWith('.') || l.StartsWith('\'')),
            l => Assert.Contains(l.Split(' ')[0], (string[])[".TH", ".SH", ".SS", ".TP", ".PP", ".B", ".I", ".RI", ".nf", ".fi"]));
}
