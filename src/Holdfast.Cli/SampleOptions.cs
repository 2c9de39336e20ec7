using System.Collections.Immutable;
using System.CommandLine;
using Holdfast.Studies;
using Holdfast.Studies.Acts;

namespace Holdfast.Cli;

/// <summary>The options that say which samples a verb is about.</summary>
internal sealed class SampleOptions
{
    private readonly Option<string> series = new("--series") { Description = "all samples of one series" };
    private readonly Option<string> samples = new("--samples") { Description = "codes, with commas between; * for any letters: KIN-20-*" };
    private readonly Option<string> file = new("--file") { Description = "all samples that one file brought" };

    /// <summary>Adds the options to a command and returns it.</summary>
    /// <param name="command">The command.</param>
    public Command On(Command command)
    {
        command.Options.Add(series);
        command.Options.Add(samples);
        command.Options.Add(file);
        return command;
    }

    /// <summary>True when none of them is given.</summary>
    /// <param name="parsed">The command line.</param>
    public bool AreLeftOut(ParseResult parsed) => parsed.GetValue(series) is null && parsed.GetValue(samples) is null && parsed.GetValue(file) is null;

    /// <summary>The samples that are meant.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="study">The study.</param>
    /// <param name="trouble">What is wrong with the choice; "" when nothing is.</param>
    public ImmutableArray<Sample> In(ParseResult parsed, Study study, out string trouble)
        => new SampleSelection(parsed.GetValue(series), Codes(parsed.GetValue(samples) is { } list ? [list] : []), parsed.GetValue(file) is { } path ? Path.GetFileName(path) : null)
            .In(study, out trouble);

    /// <summary>Codes as typed, one by one or with commas between.</summary>
    /// <param name="words">What was typed.</param>
    public static ImmutableArray<string> Codes(IEnumerable<string> words)
        => [.. words.SelectMany(w => w.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
}
