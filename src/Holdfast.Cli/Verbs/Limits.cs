using System.CommandLine;
using Holdfast.Composition;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Store;
using Holdfast.WaterLimits;

namespace Holdfast.Cli.Verbs;

/// <summary>Limits for a metal in water.</summary>
internal sealed class Limits : IVerb
{
    public int Place => 72;

    public IReadOnlyList<string> Examples => ["holdfast limits Ni", "holdfast limits --as csv"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no limit is listed for this metal")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var metal = new Argument<string?>("metal") { Description = "symbol of the metal, or all; that of the study when left out", DefaultValueFactory = _ => null };
        var command = options.On(new Command("limits", "limits for a metal in water, to name in a claim") { metal });
        command.SetAction(parsed =>
        {
            var named = parsed.GetValue(metal) ?? OfStudy(options.Folder(parsed, door));
            var element = named is null or "all" ? null : Element.Find(named)?.Symbol ?? named;
            if (element is not null && WaterLimit.Of(element).Count == 0)
            {
                door.Error.WriteLine($"No limit is listed for {element}. Listed: {string.Join(", ", WaterLimit.All.Select(l => l.Element).Distinct())}.");
                return Exit.NoSuchThing;
            }

            Printed.Write(LimitTable.Of(element), parsed.GetValue(options.As)!, door.Out);
            options.Remark(parsed, door, WaterLimit.Reservation);
            return Exit.Done;
        });
        return command;
    }

    private static string? OfStudy(string folder)
    {
        if (!File.Exists(Path.Combine(folder, "study.db")))
            return null;
        using var study = StudyFolder.OpenToRead(folder);
        return study.Study.Analyte;
    }
}
