using System.CommandLine;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>Which calibration a run is read on.</summary>
internal sealed class Calibrate : IVerb
{
    public int Place => 26;

    public IReadOnlyList<string> Examples => ["holdfast calibrate", "holdfast calibrate aas-run2 --by aas-run1"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "it has no calibration, or nothing changes"), (Exit.NoSuchThing, "no such run"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var run = new Argument<string?>("run") { Description = "the run; every run with its calibration when left out", Arity = ArgumentArity.ZeroOrOne };
        var by = new Option<string>("--by") { Description = "the run whose calibration it uses" };
        var own = new Option<bool>("--own") { Description = "its own standards again, or what its file says" };
        var because = new Option<string>("--because") { Description = "why, where a reader would ask" };
        var rehearse = new Option<bool>("--rehearse") { Description = "show what would change, keep nothing" };
        var command = options.On(new Command("calibrate", "use the calibration of another run, or list what calibrates each") { run, by, own, because, rehearse });
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(run) is not { } named)
                return List(options, parsed, door);
            if (parsed.GetValue(by) is null == !parsed.GetValue(own))
            {
                door.Error.WriteLine($"Say whose calibration {named} uses: --by RUN, or --own for its own again.");
                return Exit.NotUnderstood;
            }

            using var study = parsed.GetValue(rehearse) ? options.Read(parsed, door) : options.Write(parsed, door);
            var before = Dossier.Of(study.Study);
            var (which, from) = (Named(study.Study, named), parsed.GetValue(by) is { } other ? Named(study.Study, other) : null);
            var change = new CalibrationChosen(which, from, parsed.GetValue(because)?.Trim());
            Permitted.Check(study.Daybook, change, amending: false);
            var after = Dossier.Of(Fold.After(study.Study, change, study.Daybook.Version + 1, door.Clock.GetLocalNow(), door.Who));
            if (from is not null && after.Evidence.Runs.FirstOrDefault(r => r.Run.Id == which) is not { Curve: not null })
            {
                var lenders = before.Evidence.Runs.Where(r => r is { Curve: not null, BorrowedFrom: null } && r.Run.Id != which).Select(r => r.Run.Id).ToArray();
                door.Error.WriteLine(before.Evidence.Runs.All(r => r.Run.Id != which) ? $"{which} is no run that a calibration is used for: it holds no absorbances."
                    : $"{from} has no calibration of its own. {(lenders.Length == 0 ? "No other run has one: take in standards." : "Runs that have one: " + string.Join(", ", lenders) + ".")}");
                return Exit.NeedsDecision;
            }

            var changes = WorkingComparison.Of(before, after);
            if (changes.IsEmpty)
                door.Out.WriteLine("No claim, finding or mean changes.");
            else
                Printed.Write(changes.AsTable("now", "then"), parsed.GetValue(options.As)!, door.Out);
            if (parsed.GetValue(rehearse))
            {
                options.Remark(parsed, door, "Nothing was kept.");
                return Exit.Done;
            }

            study.Append(study.Daybook.Version, door.Who, change);
            study.Close();
            options.Remark(parsed, door, $"Kept: {change.Says()}. holdfast undo takes it back.");
            return Exit.Done;
        });
        return command;
    }

    // The names of runs come from files: whoever types one need not mind its case.
    private static string Named(Study study, string typed)
        => study.Runs.FirstOrDefault(r => string.Equals(r.Id, typed, StringComparison.OrdinalIgnoreCase))?.Id ?? typed;

    private static int List(StudyOptions options, ParseResult parsed, Door door)
    {
        using var study = options.Read(parsed, door);
        var runs = Evidence.Of(study.Study).Runs;
        if (runs.IsEmpty)
            door.Out.WriteLine("No run of this study needs a calibration.");
        foreach (var run in runs)
        {
            door.Out.WriteLine($"{run.Run.Id}: " + run switch
            {
                { BorrowedFrom: { } lender } => $"the calibration of {lender}{(study.Study.Calibrations.ContainsKey(run.Run.Id) ? ", chosen" : "")}",
                { Curve: { } curve } => string.Create(CultureInfo.InvariantCulture, $"its own, to {curve.Top:0.###} mg/L"),
                _ => "none",
            });
        }

        return Exit.Done;
    }
}
