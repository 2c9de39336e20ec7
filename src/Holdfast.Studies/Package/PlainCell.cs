namespace Holdfast.Studies.Package;

/// <summary>
/// Text cells that spreadsheet programs would take for a formula get a leading apostrophe, and lose it again on the way back.
/// Numbers are written as numbers and never pass here.
/// </summary>
/// <remarks>OWASP Application Security Verification Standard 1.2.10; CWE-1236. Line feed and the wide forms are our additions.</remarks>
public static class PlainCell
{
    // The apostrophe itself is guarded too: otherwise a text that begins with one would come back without it.
    private const string Guarded = "=+-@\t\r\n\0'\uFF1D\uFF0B\uFF0D\uFF20";

    /// <summary>The text as it goes into a CSV cell.</summary>
    /// <param name="text">Any text.</param>
    public static string Guard(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && Guarded.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;
    }

    /// <summary>The text as it was before <see cref="Guard"/>.</summary>
    /// <param name="cell">A cell's text.</param>
    public static string Unguard(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Length > 1 && cell[0] == '\'' && Guarded.Contains(cell[1], StringComparison.Ordinal) ? cell[1..] : cell;
    }
}
