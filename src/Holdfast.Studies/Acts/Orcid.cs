namespace Holdfast.Studies.Acts;

/// <summary>The number by which an author is known whatever the name: sixteen digits, the last of which checks the others.</summary>
/// <remarks>Check digit after ISO/IEC 7064, MOD 11-2: the sum of (total + digit)·2 over the first fifteen, then (12 − total mod 11) mod 11, ten written as X.</remarks>
public static class Orcid
{
    /// <summary>The number in fours, or null where it is none.</summary>
    /// <param name="words">As typed, or as an address that ends with it.</param>
    public static string? Read(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var signs = string.Concat(words.Split('/')[^1].Where(c => c is not ('-' or ' '))).ToUpperInvariant();
        if (signs.Length != 16 || !signs[..15].All(char.IsAsciiDigit) || signs[15] != Check(signs[..15]))
            return null;
        return string.Join('-', signs.Chunk(4).Select(four => new string(four)));
    }

    private static char Check(string digits)
    {
        var total = digits.Aggregate(0, (sum, digit) => (sum + digit - '0') * 2 % 11);
        return (12 - total) % 11 is var check and < 10 ? (char)('0' + check) : 'X';
    }
}
