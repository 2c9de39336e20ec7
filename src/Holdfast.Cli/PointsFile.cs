using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Cli;

/// <summary>A table of points for a fit: x in the first column of numbers, y in the second, u(y) in the third when it is named so.</summary>
internal static class PointsFile
{
    /// <summary>The file's bytes, with the same limits as files that are taken in.</summary>
    /// <param name="path">Where it is.</param>
    public static IncomingFile Read(string path)
    {
        const long largest = 64L << 20;
        var length = new FileInfo(path).Length;
        return length > largest
            ? throw new StudyException(Codes.LimitExceeded, string.Create(CultureInfo.InvariantCulture,
                $"{Path.GetFileName(path)} is {length >> 20} MB; the limit is 64 MB. Export only the columns you need."))
            : new IncomingFile(Path.GetFileName(path), File.ReadAllBytes(path));
    }

    /// <summary>The points, or null with the reason in <paramref name="remark"/>.</summary>
    /// <param name="understood">What the file was understood to be.</param>
    /// <param name="family">The curves that are to be fitted.</param>
    /// <param name="remark">What was left out, or why there are no points; "" for nothing to say.</param>
    public static Points? Points(Understanding understood, CurveFamily family, out string remark)
    {
        var columns = understood.Points.IsEmpty ? [] : understood.Points[0].Columns;
        if (columns.Length < 2)
        {
            remark = $"{Studies.Codes.Unreadable} {understood.FileName} has no two columns of numbers. Give {family.Axes} with a heading and unit each.";
            return null;
        }

        var rows = Enumerable.Range(0, columns[0].Values.Length).Where(i => columns[0].Values[i] is not null && columns[1].Values[i] is not null).ToArray();
        var u = columns.Length > 2 && columns[2].Heading.TrimStart().StartsWith('u') && rows.All(i => columns[2].Values[i] > 0)
            ? rows.Select(i => columns[2].Values[i]!.Value).ToArray()
            : null;
        var left = columns[0].Values.Length - rows.Length;
        remark = left > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Studies.Codes.OddCell} {left} rows without two numbers were left out.") : "";
        return new Points(
            [.. rows.Select(i => columns[0].Values[i]!.Value)],
            [.. rows.Select(i => columns[1].Values[i]!.Value)],
            columns[0].Unit?.ToString() ?? family.XUnit,
            columns[1].Unit?.ToString() ?? family.YUnit,
            u,
            ids: [.. rows.Select(i => string.Create(CultureInfo.InvariantCulture, $"row {i + 1}"))]);
    }
}
