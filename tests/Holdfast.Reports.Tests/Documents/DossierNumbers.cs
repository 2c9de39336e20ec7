using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.StudyFigures;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>Every number that a text about a study may print: those its verdicts, fits, lines and records hold, and those in its own words.</summary>
internal sealed partial class DossierNumbers
{
    private readonly HashSet<string> words;
    private readonly double[] values;
    private readonly HashSet<int> counts;

    public DossierNumbers(Dossier dossier)
    {
        var (evidence, study) = (dossier.Evidence, dossier.Evidence.Study);
        var verdicts = dossier.Verdicts.Concat(dossier.Verdicts.SelectMany(v => v.OpenGrounds)).ToArray();
        FitResult[] fits = [.. evidence.Kinetics.Concat(evidence.Isotherms).SelectMany(f => f.Fits), .. Sensing.Of(evidence).Series.SelectMany(s => s.Fits)];
        string?[] said =
        [
            .. verdicts.SelectMany(v => new[] { v.Sentence, v.Reason, v.Scope, v.Next?.Sentence }.Concat(v.Warnings).Concat(v.Next?.Settings ?? []).Concat(v.Numbers.SelectMany(n => new[] { n.Name, n.Note, n.Unit })).Concat(v.Claim.Parameters.Values)),
            study.Title, .. study.Details.Values, .. study.Runs.Select(r => r.Id), .. study.Runs.SelectMany(r => r.Details.Values),
            .. study.Samples.SelectMany(s => new[] { s.Code, s.Series, s.Batch, s.Words(SampleProperties.Matrix) }),
            .. fits.SelectMany(f => new[] { f.Card.Name, f.Card.Formula, f.Card.Source }),
            .. Speciation.Solid.All.SelectMany(s => new[] { s.Name, s.Source }),
            // Captions are made from the same records and tested with the figures.
            .. StudyFigure.All(dossier).SelectMany(f => f.AllNotes.Append(f.Caption).Select(t => t.Plain).Append(f.Title)),
            // Of the program: confidence, levels of tests, its version.
            "95 % 90 % 99 %", "Holdfast " + typeof(Reports.Documents.ReportOptions).Assembly.GetName().Version!.ToString(3), "2 units of AICc are not told apart", "100", "0.01", "0.05", "0.001",
        ];
        words = [.. said.OfType<string>().SelectMany(In)];
        values =
        [
            .. verdicts.SelectMany(v => v.Numbers).SelectMany(n => new[] { n.Value, n.Low, n.High }.OfType<double>()),
            .. verdicts.SelectMany(v => v.Numbers).Select(n => 100 * n.Level).OfType<double>(),
            .. fits.SelectMany(f => f.Parameters).SelectMany(p => new[] { p.Value, p.StandardError, p.Profile?.Lower.Value, p.Profile?.Upper.Value }.OfType<double>()),
            .. fits.Select(f => f.LackOfFit?.Test.P).OfType<double>(),
            .. evidence.Runs.Where(r => r.Curve is not null).SelectMany(r => Of(r)),
            // Settings are printed as spans.
            .. study.Samples.SelectMany(s => s.Facts.Values).Where(f => f.Value is not null).GroupBy(f => f.Property, StringComparer.Ordinal).SelectMany(g => new[] { g.Min(f => f.Value!.Value), g.Max(f => f.Value!.Value) }),
            .. study.Readings.Where(r => r.Spectrum is not null).SelectMany(r => new[] { r.Spectrum!.Wavelengths.Min(), r.Spectrum.Wavelengths.Max() }),
        ];
        // Claims are counted from 1; vessels, readings and files are counted as they are.
        counts =
        [
            .. Enumerable.Range(0, verdicts.Length), .. evidence.Vessels.GroupBy(v => v.Sample.Role).Select(g => g.Count()), study.Originals.Length, (int)study.Version, study.Samples.Length, study.Readings.Length,
            .. new[] { BatchProperties.StartPh, BatchProperties.EndPh }.Select(p => evidence.Vessels.Count(v => v.Sample is { Role: SampleRole.Vessel } && v.Sample.Number(p) is not null)),
        ];
    }

    /// <summary>The numbers in a text, as they are written; parts of names and hashes are none.</summary>
    public static IEnumerable<string> In(string text) => Token().Matches(text.Replace('\u00A0', ' ')).Select(m => m.Value);

    /// <summary>True where the study holds it.</summary>
    public bool Has(string token)
    {
        if (words.Contains(token))
            return true;
        var mantissa = token.Split('×')[0].Trim().Replace('−', '-');
        if (!double.TryParse(mantissa, NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
            return false;
        if (mantissa.All(char.IsAsciiDigit) && value < int.MaxValue && counts.Contains((int)value))
            return true;
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var scale = token.Contains('×', StringComparison.Ordinal) ? Math.Pow(10, Power(token)) : 1;
        var half = 0.5 * Math.Pow(10, point < 0 ? 0 : point + 1 - mantissa.Length) * scale * (1 + 1e-9);
        return values.Any(v => Math.Abs(v - (value * scale)) <= half);
    }

    private static IEnumerable<double> Of(CalibratedRun run)
    {
        var curve = run.Curve!;
        for (var power = 0; power < curve.Fit.Coefficients.Length; power++)
        {
            yield return curve.Fit.Coefficients[power];
            if (curve.Fit.Coefficient(power) is { } coefficient)
                yield return coefficient.StandardError;
        }

        foreach (var limit in curve.Limits.All)
        {
            yield return limit.Value;
            if (limit.Interval is not { } interval)
                continue;
            yield return interval.Low;
            yield return interval.High;
        }

        foreach (var number in new[] { curve.Fit.ResidualSd, curve.Top, curve.Linearity.Mandel?.P, curve.Linearity.LackOfFit?.P }.Concat(run.Checks.Select(c => c.Recovery)).OfType<double>())
            yield return number;
    }

    private static int Power(string token)
        => int.Parse(string.Concat(token[(token.IndexOf("10", StringComparison.Ordinal) + 2)..].Select(c => c == '⁻' ? '-' : (char)('0' + "⁰¹²³⁴⁵⁶⁷⁸⁹".IndexOf(c, StringComparison.Ordinal)))), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<![\p{L}\d.\-_/^])[−-]?\d+(?:\.\d+)*(?: × 10[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)?(?![\p{L}\d_])", RegexOptions.None, 5000)]
    private static partial Regex Token();
}
