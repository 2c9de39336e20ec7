using System.Collections.Immutable;
using System.CommandLine;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>One value for many vessels or runs, as one entry.</summary>
internal sealed class SetMany : IVerb
{
    private const int Shown = 6;

    public int Place => 24;

    public IReadOnlyList<string> Examples => ["holdfast set \"volume=10 mL\" \"temperature=25 °C\" --series KIN-20", "holdfast set \"instrument=flame AAS\" --run aas-run1"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "nothing to set, no reason, or an unlikely value"), (Exit.NoSuchThing, "no such series, sample, file or run"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var which = new SampleOptions();
        var values = new Argument<string[]>("values") { Description = "name=value: volume, dose, pH, temperature, shaking, water, author, instrument and more", Arity = ArgumentArity.OneOrMore };
        var run = new Option<string>("--run") { Description = "one run, for instrument, element, wavelength, flame, date" };
        var replace = new Option<bool>("--replace") { Description = "replace what is recorded too; it stays when left out" };
        var because = new Option<string>("--because") { Description = "why what is recorded is replaced" };
        var sure = new Option<bool>("--sure") { Description = "keep a value that looks unlikely" };
        var rehearse = new Option<bool>("--rehearse") { Description = "show what would change, keep nothing" };
        var command = which.On(options.On(new Command("set", "one value for many vessels or runs in one step: all vessels when none are named") { values, run, replace, because, sure, rehearse }));
        command.SetAction(parsed =>
        {
            using var study = parsed.GetValue(rehearse) ? options.Read(parsed, door) : options.Write(parsed, door);
            var how = new Asked(parsed.GetValue(replace), parsed.GetValue(because)?.Trim(), parsed.GetValue(sure), door);
            var pairs = parsed.GetValue(values)!.Select(v => v.Split('=', 2, StringSplitOptions.TrimEntries)).ToArray();
            if (pairs.FirstOrDefault(p => p.Length < 2 || p[1].Length == 0) is { } odd)
                return how.Refuse($"“{odd[0]}” is not name=value. Write it like \"volume=10 mL\".", Exit.NotUnderstood);
            var ofRuns = pairs.Count(p => Settable.OfRun(p[0]) is not null && (parsed.GetValue(run) is not null || Settable.Named(p[0]) is null));
            if (ofRuns > 0 && (ofRuns < pairs.Length || pairs.Length > 1))
                return how.Refuse("What belongs to a run is set by itself, one name at a time, so that each is one entry.", Exit.NotUnderstood);
            var (change, exit) = ofRuns > 0 ? OfRuns(study.Study, pairs[0], parsed.GetValue(run), which, parsed, how) : OfSamples(study.Study, pairs, which, parsed, how);
            if (change is null)
                return exit;
            if (parsed.GetValue(rehearse))
            {
                door.Out.WriteLine("A rehearsal: nothing was kept.");
                return Exit.Done;
            }

            study.Append(study.Daybook.Version, door.Who, change);
            study.Close();
            options.Remark(parsed, door, $"Kept: {change.Says()}. holdfast undo takes all of it back.");
            return Exit.Done;
        });
        return command;
    }

    private static (Change? Change, int Exit) OfSamples(Study study, string[][] pairs, SampleOptions which, ParseResult parsed, Asked how)
    {
        if (pairs.FirstOrDefault(p => Settable.Named(p[0]) is null) is { } odd)
            return (null, how.Refuse($"There is nothing called {odd[0]} that can be set. Names: {string.Join(", ", Settable.Usual.Concat(Settable.Others).Select(p => p.Name).Concat(Settable.OfRuns.Select(r => r.ToLowerInvariant())))}.", Exit.NotUnderstood));
        var samples = which.In(parsed, study, out var trouble);
        if (samples.IsEmpty)
            return (null, how.Refuse(trouble, Exit.NoSuchThing));
        var cells = ImmutableArray.CreateBuilder<TypedCell>();
        foreach (var pair in pairs)
        {
            if (ConstantForMany.Of(study, samples, Settable.Named(pair[0])!, pair[1], out var wrong) is not { } constant)
                return (null, how.Refuse(wrong, Exit.NeedsDecision));
            var kept = constant.Cells(how.Replace);
            how.Door.Out.WriteLine($"{constant.Property.Title}: {pair[1]} for {InWords.Count(kept.Length, "sample")} ({(kept.IsEmpty ? "none" : InWords.Some([.. kept.Select(c => c.Sample)], Shown))})");
            if (!constant.Replaces.IsEmpty)
            {
                how.Door.Out.WriteLine($"  {InWords.Count(constant.Replaces.Length, "sample")} recorded otherwise {(how.Replace ? "and replaced" : "and left as it is; --replace --because \"…\" replaces it")}: "
                    + InWords.Some([.. constant.Replaces.Select(r => $"{r.Cell.Sample} {r.Recorded}")], Shown));
            }

            foreach (var doubt in constant.Doubts)
                how.Door.Error.WriteLine($"  {doubt}");
            if (!constant.Doubts.IsEmpty && !how.Sure)
                return (null, how.Refuse("Nothing was kept. --sure keeps it all the same.", Exit.NeedsDecision));
            if (how.Replace && !constant.Replaces.IsEmpty && string.IsNullOrEmpty(how.Because))
                return (null, how.Refuse("Say why what is recorded is replaced: --because \"…\". A reader will see this.", Exit.NeedsDecision));
            cells.AddRange(kept);
        }

        return cells.Count == 0 ? (null, how.Refuse("Nothing is set: every one of these samples has a value.", Exit.NeedsDecision)) : (new BlockTyped(cells.ToImmutable(), how.Because), Exit.Done);
    }

    private static (Change? Change, int Exit) OfRuns(Study study, string[] pair, string? named, SampleOptions which, ParseResult parsed, Asked how)
    {
        var key = Settable.OfRun(pair[0])!;
        Run[] runs = [.. study.Runs];
        if (named is not null)
        {
            runs = [.. study.Runs.Where(r => string.Equals(r.Id, named, StringComparison.OrdinalIgnoreCase))];
            if (runs.Length == 0)
                return (null, how.Refuse($"This study has no run {named}. Runs: {string.Join(", ", study.Runs.Select(r => r.Id))}.", Exit.NoSuchThing));
        }
        else if (!which.AreLeftOut(parsed))
        {
            var codes = which.In(parsed, study, out var trouble).Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
            if (codes.Count == 0)
                return (null, how.Refuse(trouble, Exit.NoSuchThing));
            var read = study.Readings.Where(r => codes.Contains(r.Sample)).Select(r => r.Run).ToHashSet(StringComparer.Ordinal);
            runs = [.. study.Runs.Where(r => read.Contains(r.Id))];
        }

        var others = runs.Where(r => r.Detail(key) is { } said && said != pair[1]).ToArray();
        RunDetail[] details = [.. runs.Where(r => r.Detail(key) != pair[1] && (how.Replace || r.Detail(key) is null)).Select(r => new RunDetail(r.Id, key, pair[1]))];
        how.Door.Out.WriteLine($"{key.ToLowerInvariant()}: {pair[1]} for {InWords.Count(details.Length, "run")} ({(details.Length == 0 ? "none" : InWords.Some([.. details.Select(d => d.Run)], Shown))})");
        if (others.Length > 0)
        {
            how.Door.Out.WriteLine($"  {InWords.Count(others.Length, "run")} recorded otherwise {(how.Replace ? "and replaced" : "and left as it is; --replace --because \"…\" replaces it")}: "
                + InWords.Some([.. others.Select(r => $"{r.Id} {r.Detail(key)}")], Shown));
        }

        if (how.Replace && others.Length > 0 && string.IsNullOrEmpty(how.Because))
            return (null, how.Refuse("Say why what is recorded is replaced: --because \"…\". A reader will see this.", Exit.NeedsDecision));
        return details.Length == 0 ? (null, how.Refuse("Nothing is set: no run lacks it.", Exit.NeedsDecision)) : (new RunsDescribed([.. details], how.Because), Exit.Done);
    }

    private sealed record Asked(bool Replace, string? Because, bool Sure, Door Door)
    {
        public int Refuse(string sentence, int exit)
        {
            Door.Error.WriteLine(sentence);
            return exit;
        }
    }
}
