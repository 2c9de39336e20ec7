using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Two columns that hold the same thing: the same numbers in another unit, a made-up and a measured value, or a choice that must be asked for.</summary>
internal static class SameThingTwice
{
    private const double SameWithin = 0.01;

    /// <summary>Leaves one of each set, or asks which.</summary>
    /// <param name="columns">Columns, changed in place.</param>
    /// <param name="headings">Their headings.</param>
    /// <param name="source">The table.</param>
    public static void Settle(Column[] columns, ImmutableArray<HeadingReading> headings, TableSource source)
    {
        OfOtherMetals(columns, headings, source);
        foreach (var group in columns.Where(c => c is { Use: ColumnUse.Fact, Property.Holds: Holds.Number }).GroupBy(c => c.Property!).Where(g => g.Count() > 1).ToList())
            Leave(columns, headings, source, [.. group]);
        // Numbered readings are repeats; a reading "corrected" beside one "as read" is the same reading twice.
        var reported = columns.Where(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.ReportedConcentration).ToList();
        if (reported.Count == 2 && Product(columns, headings, source, reported))
            return;
        if (reported.Count > 1 && reported.Select(c => Stem(headings[c.Index])).Distinct(StringComparer.Ordinal).Count() > 1 && !reported.Exists(c => headings[c.Index].Has(HeadingWord.Corrected)))
            Leave(columns, headings, source, reported);
        else if (reported.Count > 1 && reported.Exists(c => headings[c.Index].Has(HeadingWord.Corrected)) && reported.Exists(c => !headings[c.Index].Has(HeadingWord.Corrected)))
            Leave(columns, headings, source, reported);
    }

    // "Pb Ce", "Cd Ce", "Cu Ce" side by side: the study says whose it is about.
    private static void OfOtherMetals(Column[] columns, ImmutableArray<HeadingReading> headings, TableSource source)
    {
        foreach (var group in columns.Where(c => c.Use is ColumnUse.Fact or ColumnUse.Signal && c.Property?.Holds == Holds.Number && headings[c.Index].Element is not null).GroupBy(c => c.Property!).Where(g => g.Count() > 1).ToList())
        {
            if (!group.Any(c => headings[c.Index].Element == source.Study.Analyte) || source.Talk.Answers.To("same:" + group.Key.Name) is not null)
                continue;
            foreach (var column in group.Where(c => headings[c.Index].Element != source.Study.Analyte))
                columns[column.Index] = column.Become(ColumnUse.LeftOut, column.Property, $"Not used: it is of {headings[column.Index].Element}, and the study of {source.Study.Analyte}.");
        }
    }

    // One is the other times the dilution beside it, or times one factor for all: the same result before and after multiplying.
    private static bool Product(Column[] columns, ImmutableArray<HeadingReading> headings, TableSource source, List<Column> two)
    {
        var dilution = Array.Find(columns, c => c.Property == SpectrometryProperties.Dilution);
        foreach (var (read, made) in new[] { (two[0], two[1]), (two[1], two[0]) })
        {
            var rows = source.Layout.Body.Select(r => (Read: read.Value(r.At(read.Index), source.Mark), Made: made.Value(r.At(made.Index), source.Mark),
                Factor: dilution is null ? null : dilution.Value(r.At(dilution.Index), source.Mark))).Where(r => r is { Read: > 0, Made: > 0 }).ToList();
            if (rows.Count < 3 || rows.TrueForAll(r => r.Made <= r.Read))
                continue;
            var proved = dilution is not null ? rows.TrueForAll(r => r.Factor is { } f && Math.Abs(r.Made!.Value - (r.Read!.Value * f)) <= SameWithin * r.Made.Value)
                : rows.TrueForAll(r => Math.Abs((r.Made!.Value / r.Read!.Value) - (rows[0].Made!.Value / rows[0].Read!.Value)) <= SameWithin * r.Made.Value / r.Read.Value);
            if (!proved)
                continue;
            columns[read.Index] = read.Become(ColumnUse.LeftOut, read.Property, $"Not used: {headings[made.Index].Name} is the same, multiplied by its dilution.");
            if (dilution is not null)
                columns[dilution.Index] = dilution.Become(ColumnUse.LeftOut, dilution.Property, $"Not used: {headings[made.Index].Name} holds it already, row by row.");
            return true;
        }

        return false;
    }

    // "Ce 1", "Ce (b)", "run II": the same name but for a number or letter.
    private static string Stem(HeadingReading h)
        => string.Concat(h.Tokens.Where((t, i) => !(i > 0 && (t.Length == 1 || t is "ii" or "iii")) && !t.All(char.IsDigit)).Select(HeadingWords.Unnumbered));

    private static void Leave(Column[] columns, ImmutableArray<HeadingReading> headings, TableSource source, List<Column> same)
    {
        var title = same[0].Property!.Title;
        var id = "same:" + same[0].Property!.Name;
        ImmutableArray<string> names = [.. same.Select(c => headings[c.Index].Name)];
        Column? kept = null;
        string reason;
        if (source.Talk.Answers.To(id) is { } answer)
        {
            source.Talk.Ask(id, Codes.Ambiguous, $"Which column holds the {title}?", names, names);
            kept = same.Find(c => headings[c.Index].Name == answer || headings[c.Index].Text == answer);
            reason = "you chose another column";
        }
        else if (same.TrueForAll(c => AlikeIn(same[0], c, source)))
        {
            kept = same[0];
            reason = $"the same numbers as {names[0]}";
        }
        else if (same.Find(c => headings[c.Index].Has(HeadingWord.AsRead)) is { } measured && same.Count(c => headings[c.Index].Has(HeadingWord.AsRead)) == 1)
        {
            kept = measured;
            reason = $"{headings[measured.Index].Name} was measured, this was not";
        }
        else
        {
            source.Talk.Ask(id, Codes.Ambiguous, $"Which column holds the {title}: {string.Join(", or ", names)}?", names, names);
            reason = $"which column holds the {title} is open";
        }

        foreach (var column in same.Where(c => c != kept))
            columns[column.Index] = column.Become(ColumnUse.LeftOut, column.Property, $"Not used: {reason}.");
    }

    private static bool AlikeIn(Column a, Column b, TableSource source)
    {
        if (a == b)
            return true;
        var pairs = source.Layout.Body.Select(r => (A: a.Value(r.At(a.Index), source.Mark), B: b.Value(r.At(b.Index), source.Mark))).Where(p => p.A is not null && p.B is not null).ToList();
        return pairs.Count > 0 && pairs.TrueForAll(p => Math.Abs(p.A!.Value - p.B!.Value) <= SameWithin * Math.Max(Math.Abs(p.A.Value), Math.Abs(p.B.Value)));
    }
}
