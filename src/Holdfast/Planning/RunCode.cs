using System.Globalization;

namespace Holdfast.Planning;

/// <summary>
/// Code of one planned vessel, with a check character at its end, so that a label that was read or typed wrongly is caught: "26-ISO-0147-L" is year, series,
/// counter, check character.
/// </summary>
/// <remarks>
/// ISO 7064, hybrid system MOD 37,36 over digits and letters; hyphens do not count. It catches every single wrong character and nearly every exchange of
/// neighbours. A sample split from the vessel gets a suffix ("-a") after the code.
/// </remarks>
public static class RunCode
{
    private const string Characters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    private const int M = 36;

    /// <summary>The code of a vessel.</summary>
    /// <param name="year">Year of the plan; its last two digits are written.</param>
    /// <param name="series">Series; letters and digits of it are kept, in capitals.</param>
    /// <param name="counter">Counter within the study, 1 or above, never given twice.</param>
    /// <exception cref="ArgumentException">The series has no letter or digit.</exception>
    public static string Of(int year, string series, int counter)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentOutOfRangeException.ThrowIfLessThan(counter, 1);
        var name = new string([.. series.ToUpperInvariant().Where(Characters.Contains)]);
        if (name.Length == 0)
            throw new ArgumentException($"A series is named by letters or digits from A to Z and 0 to 9; “{series}” has none.", nameof(series));
        var body = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(year) % 100:00}-{name}-{counter:0000}");
        return $"{body}-{CheckCharacter(body)}";
    }

    /// <summary>The check character of a text.</summary>
    /// <param name="text">Digits and capital letters; hyphens are passed over.</param>
    /// <exception cref="ArgumentException">Another character stands in it.</exception>
    public static char CheckCharacter(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var product = M;
        foreach (var c in text)
        {
            if (c == '-')
                continue;
            var value = Characters.IndexOf(c, StringComparison.Ordinal);
            if (value < 0)
                throw new ArgumentException($"“{c}” is neither a digit nor a capital letter.", nameof(text));
            var sum = (product + value) % M;
            product = (sum == 0 ? M : sum) * 2 % (M + 1);
        }

        return Characters[(M + 1 - product) % M];
    }

    /// <summary>True when the last character is the check character of what stands before it; small letters are taken for capitals.</summary>
    /// <param name="code">A code as read from a label or typed.</param>
    public static bool IsValid(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        var text = code.Trim().ToUpperInvariant();
        return text.Length > 1 && text.All(c => c == '-' || Characters.Contains(c, StringComparison.Ordinal)) && text[^1] != '-' && CheckCharacter(text[..^1]) == text[^1];
    }
}
