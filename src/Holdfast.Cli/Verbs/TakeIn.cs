using System.CommandLine;
using System.Globalization;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Cli.Verbs;

/// <summary>Takes files in.</summary>
internal sealed class TakeIn : IVerb
{
    private const int LinesOfQuantities = 6;

    public int Place => 20;

    public IReadOnlyList<string> Examples => ["holdfast take run1.csv vessels.csv --ask", "holdfast take run2/ --decimal comma --answer \"unit:C0=mg/L\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "something is left to decide; nothing kept"), (Exit.ChangedOrSealed, "changed elsewhere or sealed"), (Exit.Storage, "storage")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var paths = new Argument<string[]>("files") { Description = "files and folders: instrument readings, vessel sheet, claims, margins, apparatus", Arity = ArgumentArity.OneOrMore };
        var rehearse = new Option<bool>("--rehearse") { Description = "show what would be taken in and keep nothing" };
        var ask = new Option<bool>("--ask") { Description = "put the open questions here, one after the other" };
        var decimalMark = new Option<string?>("--decimal") { Description = "point or comma, where a file leaves it open" };
        decimalMark.AcceptOnlyFromAmong("point", "comma");
        var answer = new Option<string[]>("--answer") { Description = "answer to a question: QUESTION=ANSWER, or FILE|QUESTION=ANSWER", AllowMultipleArgumentsPerToken = false };
        var skip = new Option<bool>("--skip-refused") { Description = "keep the rest when some files cannot be read" };
        var command = options.On(new Command("take", "take readings and sheets in; originals are kept byte for byte") { paths, rehearse, ask, decimalMark, answer, skip });
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
            var given = parsed.GetValue(paths) ?? [];
            using var study = rehearsing ? options.Read(parsed, door) : options.Write(parsed, door);
            var files = Take.Read([.. given.Select(p => Path.GetFullPath(p, door.Folder))], cancel);
            if (parsed.GetValue(ask))
                answers = Asking.Until(answers, a => Take.Understand(study.Study, files, a, cancel).Select(u => u.Understanding), door);
            var understood = Take.Understand(study.Study, files, answers, cancel);
            if (answers.Unasked.Where(q => q != "decimal").ToArray() is { Length: > 0 } unasked)
            {
                door.Error.WriteLine($"Nothing in these files asks for {string.Join(", ", unasked)}, so nothing was kept. Check the name; holdfast take --rehearse without it shows what is asked.");
                return Task.FromResult(Exit.NeedsDecision);
            }

            var before = study.Study;
            var taken = Take.Keep(study, understood, new TakeOptions { Answers = answers, Rehearse = rehearsing, SkipRefused = parsed.GetValue(skip) }, door.Who);
            var follows = taken.Entry is { Change: TakenIn kept } ? WhatFollows.Of(study.Study, kept) : rehearsing ? WhatFollows.Of(before, understood) : null;
            if (taken.Entry is not null)
                StudyOptions.Close(study, door);
            if (parsed.GetValue(options.As) is not "json")
                return Task.FromResult(Tell(taken, rehearsing, follows, given, door));
            door.Out.WriteLine(TakenJson.Of(taken, rehearsing, follows));
            return Task.FromResult(Code(taken, rehearsing));
        });
        return command;
    }

    /// <summary>Says what was understood and what came of it.</summary>
    /// <param name="taken">What came of it.</param>
    /// <param name="rehearsing">True when nothing was meant to be kept.</param>
    /// <param name="follows">First quantities, or null.</param>
    /// <param name="typed">The files as they were typed, for a line that is ready to be typed.</param>
    /// <param name="door">The world.</param>
    /// <returns>The exit code.</returns>
    internal static int Tell(Taken taken, bool rehearsing, WhatFollows? follows, IReadOnlyList<string> typed, Door door)
    {
        var several = taken.Understandings.Length > 1;
        foreach (var file in taken.Understandings)
        {
            door.Out.WriteLine($"{file.FileName}: {file.Sentence}");
            if (rehearsing)
                Preview(file, door);
            Remarks.Tell(file.Findings, line => door.Error.WriteLine("  " + line));
            foreach (var column in file.Tables.Where(t => t.LeftOut is null).SelectMany(NotTaken.Columns).Where(c => c.Use == ColumnUse.NotUnderstood).Take(1))
                door.Error.WriteLine($"         choose a meaning with --answer \"{column.Question}=NAME\"; holdfast list meanings names them");
            foreach (var question in file.Questions)
                Put(question, several ? file.FileName + "|" : "", door);
        }

        if (taken.Entry is { } entry)
        {
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Kept as entry {entry.Number}. holdfast undo takes all of it back."));
            foreach (var line in taken.Understandings.SelectMany(u => NotTaken.Of(u).Select(line => several ? $"{u.FileName}: {line}" : line)))
                door.Out.WriteLine("  " + line);
        }

        if (follows is not null)
            Quantities(follows, door);
        foreach (var table in follows?.Characterised ?? [])
            door.Out.WriteLine($"  {table.Caption.Plain}: holdfast reduce {table.Id}");
        if (taken.Entry is not null)
            return Exit.Done;
        if (Code(taken, rehearsing) == Exit.Done)
        {
            door.Out.WriteLine("A rehearsal: nothing was kept.");
            return Exit.Done;
        }

        door.Error.WriteLine(taken.Open.IsEmpty ? "Nothing was kept: " + Reason(taken) : string.Create(CultureInfo.InvariantCulture, $"Nothing was kept: {taken.Open.Length} to decide."));
        if (!taken.Open.IsEmpty && typed.Count > 0)
            door.Error.WriteLine("With the likeliest answers: " + Ready(taken, typed));
        return Exit.NeedsDecision;
    }

    private static int Code(Taken taken, bool rehearsing)
        => taken.Entry is not null || (rehearsing && taken.Open.IsEmpty && taken.Understandings.All(u => u.Proposal is not null)) ? Exit.Done : Exit.NeedsDecision;

    private static void Put(Question question, string prefix, Door door)
    {
        if (question.IsRemembered)
        {
            door.Error.WriteLine($"  {question.Code} {ChoiceWords.Asked(question.Id)}: {ChoiceWords.Of(question.Id, question.Answer!)}, as answered for an earlier file of this layout (holdfast layouts)");
            return;
        }

        if (question.Answer is not null)
            return;
        door.Error.WriteLine($"  {question.Code} {question.Text}");
        var others = question.IsOpen ? question.Choices : question.Choices[1..];
        if (question.IsOpen && others.IsEmpty)
            door.Error.WriteLine($"         answer with --answer \"{prefix}{question.Id}=…\"");
        foreach (var (choice, place) in others.Select(c => (c, question.Choices.IndexOf(c))))
        {
            door.Error.WriteLine($"         {(question.IsOpen ? place == 0 ? "answer with" : "or" : "otherwise")} --answer \"{prefix}{question.Id}={choice}\""
                + (place < question.Consequences.Length ? $" ({question.Consequences[place]})" : ""));
        }
    }

    private static string Reason(Taken taken)
        => taken.Understandings.SelectMany(u => u.Findings).FirstOrDefault(f => f.Weight == Weight.Stop)?.Sentence
            ?? taken.Understandings.FirstOrDefault(u => u.Proposal is null)?.Sentence ?? "nothing in these files is for a study.";

    private static string Ready(Taken taken, IReadOnlyList<string> typed)
    {
        var several = taken.Understandings.Length > 1;
        var answers = taken.Understandings.SelectMany(u => u.Questions.Where(q => q is { IsOpen: true, Choices.Length: > 0 }).Select(q => $"--answer \"{(several ? u.FileName + "|" : "")}{q.Id}={q.Choices[0]}\""));
        return $"holdfast take {string.Join(' ', typed.Select(t => t.Contains(' ', StringComparison.Ordinal) ? $"\"{t}\"" : t).Concat(answers))}";
    }

    private static void Quantities(WhatFollows follows, Door door)
    {
        var lines = follows.Rows.Select(Line).Concat(follows.Fits).ToList();
        foreach (var line in lines.Count <= LinesOfQuantities ? lines : [.. lines.Take(LinesOfQuantities - 1 - Math.Min(follows.Fits.Length, 2)), .. follows.Fits.Take(2)])
            door.Out.WriteLine("  " + line);
        if (lines.Count > LinesOfQuantities)
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {follows.Rows.Length} vessels in all: holdfast reduce"));
    }

    private static string Line(WhatFollowsRow row)
    {
        var parts = new[] { ("C0", row.Start, "mg/L"), ("Ce", row.End, "mg/L"), ("removal", row.Removal, "%"), ("q", row.Uptake, "mg/g") }.Where(p => p.Item2.Length > 0).Select(p => $"{p.Item1} {p.Item2} {p.Item3}");
        return $"{row.Vessel.Code}: {string.Join(", ", row.Why is { } why ? parts.Append((row.Vessel.Sample.Role == Studies.SampleRole.Control ? "no removal: " : "no uptake: ") + why) : parts)}";
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
                door.Out.WriteLine($"    {column.Heading} -> {column.Meaning}{(string.IsNullOrEmpty(column.Unit) ? "" : " in " + column.Unit)}: {string.Join(" | ", column.Examples)}");
                if (column.Evidence is not null)
                    door.Out.WriteLine("      because: " + column.Evidence);
                if (column.Remark is not null)
                    door.Out.WriteLine("      " + column.Remark);
                foreach (var odd in column.Odd.Take(3))
                    door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"      row {odd.Row}: \"{odd.Text}\" {odd.Why}"));
            }
        }
    }
}
