using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Tests;

/// <summary>Invented data with a stated truth and a fixed seed.</summary>
internal static class Made
{
    /// <summary>Bands of the made spectrum, cm⁻¹.</summary>
    public static readonly (double Centre, double Height, double Width)[] Bands = [(563, 0.42, 30), (1041, 0.62, 80), (1448, 0.3, 60), (1632, 0.14, 70), (3435, 0.32, 380)];

    /// <summary>Wavenumbers falling from 4000 to 400 with the absorbance.</summary>
    /// <param name="seed">Seed of the noise.</param>
    /// <param name="shift">Shift of the band at 1041, cm⁻¹.</param>
    /// <param name="extra">Height of a further band at 1716.</param>
    /// <param name="weight">Factor of all bands.</param>
    public static IEnumerable<(double X, double A)> Spectrum(int seed = 1, double shift = 0, double extra = 0, double weight = 1)
    {
        var random = new SeededStream((ulong)seed, "made spectrum");
        for (var v = 4000.0; v >= 400; v -= 2)
        {
            var a = 0.05 + extra * Gauss(v, 1716, 40) + weight * Bands.Sum(b => b.Height * Gauss(v, b.Centre + (b.Centre == 1041 ? shift : 0), b.Width)) + 0.0005 * random.Normal();
            yield return (v, a);
        }
    }

    /// <summary>A spectrum as text.</summary>
    /// <param name="head">Lines above the numbers.</param>
    /// <param name="separator">Between the columns.</param>
    /// <param name="write">Absorbance into what the file holds.</param>
    /// <param name="comma">True for a decimal comma.</param>
    /// <param name="x">Wavenumber into what the file holds.</param>
    public static string Text(string head, string separator, Func<double, double> write, bool comma = false, Func<double, double>? x = null)
        => head + string.Concat(Spectrum().Select(p => Number(x is null ? p.X : x(p.X), 4, comma) + separator + Number(write(p.A), 5, comma) + "\n"));

    /// <summary>Sizes of a log-normal distribution.</summary>
    /// <param name="count">How many.</param>
    /// <param name="median">Median.</param>
    /// <param name="logSd">Standard deviation of ln d.</param>
    /// <param name="seed">Seed.</param>
    public static double[] Sizes(int count, double median, double logSd, int seed)
    {
        var random = new SeededStream((ulong)seed, "made sizes");
        return [.. Enumerable.Range(0, count).Select(_ => Math.Round(median * Math.Exp(logSd * random.Normal()), 1))];
    }

    /// <summary>A number as a file would hold it.</summary>
    public static string Number(double value, int decimals, bool comma = false)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return comma ? text.Replace('.', ',') : text;
    }

    private static double Gauss(double x, double centre, double width) => Math.Exp(-4 * Math.Log(2) * (x - centre) * (x - centre) / (width * width));
}
