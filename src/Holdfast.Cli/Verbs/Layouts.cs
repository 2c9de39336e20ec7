using System.CommandLine;
using System.Globalization;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>What was answered about the layouts of files.</summary>
internal sealed class Layouts : IVerb
{
    public int Place => 25;

    public IReadOnlyList<string> Examples => ["holdfast layouts", "holdfast layouts --forget 1"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no such layout"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var forget = new Option<int?>("--forget") { Description = "number of a layout whose questions are to be asked again" };
        var command = options.On(new Command("layouts", "answers remembered for files of the same headings") { forget });
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(forget) is not { } number)
            {
                using var read = options.Read(parsed, door);
                if (read.Study.Layouts.IsEmpty)
                    options.Remark(parsed, door, "Nothing is remembered: no file asked anything that holds for the next.");
                Printed.Write(LayoutTable.Of(read.Study), parsed.GetValue(options.As)!, door.Out);
                return Exit.Done;
            }

            using var study = options.Write(parsed, door);
            if (number < 1 || number > study.Study.Layouts.Count)
            {
                door.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"There is no layout {number}; holdfast layouts numbers the {study.Study.Layouts.Count} that are remembered."));
                return Exit.NoSuchThing;
            }

            var entry = study.Append(study.Daybook.Version, door.Who, new LayoutForgotten(study.Study.Layouts.Keys.ElementAt(number - 1)))[0];
            study.Close();
            door.Out.WriteLine(entry.Change.Says() + ": its questions are asked again. holdfast undo takes it back.");
            return Exit.Done;
        });
        return command;
    }
}
