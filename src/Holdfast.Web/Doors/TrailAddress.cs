using Holdfast.Reports.Tables;

namespace Holdfast.Web.Doors;

/// <summary>Addresses in the browser for the addresses of numbers: "q:V-12" is /quantities/q/V-12.</summary>
internal static class TrailAddress
{
    /// <summary>The page of a number's trail, or null when it is no such address.</summary>
    /// <param name="address">"q:V-12".</param>
    public static string? Of(string address)
    {
        var cut = address.IndexOf(':', StringComparison.Ordinal);
        return cut <= 0 ? null : $"/quantities/{Uri.EscapeDataString(address[..cut])}/{Uri.EscapeDataString(address[(cut + 1)..])}";
    }

    /// <summary>The table with the addresses of its cells turned into pages.</summary>
    /// <param name="table">A table of the reports.</param>
    public static Table In(Table table) => new(
        table.Id,
        table.Caption,
        table.Columns,
        [.. table.Rows.Select(r => r with { Cells = [.. r.Cells.Select(c => c.Address is { } address ? c with { Address = Of(address) } : c)] })],
        table.Codes)
    {
        Notes = table.Notes,
    };
}
