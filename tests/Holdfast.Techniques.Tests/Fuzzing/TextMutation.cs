using System.Globalization;
using System.Text;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>
/// Spoils a text file as people, programs and disks spoil them: what is changed are lines, headings, numbers, units and marks of the format, seldom single bytes, so that most inputs still get
/// past the first look and reach what reads them.
/// </summary>
internal static class TextMutation
{
    // Most rows that are kept of a long table: an input is small, so that many can be tried.
    private const int MostRows = 240;

    // Changes below this number break the form of a file.
    private const int OfForm = 11;

    private static readonly string[] Numbers =
    [
        "0", "-0", "-1", "1e308", "-1e308", "1e-320", "1e999", "NaN", "Infinity", "-Inf", "99999999999999999999", "2147483648", "1,5", "1.234,5", "1 234", "1'234", "0x1F", "1e", "e5", "--3", "+-1", "1.2.3", "12(3)",
        "5.43(999999)", "1/0", "#DIV/0!", "#REF!", "n.d.", "< 0.5", "<LOD", "?", ".", "", "-", "−5", "٣٫٥", "１２", "1e5e5", "0.1 ", "5e-7", "1e12", "-273.16", "360", "180", "90.0000001", "100.1", "1.0001",
    ];

    private static readonly string[] Pieces =
    [
        "\t", ",", ";", " ", "\"", "'", "#", "##", "$$", "=", ":", "(", ")", "[", "]", "_", "loop_", "data_", "save_", "\n;", "\n;\n", "##END=", "##TITLE=", "##XYDATA=(X++(Y..Y))", "##PEAK TABLE=(XY..XY)", "##NPOINTS=0",
        "##NPOINTS=99999999", "##DELTAX=0", "##BLOCKS=3", "##NTUPLES=X", "\0", "\r", "\u001A", "\uFEFF", "é", "µ", "°", "Å", "\u202E", "💧", "@", "%", "J", "T", "s", "?", "E", "A9", "Z", "%J9", "nm", "cm-1", "mmol/g", "cm3(STP)/g",
        "kPa", "Torr", "%T", "wt%", "at%", "2theta", "theta", "d (A)", "Q (1/nm)", "N2", "Ar", "CO2", "mg", "kg",
    ];

    /// <summary>A spoilt copy.</summary>
    /// <param name="whole">The file.</param>
    /// <param name="other">Another file of the same kind, for pieces of it.</param>
    /// <param name="chance">What is done.</param>
    public static byte[] Of(byte[] whole, byte[] other, SeededStream chance)
    {
        // Half of the inputs keep their form and say something else: those get farthest.
        var keepsForm = chance.Below(2) == 0;
        List<string> lines = [.. Encoding.Latin1.GetString(whole).Split('\n')];
        if (!keepsForm || !Encoding.Latin1.GetString(whole).Contains("##", StringComparison.Ordinal))
            lines = Shortened(lines, chance);
        var times = 1 + chance.Below(chance.Below(4) == 0 ? 12 : 3);
        for (var i = 0; i < times && lines.Count > 0; i++)
            Once(lines, other, chance, keepsForm ? OfForm : 0);
        if (keepsForm)
            return Encoding.Latin1.GetBytes(string.Join('\n', lines));
        var bytes = Encoding.Latin1.GetBytes(string.Join(chance.Below(40) switch { 0 => "\r", 1 => "\r\n", 2 => "\n\n", _ => "\n" }, lines));
        return chance.Below(12) switch
        {
            0 => Flipped(bytes, chance),
            1 => bytes[..chance.Below(bytes.Length + 1)],
            2 when chance.Below(3) == 0 => [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Encoding.Latin1.GetString(bytes))],
            3 when chance.Below(3) == 0 => [0xEF, 0xBB, 0xBF, .. bytes],
            _ => bytes,
        };
    }

    // A run of rows out of the middle is left out, and the head and the end stay.
    private static List<string> Shortened(List<string> lines, SeededStream chance)
    {
        if (lines.Count <= MostRows || chance.Below(50) == 0)
            return lines;
        var head = Math.Min(40, lines.Count / 4);
        var kept = MostRows / 4 + chance.Below(3 * MostRows / 4);
        var from = head + chance.Below(Math.Max(1, lines.Count - head - kept));
        return [.. lines[..head], .. lines.Skip(from).Take(kept), .. chance.Below(2) == 0 ? [] : lines[^2..]];
    }

    private static void Once(List<string> lines, byte[] other, SeededStream chance, int leastChange)
    {
        // The head says what everything below it means: it is struck as often as all rows together.
        var at = chance.Below(2) == 0 ? chance.Below(lines.Count) : chance.Below(Math.Min(lines.Count, 24));
        switch (leastChange + chance.Below(16 - leastChange))
        {
            case 0:
                lines.RemoveRange(at, Math.Min(lines.Count - at, chance.Below(3) == 0 ? 1 + chance.Below(20) : 1));
                break;
            case 1:
                lines.InsertRange(at, Enumerable.Repeat(lines[at], chance.Below(6) == 0 ? 1 + chance.Below(30) : 1).ToArray());
                break;
            case 2:
                var to = chance.Below(lines.Count);
                (lines[at], lines[to]) = (lines[to], lines[at]);
                break;
            case 3:
                lines[at] = lines[at][..chance.Below(lines[at].Length + 1)];
                break;
            case 4:
                lines[at] = lines[at].Insert(chance.Below(lines[at].Length + 1), Pieces[chance.Below(Pieces.Length)]);
                break;
            case 5:
                var from = Encoding.Latin1.GetString(other).Split('\n');
                lines.Insert(at, from[chance.Below(from.Length)]);
                break;
            case 6:
                lines.Insert(at, chance.Below(2) == 0 ? "" : Pieces[chance.Below(Pieces.Length)] + Pieces[chance.Below(Pieces.Length)]);
                break;
            case 7:
                // The values of two lines change places: what is said of one thing is said of another.
                var second = chance.Below(Math.Min(lines.Count, 24));
                string[] a = lines[at].Split(' ', 2), b = lines[second].Split(' ', 2);
                (lines[at], lines[second]) = (a[0] + " " + b[^1], b[0] + " " + a[^1]);
                break;
            case 8:
                lines[at] = string.Join(chance.Below(2) == 0 ? "\t" : ";", lines[at].Split([' ', '\t', ','], StringSplitOptions.RemoveEmptyEntries).Reverse());
                break;
            case 9:
                lines[at] = chance.Below(2) == 0 ? lines[at].ToUpperInvariant() : lines[at].ToLowerInvariant();
                break;
            case 10:
                lines[at] = lines[at].Replace('.', ',');
                break;
            case 11:
                // A whole column is scaled: a unit slip from one row on.
                var factor = Math.Pow(10, chance.Below(13) - 6);
                for (var i = at; i < lines.Count && i < at + MostRows; i++)
                    lines[i] = Number(lines[i], chance, _ => null, v => v * factor);
                break;
            default:
                lines[at] = Number(lines[at], chance, c => c.Below(2) == 0 ? Numbers[c.Below(Numbers.Length)] : null, v => chance.Below(6) switch
                {
                    0 => -v,
                    1 => v * 1000,
                    2 => v / 1000,
                    3 => v * Math.Pow(10, chance.Below(600) - 300.0),
                    4 => Math.Round(v),
                    _ => v + chance.Below(7) - 3,
                });
                break;
        }
    }

    // One number of a line, as it may be found there, or another in its place.
    private static string Number(string line, SeededStream chance, Func<SeededStream, string?> instead, Func<double, double> changed)
    {
        var found = new List<(int From, int To)>();
        for (var i = 0; i < line.Length; i++)
        {
            if (!char.IsAsciiDigit(line[i]) && !(line[i] is '-' or '.' && i + 1 < line.Length && char.IsAsciiDigit(line[i + 1])))
                continue;
            var from = i;
            while (i < line.Length && (char.IsAsciiDigit(line[i]) || line[i] is '.' or '-' or '+' or 'e' or 'E'))
                i++;
            found.Add((from, i));
        }

        if (found.Count == 0)
            return line;
        var (start, end) = found[chance.Below(found.Count)];
        var now = instead(chance) ?? (double.TryParse(line[start..end], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? changed(value).ToString("R", CultureInfo.InvariantCulture) : "7");
        return line[..start] + now + line[end..];
    }

    private static byte[] Flipped(byte[] bytes, SeededStream chance)
    {
        for (var i = 1 + chance.Below(6); i > 0 && bytes.Length > 0; i--)
            bytes[chance.Below(bytes.Length)] = (byte)chance.Below(256);
        return bytes;
    }
}
