using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Powder that came as a suspension: its liquid is part of the volume, and thins the start solution.</summary>
internal static class Suspensions
{
    private static readonly HashSet<string> Mixed = new(
        "mixed mixing mix mischen mischung gemischt vermischen melange melanger mezcla mezclar mezclado mistura misturar miscela mescolare smichani zmieszaniu wymieszaniu karistirma karisim mengen menging blandning campuran".Split(' '), StringComparer.Ordinal);

    /// <summary>Adds the suspension to the volume, and asks what the start concentration is of.</summary>
    /// <param name="rows">The rows, with their masses.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (source.Layout.Notes.Suspension is not var (strength, _) || columns.FirstOrDefault(c => c.IsSuspension) is not { } suspension
            || columns.FirstOrDefault(c => c is { Use: ColumnUse.Fact, IsSuspension: false } && c.Property == BatchProperties.Volume) is not { } volume || HeadingReading.Of(volume.Heading).Has(HeadingWord.Total))
            return;
        if (source.Talk.Assume("suspension-volume", Codes.Ambiguous, $"The volume is {volume.Heading} and {suspension.Heading} together.", ["use", "ignore"], volume.Heading) != "use")
            return;
        var start = columns.FirstOrDefault(c => c.Use == ColumnUse.Fact && c.Property == BatchProperties.InitialConcentration);
        var isThinned = rows.Exists(r => r.Facts.ContainsKey(BatchProperties.InitialConcentration.Name)) && !IsOfTheMixture(start?.Heading) && !source.Layout.Notes.Lines.Any(l => IsOfTheMixture(l) && Lexicon.Of(l).Contains(HeadingWord.Start));
        var answer = isThinned ? source.Talk.Ask("start-of-mixture", Codes.Ambiguous, $"Is {start?.Heading ?? "C0"} that of the solution before the suspension was added, or in the vessel after it?", ["before", "in-the-vessel"], start?.Heading ?? "C0") : "in-the-vessel";
        foreach (var row in rows)
        {
            if (row.Facts.GetValueOrDefault(BatchProperties.Mass.Name)?.Value is not { } mass || row.Facts.GetValueOrDefault(BatchProperties.Volume.Name) is not { Value: { } poured } fact)
                continue;
            var whole = poured + (mass / strength);
            row.Facts = row.Facts.SetItem(fact.Property, fact with { Value = Math.Round(whole, 6), Written = $"{fact.Written} + {row.Row.At(suspension.Index).Text} of suspension" });
            row.IsUndecided |= answer is null;
            if (answer == "before" && row.Facts.GetValueOrDefault(BatchProperties.InitialConcentration.Name) is { Value: { } before } stated)
                row.Facts = row.Facts.SetItem(stated.Property, stated with { Value = before * poured / whole, U = stated.U * poured / whole, Written = $"{stated.Written} thinned by the suspension" });
        }
    }

    private static bool IsOfTheMixture(string? text) => text is not null && Lexicon.Tokens(text).Any(Mixed.Contains);
}
