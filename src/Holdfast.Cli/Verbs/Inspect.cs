using System.CommandLine;
using System.Globalization;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Looks a study folder over for damage.</summary>
internal sealed class Inspect : IVerb
{
    public int Place => 90;

    public IReadOnlyList<string> Examples => ["holdfast inspect", "holdfast inspect --every-byte --study pb-study"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "not a study"), (Exit.Storage, "damage was found")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var everyByte = new Option<bool>("--every-byte") { Description = "re-read every original and compare its fingerprint" };
        var command = options.On(new Command("inspect", "check the study folder for damage; nothing is repaired in place") { everyByte });
        command.SetAction(parsed =>
        {
            var found = Inspection.Of(options.Folder(parsed, door), parsed.GetValue(everyByte));
            foreach (var finding in found.Findings)
                door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{found.Entries} entries, {found.Samples} samples, {found.Readings} readings, {found.Strikes} strikes, {found.Originals} originals"));
            door.Out.WriteLine($"fingerprint {found.Fingerprint}");
            door.Out.WriteLine(found.IsSound ? "No damage found." : "Damage found: see above. Compare with a copy before relying on this study.");
            return found.IsSound ? Exit.Done : Exit.Storage;
        });
        return command;
    }
}
