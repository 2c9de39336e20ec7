using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Settles which sample each row is about: known ones by their code, new ones only where the table may bring them.</summary>
internal sealed class SampleNames
{
    private static readonly ImmutableArray<SampleRole> MadeForTheRun = [SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank, SampleRole.Solvent, SampleRole.StartSolution, SampleRole.Control];

    private static readonly string[] Spiked = ["spike", "spk", "spiked", "aufgestockt", "dotiert", "dope", "fortif"];
    private static readonly HashSet<string> Unused = new("ignore ignored rinse rinsing ignorieren spulen ignorer rincage ignorar enjuague ignorare risciacquo negeren pomin ignorovat yoksay abaikan".Split(' '), StringComparer.Ordinal);
    private static readonly string[] Repeated = ["dup", "duplicate", "doppel", "doublon", "duplicado", "duplo", "rpt", "reread", "rerun"];

    private readonly TableSource source;
    private readonly CodeIndex known;
    private readonly Dictionary<string, string> aliases;
    private readonly bool describes;

    /// <summary>For one table.</summary>
    public SampleNames(TableSource source, ImmutableArray<Column> columns)
    {
        this.source = source;
        known = new CodeIndex(source.Known.Keys);
        aliases = source.Known.Values.Where(s => s.Words(SampleProperties.Alias) is not null).GroupBy(s => s.Words(SampleProperties.Alias)!, StringComparer.OrdinalIgnoreCase)
            .Where(g => g.Count() == 1).ToDictionary(g => g.Key, g => g.Single().Code, StringComparer.OrdinalIgnoreCase);
        // A sheet that says how vessels were made up brings them; a file of readings does not make up vessels.
        describes = columns.All(c => c.Use != ColumnUse.Signal) || columns.Any(c => c.Use is ColumnUse.WeighedFull or ColumnUse.ClockEnd) || columns.Any(c => c is { Use: ColumnUse.Fact or ColumnUse.WithoutUnit, Property: { IsSignal: false } p }
            && p != SpectrometryProperties.StandardConcentration && p != SpectrometryProperties.Dilution && p != SampleProperties.Remark && p != SampleProperties.Day);
    }

    /// <summary>Gives every row its code, asking where that is not sure.</summary>
    public void Settle(List<SampleRow> rows)
    {
        var withLetters = rows.Count(r => r.Written.Any(char.IsLetter));
        var unknown = new List<SampleRow>();
        var loose = new List<string>();
        var guessed = new List<string>();
        var apart = OfAnotherTable(rows);
        var weighed = rows.Exists(r => r.Facts.GetValueOrDefault(BatchProperties.Mass.Name)?.Value > 0);
        foreach (var row in rows.Where(r => r is { IsLeftOut: false, Written.Length: > 0 }))
        {
            SayRole(row, row.Written);
            if (row.Role is null && Explained(row.Written) is { } words)
                Explain(row, words, guessed);
            if (row.IsLeftOut)
                continue;
            if (source.Talk.Answers.To("match:" + row.Written) is { } matched)
            {
                Match(row, matched);
                continue;
            }
            var found = known.Find(row.Written);
            if (found.Count == 0 && aliases.GetValueOrDefault(row.Written) is { } named)
                found = [named];
            if (found.Count == 0 && OfAnother(row, rows) is var (vessel, isSpike))
            {
                row.Code = isSpike ? row.Written : vessel;
                row.Role ??= isSpike ? SampleRole.Spike : null;
                (isSpike ? guessed : loose).Add(isSpike ? $"{row.Written} as spike of {vessel}" : $"{row.Written} as another reading of {vessel}");
                continue;
            }
            if (found is [var twin] && apart && source.Known[twin].Facts.Values.Any(f => f.Origin.Original == source.Sha256))
            {
                row.Code = $"{(source.Layout.Grid.Sheet is { } sheet && source.SeveralSheets ? sheet : Settings.TitleOf(source.Layout) ?? "part " + Ordinal.Text(source.Layout.Part + 1))} {row.Written}";
                row.Role ??= RoleWords.Guess(row.Written);
            }
            else if (found is [var only])
            {
                row.Code = only;
                if (!string.Equals(only, row.Written, StringComparison.Ordinal))
                    loose.Add($"{row.Written} as {only}");
            }
            else if (found.Count > 1)
            {
                source.Talk.Ask("match:" + row.Written, Codes.UnknownSample, $"{row.Written} could be {string.Join(" or ", found)}. Which sample is it?", [.. found], row.Written);
                row.IsUndecided = true;
            }
            else if (IsMangled(row, withLetters * 2 > rows.Count))
            {
                row.IsUndecided = true;
            }
            else
            {
                if (row.Role is null && RoleWords.Guess(row.Written) is { } guess)
                {
                    row.Role = guess;
                    guessed.Add($"{row.Written} as {Words(guess)}");
                }
                row.Role ??= row.Facts.ContainsKey(SpectrometryProperties.StandardConcentration.Name) && !row.Facts.ContainsKey(BatchProperties.Mass.Name) ? SampleRole.Standard : null;
                if (row.Role is SampleRole.Standard or SampleRole.CheckStandard && !row.Facts.ContainsKey(SpectrometryProperties.StandardConcentration.Name) && StandardIn(row.Written) is { } level)
                    row.Facts = row.Facts.SetItem(SpectrometryProperties.StandardConcentration.Name, new Fact(SpectrometryProperties.StandardConcentration.Name, level, null, null, null, row.Written, source.At(row.Row.Number, null)));
                // Where others were weighed and this was not, its remark says why.
                if (row.Role is null && weighed && row.Facts.GetValueOrDefault(BatchProperties.Mass.Name) is not { Value: not 0 } && row.Facts.GetValueOrDefault(SampleProperties.Remark.Name)?.Words is { } remark && RoleWords.SaysWithoutPowder(remark))
                {
                    row.Role = SampleRole.Control;
                    row.Facts = row.Facts.Remove(BatchProperties.Mass.Name);
                    guessed.Add($"{row.Written} as control, by its remark");
                }

                if (row.Role is null && row.Facts.GetValueOrDefault(BatchProperties.Mass.Name)?.Value is 0)
                {
                    row.Role = SampleRole.Control;
                    guessed.Add($"{row.Written} as control, since it holds no powder");
                }

                if (describes || IsFirst() || (row.Role is { } role && MadeForTheRun.Contains(role)))
                    row.Code = row.Written;
                else
                    unknown.Add(row);
            }
        }
        AskAboutUnknown(unknown);
        // A code that was made longer than it is written answers by its whole name too.
        foreach (var row in rows.Where(r => r is { IsLeftOut: false, Code: { } code } && !string.Equals(code, r.Written, StringComparison.Ordinal)))
            SayRole(row, row.Code!);
        Say("Codes were matched although they are written differently", loose);
        Say("What these samples are for was told from their labels", guessed);
        ScopeToRun(rows);
    }

    // "DI = rinse water, ignore": what a line of text says that a label stands for.
    private string? Explained(string label)
        => source.Layout.Notes.Lines.SelectMany(l => l.Split(['.', ';'], StringSplitOptions.TrimEntries)).Select(c => c.Split(['='], 2, StringSplitOptions.TrimEntries))
            .FirstOrDefault(p => p.Length == 2 && string.Equals(p[0], label, StringComparison.Ordinal) && p[1].Any(char.IsLetter))?[1];

    private void Explain(SampleRow row, string words, List<string> guessed)
    {
        var said = Lexicon.Of(words);
        if (Lexicon.Tokens(words).Any(Unused.Contains))
        {
            row.IsLeftOut = source.Talk.Assume("unused:" + row.Written, Codes.OddCell, $"{row.Written} is left out, as a line says: “{words}”.", ["leave-out", "take"], row.Written) == "leave-out";
            return;
        }

        row.Role = said.Contains(HeadingWord.Check) ? SampleRole.CheckStandard : said.Contains(HeadingWord.Control) ? SampleRole.Control
            : said.Contains(HeadingWord.Start) && said.Contains(HeadingWord.Liquid) ? SampleRole.StartSolution : said.Contains(HeadingWord.Blank) ? SampleRole.Blank : null;
        if (row.Role is { } role)
            guessed.Add($"{row.Written} as {Words(role)}, as a line says");
    }

    // "WZ3-dup" is a second reading of WZ3, "3-co spk +2" its recovery check; the sample itself has to be there.
    private (string Code, bool IsSpike)? OfAnother(SampleRow row, List<SampleRow> rows)
    {
        for (var at = row.Written.Length - 1; at > 0; at--)
        {
            if (row.Written[at] is not ('-' or '_' or ' ' or '+' or '('))
                continue;
            var tail = row.Written[at..].Trim('-', '_', ' ', '+', '(', ')').ToLowerInvariant();
            var isSpike = Spiked.Any(w => tail.StartsWith(w, StringComparison.Ordinal)) || row.Role == SampleRole.Spike;
            if (!isSpike && !Repeated.Contains(tail.TrimEnd('1', '2')))
                continue;
            var stem = row.Written[..at].TrimEnd('-', '_', ' ', '+', '(');
            if (known.Find(stem) is [var code])
                return (code, isSpike);
            if (rows.Exists(r => r != row && string.Equals(r.Written, stem, StringComparison.OrdinalIgnoreCase)))
                return (stem, isSpike);
        }

        return null;
    }

    // "STD 0.25 mg/L" says how much it holds.
    private static double? StandardIn(string label)
    {
        var at = label.IndexOf(' ', StringComparison.Ordinal);
        return at > 0 && CellParts.Split(label[at..].Trim()) is (var number, Amounts.UnitText.Known unit) && Amounts.CellText.Read(number, null) is Amounts.CellText.Number value
            ? UnitBridge.Between(unit, SpectrometryProperties.StandardConcentration, null)?.Convert(value.Value) : null;
    }

    // What a new sample is for, or that its rows are left out, as answered for its code.
    private void SayRole(SampleRow row, string code)
    {
        if (source.Talk.Answers.To("role-of:" + code) is not { } answer)
            return;
        if (string.Equals(answer, "leave-out", StringComparison.OrdinalIgnoreCase))
            row.IsLeftOut = true;
        else
            row.Role = RoleWords.Read(answer) ?? throw new StudyException(Codes.Ambiguous, $"A sample cannot be for '{answer}', so {code} is not changed. Write vessel, standard, check-standard, blank, control, start-solution or leave-out.");
    }

    // Nothing is known of any vessel yet: then those that were read are the vessels.
    private bool IsFirst() => source.Known.Values.All(s => s.Role != SampleRole.Vessel || (s.Facts.Count > 0 && s.Facts.Values.All(f => f.Origin.Original == source.Sha256)));

    // The same codes on another sheet of this file, with other masses or results, are other vessels.
    private bool OfAnotherTable(List<SampleRow> rows) => source.Tables > 1 && rows.Exists(row => known.Find(row.Written) is [var code] && source.Known[code] is { Role: SampleRole.Vessel or SampleRole.Control } sample
        && sample.Facts.Values.Any(f => f.Origin.Original == source.Sha256)
        && (row.Facts.Values.Any(f => f.Value is { } now && sample.Facts.GetValueOrDefault(f.Property)?.Value is { } before && !now.Equals(before))
            || (row.Signals.Exists(s => s.Column.Property == SpectrometryProperties.ReportedConcentration)
                && source.Study.Readings.Any(r => r.Sample == code && r.Signal == SpectrometryProperties.ReportedConcentration.Name && r.Origin.Original == source.Sha256))));

    private void Match(SampleRow row, string answer)
    {
        if (string.Equals(answer, "leave-out", StringComparison.OrdinalIgnoreCase))
            row.IsLeftOut = true;
        else if (string.Equals(answer, "add", StringComparison.OrdinalIgnoreCase))
            row.Code = row.Written;
        else
            row.Code = known.Find(answer) is [var code] ? code : throw new StudyException(Codes.UnknownSample, $"There is no sample {answer} to match {row.Written} with. Check the spelling.");
        source.Talk.Ask("match:" + row.Written, Codes.UnknownSample, $"Which sample is {row.Written}?", [answer], row.Written);
    }

    private bool IsMangled(SampleRow row, bool othersHaveLetters)
    {
        var originals = MangledCode.Originals(row.CodeCell, othersHaveLetters);
        if (originals.IsEmpty)
            return false;
        var likely = originals.SelectMany(known.Find).Concat(originals).Distinct(StringComparer.Ordinal).ToImmutableArray();
        source.Talk.Ask("match:" + row.Written, Codes.UnknownSample, $"{row.Written} looks like a code that a spreadsheet turned into a date. "
            + $"It may have been {likely[0]}. Name the sample, add it as written, or leave it out.", [.. likely, "add", "leave-out"], row.Written);
        return true;
    }

    private void AskAboutUnknown(List<SampleRow> unknown)
    {
        if (unknown.Count == 0)
            return;
        var codes = unknown.Select(r => r.Written).Distinct(StringComparer.Ordinal).ToImmutableArray();
        var shown = string.Join(", ", codes.Take(8)) + (codes.Length > 8 ? $" and {Ordinal.Text(codes.Length - 8)} more" : "");
        var answer = source.Talk.Ask("unknown", Codes.UnknownSample, (unknown.Count == 1 ? "1 row names a sample" : $"{Ordinal.Text(unknown.Count)} rows name samples")
            + $" not in this study: {shown}. Match them, add them, or leave them out.", ["add", "leave-out"], codes);
        foreach (var row in unknown)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
            row.Code = answer is "add" ? row.Written : null;
        }
    }

    // "Std 1" of another run may hold another concentration: then it is another sample, and its code says which run it is of.
    private void ScopeToRun(List<SampleRow> rows)
    {
        foreach (var group in rows.Where(r => r.Code is not null).GroupBy(r => r.Code!, StringComparer.Ordinal))
        {
            if (!source.Known.TryGetValue(group.Key, out var sample) || !MadeForTheRun.Contains(sample.Role))
                continue;
            var concentration = SpectrometryProperties.StandardConcentration.Name;
            var before = sample.Facts.GetValueOrDefault(concentration)?.Value;
            if (group.All(r => r.Facts.GetValueOrDefault(concentration)?.Value is not { } now || before is null || now.Equals(before)))
                continue;
            var scoped = $"{group.Key} of {source.Stem}";
            source.Talk.Note(Codes.Duplicate, Weight.Note, $"{group.Key} has another concentration than in an earlier run, so it is taken in as '{scoped}'.", group.Key);
            foreach (var row in group)
            {
                row.Code = scoped;
                row.Role ??= sample.Role;
            }
        }
    }

    private void Say(string what, List<string> each)
    {
        var distinct = each.Distinct(StringComparer.Ordinal).ToList();
        if (distinct.Count == 0)
            return;
        var shown = string.Join(", ", distinct.Take(6)) + (distinct.Count > 6 ? $" and {Ordinal.Text(distinct.Count - 6)} more" : "");
        source.Talk.Note(Codes.UnknownSample, Weight.Note, $"{what}: {shown}.", distinct);
    }

    private static string Words(SampleRole role) => role switch
    {
        SampleRole.CheckStandard => "check standard",
        SampleRole.StartSolution => "start solution",
        _ => role.ToString().ToLowerInvariant(),
    };
}
