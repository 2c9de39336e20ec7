using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Two columns that hold the same thing: the same numbers in another unit, a made-up and a measured value, or a choice that must be asked for.</summary>
internal static class SameThingTwice
{
    private const double SameWithin = 0.01, SmallestDilution = 1.1, FewestFold = 1.9;

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
            // Two readings of one liquid differ by a per cent or two; a dilution makes more of it.
            if (rows.Count < 3 || !rows.Exists(r => r.Made >= SmallestDilution * r.Read))
                continue;
            var proved = dilution is not null ? rows.TrueForAll(r => r.Factor is { } f && Times(r.Read!.Value, f, r.Made!.Value))
                : rows.TrueForAll(r => Math.Abs((r.Made!.Value / r.Read!.Value) - (rows[0].Made!.Value / rows[0].Read!.Value)) <= SameWithin * r.Made.Value / r.Read.Value);
            // "1.757 | 10 | 17.57", then "4.963 | 10 | 4.963": multiplied in some rows, and not in others.
            if (!proved && dilution is not null && rows.TrueForAll(r => r.Factor is not null && (Times(r.Read!.Value, r.Factor.Value, r.Made!.Value) || Times(r.Read.Value, 1, r.Made.Value))) && rows.Exists(r => r.Factor > 1 && Times(r.Read!.Value, r.Factor.Value, r.Made!.Value)))
            {
                var (raw, worked, factor) = (headings[read.Index].Name, headings[made.Index].Name, headings[dilution.Index].Name);
                var answer = source.Talk.Ask("multiplied", Codes.Ambiguous, $"{worked} is {raw} times {factor} in some rows, and {raw} itself in others where {factor} says {Ordinal.Text((int)rows.Where(r => r.Factor > 1 && Times(r.Read!.Value, 1, r.Made!.Value)).Select(r => r.Factor!.Value).FirstOrDefault())}. Was the factor forgotten there, or was nothing diluted?", ["multiply", "undiluted"], raw, worked, factor);
                Drop(answer == "multiply" ? made : read, "the other column holds the result, as you said");
                if (answer != "multiply")
                    Drop(dilution, "the results hold it where it applies");
                if (answer is null)
                    columns[made.Index] = made.Become(ColumnUse.WithoutUnit, made.Property, "Whether the factor was forgotten in some rows must be said.");
                return true;
            }

            if (!proved)
                continue;
            Drop(read, $"{headings[made.Index].Name} is the same, multiplied by its dilution");
            if (dilution is not null)
                Drop(dilution, $"{headings[made.Index].Name} holds it already, row by row");
            return true;
        }

        return false;

        void Drop(Column column, string why) => columns[column.Index] = column.Become(ColumnUse.LeftOut, column.Property, $"Not used: {why}.");
    }

    private static bool Times(double read, double factor, double made) => Math.Abs(made - (read * factor)) <= SameWithin * made;

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
        else if (same.Find(c => IsSumOf(c, same, source)) is { } sum)
        {
            kept = sum;
            reason = $"{headings[sum.Index].Name} is the sum of the others";
        }
        else if (same.Find(c => headings[c.Index].Has(HeadingWord.AsRead)) is { } measured && same.Count(c => headings[c.Index].Has(HeadingWord.AsRead)) == 1
            && !same.Exists(c => c != measured && c.Property == SpectrometryProperties.ReportedConcentration && IsMultiplied(measured, c, source)))
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

    // Far above what was read in some rows: a dilution is in it, which a measured value beside a nominal one is not.
    private static bool IsMultiplied(Column read, Column made, TableSource source)
        => source.Layout.Body.Any(r => read.Value(r.At(read.Index), source.Mark) is > 0 and var a && made.Value(r.At(made.Index), source.Mark) >= FewestFold * a);

    // "stock | water | total": parts, and what they make together.
    private static bool IsSumOf(Column sum, List<Column> same, TableSource source)
    {
        if (same.Count < 3)
            return false;
        var rows = source.Layout.Body.Select(r => (Sum: sum.Value(r.At(sum.Index), source.Mark), Parts: same.Where(c => c != sum).Select(c => c.Value(r.At(c.Index), source.Mark)).ToList())).Where(r => r.Sum is not null).ToList();
        return rows.Count > 1 && rows.TrueForAll(r => r.Parts.TrueForAll(p => p > 0) && Math.Abs(r.Parts.Sum()!.Value - r.Sum!.Value) <= 1e-6 * r.Sum.Value);
    }

    private static bool AlikeIn(Column a, Column b, TableSource source)
    {
        if (a == b)
            return true;
        var pairs = source.Layout.Body.Select(r => (A: a.Value(r.At(a.Index), source.Mark), B: b.Value(r.At(b.Index), source.Mark))).Where(p => p.A is not null && p.B is not null).ToList();
        return pairs.Count > 0 && pairs.TrueForAll(p => Math.Abs(p.A!.Value - p.B!.Value) <= SameWithin * Math.Max(Math.Abs(p.A.Value), Math.Abs(p.B.Value)));
    }
}
