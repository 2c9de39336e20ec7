using System.Globalization;
using System.Text;
using Holdfast.Claims;

namespace Holdfast.Cli.Tests;

/// <summary>Sheets of studies that say little: invented, made from a seed, none of them measured. Each is a vessel sheet, so that no reading need come first.</summary>
internal static class OddStudies
{
    private const string Head = "sample,series,role,m (mg),V (mL),C0 (mg/L),t (min),pH start,pH end,temperature (°C),Ce (mg/L)\n";

    /// <summary>Names of the shapes.</summary>
    public static IReadOnlyList<string> Names { get; } = ["no-readings", "flat", "plateau", "random", "decreasing", "censored", "above-start", "all-alike", "one-vessel", "two-vessels", "exact", "huge", "tiny"];

    /// <summary>The vessel sheet of a shape: contact times, start concentrations, pH, doses and temperatures varied, two vessels each.</summary>
    /// <param name="shape">One of <see cref="Names"/>.</param>
    /// <param name="seed">Seed of what is random.</param>
    public static string Sheet(string shape, int seed)
    {
        if (shape is "one-vessel")
            return Head + "V-1,KIN,vessel,20,25,40,60,6,6.5,25,12\n";
        if (shape is "two-vessels")
            return Head + "V-1,KIN,vessel,20,25,40,60,6,6.5,25,12\nV-2,KIN,vessel,20,25,40,120,6,6.5,25,11\n";
        var random = new Random(seed);
        var text = new StringBuilder(Head);
        double[] times = [0, 5, 10, 20, 40, 80, 120];
        double[] starts = [2, 5, 10, 20, 40, 80, 160];
        double[] ph = [2, 3, 4, 5, 6, 8, 9];
        double[] masses = [5, 10, 20, 30, 40, 80, 100];
        double[] temperatures = [15, 25, 35];
        for (var i = 0; i < times.Length; i++)
        {
            for (var n = 1; n <= 2; n++)
            {
                Row("KIN", $"K{i}-{n}", 20, 40, times[i], 6, 25, (double)i / 6);
                Row("ISO", $"I{i}-{n}", 20, starts[i], 1440, 6, 25, (double)i / 6);
                Row("PH", $"P{i}-{n}", 20, 40, 1440, ph[i], 25, (double)i / 6);
                Row("DOSE", $"D{i}-{n}", masses[i], 40, 1440, 6, 25, (double)i / 6);
                if (i < temperatures.Length)
                    Row($"T{temperatures[i]:0}", $"T{i}-{n}", 20, 40, 1440, 6, temperatures[i], (double)i / 6);
            }
        }

        text.Append("C-1,KIN,control,0,25,40,120,6,6.5,25,").Append(shape == "no-readings" ? "" : "39.8").Append('\n');
        return text.ToString();

        void Row(string series, string code, double mass, double start, double time, double acid, double temperature, double along)
        {
            var left = shape switch
            {
                "no-readings" => "",
                "flat" => Text(0.5 * start),
                "plateau" => Text(start * (time == 0 ? 1 : 0.2)),
                "random" => Text(start * random.NextDouble() * 1.1),
                "decreasing" => Text(start * (0.1 + (0.85 * along))),
                "censored" => "<0.05",
                "above-start" => Text(start * 1.3),
                "all-alike" => "12",
                "exact" => Text(Left(start, mass / 25)),
                "huge" => Text(1e9 * start * random.NextDouble()),
                "tiny" => Text(1e-9 * start * random.NextDouble()),
                _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "No such shape."),
            };
            text.Append(CultureInfo.InvariantCulture, $"{code},{series},vessel,{mass},25,{start},{time},{acid},{acid + 0.4},{temperature},{left}\n");
        }
    }

    /// <summary>Every kind of claim once, each parameter as its own example says.</summary>
    public static IEnumerable<string[]> Claims()
        => Defence.Rules.Select(r => (string[])["claim", r.Id, .. ClaimParameter.Of(r).Select(p => $"{p.Name}={p.Example}")]);

    // Langmuir with qm = 10 mg/g and 1/K = 3 mg/L through the mass balance: the positive root of a quadratic.
    private static double Left(double start, double dose)
    {
        var b = 3 + (10 * dose) - start;
        return (-b + Math.Sqrt((b * b) + (12 * start))) / 2;
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
