using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>A sheet of balances, glassware and meters, with how well each is known.</summary>
internal static class ApparatusTable
{
    /// <summary>Understands one. The uncertainty is kept in the unit of what the instrument measures.</summary>
    public static Draft Understand(TableSource source, DecimalMark? mark)
    {
        var cells = new SheetCells(source, mark);
        var (id, serves, u, unit) = (cells.Place(HeadingWords.Apparatus), cells.Place(HeadingWords.Serves), cells.Place(HeadingWords.U), cells.Place(HeadingWords.Unit));
        var (relative, shared, basis) = (cells.Place(HeadingWords.RelativeU), cells.Place(HeadingWords.Shared), cells.Place(HeadingWords.Basis));
        var share = relative >= 0 && Header.Read(source.Layout.Headings[relative]).Unit is UnitText.Known known ? known.Unit : Unit.One;
        var instruments = ImmutableArray.CreateBuilder<Instrument>();
        foreach (var row in cells.Rows)
        {
            if (cells.Words(row, id) is not { } name || cells.Words(row, serves) is not { } what)
            {
                cells.LeaveOut(row, "it does not say which instrument, or what it measures.");
                continue;
            }
            if (ServedProperty(what) is not { } property)
            {
                cells.LeaveOut(row, $"{what} is nothing that is measured here.");
                continue;
            }
            var ownUnit = property.Unit.Length == 0 ? Unit.One : Unit.Parse(property.Unit);
            var stated = Unit.Read(cells.Words(row, unit));
            var from = stated is UnitText.Known { Unit: var of } ? of : stated is UnitText.Absent && property.Unit.Length == 0 ? Unit.One : null;
            var (absolute, ratio) = (cells.Number(row, u), cells.Number(row, relative));
            if (absolute is null && ratio is null)
                cells.LeaveOut(row, $"{name} has no uncertainty.");
            else if (absolute < 0 || ratio < 0)
                cells.LeaveOut(row, $"{name} has an uncertainty below zero.");
            else if (absolute is not null && (from is null || !from.IsConvertibleTo(ownUnit)))
                cells.LeaveOut(row, $"the uncertainty of {name} needs a unit that fits {property.Title}, for example {(property.Unit.Length > 0 ? property.Unit : "none")}.");
            else
            {
                instruments.Add(new Instrument(name, property.Name, absolute is { } a ? from!.ConvertDifference(a, ownUnit) : null,
                    ratio is { } r ? share.Convert(r, Unit.One) : null, IsYes(cells.Words(row, shared)), cells.Words(row, basis) ?? "not stated", source.At(row.Number, null)));
            }
        }
        return cells.Draft(new TakenIn { Apparatus = instruments.ToImmutable() }, instruments.Count);
    }

    private static Property? ServedProperty(string text)
        => Property.Named(text.Trim().ToLowerInvariant().Replace(' ', '-')) ?? HeadingWords.Properties(HeadingWords.Key(text)).FirstOrDefault();

    private static bool IsYes(string? text) => text?.Trim().ToLowerInvariant() is "yes" or "y" or "true" or "1" or "x" or "shared";
}
