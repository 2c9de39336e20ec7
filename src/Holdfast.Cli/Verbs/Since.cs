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
            var wanted = parsed.GetValue(moment)!;
            if (Moment(study.Daybook, wanted) is not { } from)
                return NoMoment(wanted, door);

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

    /// <summary>The entry that a name of a moment, or a number, names; null for none.</summary>
    /// <param name="daybook">The history.</param>
    /// <param name="wanted">As typed.</param>
    internal static Entry? Moment(Daybook daybook, string wanted)
        => daybook.Entries.LastOrDefault(e => e.Change is Marked mark && string.Equals(mark.Name, wanted.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? (long.TryParse(wanted.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? daybook.Entries.FirstOrDefault(e => e.Number == number) : null);

    /// <summary>Says that there is no such moment.</summary>
    /// <param name="wanted">As typed.</param>
    /// <param name="door">The world.</param>
    /// <returns>The exit code.</returns>
    internal static int NoMoment(string wanted, Door door)
    {
        door.Error.WriteLine($"The Daybook knows no moment “{wanted.Trim()}” and no entry of that number. holdfast list daybook shows them.");
        return Exit.NoSuchThing;
    }
}
