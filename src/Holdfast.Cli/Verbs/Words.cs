using System.CommandLine;
using System.Globalization;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Words;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>The author's own words in the chapter: shown, written, and brought back from a chapter that was edited in a word processor.</summary>
internal sealed class Words : IVerb
{
    private const long LargestDocument = 64L << 20;

    public int Place => 82;

    public IReadOnlyList<string> Examples => ["holdfast words chapter-edited.docx --keep all", "holdfast words --place discussion --text \"The capacity, {qm:ISO-298@langmuir}, is …\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "proposals are left to decide on, or the file cannot be read"), (Exit.NoSuchThing, "no such section or proposal"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var file = new Argument<string?>("file") { Description = "a chapter that was edited in a word processor, as DOCX; what was changed in it is proposed", Arity = ArgumentArity.ZeroOrOne };
        var keep = new Option<string?>("--keep") { Description = "all, or numbers of proposals: 1,3" };
        var place = new Option<string?>("--place") { Description = $"section: {string.Join(", ", OwnText.Places)}" };
        var text = new Option<string?>("--text") { Description = "the words for that section; numbers by their addresses in braces, {q:V-12}; \"\" for none" };
        var command = options.On(new Command("words", "your own words in the chapter: write them, or bring them back from an edited DOCX") { file, keep, place, text });
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(file) is { } path)
                return Edited(options, parsed, Path.GetFullPath(path, door.Folder), parsed.GetValue(keep), door);
            if ((parsed.GetValue(place), parsed.GetValue(text)) is not ({ } section, { } words))
                return Show(options, parsed, door);
            using var study = options.Write(parsed, door);
            door.Out.WriteLine(study.Append(study.Daybook.Version, door.Who, new TextWritten(section, words.Trim()))[^1].Change.Says());
            StudyOptions.Close(study, door);
            return Exit.Done;
        });
        return command;
    }

    private static int Show(StudyOptions options, ParseResult parsed, Door door)
    {
        using var study = options.Read(parsed, door);
        foreach (var own in study.Study.Texts.Values)
            door.Out.WriteLine($"{own.Place}:\n{own.Text}\n");
        foreach (var (was, words) in study.Study.Rewordings)
            door.Out.WriteLine($"reworded: {was}\n      as: {words}\n");
        foreach (var gone in EditedChapter.WithoutPlace(study.Study))
            door.Error.WriteLine($"The chapter no longer says “{gone}”: your words for it are kept and wait until it does.");
        options.Remark(parsed, door, $"{InWords.Count(study.Study.Texts.Count, "text")}, {InWords.Count(study.Study.Rewordings.Count, "rewording")}");
        return Exit.Done;
    }

    private static int Edited(StudyOptions options, ParseResult parsed, string path, string? keep, Door door)
    {
        var bytes = PlainFile.Read(path, LargestDocument);
        using var study = keep is null ? options.Read(parsed, door) : options.Write(parsed, door);
        var edited = EditedChapter.Of(bytes, Path.GetFileName(path), study.Daybook);
        Tell(edited, door);
        if (keep is null)
        {
            if (!edited.Proposals.IsEmpty)
                door.Error.WriteLine($"Nothing was kept. Keep all with --keep all, or some with --keep {string.Join(',', edited.Proposals.Take(2).Select(p => InWords.Plain(p.Number)))}.");
            return edited.Proposals.IsEmpty ? Exit.Done : Exit.NeedsDecision;
        }

        string[] wanted = keep.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var chosen = edited.Proposals.Where(p => keep.Trim() == "all" || wanted.Contains(p.Number.ToString(CultureInfo.InvariantCulture))).ToArray();
        if (keep.Trim() != "all" && chosen.Length < wanted.Length)
        {
            door.Error.WriteLine($"There are proposals 1 to {InWords.Plain(edited.Proposals.Length)}; --keep {keep} names another. Nothing was kept.");
            return Exit.NoSuchThing;
        }

        // A later text of a section holds the earlier ones.
        Change[] changes = [.. chosen.GroupBy(p => p.Change is TextWritten t ? "text " + t.Place : "sentence " + ((SentenceReworded)p.Change).Was, StringComparer.Ordinal).Select(g => g.Last().Change)];
        if (changes.Length > 0)
        {
            foreach (var entry in study.Append(study.Daybook.Version, door.Who, changes))
                door.Out.WriteLine(entry.Change.Says());
        }

        StudyOptions.Close(study, door);
        return Exit.Done;
    }

    private static void Tell(EditedChapter edited, Door door)
    {
        if (!edited.IsKnown)
            door.Error.WriteLine("The file does not say which study it was made from; it is held against the study as it is now.");
        foreach (var proposal in edited.Proposals)
        {
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{proposal.Number}  {proposal.Place}: {(proposal.Was.Length == 0 ? "new" : proposal.Written.Length == 0 ? "taken out" : "changed")}"));
            if (proposal.Was.Length > 0)
                door.Out.WriteLine("   was: " + proposal.Was);
            if (proposal.Written.Length > 0)
                door.Out.WriteLine("   now: " + proposal.Written);
        }

        foreach (var number in edited.Numbers)
            door.Out.WriteLine($"number changed by hand: {number.Written}; the study says {number.Now}{(number.Now == number.Studys ? "" : $", and said {number.Studys} when the file was made")} (“{number.Where}”). The study's number stays.");
        foreach (var left in edited.LeftOut)
            door.Error.WriteLine(left);
        door.Out.WriteLine($"{InWords.Count(edited.Proposals.Length, "proposal")}, {InWords.Count(edited.Numbers.Length, "number")} changed by hand, made from entry {InWords.Plain(edited.On)}");
    }
}
