using System.CommandLine;
using Holdfast.Claims.Comparisons;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Several studies, and published values, like for like. Nothing is kept: each study becomes one line, and lines are compared.</summary>
internal sealed class Compare : IVerb
{
    public int Place => 74;

    public IReadOnlyList<string> Examples => ["holdfast compare group --at 5 --beside published.csv", "holdfast compare study --map >> lines.jsonl"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no study there"), (Exit.NeedsDecision, "the published values cannot be read")];

    public Command Command(Door door)
    {
        var places = new Argument<string[]>("folders") { Description = "studies, folders that hold some, or files of lines", Arity = ArgumentArity.OneOrMore };
        var at = new Option<double?>("--at") { Description = "compare at this concentration left, mg/L; one that most studies reach when left out" };
        var start = new Option<double?>("--start") { Description = "compare vessels of this start concentration, mg/L, with --dose" };
        var dose = new Option<double?>("--dose") { Description = "and of this dose, g/L" };
        var margin = new Option<double>("--margin") { Description = "how much more counts as better, %; 10 when left out", DefaultValueFactory = _ => 100 * StudyComparison.UsualMargin };
        var beside = new Option<string?>("--beside") { Description = "a table of published uptakes: sorbent, metal, Ce or C0 and dose, q, u, pH, T, water, source" };
        var map = new Option<bool>("--map") { Description = "only write each study as one line of JSON, to be compared later" };
        var form = StudyOptions.FormOption();
        var quiet = new Option<bool>("--quiet") { Description = "results only, no remarks" };
        var command = new Command("compare", "set several studies beside each other, like for like") { places, at, start, dose, margin, beside, map, form, quiet };
        command.SetAction((parsed, cancel) => Task.FromResult(Act(parsed, cancel)));
        return command;

        int Act(ParseResult parsed, CancellationToken cancel)
        {
            double? left = parsed.GetValue(at), c0 = parsed.GetValue(start), d = parsed.GetValue(dose);
            if (left is <= 0 || c0 is <= 0 || d is <= 0 || !(parsed.GetValue(margin) is >= 0 and <= 1000) || c0.HasValue != d.HasValue || (left.HasValue && c0.HasValue)
                || !double.IsFinite(left ?? 1) || !double.IsFinite(c0 ?? 1) || !double.IsFinite(d ?? 1))
            {
                door.Error.WriteLine("Say --at, or --start with --dose, each above 0; a margin lies between 0 and 1000 %.");
                return Exit.NotUnderstood;
            }

            var lines = Lines(parsed.GetValue(places)!, door, cancel);
            if (parsed.GetValue(map))
                return Mapped(lines, door);
            var studies = lines.ToArray();
            if (studies.All(s => s.Findings.Any(f => f.Code == Codes.NotAStudy)))
                return None(door);
            var published = new Outcome<IReadOnlyList<PublishedUptake>>([], []);
            if (parsed.GetValue(beside) is { } file)
            {
                var path = Path.GetFullPath(file, door.Folder);
                if (!File.Exists(path))
                {
                    door.Error.WriteLine($"{Codes.Unreadable} {Path.GetFileName(path)} is not there. Nothing was compared.");
                    return Exit.NeedsDecision;
                }

                published = PublishedTable.Read(PointsFile.Read(path), cancel);
            }

            var point = left.HasValue || c0.HasValue ? new ComparisonPoint(left, c0, d) : null;
            var share = parsed.GetValue(margin) / 100;
            var comparison = StudyComparison.Of(studies, published.Value!, point, share);
            Show(studies, comparison, [.. comparison.Findings, .. published.Findings], share, parsed.GetValue(form)!, parsed.GetValue(quiet));
            return Exit.Done;
        }

        void Show(StudyLine[] studies, StudyComparison comparison, Finding[] findings, double share, string asked, bool hushed)
        {
            if (asked == "json")
            {
                foreach (var table in new[] { ComparisonTables.Uptakes(comparison), ComparisonTables.Pairs(comparison, share), ComparisonTables.Findings(findings) })
                    Printed.Lines(table, door.Out);
                return;
            }

            Printed.Write([ComparisonTables.Uptakes(comparison), ComparisonTables.Pairs(comparison, share)], asked, door.Out);
            if (hushed)
                return;
            if (studies.Any(s => s.Invented))
                door.Error.WriteLine($"Invented data: {string.Join(", ", studies.Where(s => s.Invented).Select(s => s.Study))}.");
            foreach (var finding in findings)
                door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        }
    }

    // A few studies at a time, so that two hundred need no more room than those, and a line stands as soon as it is known.
    private static int Mapped(IEnumerable<StudyLine> lines, Door door)
    {
        var any = false;
        foreach (var line in lines)
        {
            any = true;
            door.Out.WriteLine(line.Json());
            foreach (var finding in line.Findings)
                door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        }

        return any ? Exit.Done : None(door);
    }

    private static int None(Door door)
    {
        door.Error.WriteLine("There is no study in what was named. Name a study's folder, a folder that holds some, or a file that compare --map wrote.");
        return Exit.NoSuchThing;
    }

    private static IEnumerable<StudyLine> Lines(string[] places, Door door, CancellationToken cancel)
    {
        foreach (var place in places)
        {
            var path = Path.GetFullPath(place, door.Folder);
            if (File.Exists(path))
            {
                foreach (var line in OfFile(path))
                    yield return line;
                continue;
            }

            var studies = Directory.Exists(path) ? GroupFolder.Studies(path) : [];
            if (studies.Count == 0)
                yield return StudyLine.Unread(place, Codes.NotAStudy, "no study is there.");
            // A study knows nothing of the others: as many at a time as there are processors, told in the order of their names.
            foreach (var line in studies.AsParallel().AsOrdered().WithMergeOptions(ParallelMergeOptions.NotBuffered).WithCancellation(cancel).Select(s => OfFolder(s.Name, s.Path)))
                yield return line;
        }
    }

    private static IEnumerable<StudyLine> OfFile(string path)
    {
        var number = 0;
        foreach (var text in File.ReadLines(path))
        {
            number++;
            if (string.IsNullOrWhiteSpace(text))
                continue;
            var line = StudyLine.Parse(text);
            yield return line.Value ?? StudyLine.Unread(FormattableString.Invariant($"{Path.GetFileName(path)}, line {number}"), line.Findings[0].Code, line.Findings[0].Sentence);
        }
    }

    // Whatever is wrong with one study is said in its place; the others are compared.
    private static StudyLine OfFolder(string name, string folder)
    {
        try
        {
            using var study = StudyFolder.OpenToRead(folder);
            var line = Room.Of("the line of " + name, () => StudyLine.Of(name, study.Study), name);
            return line.Value ?? StudyLine.Unread(name, line.Findings[0].Code, line.Findings[0].Sentence);
        }
        catch (StudyException trouble)
        {
            return StudyLine.Unread(name, trouble.Code, trouble.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return StudyLine.Unread(name, Codes.Unreadable, e.Message);
        }
    }
}
