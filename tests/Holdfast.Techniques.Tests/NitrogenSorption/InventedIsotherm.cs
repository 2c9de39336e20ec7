using System.Globalization;
using System.Text;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

/// <summary>An invented isotherm that follows the BET equation below p/p0 0.35 exactly, with condensation above and a loop: 1.5 mmol/g, C 90, 146.338 m²/g.</summary>
internal static class InventedIsotherm
{
    public const double Monolayer = 1.5, C = 90, Area = 146.338;

    private static readonly double[] Up = [0.01, 0.02, 0.035, 0.05, 0.065, 0.08, 0.1, 0.12, 0.14, 0.16, 0.18, 0.2, 0.225, 0.25, 0.275, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.84, 0.88, 0.91, 0.94, 0.96, 0.975, 0.99];
    private static readonly double[] Down = [0.97, 0.95, 0.92, 0.89, 0.86, 0.83, 0.8, 0.76, 0.72, 0.68, 0.64, 0.6, 0.55, 0.5, 0.46, 0.42, 0.36, 0.3, 0.2, 0.15];

    public static IReadOnlyList<(double X, double N)> Adsorption { get; } = [.. Up.Select(x => (x, At(x, 0.78)))];

    public static IReadOnlyList<(double X, double N)> Desorption { get; } = [.. Down.Select(x => (x, At(x, 0.68)))];

    public static IReadOnlyList<(double X, double N)> Stacked { get; } = [.. Adsorption, .. Desorption];

    /// <summary>Lines of cells, numbers with a point or a comma.</summary>
    public static string Lines(IEnumerable<(double X, double N)> points, string separator = ",", double xScale = 1, double nScale = 1, bool comma = false)
    {
        var text = new StringBuilder();
        foreach (var (x, n) in points)
        {
            var line = string.Create(CultureInfo.InvariantCulture, $"{x * xScale:0.######}|{n * nScale:0.######}\n");
            text.Append((comma ? line.Replace('.', ',') : line).Replace("|", separator, StringComparison.Ordinal));
        }

        return text.ToString();
    }

    // Pores of 7 nm or so: a smooth step of 8 mmol/g about a pressure; below 0.35 nothing is added.
    private static double At(double x, double step)
        => Monolayer * C * x / ((1 - x) * (1 + (C - 1) * x)) is var bet && x <= 0.35 ? bet : Film(x) + 8 / (1 + Math.Exp(-(x - step) / 0.03));

    // The film goes on slowly, so that there is a plateau.
    private static double Film(double x) => Monolayer * C * 0.35 / (0.65 * (1 + (C - 1) * 0.35)) + 2.4 * (x - 0.35);
}
