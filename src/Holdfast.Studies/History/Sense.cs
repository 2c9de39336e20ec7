using System.Collections;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Reflection;

namespace Holdfast.Studies.History;

/// <summary>
/// Whether a history makes sense. What Holdfast keeps always does (<see cref="Permitted"/>); a file made by another hand may have a whole chain and strike
/// what is not there, undo what was never done, or name an original that leads out of the folder.
/// </summary>
internal static class Sense
{
    private static readonly ConcurrentDictionary<Type, ImmutableArray<(PropertyInfo Property, bool MayBeNull)>> Members = new();

    /// <summary>How many entries make sense, and what is wrong with the next one (null when nothing is).</summary>
    public static (int Whole, string? Trouble) Of(ImmutableArray<Entry> entries)
    {
        Study? study = null;
        for (var i = 0; i < entries.Length; i++)
        {
            var (number, change) = (entries[i].Number, entries[i].Change);
            if (change is StudyBegun != (i == 0))
                return (i, $"entry {Ordinal.Text(number)} {(i == 0 ? "is not the beginning of a study" : "begins the study a second time")}");
            if (study is not null && Trouble(study, change, entries[..i]) is { } trouble)
                return (i, $"entry {Ordinal.Text(number)} {trouble}");
            study = study is null || change is Undone or Redone ? Fold.Of(entries[..(i + 1)]) : Fold.After(study, change, number, entries[i].When, entries[i].Who);
        }

        return (entries.Length, null);
    }

    /// <summary>True when something that must be there is not: a name, an origin, an item of a list.</summary>
    public static bool Missing(object whole)
    {
        if (whole is string or ImmutableArray<double> or ImmutableArray<double?>)
            return false;
        if (whole is IDictionary words)
            return words.Values.Cast<object?>().Any(v => v is null || Missing(v));
        if (whole is IEnumerable items)
            return items.Cast<object?>().Any(i => i is null || Missing(i));
        if (whole.GetType().Namespace?.StartsWith("Holdfast", StringComparison.Ordinal) != true || whole is Enum)
            return false;
        foreach (var (property, mayBeNull) in Members.GetOrAdd(whole.GetType(), MembersOf))
        {
            var value = property.GetValue(whole);
            if (value is null ? !mayBeNull : !IsDefault(value) && Missing(value))
                return true;
            if (value is not null && IsDefault(value) && whole is not (WorkPlanned or BlockTyped))
                return true;
        }

        return false;
    }

    private static string? Trouble(Study study, Change change, ImmutableArray<Entry> before) => change switch
    {
        Struck s when !study.Has(s.Target) => $"strikes {s.Target}, which the study does not have",
        Restored r when !study.Has(r.Target) => $"restores {r.Target}, which the study does not have",
        FactCorrected f when study.Sample(f.Sample) is null => $"corrects {f.Sample}, which the study does not have",
        BlockTyped { Cells.IsDefault: false } b when b.Cells.FirstOrDefault(c => study.Sample(c.Sample) is null) is { } cell => $"types into {cell.Sample}, which the study does not have",
        Undone u when UndoOrder.Of(before).Next?.Number != u.Entry => $"undoes entry {Ordinal.Text(u.Entry)}, which is not the newest in force",
        Redone r when UndoOrder.Of(before).Back?.Number != r.Entry => $"brings back entry {Ordinal.Text(r.Entry)}, which was not undone last",
        PictureMarked m when study.Measurement(m.Measurement) is null => $"marks {m.Measurement}, which the study does not have",
        PictureMarked { Points: var points } m when points.IsDefault || points.Length % 2 != 0 => $"marks {m.Measurement} with half a point",
        RemarkAnswered a when study.Remarks.All(r => r.Id != a.Remark) => $"answers {a.Remark}, which the study does not have",
        RemarkClosed c when study.Remarks.All(r => r.Id != c.Remark) => $"closes {c.Remark}, which the study does not have",
        TakenIn taken => Trouble(study, taken),
        _ => null,
    };

    private static string? Trouble(Study study, TakenIn taken)
    {
        if (taken.Files.FirstOrDefault(f => f.Sha256.Length != 64 || !f.Sha256.All(char.IsAsciiHexDigitLower)) is { } file)
            return $"takes in {file.FileName} under a fingerprint that is none";
        if (taken.Samples.FirstOrDefault(s => s.Facts.Any(f => f.Key != f.Value.Property)) is { } odd)
            return $"records facts of {odd.Code} under names that are not theirs";
        var samples = study.Samples.Concat(taken.Samples).Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        var runs = study.Runs.Concat(taken.Runs).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var known = study.Readings.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var reading in taken.Readings)
        {
            if (!known.Add(reading.Id))
                return $"takes in {reading.Id} a second time";
            if (!samples.Contains(reading.Sample))
                return $"reads {reading.Sample}, which the study does not have";
            // What a spectrum was read with stands in its run; a single number needs none.
            if (reading.Spectrum is not null && !runs.Contains(reading.Run))
                return $"reads in run {reading.Run}, which the study does not have";
            if (reading.Spectrum is { } spectrum && spectrum.Wavelengths.Length != spectrum.Intensities.Length)
                return $"takes in {reading.Id} with more wavelengths than intensities, or fewer";
        }

        known = study.Measurements.Select(m => m.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var measurement in taken.Measurements ?? [])
        {
            if (!known.Add(measurement.Id))
                return $"takes in {measurement.Id} a second time";
            if (measurement.Columns.Any(c => c.Numbers is null == c.Words is null || c.Length != measurement.Rows()))
                return $"takes in {measurement.Id} with columns of unequal length, or a column that holds neither numbers nor words";
        }

        return null;
    }

    private static bool IsDefault(object value) => value.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>)
        && (bool)type.GetProperty(nameof(ImmutableArray<int>.IsDefault))!.GetValue(value)!;

    private static ImmutableArray<(PropertyInfo Property, bool MayBeNull)> MembersOf(Type type)
    {
        var nullability = new NullabilityInfoContext();
        return [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && p.CanWrite)
            .Select(p => (p, nullability.Create(p).ReadState != NullabilityState.NotNull))];
    }
}
