using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims;

/// <summary>Where a sensor's claim holds: levels, powder in the dispersion, water, batch, vessels.</summary>
internal static class SensorScope
{
    /// <summary>Scope of a quenching series; null without one.</summary>
    /// <param name="series">The series.</param>
    /// <param name="to">Highest level that counts, µmol/L; null for all.</param>
    public static string? Of(SensorSeries? series, double? to = null)
    {
        if (series is null || series.Samples.IsEmpty)
            return null;
        var used = series.Samples.Where(s => s.Quencher <= (to ?? double.PositiveInfinity)).ToArray();
        var samples = Array.ConvertAll(used, s => s.Sample);
        return used.Length == 0 ? null
            : $"quencher {Phrase.Span(used.Min(s => s.Quencher), used.Max(s => s.Quencher), SensorAmount.Unit)}, {Of(samples)}; {Phrase.Count(used.Length, "vessel")}, {Phrase.Count(series.Blanks.Length, "blank")}";
    }

    /// <summary>Dispersion, water and batch of some samples, and what of it was not recorded.</summary>
    /// <param name="samples">The samples.</param>
    public static string Of(IReadOnlyList<Sample> samples)
    {
        double[] doses = [.. samples.Select(s => s.Number(FluorescenceProperties.Dispersion)).OfType<double>()];
        return string.Join(", ",
            doses.Length == 0 ? "powder in the dispersion not recorded" : $"powder {Phrase.Span(doses.Min(), doses.Max(), "g/L")}",
            Named("water", samples.Select(s => s.Words(SampleProperties.Matrix))),
            Named("batch", samples.Select(s => s.Batch)));
    }

    /// <summary>Codes of the vessels and blanks of a series.</summary>
    /// <param name="series">The series, or null.</param>
    public static IEnumerable<string> Codes(SensorSeries? series) => series is null ? [] : series.Samples.Concat(series.Blanks).Select(s => s.Code);

    private static string Named(string what, IEnumerable<string?> names)
    {
        string[] all = [.. names.OfType<string>().Where(n => n.Length > 0).Distinct(StringComparer.Ordinal)];
        return all.Length == 0 ? what + " not recorded" : what + " " + Phrase.Listed(all);
    }
}
