using System.Globalization;

namespace Holdfast.Diffraction;

/// <summary>A symmetry operation of a space group: x′ = R·x + t.</summary>
/// <param name="R">Rotation by rows, nine whole numbers.</param>
/// <param name="T">Translation, three shares of the axes.</param>
public sealed record SymmetryOperation(IReadOnlyList<int> R, IReadOnlyList<double> T)
{
    /// <summary>The operation written as coordinates, or null: "x,1/2+y,-z", "+X", ".5+x", "x-y".</summary>
    /// <param name="text">Three terms separated by commas.</param>
    public static SymmetryOperation? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(',');
        if (parts.Length != 3)
            return null;
        var r = new int[9];
        var t = new double[3];
        for (var row = 0; row < 3; row++)
        {
            if (!Term(parts[row], r.AsSpan(row * 3, 3), out t[row]))
                return null;
        }

        // No setting of a space group takes an axis twice.
        return Array.TrueForAll(r, n => n is >= -1 and <= 1) && Math.Abs(Determinant(r)) == 1 && Array.TrueForAll(t, double.IsFinite) ? new(r, t) : null;
    }

    /// <summary>Where the operation takes a point, in shares of the axes, not brought back into the cell.</summary>
    /// <param name="x">Share along a.</param>
    /// <param name="y">Share along b.</param>
    /// <param name="z">Share along c.</param>
    public (double X, double Y, double Z) Apply(double x, double y, double z)
        => (R[0] * x + R[1] * y + R[2] * z + T[0], R[3] * x + R[4] * y + R[5] * z + T[1], R[6] * x + R[7] * y + R[8] * z + T[2]);

    /// <summary>The planes that the operation takes these to: h′ = h·R.</summary>
    /// <param name="planes">Indices.</param>
    public Miller Apply(Miller planes)
    {
        var (h, k, l) = planes;
        return new(h * R[0] + k * R[3] + l * R[6], h * R[1] + k * R[4] + l * R[7], h * R[2] + k * R[5] + l * R[8]);
    }

    private static int Determinant(int[] r)
        => r[0] * (r[4] * r[8] - r[5] * r[7]) - r[1] * (r[3] * r[8] - r[5] * r[6]) + r[2] * (r[3] * r[7] - r[4] * r[6]);

    private static bool Term(string text, Span<int> rotation, out double translation)
    {
        translation = 0;
        var s = text.Where(c => !char.IsWhiteSpace(c)).Select(char.ToLowerInvariant).ToArray();
        for (var at = 0; at < s.Length;)
        {
            var sign = s[at] == '-' ? -1 : 1;
            if (s[at] is '+' or '-')
                at++;
            else if (at > 0)
                return false;
            if (at == s.Length)
                return false;
            if (s[at] is 'x' or 'y' or 'z')
            {
                rotation[s[at++] - 'x'] += sign;
                continue;
            }

            if (!Amount(s, ref at, out var amount))
                return false;
            if (at < s.Length && s[at] == '/')
            {
                at++;
                if (!Amount(s, ref at, out var below) || below == 0)
                    return false;
                amount /= below;
            }

            translation += sign * amount;
        }

        return s.Length > 0;
    }

    private static bool Amount(char[] s, ref int at, out double amount)
    {
        var from = at;
        while (at < s.Length && (char.IsAsciiDigit(s[at]) || s[at] == '.'))
            at++;
        return double.TryParse(s.AsSpan(from, at - from), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out amount);
    }
}
