namespace Holdfast.Diffraction;

/// <summary>A table that travels inside the library as a file of its own. See Data/SOURCE.md.</summary>
internal static class DataTable
{
    /// <summary>Its rows.</summary>
    /// <param name="name">File name in Data.</param>
    public static IReadOnlyList<TradeRow> Rows(string name)
    {
        using var stream = typeof(DataTable).Assembly.GetManifestResourceStream($"Holdfast.Diffraction.{name}")!;
        using var reader = new StreamReader(stream);
        return TradeTable.Read(reader.ReadToEnd());
    }
}
