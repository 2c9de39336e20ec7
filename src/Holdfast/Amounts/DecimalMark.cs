namespace Holdfast.Amounts;

/// <summary>The sign between units and tenths. It is settled once per file, from evidence; neither sign ever groups thousands on its own.</summary>
public enum DecimalMark
{
    /// <summary>12.5</summary>
    Point,

    /// <summary>12,5</summary>
    Comma,
}
