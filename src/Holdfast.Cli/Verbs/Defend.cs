using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Holdfast.Claims;
using Holdfast.Claims.NextExperiments;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Judges claims.</summary>
internal sealed class Defend : IVerb
{
    private const int Width = 96;

    public int Place => 70;

    public IReadOnlyList<string> Examples => ["holdfast defend equilibrium-reached --as json", "holdfast defend equilibrium-120 --plan"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NotShownYet, "a claim is not shown yet"), (Exit.Contradicted, "a claim is contradicted"), (Exit.NeedsDecision, "with --plan: nothing to plan, or it stands there already"), (Exit.NoSuchThing, "no such claim")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var which = new Argument<string?>("claim") { Description = "a claim's id, or the id of a rule; every claim when left out", Arity = ArgumentArity.ZeroOrOne };
        var brief = new Option<bool>("--brief") { Description = "one line a claim" };
        var plan = new Option<bool>("--plan") { Description = "put the claim's next experiment into the Plan" };
        var command = options.On(new Command("defend", "judge the claims: holds, not shown yet, contradicted") { which, brief, plan });
        command.SetAction(parsed =>
        {
            using var study = parsed.GetValue(plan) ? options.Write(parsed, door) : options.Read(parsed, door);
            var dossier = Dossier.Of(study.Study);
            var wanted = parsed.GetValue(which);
            var verdicts = dossier.Verdicts.Where(v => wanted is null
                || string.Equals(v.Claim.Id, wanted, StringComparison.Ordinal) || string.Equals(v.Claim.Rule, wanted, StringComparison.Ordinal)).ToArray();
            if (verdicts.Length == 0 && wanted is not null)
            {
                door.Error.WriteLine($"This study has no claim {wanted}. Claims: {string.Join(", ", dossier.Verdicts.Select(v => v.Claim.Id))}.");
                return Exit.NoSuchThing;
            }

            if (parsed.GetValue(plan))
                return Planned(study, verdicts, wanted, door);
            if (parsed.GetValue(options.As) == "text")
                Tell(study.Study.Invented, verdicts, parsed.GetValue(brief), door.Out);
            else if (parsed.GetValue(options.As) == "json")
                door.Out.WriteLine(Json(verdicts));
            else
                Printed.Write(ClaimTable.Of(verdicts), "csv", door.Out);
            return CodeOf(verdicts);
        });
        return command;
    }

    private static int Planned(StudyFolder study, Verdict[] verdicts, string? wanted, Door door)
    {
        if (wanted is null)
        {
            door.Error.WriteLine("Name the claim whose next experiment is to be planned: holdfast defend CLAIM --plan.");
            return Exit.NeedsDecision;
        }

        WorkPlanned[] work = [.. verdicts.Select(v => v.Work).OfType<WorkPlanned>()];
        if (work.Length == 0)
        {
            door.Error.WriteLine($"{wanted} asks for no experiment, so nothing was planned.");
            return Exit.NeedsDecision;
        }

        study.Append(study.Daybook.Version, door.Who, work);
        foreach (var planned in study.Study.Plan[^work.Length..])
            door.Out.WriteLine($"{planned.Id} planned for {planned.Claim}: {planned.Work}");
        StudyOptions.Close(study, door);
        return Exit.Done;
    }

    /// <summary>The exit code of a set of verdicts.</summary>
    /// <param name="verdicts">The verdicts.</param>
    internal static int CodeOf(IReadOnlyCollection<Verdict> verdicts)
        => verdicts.Any(v => v.Ruling == Ruling.Contradicted) ? Exit.Contradicted
            : verdicts.Any(v => v.Ruling == Ruling.NotShownYet) ? Exit.NotShownYet
            : Exit.Done;

    /// <summary>Verdicts in words.</summary>
    /// <param name="invented">True for the demo.</param>
    /// <param name="verdicts">The verdicts.</param>
    /// <param name="brief">True for one line a claim.</param>
    /// <param name="output">Where to.</param>
    internal static void Tell(bool invented, IReadOnlyList<Verdict> verdicts, bool brief, TextWriter output)
    {
        if (invented)
            output.WriteLine("INVENTED demo data: nothing was measured.\n");
        if (verdicts.Count == 0)
            output.WriteLine("There is nothing to judge yet: take in readings and a vessel sheet first.");
        foreach (var verdict in verdicts)
        {
            output.WriteLine($"{InWords.Of(verdict.Ruling),-14}  {verdict.Sentence}");
            if (brief)
                continue;
            Part(output, "id", verdict.Claim.Id);
            Part(output, "why", verdict.Reason);
            if (verdict.Scope is not null)
                Part(output, "scope", verdict.Scope);
            foreach (var gate in verdict.Gates.Where(g => !g.Passed))
                Part(output, "gate", gate.Sentence);
            foreach (var warning in verdict.Warnings)
                Part(output, "but", warning);
            foreach (var question in verdict.Questions)
                Part(output, question.Code, question.Text);
            if (verdict.Next is not null)
                Part(output, "settle", verdict.Next.Sentence);
            output.WriteLine();
        }

        foreach (var combined in brief ? [] : CombinedExperiment.Of(verdicts))
            output.WriteLine($"{combined.Sentence}\n");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{verdicts.Count(v => v.Ruling == Ruling.Holds)} hold, {verdicts.Count(v => v.Ruling == Ruling.NotShownYet)} not shown yet, {verdicts.Count(v => v.Ruling == Ruling.Contradicted)} contradicted"));
    }

    private static void Part(TextWriter output, string name, string text)
    {
        var line = $"  {name,-12}  ";
        foreach (var word in text.Split(' '))
        {
            if (line.Length + word.Length > Width && line.Trim().Length > 0)
            {
                output.WriteLine(line.TrimEnd());
                line = new string(' ', 16);
            }

            line += word + " ";
        }

        output.WriteLine(line.TrimEnd());
    }

    private static string Json(Verdict[] verdicts) => Printed.Object(json =>
    {
        json.WriteStartArray("verdicts");
        foreach (var verdict in verdicts)
            One(json, verdict);
        json.WriteEndArray();
    });

    private static void One(Utf8JsonWriter json, Verdict verdict)
    {
        json.WriteStartObject();
        json.WriteString("claim", verdict.Claim.Id);
        json.WriteString("kind", verdict.Claim.Rule);
        if (verdict.Claim.Words("series") is { } series)
            json.WriteString("series", series);
        else
            json.WriteNull("series");
        json.WriteBoolean("stated", verdict.Claim.Stated);
        json.WriteString("sentence", verdict.Sentence);
        json.WriteString("verdict", InWords.Of(verdict.Ruling));
        json.WriteString("why", verdict.Reason);
        json.WriteString("method", verdict.Method);
        if (verdict.Scope is not null)
            json.WriteString("scope", verdict.Scope);
        json.WriteStartArray("numbers");
        foreach (var number in verdict.Numbers)
        {
            json.WriteStartObject();
            json.WriteString("name", number.Name);
            JsonNumber.Of(number).WriteMembers(json);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("gates");
        foreach (var gate in verdict.Gates)
        {
            json.WriteStartObject();
            json.WriteString("name", gate.Name);
            json.WriteBoolean("passed", gate.Passed);
            json.WriteString("sentence", gate.Sentence);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Strings(json, "warnings", verdict.Warnings);
        Strings(json, "questions", verdict.Questions.Select(q => q.Code + " " + q.Text));
        if (verdict.Next is { } next)
        {
            json.WriteStartObject("settle");
            json.WriteString("sentence", next.Sentence);
            if (next.Vessels is { } vessels)
                json.WriteNumber("vessels", vessels);
            Strings(json, "settings", next.Settings);
            json.WriteString("basis", next.Basis);
            json.WriteEndObject();
        }

        Strings(json, "data", verdict.Data);
        json.WriteEndObject();
    }

    private static void Strings(Utf8JsonWriter json, string name, IEnumerable<string> items)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
            json.WriteStringValue(item);
        json.WriteEndArray();
    }
}
