using System.CommandLine;
using System.Globalization;
using Holdfast.Studies.Import;

namespace Holdfast.Cli.Verbs;

/// <summary>Takes files in.</summary>
internal sealed class TakeIn : IVerb
{
    public int Place => 20;

    public IReadOnlyList<string> Examples => ["holdfast take run1.csv vessels.csv --rehearse", "holdfast take run2/ --decimal comma --answer unit:C0=mg/L"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "something is left to decide; nothing kept"), (Exit.ChangedOrSealed, "changed elsewhere or sealed"), (Exit.Storage, "storage")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var paths = new Argument<string[]>("files") { Description = "files and folders: instrument readings, vessel sheet, claims, margins, apparatus", Arity = ArgumentArity.OneOrMore };
        var rehearse = new Option<bool>("--rehearse") { Description = "show what would be taken in and keep nothing" };
        var decimalMark = new Option<string?>("--decimal") { Description = "point or comma, where a file leaves it open" };
        decimalMark.AcceptOnlyFromAmong("point", "comma");
        var answer = new Option<string[]>("--answer") { Description = "answer to a question: QUESTION=ANSWER, or FILE|QUESTION=ANSWER", AllowMultipleArgumentsPerToken = false };
        var skip = new Option<bool>("--skip-refused") { Description = "keep the rest when some files cannot be read" };
        var command = options.On(new Command("take", "take readings and sheets in; originals are kept byte for byte") { paths, rehearse, decimalMark, answer, skip });
        command.SetAction((parsed, cancel) =>
        {
            var answers = Answers.None;
            if (parsed.GetValue(decimalMark) is { } mark)
                answers = answers.With("decimal", mark);
            foreach (var pair in parsed.GetValue(answer) ?? [])
            {
                var cut = pair.IndexOf('=', StringComparison.Ordinal);
                if (cut <= 0)
                {
                    door.Error.WriteLine($"--answer {pair} has no \"=\". Write QUESTION=ANSWER, for example unit:C0=mg/L.");
                    return Task.FromResult(Exit.NotUnderstood);
                }

                answers = answers.With(pair[..cut], pair[(cut + 1)..]);
            }

            var rehearsing = parsed.GetValue(rehearse);
            using var study = rehearsing ? options.Read(parsed, door) : options.Write(parsed, door);
            var files = (parsed.GetValue(paths) ?? []).Select(p => Path.GetFullPath(p, door.Folder)).ToArray();
            var understood = Take.Understand(study.Study, Drop.Read(files, cancel), answers, cancel);
            if (answers.Unasked.Where(q => q != "decimal").ToArray() is { Length: > 0 } unasked)
            {
                door.Error.WriteLine($"Nothing in these files asks for {string.Join(", ", unasked)}, so nothing was kept. Check the name; holdfast take --rehearse without it shows what is asked.");
                return Task.FromResult(Exit.NeedsDecision);
            }

            var taken = Take.Keep(study, understood, new TakeOptions { Answers = answers, Rehearse = rehearsing, SkipRefused = parsed.GetValue(skip) }, door.Who);
            if (taken.Entry is not null)
                StudyOptions.Close(study, door);
            return Task.FromResult(Tell(taken, rehearsing, door));
        });
        return command;
    }

    /// <summary>Says what was understood and what came of it.</summary>
    /// <param name="taken">What came of it.</param>
    /// <param name="rehearsing">True when nothing was meant to be kept.</param>
    /// <param name="door">The world.</param>
    /// <returns>The exit code.</returns>
    internal static int Tell(Taken taken, bool rehearsing, Door door)
    {
        foreach (var file in taken.Understandings)
        {
            door.Out.WriteLine($"{file.FileName}: {file.Sentence}");
            if (rehearsing)
                Preview(file, door);
            Remarks.Tell(file.Findings, line => door.Error.WriteLine("  " + line));
            foreach (var assumed in file.Questions.Where(q => q is { Assumed: not null, Answer: null }))
            {
                door.Error.WriteLine($"  {assumed.Code} {assumed.Text}");
                if (assumed.Choices.Length > 1)
                    door.Error.WriteLine($"         otherwise --answer \"{assumed.Id}={string.Join("|", assumed.Choices[1..])}\"");
            }

            foreach (var question in file.Questions.Where(q => q.IsOpen))
            {
                door.Error.WriteLine($"  {question.Code} {question.Text}");
                door.Error.WriteLine($"         answer with --answer \"{question.Id}={(question.Choices.Length > 0 ? string.Join("|", question.Choices) : "…")}\"");
            }
        }

        if (taken.Entry is { } entry)
        {
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Kept as entry {entry.Number}. holdfast undo takes all of it back."));
            return Exit.Done;
        }

        if (rehearsing && taken.Open.IsEmpty && taken.Understandings.All(u => u.Proposal is not null))
        {
            door.Out.WriteLine("A rehearsal: nothing was kept.");
            return Exit.Done;
        }

        door.Error.WriteLine(taken.Open.IsEmpty
            ? "Nothing was kept: " + (taken.Understandings.FirstOrDefault(u => u.Proposal is null)?.Sentence ?? "nothing in these files is for a study.")
            : string.Create(CultureInfo.InvariantCulture, $"Nothing was kept: {taken.Open.Length} to decide."));
        return Exit.NeedsDecision;
    }

    private static void Preview(Understanding file, Door door)
    {
        foreach (var table in file.Tables)
        {
            var facts = new[]
            {
                table.Sheet is null ? null : "sheet " + table.Sheet,
                table.Encoding, table.Separator is null ? null : "separator " + table.Separator,
                table.Decimal is null ? null : $"decimal {table.Decimal} ({table.DecimalReason})".ToLowerInvariant(),
                table.HeadingLine is { } line ? string.Create(CultureInfo.InvariantCulture, $"headings in line {line}") : null,
            };
            door.Out.WriteLine("  " + string.Join(", ", facts.Where(f => !string.IsNullOrEmpty(f))));
            foreach (var column in table.Columns)
            {
                var what = column.Property is null ? column.Use.ToString().ToLowerInvariant() : column.Property;
                door.Out.WriteLine($"    {column.Heading} -> {what}{(string.IsNullOrEmpty(column.Unit) ? "" : " in " + column.Unit)}: {string.Join(" | ", column.Examples)}");
                if (column.Remark is not null)
                    door.Out.WriteLine("      " + column.Remark);
                foreach (var odd in column.Odd.Take(3))
                    door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"      row {odd.Row}: \"{odd.Text}\" {odd.Why}"));
            }
        }
    }
}
