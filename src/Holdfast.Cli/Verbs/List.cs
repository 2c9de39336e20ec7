using System.CommandLine;
using System.Globalization;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli.Verbs;

/// <summary>What the study holds.</summary>
internal sealed class List : IVerb
{
    public int Place => 30;

    public IReadOnlyList<string> Examples => ["holdfast list", "holdfast list readings --as csv"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "not a study")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var what = new Argument<string>("what") { Description = "samples, readings, measurements, daybook, meanings (what a column of a file can be said to hold), or techniques (of characterisation of the powder)", DefaultValueFactory = _ => "samples" };
        what.AcceptOnlyFromAmong("samples", "readings", "measurements", "daybook", "meanings", "techniques");
        var command = options.On(new Command("list", "list samples, readings, measurements, the Daybook, the meanings a column can have, or the techniques") { what });
        command.SetAction(parsed =>
        {
            var form = parsed.GetValue(options.As)!;
            if (parsed.GetValue(what) is "meanings" or "techniques")
            {
                Printed.Write(parsed.GetValue(what) is "meanings" ? MeaningTable.All : TechniqueTable.All, form, door.Out);
                return Exit.Done;
            }

            using var study = options.Read(parsed, door);
            switch (parsed.GetValue(what))
            {
                case "readings":
                    Printed.Write(SampleTable.Readings(study.Study), form, door.Out);
                    break;
                case "measurements":
                    Printed.Write(MeasurementTable.Of(study.Study), form, door.Out);
                    break;
                case "daybook":
                    Printed.Write(DaybookTable.Of(study.Daybook), form, door.Out);
                    break;
                default:
                    Printed.Write(SampleTable.Of(study.Study), form, door.Out);
                    options.Remark(parsed, door, string.Create(CultureInfo.InvariantCulture, $"samples: {study.Study.Samples.Length}, readings: {study.Study.Readings.Length}"));
                    break;
            }

            return Exit.Done;
        });
        return command;
    }
}
