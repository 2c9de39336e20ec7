using System.CommandLine;
using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Cli.Verbs;

/// <summary>Fits curves to the study's series, or to a table of points.</summary>
internal sealed class FitCurves : IVerb
{
    public int Place => 55;

    public IReadOnlyList<string> Examples => ["holdfast fit isotherm --start 50 --dose 2", "holdfast fit isotherm points.csv --resample 5000"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "no curve settled, or the points need a decision"), (Exit.NoSuchThing, "no such series"), (Exit.Stopped, "stopped by you")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var family = new Argument<string>("family") { Description = "kinetics, isotherm or quenching" };
        family.AcceptOnlyFromAmong([.. CurveFamily.All.Select(f => f.Name)]);
        var points = new Argument<string?>("points") { Description = "a table with two columns of points; the study's own series when left out", Arity = ArgumentArity.ZeroOrOne };
        var resample = new Option<int?>("--resample") { Description = "a second opinion on the intervals of the curves not told apart, from so many resamples" };
        var seed = new Option<ulong>("--seed") { Description = "seed of the resamples; 1 when left out", DefaultValueFactory = _ => ResampledFit.UsualSeed };
        var start = new Option<double?>("--start") { Description = "predict uptake and removal at this start concentration, mg/L; the middle one of the series when left out" };
        var dose = new Option<double?>("--dose") { Description = "predict them at this dose, g/L; that of the series when left out" };
        var share = new Option<double?>("--share") { Description = "predict the time to this share of the plateau, %; 50 and 90 when left out" };
        var progress = CountedProgress.Form();
        var command = options.On(new Command("fit", "fit every curve of a family and compare them honestly") { family, points, start, dose, share, resample, seed, progress });
        command.SetAction((parsed, cancel) => Task.FromResult(Act(parsed, cancel)));
        return command;

        int Act(ParseResult parsed, CancellationToken cancel)
        {
            if (parsed.GetValue(resample) is { } asked && asked is < ResampledFit.Fewest or > ResampledFit.Most)
            {
                door.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{asked} resamples: between {ResampledFit.Fewest} and {ResampledFit.Most} can be drawn."));
                return Exit.NotUnderstood;
            }

            if (parsed.GetValue(start) is <= 0 || parsed.GetValue(dose) is <= 0 || parsed.GetValue(share) is <= 0 or >= 100)
            {
                door.Error.WriteLine("A start concentration and a dose are above 0, a share lies between 0 and 100 %.");
                return Exit.NotUnderstood;
            }

            var curves = CurveFamily.All.First(f => f.Name == parsed.GetValue(family));
            if (parsed.GetValue(points) is { } file)
                return OfPoints(Path.GetFullPath(file, door.Folder), curves, fitted => Show(fitted, _ => null, parsed, cancel), door, cancel);
            using var study = options.Read(parsed, door);
            var evidence = Evidence.Of(study.Study);
            var all = curves.OfStudy(evidence).ToArray();
            if (all.Length == 0)
            {
                door.Error.WriteLine(curves.Absent);
                return Exit.NoSuchThing;
            }

            Show([.. all.Where(s => s.Fits.Count > 0)], evidence.SeriesNamed, parsed, cancel);
            foreach (var (series, fits) in all)
            {
                if (fits.Count == 0)
                    door.Error.WriteLine($"{series}: nothing is fitted, since none of its vessels has an uptake.");
                Remarks.Missing(MissingResult.Of(evidence, series), door.Error.WriteLine);
            }

            return all.Any(s => s.Fits.Any(f => f.IsFit && f.Aicc is not null)) ? Exit.Done : Exit.NeedsDecision;
        }

        // One table whatever the number of series, so that its JSON is one object.
        void Show(IReadOnlyList<(string Series, IReadOnlyList<FitResult> Fits)> fitted, Func<string, Series?> named, ParseResult parsed, CancellationToken cancel)
        {
            if (parsed.GetValue(resample) is null && parsed.GetValue(options.As) == "json")
            {
                door.Out.WriteLine(FitsJson.Of([.. fitted.Select(f => (f.Series, f.Fits))], Asked));
                foreach (var (series, fits) in fitted)
                    Tell(series, fits, door);
                return;
            }

            var table = parsed.GetValue(resample) is { } count
                ? Resampled(
                    [.. fitted.SelectMany(f => CandidateCurve.Among(f.Series, f.Fits))],
                    new BootstrapOptions { Count = count, Seed = parsed.GetValue(seed), Threads = Environment.ProcessorCount },
                    parsed.GetValue(options.Quiet) ? (_, _) => null : (what, all) => CountedProgress.Of(what, all, parsed.GetValue(progress), door),
                    door, cancel)
                : ParameterTable.Of("fits", $"Curves fitted to {string.Join(", ", fitted.Select(f => f.Series))}", fitted);
            Printed.Write(table, parsed.GetValue(options.As)!, door.Out);
            // A person reads on; a program that asked for one table gets one.
            var predicted = fitted.Select(f => (f.Series, Predictions: (IReadOnlyList<Prediction>)Predictions.Of(f.Fits, Asked(f.Series)))).Where(p => p.Predictions.Count > 0).ToArray();
            if (parsed.GetValue(resample) is null && parsed.GetValue(options.As) == "text" && predicted.Length > 0)
            {
                door.Out.WriteLine();
                Printed.Write(PredictionTable.Of("predictions", $"What the curves of {string.Join(", ", predicted.Select(p => p.Series))} predict", predicted), "text", door.Out);
            }

            foreach (var (series, fits) in fitted)
                Tell(series, fits, door);

            PredictionQuestion Asked(string series)
            {
                var usual = PredictionQuestion.For(named(series));
                return new(
                    parsed.GetValue(start) ?? usual.Start, parsed.GetValue(dose) ?? usual.Dose, parsed.GetValue(share) is { } percent ? [percent / 100] : usual.Shares);
            }
        }
    }

    private static int OfPoints(
        string path, CurveFamily family, Action<IReadOnlyList<(string Series, IReadOnlyList<FitResult> Fits)>> show, Door door, CancellationToken cancel)
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
        var fits = family.Curves.Select(m => m.FitInRoom(used)).ToArray();
        show([(Path.GetFileNameWithoutExtension(path), fits)]);
        return fits.Any(f => f.IsFit && f.Nu > 0) ? Exit.Done : Exit.NeedsDecision;
    }

    private static Table Resampled(
        IReadOnlyList<CandidateCurve> candidates, BootstrapOptions options, Func<string, int, CountedProgress?> watch, Door door, CancellationToken cancel)
    {
        var names = InWords.Listed(candidates.Select(c => c.Series));
        var progress = watch("Resampling " + InWords.Count(candidates.Count, "curve"), options.Count);
        var second = new List<ResampledFit>();
        try
        {
            foreach (var (candidate, outcome) in candidates.Zip(ResampledFit.Draw(candidates, options with { Progress = progress }, cancel)))
            {
                if (outcome.Value is { } drawn)
                    second.Add(drawn);
                else
                    door.Error.WriteLine($"{candidate.Series}, {candidate.Name}: {string.Join(" ", outcome.Findings.Select(f => $"{f.Code} {f.Sentence}"))}");
            }
        }
        finally
        {
            progress?.Clear();
        }

        return ResampleTable.Of("resampled", $"Intervals of curves not told apart, resampled: {names}", second);
    }

    private static void Tell(string name, IReadOnlyList<FitResult> fits, Door door)
    {
        var near = CurveComparison.NotToldApart(fits);
        if (near.Count == 0)
        {
            door.Error.WriteLine($"{name}: no curve settled with enough points to compare. The remarks say why.");
            return;
        }

        door.Error.WriteLine(near.Count == 1
            ? $"{name}: {near[0].Card.Name} has the lowest AICc. A close fit is not a mechanism."
            : string.Create(CultureInfo.InvariantCulture, $"{name}: HF-412 {string.Join(", ", near.Select(f => f.Card.Name))} are not told apart by these points (ΔAICc below {CurveComparison.NotDistinguished:0.##})."));
    }
}
