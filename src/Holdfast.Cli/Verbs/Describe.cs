using System.CommandLine;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Studies.Acts;

namespace Holdfast.Cli.Verbs;

/// <summary>What is said of the study as a whole, and what the methods text still lacks.</summary>
internal sealed class Describe : IVerb
{
    public int Place => 12;

    public IReadOnlyList<string> Examples => ["holdfast describe", "holdfast describe metal=lead \"material=chitosan beads, batch 3\" \"separation=0.45 µm filter\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "a value that cannot be read, or nothing changes"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var details = new Argument<string[]>("details") { Description = "name=value; name= says it no more; all are listed when left out", Arity = ArgumentArity.ZeroOrMore };
        var command = options.On(new Command("describe", "title, metal, material, author, water and what else the methods text asks; or list them") { details });
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(details) is not { Length: > 0 } words)
                return List(options, parsed, door);
            var typed = new List<(StudyDetail, string)>();
            foreach (var pair in words.Select(w => w.Split('=', 2, StringSplitOptions.TrimEntries)))
            {
                if (pair.Length < 2 || StudyDetail.Named(pair[0]) is not { } detail)
                {
                    door.Error.WriteLine(pair.Length < 2 ? $"“{pair[0]}” is not name=value. Write it like metal=lead." : $"There is no detail {pair[0]}. Details: metal, {string.Join(", ", StudyDetail.All.Select(d => d.Key).Where(k => k != "analyte"))}.");
                    return Exit.NotUnderstood;
                }

                typed.Add((detail, pair[1]));
            }

            using var study = options.Write(parsed, door);
            var change = StudyDetail.Change(study.Study, typed, out var trouble);
            if (change is null)
            {
                door.Error.WriteLine(trouble?.Sentence ?? "Nothing changes: the study says that already.");
                return Exit.NeedsDecision;
            }

            study.Append(study.Daybook.Version, door.Who, change);
            study.Close();
            foreach (var (key, value) in change.Details)
                door.Out.WriteLine($"{StudyDetail.Named(key)!.Title}: {(value.Length == 0 ? "not said any more" : value)}");
            return Exit.Done;
        });
        return command;
    }

    private static int List(StudyOptions options, ParseResult parsed, Door door)
    {
        using var study = options.Read(parsed, door);
        foreach (var detail in StudyDetail.All)
            door.Out.WriteLine($"{(detail.Key == "analyte" ? "metal" : detail.Key),-18} {(detail.In(study.Study) is { Length: > 0 } said ? said : $"[not recorded] {detail.Title}, for example {detail.Example}")}");
        var gaps = MethodsGap.Of(Dossier.Of(study.Study)).Where(g => StudyDetail.Named(g.Key) is null).ToArray();
        if (gaps.Length > 0)
            options.Remark(parsed, door, "The methods text lacks more:");
        foreach (var gap in gaps)
            options.Remark(parsed, door, $"  {gap.What}: {gap.Command}");
        return Exit.Done;
    }
}
