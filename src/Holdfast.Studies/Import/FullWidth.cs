namespace Holdfast.Studies.Import;

/// <summary>East Asian keyboards write brackets, digits and percent signs as wide as a character of their own; they mean the same.</summary>
internal static class FullWidth
{
    private const char First = '\uFF01', Last = '\uFF5E', Space = '\u3000';
    private const int Shift = First - '!';

    /// <summary>The text with such characters in their usual width.</summary>
    /// <param name="text">A cell.</param>
    public static string? Narrow(string? text)
        => text is null || text.AsSpan().IndexOfAnyExceptInRange('\0', (char)(Space - 1)) < 0 ? text : string.Create(text.Length, text, static (narrow, wide) =>
        {
            for (var i = 0; i < wide.Length; i++)
                narrow[i] = wide[i] == Space ? ' ' : IsWide(wide[i]) ? (char)(wide[i] - Shift) : wide[i];
        });

    private static bool IsWide(char c) => c is (>= First and <= Last) or Space;
}
