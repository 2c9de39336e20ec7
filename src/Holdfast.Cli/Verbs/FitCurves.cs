using System.CommandLine;
using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Cli.Verbs;

/// <summary>Fits curves to the study's series, or to a table of points.</summary>
internal sealed class FitCurves : IVerb
{
    public int Place => 55;

    public IReadOnlyList<string> Examples => ["holdfast fit kinetics", "holdfast fit isotherm points.csv --resample 5000"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "no curve settled, or the points need a decision"), (Exit.NoSuchThing, "no such series"), (Exit.Stopped, "stopped by you")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var family = new Argument<string>("family") { Description = "kinetics, isotherm or quenching" };
        family.AcceptOnlyFromAmong([.. CurveFamily.All.Select(f => f.Name)]);
        var points = new Argument<string?>("points") { Description = "a table with two columns of points; the study's own series when left out", Arity = ArgumentArity.ZeroOrOne };
        var resample = new Option<int?>("--resample") { Description = "a second opinion on the best curve's intervals, from so many resamples" };
        var command = options.On(new Command("fit", "fit every curve of a family and compare them honestly") { family, points, resample });
        command.SetAction((parsed, cancel) => Task.FromResult(Act(parsed, cancel)));
        return command;

        int Act(ParseResult parsed, CancellationToken cancel)
        {
            if (parsed.GetValue(resample) is { } asked && asked is < ResampledFit.Fewest or > ResampledFit.Most)
            {
                door.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{asked} resamples: between {ResampledFit.Fewest} and {ResampledFit.Most} can be drawn."));
                return Exit.NotUnderstood;
            }

            var curves = CurveFamily.All.First(f => f.Name == parsed.GetValue(family));
            var form = parsed.GetValue(options.As)!;
            var count = parsed.GetValue(resample);
            if (parsed.GetValue(points) is { } file)
                return OfPoints(Path.GetFullPath(file, door.Folder), curves, form, count, door, cancel);
            using var study = options.Read(parsed, door);
            var all = curves.OfStudy(Evidence.Of(study.Study)).ToArray();
            if (all.Length == 0)
            {
                door.Error.WriteLine(curves.Absent);
                return Exit.NoSuchThing;
            }

            Show(all, form, count, door, cancel);
            return all.Any(s => s.Fits.Any(f => f.IsFit && f.Aicc is not null)) ? Exit.Done : Exit.NeedsDecision;
        }
    }

    private static int OfPoints(string path, CurveFamily family, string form, int? count, Door door, CancellationToken cancel)
    {
        var bytes = File.Exists(path) ? new FileInfo(path) : null;
        if (bytes is null)
        {
            door.Error.WriteLine($"{Studies.Codes.Unreadable} {Path.GetFileName(path)} is not there. Nothing was fitted.");
            return Exit.NeedsDecision;
        }

        var understood = Take.Understand(new Study { Title = "points" }, [PointsFile.Read(path)], Answers.None, cancel)[0].Understanding;
        foreach (var finding in understood.Findings)
            door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        foreach (var question in understood.Questions.Where(q => q.IsOpen))
            door.Error.WriteLine($"{question.Code} {question.Text}");
        if (PointsFile.Points(understood, family, out var remark) is not { } data)
        {
            door.Error.WriteLine(remark);
            return Exit.NeedsDecision;
        }

        if (remark.Length > 0)
            door.Error.WriteLine(remark);
        var weighed = family.Weighed(data);
        foreach (var finding in weighed.Findings)
            door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        if (weighed.Value is not { } used)
            return Exit.NeedsDecision;
        var fits = family.Curves.Select(m => m.Fit(used)).ToArray();
        Show([(Path.GetFileNameWithoutExtension(path), fits)], form, count, door, cancel);
        return fits.Any(f => f.IsFit && f.Nu > 0) ? Exit.Done : Exit.NeedsDecision;
    }

    // One table whatever the number of series, so that its JSON is one object.
    private static void Show((string Series, IReadOnlyList<FitResult> Fits)[] fitted, string form, int? count, Door door, CancellationToken cancel)
    {
        if (count is { } resamples)
        {
            Printed.Write(Resampled(fitted, resamples, door, cancel), form, door.Out);
            return;
        }

        Printed.Write(ParameterTable.Of("fits", $"Curves fitted to {string.Join(", ", fitted.Select(f => f.Series))}", fitted), form, door.Out);
        foreach (var (series, fits) in fitted)
            Tell(series, fits, door);
    }

    private static Table Resampled((string Series, IReadOnlyList<FitResult> Fits)[] fitted, int count, Door door, CancellationToken cancel)
    {
        var second = new List<(string, ResampledFit)>();
        foreach (var (series, fits) in fitted)
        {
            if (fits.Where(f => f.IsFit && f.Aicc is not null).MinBy(f => f.Aicc) is not { } best)
            {
                door.Error.WriteLine($"{series}: no curve settled, so there is nothing to resample.");
                continue;
            }

            var outcome = ResampledFit.Of(best, count, progress: new Counted($"{series}, {best.Card.Name}", count, door), cancel: cancel);
            if (outcome.Value is { } drawn)
                second.Add((series, drawn));
            else
                door.Error.WriteLine($"{series}: {string.Join(" ", outcome.Findings.Select(f => f.Sentence))}");
        }

        return ResampleTable.Of("resampled", $"Intervals of the best curve, resampled: {string.Join(", ", second.Select(s => s.Item1))}", second);
    }

    private static void Tell(string name, IReadOnlyList<FitResult> fits, Door door)
    {
        var settled = fits.Where(f => f.IsFit && f.Aicc is not null).OrderBy(f => f.Aicc).ToArray();
        if (settled.Length == 0)
        {
            door.Error.WriteLine($"{name}: no curve settled with enough points to compare. The remarks say why.");
            return;
        }

        var near = settled.Where(f => f.Aicc - settled[0].Aicc < 2).Select(f => f.Card.Name).ToArray();
        door.Error.WriteLine(near.Length == 1
            ? $"{name}: {near[0]} has the lowest AICc. A close fit is not a mechanism."
            : string.Create(CultureInfo.InvariantCulture, $"{name}: HF-412 {string.Join(", ", near)} are not told apart by these points (ΔAICc below 2)."));
    }
}
