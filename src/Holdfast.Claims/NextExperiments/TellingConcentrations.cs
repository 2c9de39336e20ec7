using Holdfast.Statistics;
using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.NextExperiments;

/// <summary>Concentrations at which two isotherms differ most, and how many vessels tell them apart.</summary>
/// <remarks>
/// T-optimal designs over a fiftyfold range: Langmuir against Freundlich at both ends and 0.31 Cmax, vessels in ratio 41 : 41 : 17, mean squared
/// distance (0.07 qm)²; Sips with exponent 0.7 against Langmuir at both ends and 0.2 Cmax, 46 : 36 : 18, (0.032 qm)² (computed;
/// reference/design/t-optimal.csv).
/// </remarks>
internal static class TellingConcentrations
{
    /// <summary>Langmuir against Freundlich.</summary>
    /// <param name="fitted">The series with its fits.</param>
    public static NextExperiment? For(FittedSeries fitted) => Design(fitted, 0.31, [0.41, 0.41, 0.17], 0.07, "Langmuir against Freundlich", 0);

    /// <summary>A spread of sites (Sips, exponent 0.7) against one kind (Langmuir), or one kind of site shown as such where the exponent is known already.</summary>
    /// <param name="fitted">The series with its fits.</param>
    /// <param name="exponent">The exponent found so far, or null.</param>
    /// <param name="margin">Distance from 1 that the exponent must be shown to keep; no unit.</param>
    public static NextExperiment? ForSpread(FittedSeries fitted, Estimate? exponent, double margin)
        => Design(fitted, 0.2, [0.46, 0.36, 0.18], 0.032, "Sips with exponent 0.7 against Langmuir", exponent is null ? 0
            : Replication.EquivalenceToTarget(margin, exponent.StandardError * Math.Sqrt(exponent.N), exponent.DegreesOfFreedom).N - exponent.N);

    private static NextExperiment? Design(FittedSeries fitted, double middle, double[] shares, double separation, string pair, int least)
    {
        if (LangmuirDesign.Of(fitted) is not { } curve || Candidates.Named(fitted, "Langmuir") is not { ResidualSd: { } sd and > 0 } fit)
            return null;
        double[] measured = [.. fitted.Series.Levels.SelectMany(l => l.EndConcentrations).Where(c => c > 0)];
        if (measured.Length == 0)
            return null;
        var top = measured.Max();
        double[] left = [measured.Min(), middle * top, top];
        var total = Math.Max(least, Replication.ForCurves(separation * curve.Capacity * separation * curve.Capacity, sd, fit.Nu));
        int[] vessels = [.. shares.Select(share => Math.Max(2, (int)Math.Ceiling(share * total)))];
        string[] words = [.. left.Select(c => $"C0 = {Phrase.With(Rounded(curve.StartFor(c)), "mg/L")}")];
        return new(
            $"Add {Phrase.Listed(words.Zip(vessels, (w, n) => $"{Phrase.Count(n, "vessel")} at {w}"))} at {Phrase.With(Rounded(curve.Dose), "g/L")}: there the curves differ most.",
            vessels.Sum(), [.. words], $"T-optimal concentrations for {pair}; power 80 %, curves {Phrase.With(separation * curve.Capacity, "mg/g")} apart");
    }

    private static double Rounded(double value)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 2);
        return Math.Round(value / step) * step;
    }
}
