using System.CommandLine;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>What samples are for.</summary>
internal sealed class GiveRole : IVerb
{
    private const int Shown = 8;

    public int Place => 22;

    public IReadOnlyList<string> Examples => ["holdfast role S1 S2 S3 --is standard --known \"1 mg/L\" \"2 mg/L\" \"5 mg/L\"", "holdfast role \"QC*\" --is check --known \"4 mg/L\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "nothing changes, or no reason"), (Exit.NoSuchThing, "no such sample"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var codes = new Argument<string[]>("samples") { Description = "codes; * for any letters", Arity = ArgumentArity.OneOrMore };
        var role = new Option<string>("--is") { Description = "standard, check, blank, solvent, vessel, control, start, spike, digest and others" };
        var known = new Option<string[]>("--known") { Description = "known concentration: one for all, or one for each in order", AllowMultipleArgumentsPerToken = true };
        var because = new Option<string>("--because") { Description = "why a known concentration is corrected" };
        var rehearse = new Option<bool>("--rehearse") { Description = "show what would change, keep nothing" };
        var command = options.On(new Command("role", "say what samples are for: standards, blanks, check standards, vessels") { codes, role, known, because, rehearse });
        command.SetAction(parsed =>
        {
            int Refuse(string sentence, int exit)
            {
                door.Error.WriteLine(sentence);
                return exit;
            }

            if (RoleChange.Named(parsed.GetValue(role) ?? "") is not { } becomes)
                return Refuse($"Say what they are for: --is, with one of {string.Join(", ", Enum.GetValues<SampleRole>().Select(r => "\"" + InWords.Of(r) + "\""))}.", Exit.NotUnderstood);
            using var study = parsed.GetValue(rehearse) ? options.Read(parsed, door) : options.Write(parsed, door);
            var samples = new SampleSelection(null, SampleOptions.Codes(parsed.GetValue(codes)!), null).In(study.Study, out var trouble);
            if (samples.IsEmpty)
                return Refuse(trouble, Exit.NoSuchThing);
            if (RoleChange.Of(study.Study, samples, becomes, [.. parsed.GetValue(known) ?? []], out var wrong) is not { } change)
                return Refuse(wrong, Exit.NeedsDecision);
            if (change.Roles.IsEmpty)
                return Refuse($"Nothing changes: {InWords.Some([.. samples.Select(s => s.Code)], Shown)} {(samples.Length == 1 ? "is" : "are")} that already.", Exit.NeedsDecision);
            foreach (var given in change.Roles)
            {
                var cell = change.Cells.FirstOrDefault(c => c.Sample == given.Sample);
                door.Out.WriteLine($"{given.Sample}: {InWords.Of(study.Study.Sample(given.Sample)!.Role)} -> {InWords.Of(given.Role)}{(cell is null ? "" : $", known {cell.Fact.Written}")}");
            }

            if (!change.WithoutConcentration.IsEmpty)
                options.Remark(parsed, door, $"{InWords.Some(change.WithoutConcentration, Shown)}: no known concentration yet. --known gives it.");
            if (change.Corrects && string.IsNullOrWhiteSpace(parsed.GetValue(because)))
                return Refuse("Say why a known concentration is corrected: --because \"…\". A reader will see this.", Exit.NeedsDecision);
            if (parsed.GetValue(rehearse))
            {
                door.Out.WriteLine("A rehearsal: nothing was kept.");
                return Exit.Done;
            }

            study.Append(study.Daybook.Version, door.Who, new RolesGiven(change.Roles, change.Cells, parsed.GetValue(because)?.Trim()));
            study.Close();
            options.Remark(parsed, door, "Kept. holdfast undo takes all of it back.");
            return Exit.Done;
        });
        return command;
    }
}
