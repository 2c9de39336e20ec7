using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims;

/// <summary>
/// The range of the data in words: a claim that holds, holds there and nowhere else. What was not recorded is said, so that the
/// reader sees the hole.
/// </summary>
internal static class Scope
{
    private static readonly (Property Property, string Name)[] Ranges =
    [
        (BatchProperties.StartPh, "start pH"),
        (BatchProperties.EndPh, "end pH"),
        (BatchProperties.Temperature, "temperature"),
        (BatchProperties.ContactTime, "contact time"),
    ];

    /// <summary>Scope of a claim that rests on vessels: pH, temperature, time, concentration, dose, water, batch, number of vessels.</summary>
    /// <param name="vessels">The vessels that count.</param>
    public static string Of(IEnumerable<Vessel> vessels)
    {
        Vessel[] all = [.. vessels.DistinctBy(v => v.Code, StringComparer.Ordinal)];
        var parts = new List<string>();
        foreach (var (property, name) in Ranges)
            parts.Add(Range(name, property.Unit, [.. all.Select(v => v.Sample.Number(property)).OfType<double>()]));
        parts.Add(Range("C0", "mg/L", [.. all.Select(v => v.Start?.Value ?? v.Sample.Number(BatchProperties.InitialConcentration)).OfType<double>()]));
        if (all.Any(v => v.Mass is not null || v.Dose is not null))
            parts.Add(Range("dose", "g/L", [.. all.Select(v => v.Dose?.Value ?? v.Sample.Number(BatchProperties.Dose)).OfType<double>()]));
        parts.Add(Named("water", all, v => v.Sample.Words(SampleProperties.Matrix)));
        parts.Add(Named("batch", all, v => v.Sample.Batch));
        return string.Join(", ", parts) + "; " + Phrase.Count(all.Length, "vessel");
    }

    /// <summary>The batches and waters, each once, as words: "batch B1".</summary>
    private static string Named(string what, IEnumerable<Vessel> vessels, Func<Vessel, string?> name)
    {
        string[] names = [.. vessels.Select(name).OfType<string>().Where(n => n.Length > 0).Distinct(StringComparer.Ordinal)];
        return names.Length == 0 ? what + " not recorded" : what + " " + Phrase.Listed(names);
    }

    private static string Range(string name, string unit, ImmutableArray<double> values)
        => values.IsEmpty ? name + " not recorded"
            : $"{name} {Phrase.Span(values.Min(), values.Max(), unit)}";
}
