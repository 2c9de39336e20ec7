using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Tests.PowderDiffraction;

/// <summary>Made patterns of a stated truth: invented powders, pseudo-Voigt lines, Poisson-like noise from a fixed seed.</summary>
internal static class Made
{
    /// <summary>A rock-salt-like cubic powder.</summary>
    public static (double TwoTheta, double Counts)[] Cubic(
        double a, Radiation radiation, double displacement = 0, double width = 0.14, double height = 4000, double from = 20, double to = 90, double step = 0.02, ulong seed = 1, params (double At, double Height)[] more)
    {
        Miller[] planes = [new(1, 1, 1), new(2, 0, 0), new(2, 2, 0), new(3, 1, 1), new(2, 2, 2), new(4, 0, 0), new(3, 3, 1), new(4, 2, 0), new(4, 2, 2)];
        double[] share = [0.1, 1, 0.55, 0.05, 0.16, 0.07, 0.03, 0.15, 0.1];
        var cell = new UnitCell(a, a, a, 90, 90, 90);
        var lines = planes.Zip(share).Select(p => (At: Bragg.TwoTheta(cell.Spacing(p.First), radiation.Ka1), Height: height * p.Second)).Where(l => l.At is not null)
            .Select(l => (At: l.At!.Value + displacement * Math.Cos(l.At.Value * Math.PI / 360), l.Height)).Concat(more).ToArray();
        return Lines(lines, radiation, width, from, to, step, seed);
    }

    /// <summary>Any lines on a falling background.</summary>
    public static (double TwoTheta, double Counts)[] Lines((double At, double Height)[] lines, Radiation radiation, double width, double from, double to, double step, ulong seed)
    {
        var stream = new SeededStream(seed, "made pattern");
        return [.. Enumerable.Range(0, (int)Math.Round((to - from) / step) + 1).Select(i =>
        {
            var x = Math.Round(from + i * step, 6);
            var m = 80 + 250 * Math.Exp(-(x - 10) / 20);
            foreach (var (at, h) in lines)
            {
                m += h * Shape(x - at, width);
                if (radiation.Ka2 is { } second)
                    m += radiation.Ratio * h * Shape(x - Bragg.Moved(at, radiation.Ka1, second)!.Value, width);
            }

            return (x, Math.Max(0, Math.Round(m + Math.Sqrt(m) * stream.Normal())));
        })];
    }

    /// <summary>Rows of text.</summary>
    public static string Rows(IEnumerable<(double TwoTheta, double Counts)> points, string separator = " ", char mark = '.', string format = "0.000")
        => string.Concat(points.Select(p => $"{p.TwoTheta.ToString(format, CultureInfo.InvariantCulture).Replace('.', mark)}{separator}{p.Counts.ToString("0", CultureInfo.InvariantCulture)}\n"));

    private static double Shape(double u, double w)
        => 0.5 / (1 + 4 * u * u / (w * w)) + 0.5 * Math.Exp(-4 * Math.Log(2) * u * u / (w * w));
}
