using System.Text.RegularExpressions;

namespace Holdfast.Studies.Import;

/// <summary>A message passed on: a mark of quotation before every line, which is no part of what it says.</summary>
internal static partial class QuotedMail
{
    private const int FewestLines = 5;

    /// <summary>The text without the marks where most of its lines carry one and some carry words behind it; lines keep their numbers.</summary>
    /// <param name="text">The text.</param>
    public static string Bare(string text)
    {
        if (!text.Contains("\n>", StringComparison.Ordinal) && !text.StartsWith('>'))
            return text;
        var lines = text.Split('\n');
        var filled = lines.Count(l => !string.IsNullOrWhiteSpace(l));
        var marked = lines.Count(l => Mark().IsMatch(l));
        // "> 5" under a limit is a result: a message has words and empty lines behind its marks as well.
        return marked >= FewestLines && marked * 2 >= filled && lines.Any(l => Words().IsMatch(l)) && lines.Any(l => Alone().IsMatch(l)) ? string.Join('\n', lines.Select(l => Mark().Replace(l, ""))) : text;
    }

    [GeneratedRegex(@"^(>[ \t]?)+", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Mark();

    [GeneratedRegex(@"^(>\s?)+\p{L}+[ ,:.]", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Words();

    [GeneratedRegex(@"^(>\s?)+$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Alone();
}
