using System.CommandLine;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>What changed since a moment of the Daybook: for whoever looks at a study again.</summary>
internal sealed class Since : IVerb
{
    public int Place => 46;

    public IReadOnlyList<string> Examples => ["holdfast since \"sent to supervisor\"", "holdfast since 12 --as json"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no such moment")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var moment = new Argument<string>("moment") { Description = "name of a moment, or number of an entry" };
        var command = options.On(new Command("since", "what changed since a moment of the Daybook") { moment });
        command.SetAction(parsed =>
        {
            using var study = options.Read(parsed, door);
            var wanted = parsed.GetValue(moment)!.Trim();
            var from = study.Daybook.Entries.LastOrDefault(e => e.Change is Marked mark && string.Equals(mark.Name, wanted, StringComparison.OrdinalIgnoreCase))
                ?? (long.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? study.Daybook.Entries.FirstOrDefault(e => e.Number == number) : null);
            if (from is null)
            {
                door.Error.WriteLine($"The Daybook knows no moment “{wanted}” and no entry of that number. holdfast list daybook shows them.");
                return Exit.NoSuchThing;
            }

            var changes = WorkingComparison.Of(Dossier.Of(study.Daybook.At(from.Number).Study), Dossier.Of(study.Study));
            if (changes.IsEmpty)
                door.Out.WriteLine("No claim, finding or mean is different now.");
            else
                Printed.Write(changes.AsTable("then", "now"), parsed.GetValue(options.As)!, door.Out);
            foreach (var entry in study.Daybook.Entries.Where(e => e.Number > from.Number))
                options.Remark(parsed, door, string.Create(CultureInfo.InvariantCulture, $"{entry.Number}  {entry.When:yyyy-MM-dd HH:mm}  {entry.Who}: {entry.Change.Says()}"));
            return Exit.Done;
        });
        return command;
    }
}
