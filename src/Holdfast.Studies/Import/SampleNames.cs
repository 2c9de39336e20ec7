using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Settles which sample each row is about: known ones by their code, new ones only where the table may bring them.</summary>
internal sealed class SampleNames
{
    private static readonly ImmutableArray<SampleRole> MadeForTheRun = [SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank, SampleRole.Solvent, SampleRole.StartSolution, SampleRole.Control];

    private static readonly string[] Spiked = ["spike", "spk", "spiked", "aufgestockt", "dotiert", "dope", "fortif"];
    private static readonly string[] Repeated = ["dup", "duplicate", "doppel", "doublon", "duplicado", "duplo", "rpt", "reread", "rerun"];

    private readonly TableSource source;
    private readonly CodeIndex known;
    private readonly bool describes;
    private readonly ImmutableArray<Column> columns;
    private readonly bool repeats;

    /// <summary>For one table.</summary>
    /// <param name="source">The table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="repeats">True where its rows are known vessels once more; see <see cref="OwnEvaluation"/>.</param>
    public SampleNames(TableSource source, ImmutableArray<Column> columns, bool repeats = false)
    {
        (this.source, this.columns, this.repeats) = (source, columns, repeats);
        known = new CodeIndex(source.Known.Keys);
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
        var apart = !repeats && new CodesOnTwoSheets(source, known).AreOthers(rows);
        var roles = new SampleRoles(source, columns, rows, describes);
        var isFirst = IsFirst();
        foreach (var row in rows.Where(r => r is { IsLeftOut: false, Written.Length: > 0 }))
        {
            SayRole(row, row.Written);
            roles.Explain(row);
            if (row.IsLeftOut)
                continue;
            if (!source.Talk.Answers.IsEmpty && source.Talk.Answers.To("match:" + row.Written) is { } matched)
            {
                Match(row, matched);
                continue;
            }
            var found = known.Find(row.Written);
            if (found.Count == 0 && source.Aliases.GetValueOrDefault(row.Written) is { } named)
                found = [named];
            if (found.Count == 0 && OfAnother(row, rows) is var (vessel, isSpike))
            {
                row.Code = isSpike ? row.Written : vessel;
                row.Role ??= isSpike ? SampleRole.Spike : null;
                if (isSpike)
                    roles.TellSpike(row, vessel);
                else
                    loose.Add($"{row.Written} as another reading of {vessel}");
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
                roles.Tell(row);
                if (describes || isFirst || (row.Role is { } role && MadeForTheRun.Contains(role)))
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
        Say("What these samples are for was told from their labels", roles.Told);
        ScopeToRun(rows);
    }

    // "WZ3-dup" is a second reading of WZ3, "3-co spk +2" its recovery check; the sample itself has to be there.
    private (string Code, bool IsSpike)? OfAnother(SampleRow row, List<SampleRow> rows)
    {
        for (var at = row.Written.Length - 2; at > 0; at--)
        {
            // All such words begin with a letter.
            if (row.Written[at] is '-' or '_' or ' ' or '+' or '(' && char.IsLetter(row.Written[at + 1]) && OfAnother(row, at, rows) is { } found)
                return found;
        }

        return null;
    }

    private (string Code, bool IsSpike)? OfAnother(SampleRow row, int at, List<SampleRow> rows)
    {
        var tail = row.Written[at..].Trim('-', '_', ' ', '+', '(', ')').ToLowerInvariant();
        var isSpike = Spiked.Any(w => tail.StartsWith(w, StringComparison.Ordinal)) || row.Role == SampleRole.Spike;
        if (!isSpike && !Repeated.Contains(tail.TrimEnd('1', '2')))
            return null;
        var stem = row.Written[..at].TrimEnd('-', '_', ' ', '+', '(');
        if (known.Find(stem) is [var code])
            return (code, isSpike);
        return rows.Exists(r => r != row && string.Equals(r.Written, stem, StringComparison.OrdinalIgnoreCase)) ? (stem, isSpike) : null;
    }

    // What a new sample is for, or that its rows are left out, as answered for its code.
    private void SayRole(SampleRow row, string code)
    {
        if (source.Talk.Answers.IsEmpty || source.Talk.Answers.To("role-of:" + code) is not { } answer)
            return;
        if (string.Equals(answer, "leave-out", StringComparison.OrdinalIgnoreCase))
            row.IsLeftOut = true;
        else
            row.Role = RoleWords.Read(answer) ?? throw new StudyException(Codes.Ambiguous, $"A sample cannot be for '{answer}', so {code} is not changed. Write vessel, standard, check-standard, blank, control, start-solution or leave-out.");
    }

    // Nothing is known of any vessel yet: then those that were read are the vessels.
    private bool IsFirst() => source.Known.Values.All(s => s.Role != SampleRole.Vessel || (s.Facts.Count > 0 && s.Facts.Values.All(f => f.Origin.Original == source.Sha256)));

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
        var codeHeading = columns.FirstOrDefault(c => c.Use == ColumnUse.Code)?.Heading;
        var there = source.Known.Values.Where(s => s.Role == SampleRole.Vessel).Select(s => s.Code).Take(3).ToList();
        var answer = source.Talk.Ask("unknown", Codes.UnknownSample, (unknown.Count == 1 ? "1 row names a sample" : $"{Ordinal.Text(unknown.Count)} rows name samples")
            + $" not in this study{(codeHeading is null ? "" : $" under {codeHeading}")}: {shown}.{(there.Count == 0 ? "" : $" Its vessels are called {string.Join(", ", there)} and so on.")} Match them, add them, or leave them out.", ["add", "leave-out"], codes);
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

}
