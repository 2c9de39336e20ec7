using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Sense;

namespace Holdfast.Studies.Import;

/// <content>Shares: per cent, fractions of 1, and both in one column.</content>
internal sealed partial class Columns
{
    // A share is written in per cent or as a fraction of 1; the values tell, where the heading does not.
    private Column Share(int index, HeadingReading h, ColumnUse use, Property property, UnitText unit, string evidence)
    {
        var answer = talk.Answers.To("share:" + h.Name);
        var values = Numbers(index);
        var percent = answer switch
        {
            "fraction" => false,
            "percent" => true,
            _ => unit is UnitText.Known { Unit.IsOne: false } || h.Has(HeadingWord.Percent) || values.Any(v => Math.Abs(v) > PhysicalSense.LargestFraction),
        };
        MixedShares(h, values, percent, answer);
        if (answer is null && percent && values.Count > 0 && values.TrueForAll(v => Math.Abs(v) <= PhysicalSense.LargestFraction) && values.Exists(v => v > 0))
        {
            talk.Ask("share:" + h.Name, Codes.Ambiguous, $"Is {h.Name} a fraction ({Example(values)} = {Example([.. values.Select(v => 100 * v)])} %), or really below 1 %? All its values lie under 1.", ["fraction", "percent"], h.Name);
            return new Column(index, h.Text, ColumnUse.WithoutUnit, property, null, "A fraction, or per cent: to be chosen.");
        }

        if (answer is not null)
            talk.Ask("share:" + h.Name, Codes.Ambiguous, $"Is {h.Name} a fraction or per cent?", [answer], h.Name);
        return new Column(index, h.Text, use, property, percent ? Unit.Parse("%") : Unit.One, percent ? null : "A fraction of 1, kept in per cent.") { Scale = percent ? 1 : 100, Evidence = evidence, Fractions = fractions.GetValueOrDefault(h.Name) };
    }

    // Some values below 1 and others far above under one heading: two ways of writing in one column.
    private void MixedShares(HeadingReading h, List<double> values, bool percent, string? answer)
    {
        var small = values.Where(v => v is > 0 and <= PhysicalSense.LargestFraction).ToList();
        if (answer is not null || !percent || small.Count == 0 || small.Count == values.Count || values.Count(v => v > PhysicalSense.SurelyPercent) * 2 < values.Count - small.Count)
            return;
        var rows = layout.Body.Where(r => CellText.Read(r.At(headings.IndexOf(h)).Text.TrimEnd('%', ' '), source.Mark) is CellText.Number { Value: > 0 and <= PhysicalSense.LargestFraction }).ToList();
        var codes = rows.Select(r => r.Cells.First(c => !c.IsBlank).Text).ToImmutableArray();
        var mixed = talk.Ask("share-of-rows:" + h.Name, Codes.Ambiguous, $"{string.Join(", ", codes.Take(6))}: {h.Name} is {string.Join(", ", small.Take(3).Select(v => v.ToString("G4", System.Globalization.CultureInfo.InvariantCulture)))}, others are far above 1. Are these fractions among per cent?", ["fraction", "keep"], codes);
        if (mixed == "fraction")
            fractions[h.Name] = [.. rows.Select(r => r.Number)];
    }
}
