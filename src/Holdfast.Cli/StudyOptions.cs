using System.CommandLine;
using Holdfast.Studies.Store;

namespace Holdfast.Cli;

/// <summary>The options that every verb on a study has.</summary>
internal sealed class StudyOptions
{
    /// <summary>The study's folder.</summary>
    public Option<string> Study { get; } = new("--study") { Description = "the study's folder; the current folder when left out" };

    /// <summary>Form of the output.</summary>
    public Option<string> As { get; } = FormOption();

    /// <summary>Only results, no remarks.</summary>
    public Option<bool> Quiet { get; } = new("--quiet") { Description = "results only, no remarks" };

    /// <summary>Adds the options to a command and returns it.</summary>
    /// <param name="command">The command.</param>
    public Command On(Command command)
    {
        command.Options.Add(Study);
        command.Options.Add(As);
        command.Options.Add(Quiet);
        return command;
    }

    /// <summary>The study opened for reading.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="door">The world.</param>
    public StudyFolder Read(ParseResult parsed, Door door) => StudyFolder.OpenToRead(Folder(parsed, door));

    /// <summary>The study opened for writing.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="door">The world.</param>
    public StudyFolder Write(ParseResult parsed, Door door)
    {
        var study = StudyFolder.Open(Folder(parsed, door), door.Clock);
        study.Amending = door.Amending;
        return study;
    }

    /// <summary>Ends the writing after an entry was kept. What could not be refreshed beside the history is a remark: the entry stands.</summary>
    /// <param name="study">The study.</param>
    /// <param name="door">The world.</param>
    public static void Close(StudyFolder study, Door door)
    {
        foreach (var remark in study.Close())
            door.Error.WriteLine($"{remark.Code} {remark.Sentence}");
    }

    /// <summary>The study's folder.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="door">The world.</param>
    public string Folder(ParseResult parsed, Door door)
        => parsed.GetValue(Study) is { Length: > 0 } named ? Path.GetFullPath(named, door.Folder) : door.Folder;

    /// <summary>A remark for the person, on the error stream so that results can be piped.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="door">The world.</param>
    /// <param name="sentence">The remark.</param>
    public void Remark(ParseResult parsed, Door door, string sentence)
    {
        if (!parsed.GetValue(Quiet))
            door.Error.WriteLine(sentence);
    }

    /// <summary>The form of the output: "text", "csv" or "json".</summary>
    public static Option<string> FormOption()
    {
        var form = new Option<string>("--as") { Description = "text, csv or json", DefaultValueFactory = _ => "text" };
        form.AcceptOnlyFromAmong("text", "csv", "json");
        return form;
    }
}
