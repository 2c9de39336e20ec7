using System.Globalization;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>
/// Ordinates of one data record as the integers that were written, line by line: numbers apart or run together (AFFN, PAC), with the first digit and
/// sign in one letter (SQZ), as differences (DIF), repeated (DUP), or missing ("?").
/// </summary>
/// <remarks>McDonald and Wilks 1988 (from memory). After a line that ends with a difference the next begins with the same ordinate again, as a check.</remarks>
internal sealed class JcampOrdinates
{
    private readonly string fileName;
    private double? last;
    private double difference;
    private bool lastIsDifference;

    /// <summary>Nothing is read yet.</summary>
    /// <param name="fileName">The file, for messages.</param>
    public JcampOrdinates(string fileName) => this.fileName = fileName;

    /// <summary>Ordinates so far; null for a missing one.</summary>
    public List<(int Line, double? Value)> Values { get; } = [];

    /// <summary>Abscissas at the start of each line, as written, with the index of the ordinate they stand for and the weight of their last digit.</summary>
    public List<(int Line, double Written, int Index, double LastDigit)> LineStarts { get; } = [];

    /// <summary>Checks that failed: line, what it states, what the differences give.</summary>
    public List<(int Line, double Stated, double Summed)> FailedChecks { get; } = [];

    /// <summary>Checks made.</summary>
    public int Checks { get; private set; }

    /// <summary>Reads a line: one abscissa, then ordinates.</summary>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="text">Its text without comment.</param>
    /// <exception cref="StudyException">A character that has no meaning there (HF-406), or more points than the limit (HF-407).</exception>
    public void Read(int number, string text)
    {
        var at = 0;
        while (at < text.Length && IsSeparator(text[at]))
            at++;
        var start = at;
        var abscissa = Affn(text, ref at) ?? throw Unreadable(number, text[Math.Min(start, text.Length - 1)]);
        var isCheck = lastIsDifference;
        LineStarts.Add((number, abscissa, isCheck ? Values.Count - 1 : Values.Count, LastDigitOf(text[start..at])));
        while (at < text.Length)
        {
            if (IsSeparator(text[at]))
            {
                at++;
                continue;
            }

            Token(number, text, ref at, ref isCheck);
            if (Values.Count > Limits.Rows)
                throw Limits.Exceeded(fileName, $"more than {Ordinal.Text(Limits.Rows)} points");
        }
    }

    private void Token(int number, string text, ref int at, ref bool isCheck)
    {
        var c = text[at];
        if (c == '?')
        {
            at++;
            Add(number, null, isDifference: false, ref isCheck);
        }
        else if (Affn(text, ref at) is { } plain)
            Add(number, plain, isDifference: false, ref isCheck);
        else if (Digit(c, '@', 'A', 'a') is { } squeezed)
            Add(number, WithDigits(squeezed, c, text, ref at), isDifference: false, ref isCheck);
        else if (Digit(c, '%', 'J', 'j') is { } step)
        {
            difference = WithDigits(step, c, text, ref at);
            Add(number, (last ?? throw Unreadable(number, c)) + difference, isDifference: true, ref isCheck);
        }
        else if (c is (>= 'S' and <= 'Z') or 's')
            Repeat(number, WithDigits(c == 's' ? 9 : c - 'S' + 1, c, text, ref at), c, ref isCheck);
        else
            throw Unreadable(number, c);
    }

    // Repeats count in total: T stands for twice, so that one more is added.
    private void Repeat(int number, double times, char c, ref bool isCheck)
    {
        if (Values.Count == 0 || isCheck || times < 1)
            throw Unreadable(number, c);
        if (times > Limits.Rows)
            throw Limits.Exceeded(fileName, $"more than {Ordinal.Text(Limits.Rows)} points");
        var missing = Values[^1].Value is null;
        for (var i = 1; i < times; i++)
            Add(number, missing ? null : lastIsDifference ? last + difference : last, lastIsDifference, ref isCheck);
    }

    private void Add(int number, double? value, bool isDifference, ref bool isCheck)
    {
        if (isCheck)
        {
            isCheck = false;
            lastIsDifference = false;
            Checks++;
            if (value is { } stated && last is { } summed && stated != summed)
                FailedChecks.Add((number, stated, summed));
            last = value ?? last;
            return;
        }

        Values.Add((number, value));
        last = value ?? last;
        lastIsDifference = isDifference;
    }

    private static bool IsSeparator(char c) => c is ' ' or '\t' or ',' or ';';

    // @ stands for 0 and A to I for 1 to 9, a to i for −1 to −9; % with J to R and j to r likewise.
    private static double? Digit(char c, char zero, char positive, char negative)
        => c == zero ? 0 : c >= positive && c < positive + 9 ? c - positive + 1 : c >= negative && c < negative + 9 ? -(c - negative + 1) : null;

    // The digits after the letter belong to it and take its sign.
    private static double WithDigits(double first, char letter, string text, ref int at)
    {
        var end = at + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
            end++;
        var digits = text[(at + 1)..end];
        at = end;
        var magnitude = double.Parse(Math.Abs(first).ToString(CultureInfo.InvariantCulture) + digits, CultureInfo.InvariantCulture);
        return char.IsAsciiLetterLower(letter) && letter != 's' ? -magnitude : magnitude;
    }

    // An E is an exponent only with a sign behind it; else it is the letter of a squeezed 5.
    private static double? Affn(string text, ref int at)
    {
        var end = at;
        if (end < text.Length && text[end] is '+' or '-')
            end++;
        var digits = end;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.'))
            end++;
        if (end == digits)
            return null;
        if (end + 2 < text.Length && text[end] is 'E' or 'e' && text[end + 1] is '+' or '-' && char.IsAsciiDigit(text[end + 2]))
        {
            end += 2;
            while (end < text.Length && char.IsAsciiDigit(text[end]))
                end++;
        }

        if (!double.TryParse(text.AsSpan(at, end - at), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
            return null;
        at = end;
        return value;
    }

    private static double LastDigitOf(string number)
    {
        var mantissa = number.Split('E', 'e')[0];
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var scale = number.Length > mantissa.Length ? int.Parse(number[(mantissa.Length + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : 0;
        return Math.Pow(10, scale - (point < 0 ? 0 : mantissa.Length - point - 1));
    }

    private StudyException Unreadable(int line, char c)
        => new(Codes.Unreadable, $"Line {Ordinal.Text(line)} of {fileName} holds '{c}', which no number here begins with, so nothing is taken in. Export the spectrum again.");
}
