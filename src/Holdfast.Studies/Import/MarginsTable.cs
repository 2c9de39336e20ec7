using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>A sheet of margins: name, lower and upper end, unit.</summary>
internal static class MarginsTable
{
    /// <summary>Understands one. A margin with one end reaches as far to the other side of zero.</summary>
    public static Draft Understand(TableSource source, DecimalMark? mark)
    {
        var cells = new SheetCells(source, mark);
        var (name, low, high, unit) = (cells.Place(HeadingWords.Margin), cells.Place(HeadingWords.Low), cells.Place(HeadingWords.High), cells.Place(HeadingWords.Unit));
        var margins = ImmutableArray.CreateBuilder<MarginFixed>();
        foreach (var row in cells.Rows)
        {
            var (from, to) = (cells.Number(row, low), cells.Number(row, high));
            if (cells.Words(row, name) is not { } which)
                cells.LeaveOut(row, "it names no margin.");
            else if (from is null && to is null)
                cells.LeaveOut(row, $"the margin {which} has no end.");
            else if ((from ?? -to) > (to ?? -from))
                cells.LeaveOut(row, $"the lower end of the margin {which} is above its upper end.");
            else
                margins.Add(new MarginFixed(which, (from ?? -to)!.Value, (to ?? -from)!.Value, cells.Words(row, unit) ?? ""));
        }
        return cells.Draft(new TakenIn { Margins = margins.ToImmutable() }, margins.Count);
    }
}
