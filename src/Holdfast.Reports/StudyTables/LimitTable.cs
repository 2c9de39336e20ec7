using System.Globalization;
using Holdfast.Reports.Tables;
using Holdfast.WaterLimits;

namespace Holdfast.Reports.StudyTables;

/// <summary>Limits for metals in water, as schemes set them.</summary>
public static class LimitTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["ns"] = "the scheme sets none" };

    /// <summary>The limits of one metal, or of all.</summary>
    /// <param name="element">Symbol of the element; null for all.</param>
    public static Table Of(string? element)
        => new(
            "limits",
            element is null ? "Limits for metals in water" : $"Limits for {element} in water",
            [
                new Column("element", "Metal") { NamesRows = true },
                new Column("limit", "Limit") { Unit = "mg/L" },
                new Column("scheme", "Scheme"),
                new Column("kind", "Kind"),
                new Column("water", "Water"),
                new Column("year", "Year"),
                new Column("note", "Note"),
                new Column("status", "Value is known from"),
            ],
            [.. (element is null ? WaterLimit.All : WaterLimit.Of(element)).Select(l => Row.Of(
                l.Element, l.Value is { } value ? new NumberCell(value) : new MissingCell("ns"), l.Scheme, l.Kind, l.Water,
                l.Year.ToString(CultureInfo.InvariantCulture), l.Note, l.Status))],
            Codes)
        {
            Notes = [WaterLimit.Reservation],
        };
}
