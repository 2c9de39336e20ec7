using System.Collections.Immutable;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Acts;

/// <summary>What can be set for many samples or runs in one step, by the word a person uses for it.</summary>
public static class Settable
{
    /// <summary>The properties that are most often the same for a whole series, in the order of the work.</summary>
    public static ImmutableArray<Property> Usual { get; } =
    [
        BatchProperties.Volume, BatchProperties.Dose, BatchProperties.InitialConcentration, BatchProperties.StartPh, BatchProperties.Temperature, BatchProperties.ContactTime,
        BatchProperties.StirringSpeed, SampleProperties.Matrix, SampleProperties.Batch, SampleProperties.Series, SampleProperties.Author,
    ];

    /// <summary>What a run can be said to be, beside what its file says: keys of <see cref="Run.Details"/>.</summary>
    public static ImmutableArray<string> OfRuns { get; } = ["Instrument", "Element", "Wavelength", "Flame", "Date", "Excitation", "Emission", "Slits"];

    /// <summary>Everything else that can be recorded of a sample, by title.</summary>
    public static ImmutableArray<Property> Others { get; } =
        [.. Property.All.Where(p => !p.IsSignal && !Usual.Contains(p) && p != SampleProperties.Code && p != SampleProperties.Role && p != BatchProperties.Started)
            .OrderBy(p => p.Title, StringComparer.Ordinal)];

    /// <summary>The property a word names: its name, its title, its symbol or a heading it is known by. Null for none.</summary>
    /// <param name="word">"volume", "V", "pH", "water".</param>
    public static Property? Named(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        var key = HeadingWords.Key(word);
        var all = Usual.Concat(Others).ToArray();
        return Array.Find(all, p => HeadingWords.Key(p.Name) == key || HeadingWords.Key(p.Title) == key)
            ?? Array.Find(all, p => p.Headings.Contains(key))
            ?? (key == "shaking" ? BatchProperties.StirringSpeed : null);
    }

    /// <summary>The detail of a run a word names, or null.</summary>
    /// <param name="word">"instrument".</param>
    public static string? OfRun(string word) => OfRuns.FirstOrDefault(k => string.Equals(k, word?.Trim(), StringComparison.OrdinalIgnoreCase));
}
