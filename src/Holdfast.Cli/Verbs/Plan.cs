using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Composition;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Safety;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Planned work, and series designed before anything is weighed.</summary>
internal sealed class Plan : IVerb
{
    private const string Design = "design";
    private const string Freeze = "freeze";
    private const string Settings = "settings";
    private const int MostTries = 1000;
    private readonly Option<string> add = new("--add") { Description = "put work of your own into the Plan, in a sentence" };
    private readonly Option<string> done = new("--done") { Description = "note planned work as done" };
    private readonly Option<string> withdraw = new("--withdraw") { Description = "take planned work back" };
    private readonly Option<string> because = new("--because") { Description = "why it is withdrawn, or why a frozen plan is amended" };
    private readonly Option<string[]> show = new("--show") { Description = "design: a claim you want to show; may be repeated" };
    private readonly Option<string[]> suppose = new("--suppose") { Description = "design: NAME=VALUE, as capacity=\"13 mg/g\"; may be repeated" };
    private readonly Option<string> salt = new("--salt") { Description = "design: salt of the stock, as Ni(NO3)2.6H2O" };
    private readonly Option<string> seed = new("--seed") { Description = "design: seed of the random order; drawn when left out" };
    private readonly Option<string> part = new("--part") { Description = "design: one table only, as runs, clock, shows, solutions" };
    private readonly Option<string[]> accept = new("--accept") { Description = "NAME=REASON, for a warning you accept; may be repeated" };
    private readonly Option<int?> tries = new("--try") { Description = "design: try the plan out in so many invented studies for each claim, 1 to 1000" };
    private readonly Option<bool> keep = new("--keep") { Description = "design: put the vessels on the Plan, as one entry" };

    public int Place => 75;

    public IReadOnlyList<string> Examples => ["holdfast plan design --show capacity --suppose vessels=24 --keep", "holdfast plan settings"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "done already, or a setting that cannot be read"), (Exit.NoSuchThing, "no such work"), (Exit.ChangedOrSealed, "changed elsewhere, frozen or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var what = new Argument<string?>("what") { Description = "design, freeze, or settings (what design asks); planned work when left out", Arity = ArgumentArity.ZeroOrOne };
        what.AcceptOnlyFromAmong(Design, Freeze, Settings);
        var command = options.On(new Command("plan", "planned work and vessels: list them, design a series, freeze the plan")
            { what, add, done, withdraw, because, show, suppose, salt, seed, part, accept, tries, keep });
        command.SetAction(parsed => parsed.GetValue(what) switch
        {
            Design => Designed(parsed, options, door),
            Freeze => Frozen(parsed, options, door),
            Settings => Listed(parsed, options, door),
            _ => Work(parsed, options, door),
        });
        return command;
    }

    private static int Listed(ParseResult parsed, StudyOptions options, Door door)
    {
        Printed.Write([PlanTables.Questions, PlanTables.Settings], parsed.GetValue(options.As)!, door.Out);
        return Exit.Done;
    }

    private int Designed(ParseResult parsed, StudyOptions options, Door door)
    {
        using var study = parsed.GetValue(keep) ? options.Write(parsed, door) : options.Read(parsed, door);
        var (questions, refusal) = PlanQuestion.Read(parsed.GetValue(show) ?? []);
        var (supposed, unreadable) = NamedValues.Read(parsed.GetValue(suppose), "--suppose");
        var (answers, unanswered) = NamedValues.Read(parsed.GetValue(accept), "--accept");
        var (basis, refused) = supposed is null ? (null, null) : PlanBasis.Of(Evidence.Of(study.Study), supposed);
        var formula = parsed.GetValue(salt) is { } written ? Formula.Read(written).Value : null;
        var number = 0UL;
        var trouble = refusal?.Sentence ?? unreadable ?? unanswered ?? refused?.Sentence
            ?? (parsed.GetValue(salt) is { } unknown && formula is null ? $"“{unknown}” is no formula. Write it as Ni(NO3)2.6H2O." : null)
            ?? (parsed.GetValue(tries) is < 1 or > MostTries ? string.Create(CultureInfo.InvariantCulture, $"A plan is tried out in 1 to {MostTries} studies. Type such a number behind --try.") : null)
            ?? (parsed.GetValue(seed) is { } typed && !ulong.TryParse(typed, CultureInfo.InvariantCulture, out number) ? $"“{typed}” is no seed. Take a whole number, for example 1589." : null);
        if (trouble is not null)
        {
            door.Error.WriteLine(trouble);
            return Exit.NeedsDecision;
        }

        if (parsed.GetValue(seed) is null)
            number = (ulong)RandomNumberGenerator.GetInt32(1, int.MaxValue);
        var plan = PlanDesign.Of(study.Study, questions, basis!, number, door.Clock.GetLocalNow().Year, formula);
        var tables = PlanTables.Of(plan).Concat(Cautioned(plan)).Concat(parsed.GetValue(tries) is { } studies ? [PlanTables.Tried(plan, studies)] : []).ToArray();
        if (parsed.GetValue(part) is { } one && tables.All(t => t.Id != one))
        {
            door.Error.WriteLine($"This plan has no table {one}. Choose among: {string.Join(", ", tables.Select(t => t.Id))}.");
            return Exit.NeedsDecision;
        }

        var form = parsed.GetValue(options.As)!;
        Printed.Write([.. tables.Where(t => parsed.GetValue(part) is not { } wanted ? form != "csv" || t.Id == "runs" : t.Id == wanted)], form, door.Out);
        options.Remark(parsed, door, $"seed {number.ToString(CultureInfo.InvariantCulture)}: the same seed gives the same order");
        if (!parsed.GetValue(keep))
        {
            options.Remark(parsed, door, "Nothing is kept. Say the same with --keep and this --seed to put the vessels on the Plan.");
            return Exit.Done;
        }

        study.Append(study.Daybook.Version, door.Who, [.. Amending(parsed), plan.Entry(answers!)]);
        StudyOptions.Close(study, door);
        options.Remark(parsed, door, $"{study.Study.Designs[^1].Id}: {plan.Vessels.Length.ToString(CultureInfo.InvariantCulture)} vessels stand on the Plan; their bench cards wait in holdfast bench.");
        return Exit.Done;
    }

    private static IEnumerable<Table> Cautioned(PlanDesign plan)
        => plan.Salt is { } salt && Caution.For(salt.Text, "nitric acid") is { Count: > 0 } cautions ? [CautionTable.Of(cautions)] : [];

    private int Frozen(ParseResult parsed, StudyOptions options, Door door)
    {
        var (answers, trouble) = NamedValues.Read(parsed.GetValue(accept), "--accept");
        if (answers is null)
        {
            door.Error.WriteLine(trouble);
            return Exit.NeedsDecision;
        }

        using var study = options.Write(parsed, door);
        foreach (var open in study.Study.Designs.SelectMany(d => d.Warnings).Where(w => w.Answer is null && !answers.ContainsKey(w.Name)))
            door.Error.WriteLine($"{open.Name}: {open.Sentence}");
        study.Append(study.Daybook.Version, door.Who, PlanFreezing.Of(study.Study, answers));
        StudyOptions.Close(study, door);
        var frozen = study.Study.PlanFrozen!;
        door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"frozen {frozen.When:yyyy-MM-dd HH:mm zzz}, fingerprint {frozen.Sha256}"));
        return Exit.Done;
    }

    private Amended[] Amending(ParseResult parsed) => parsed.GetValue(because) is { } reason ? [new Amended(reason)] : [];

    private int Work(ParseResult parsed, StudyOptions options, Door door)
    {
        Change[] changes =
        [
            .. parsed.GetValue(add) is { } work ? [new WorkPlanned(work.Trim(), null, null, [])] : Array.Empty<Change>(),
            .. parsed.GetValue(done) is { } ended ? [new WorkDone(ended)] : Array.Empty<Change>(),
            .. parsed.GetValue(withdraw) is { } dropped ? [new WorkWithdrawn(dropped, parsed.GetValue(because))] : Array.Empty<Change>(),
        ];
        using var study = changes.Length > 0 ? options.Write(parsed, door) : options.Read(parsed, door);
        if (changes.Length > 0)
            study.Append(study.Daybook.Version, door.Who, changes);
        var form = parsed.GetValue(options.As)!;
        if (form == "text")
            Tell(study, door);
        else
            Printed.Write([StudyFactTables.Plan(study.Study), .. study.Study.Designs.IsEmpty ? [] : new[] { PlanTables.Done(study.Study) }], form, door.Out);
        if (changes.Length > 0)
            StudyOptions.Close(study, door);
        return Exit.Done;
    }

    private static void Tell(StudyFolder study, Door door)
    {
        if (study.Study.Plan.IsEmpty && study.Study.Designs.IsEmpty)
            door.Out.WriteLine("Nothing is planned. holdfast plan design works a series out; holdfast defend CLAIM --plan takes a claim's next experiment up.");
        foreach (var work in study.Study.Plan)
        {
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{work.Id,-7} {(work.Done is { } when ? $"done {when:d MMM yyyy}" : "to do"),-16} {work.Work}{(work.Claim is { } claim ? $" (for {claim})" : "")}"));
        }

        foreach (var plan in study.Study.Designs)
        {
            foreach (var question in plan.Questions)
                door.Out.WriteLine($"{plan.Id,-7} {question.Rule}: {question.Shows}");
            foreach (var warning in plan.Warnings)
                door.Out.WriteLine($"{plan.Id,-7} {warning.Name}: {(warning.Answer is { } answer ? "accepted, " + answer : "open. " + warning.Sentence)}");
        }

        if (!study.Study.Designs.IsEmpty)
            Printed.Write(PlanTables.Done(study.Study), "text", door.Out);
    }
}
