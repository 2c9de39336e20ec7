using System.CommandLine;
using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Cli.Verbs;

/// <summary>Facts of a sample typed: recorded for the first time, or corrected with a reason.</summary>
internal sealed class Correct : IVerb
{
    public int Place => 44;

    public IReadOnlyList<string> Examples => ["holdfast correct V-11 mass=20.1 end-ph=6.2", "holdfast correct V-11 mass=20.1 --because \"misread the balance\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "no reason, or a value that cannot be read"), (Exit.NoSuchThing, "no such sample"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var target = new Argument<string>("sample") { Description = "code of the sample" };
        var facts = new Argument<string[]>("facts") { Description = "property=value, in the property's own unit or the one behind it", Arity = ArgumentArity.OneOrMore };
        var because = new Option<string>("--because") { Description = "why what was recorded is corrected" };
        var sure = new Option<bool>("--sure") { Description = "keep a value that looks unlikely" };
        var command = options.On(new Command("correct", "type facts of a sample: mass, volume, contact-time, end-ph and others") { target, facts, because, sure });
        command.SetAction(parsed =>
        {
            var cells = ImmutableArray.CreateBuilder<TypedCell>();
            var code = parsed.GetValue(target)!;
            foreach (var pair in parsed.GetValue(facts)!)
            {
                var (name, value) = pair.IndexOf('=', StringComparison.Ordinal) is > 0 and var cut ? (pair[..cut], pair[(cut + 1)..]) : (pair, "");
                if (Property.Named(name) is not { IsSignal: false } property)
                {
                    door.Error.WriteLine($"There is no property {name}. Properties: {string.Join(", ", Property.All.Where(p => !p.IsSignal).Select(p => p.Name))}.");
                    return Exit.NotUnderstood;
                }

                if (TypedFact.Read(code, property, value, out var trouble) is not { } fact)
                {
                    door.Error.WriteLine(trouble);
                    return Exit.NeedsDecision;
                }

                cells.Add(new TypedCell(code, fact));
            }

            using var study = options.Write(parsed, door);
            var known = study.Study.Sample(code);
            if (known is not null && cells.Any(c => known.Facts.ContainsKey(c.Fact.Property)) && string.IsNullOrWhiteSpace(parsed.GetValue(because)))
            {
                door.Error.WriteLine($"Say why what was recorded of {code} is corrected: --because \"…\". A reader will see this.");
                return Exit.NeedsDecision;
            }

            var doubts = known is null ? [] : cells.Select(c => (c.Fact, Why: TypedDoubt.Of(study.Study, known, c.Fact))).Where(d => d.Why is not null).ToArray();
            foreach (var (fact, why) in doubts)
                door.Error.WriteLine($"{code}: {Property.Named(fact.Property)!.Title} {fact.Written} is {why}.");
            if (doubts.Length > 0 && !parsed.GetValue(sure))
            {
                door.Error.WriteLine("Nothing was kept. --sure keeps it all the same.");
                return Exit.NeedsDecision;
            }

            study.Append(study.Daybook.Version, door.Who, new BlockTyped(cells.ToImmutable(), parsed.GetValue(because)?.Trim()));
            StudyOptions.Close(study, door);
            foreach (var cell in cells)
                door.Out.WriteLine($"{code}: {Property.Named(cell.Fact.Property)!.Title} {cell.Fact.Written}");
            return Exit.Done;
        });
        return command;
    }
}
