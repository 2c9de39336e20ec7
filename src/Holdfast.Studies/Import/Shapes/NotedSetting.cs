namespace Holdfast.Studies.Import.Shapes;

/// <summary>A setting that a line above or below a table states for all its rows: "V = 10 mL".</summary>
/// <param name="Property">What it is.</param>
/// <param name="Value">In the property's unit.</param>
/// <param name="Written">As written: "10 mL".</param>
/// <param name="Row">Row of the line, as a person counts.</param>
/// <param name="IsStated">True where the line names the quantity ("V = 10 mL"); false where only its unit tells ("25 °C").</param>
internal sealed record NotedSetting(Property Property, double Value, string Written, int Row, bool IsStated)
{
    /// <summary>The file that says so and its fingerprint, where that is another than the table's; null for the table's own.</summary>
    public (string Name, string Sha256)? File { get; init; }

    /// <summary>Where it is said, in words.</summary>
    public string Place => File is { Name: var name } ? $"{name}, line {History.Ordinal.Text(Row)}" : Row == 0 ? "name of the sheet" : "line " + History.Ordinal.Text(Row);

    /// <summary>Where it is said, for the trail.</summary>
    /// <param name="source">The table that it is used for.</param>
    public Origin At(TableSource source) => File is var (name, sha256) ? new Origin(sha256, name, null, Row, null) : source.At(Row, null);
}
