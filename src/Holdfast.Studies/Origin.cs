using System.Globalization;

namespace Holdfast.Studies;

/// <summary>Where a value was read: the end of every trail.</summary>
/// <param name="Original">SHA-256 of the original file, lower-case hexadecimal; null for a value typed at the bench.</param>
/// <param name="FileName">The file's name when it was taken in.</param>
/// <param name="Sheet">Sheet of a workbook, or null.</param>
/// <param name="Row">Line or row number as a person counts, from 1; 0 when there is none.</param>
/// <param name="Column">Heading of the column, or null.</param>
public sealed record Origin(string? Original, string FileName, string? Sheet, int Row, string? Column)
{
    /// <summary>In words: "aas-run1.csv, row 17, column Abs 2".</summary>
    public override string ToString()
    {
        var text = FileName;
        if (Sheet is not null)
            text += ", sheet " + Sheet;
        if (Row > 0)
            text += ", row " + Row.ToString(CultureInfo.InvariantCulture);
        return Column is null ? text : text + ", column " + Column;
    }
}
