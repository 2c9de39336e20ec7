using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <content>Titrations of the metal: which volume the burette gave, which was titrated, and which the vessel held.</content>
internal sealed partial class Columns
{
    private void Titrated(Column[] columns)
    {
        var volumes = columns.Where(c => UnitKinds.Of(headings[c.Index].Unit) == UnitKind.Volume && !IsAnswered(c.Index)).ToList();
        if (!volumes.Exists(c => IsOfATitrant(headings[c.Index])) && !layout.Notes.Lines.Any(NotedTitration.Speaks))
            return;
        if (columns.Any(c => c.Use == ColumnUse.Signal))
            return;
        var burette = volumes.Where(c => IsOfATitrant(headings[c.Index])).ToList();
        // "V start | V end" under "titration with EDTA": the burette needs no name of its own.
        if (burette.Count == 0)
            burette = [.. volumes.Where(c => headings[c.Index].HasAny(HeadingWord.Start, HeadingWord.End))];
        var start = burette.Find(c => headings[c.Index].Has(HeadingWord.Start) && !headings[c.Index].Has(HeadingWord.End));
        var end = burette.Find(c => c != start && headings[c.Index].Has(HeadingWord.End) && !headings[c.Index].Has(HeadingWord.Start));
        if (start is null != end is null)
            (start, end) = (null, null);
        // What is left when a blank is taken off is her own step; the volume that the burette gave is what was read.
        var titre = end is null ? burette.Find(c => !IsNetOfBlank(headings[c.Index])) ?? burette.FirstOrDefault() : null;
        foreach (var column in volumes)
        {
            var h = headings[column.Index];
            if (column == start || column == end || column == titre)
                columns[column.Index] = Volume(column, column == start ? ColumnUse.BuretteStart : column == end ? ColumnUse.BuretteEnd : ColumnUse.Titre);
            else if (burette.Contains(column) || IsNetOfBlank(h))
                columns[column.Index] = new Column(column.Index, column.Heading, ColumnUse.LeftOut, null, null, "Not used: worked out from what the burette gave.");
            else if (h.Tokens.Any(ColumnGuess.Drawn.Contains) || h.Has(HeadingWord.Sample))
                columns[column.Index] = Volume(column, ColumnUse.Aliquot);
        }
    }

    private Column Volume(Column column, ColumnUse use)
        => new(column.Index, column.Heading, use, null, (headings[column.Index].Unit as UnitText.Known)?.Unit, null) { Bridge = BridgeFor(headings[column.Index], BatchProperties.Volume), Evidence = "a volume of a titration" };

    private static bool IsOfATitrant(HeadingReading h) => h.Tokens.Any(ColumnGuess.OfATitrant.Contains);

    // "used - blank (mL)", "netto (mL)".
    private static bool IsNetOfBlank(HeadingReading h) => h.Has(HeadingWord.Blank) || h.Tokens.Any(ColumnGuess.IsNet) || h.Has(HeadingWord.Corrected);
}
