using System.Globalization;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Statistics;

namespace Holdfast.Verdicts;

/// <summary>By how many units of AICc rivals lead the true curve by chance: the distances that ModelChoice keeps, by points and parameters.</summary>
internal static class AiccDistances
{
    private static readonly (string Name, int Parameters, Func<double, double> Uptake)[] Truths =
    [
        ("Henry", 1, c => 0.4 * c), ("Langmuir", 2, c => 14 * 0.35 * c / (1 + 0.35 * c)), ("Freundlich", 2, c => 3 * Math.Pow(c, 0.45)),
        ("Sips", 3, c => 14 * Math.Pow(0.35 * c, 0.7) / (1 + Math.Pow(0.35 * c, 0.7))),
    ];

    /// <summary>Prints, for each truth and number of points, the lead of the best rival that chance exceeds in 5 %, and in 20 % of studies.</summary>
    /// <param name="studies">Studies a row.</param>
    public static int Run(int studies)
    {
        Console.WriteLine("truth        p    n   95 %   80 %  (largest lead of a rival with n ≥ p + 5)");
        foreach (var (name, parameters, uptake) in Truths)
        {
            foreach (var n in new[] { 8, 12, 18, 24, 36 }.Where(n => n >= parameters + 5))
            {
                var leads = new List<double>();
                for (var seed = 0; seed < studies; seed++)
                {
                    var chance = new SeededStream((ulong)seed, Invariant($"distance {name} {n}"));
                    double[] c = [.. Enumerable.Range(0, n).Select(i => 0.2 * Math.Pow(200, (i % 12 + 0.5) / 12.0))];
                    double[] q = [.. c.Select(x => uptake(x) + 0.02 * uptake(40) * chance.Normal())];
                    var points = new Points(c, q, "mg/L", "mg/g");
                    var fits = Isotherm.All.Select(m => m.Fit(points, new FitOptions { Profiles = false, MostIterations = 500 })).Where(f => f.IsFit && f.Aicc is not null && n >= f.P + 5).ToArray();
                    if (fits.FirstOrDefault(f => f.Card.Name == name) is { } own)
                        leads.Add(own.Aicc!.Value - fits.Where(f => f != own).Min(f => f.Aicc!.Value));
                }

                leads.Sort();
                if (leads.Count > 0)
                    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-12} {parameters} {n,4} {leads[(int)(0.95 * leads.Count)],6:0.0} {leads[(int)(0.80 * leads.Count)],6:0.0}  {leads.Count} of {studies}"));
            }
        }

        return 0;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
