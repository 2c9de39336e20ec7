using System.Collections.Immutable;

namespace Holdfast.Studies.Import.Techniques;

/// <summary>What the powder of a measurement is called, so that measurements of one powder meet under one name.</summary>
public static class PowderName
{
    /// <summary>Settles the name: what the file says, else what the sheet or file is called, which is said and can be changed.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="stated">The name as the file states it, or null.</param>
    /// <param name="row">Row it stands in.</param>
    /// <param name="label">Tells powders of one grid apart: a label above their columns, part of the question's id; null for the only one.</param>
    /// <returns>The name as the study spells it already, or as it stands.</returns>
    public static string Settle(MeasurementSource source, string? stated, int row = 0, string? label = null)
    {
        ArgumentNullException.ThrowIfNull(source);
        var known = Known(source.Study);
        var fallback = source.Grid.Sheet is { } sheet && source.File.Length > 1 ? sheet : Path.GetFileNameWithoutExtension(source.Talk.FileName);
        var name = Spelled(stated is { Length: > 0 } ? stated.Trim() : fallback, known);
        var where = stated is { Length: > 0 }
            ? row > 0 ? $"line {History.Ordinal.Text(row)} says so" : "the file says so"
            : source.Grid.Sheet is not null && source.File.Length > 1 ? "the sheet is called so" : "the file is called so, and nothing in it names the powder";
        // Where the file names it there is little to choose; any other name can still be answered.
        var choices = (stated is { Length: > 0 } ? [] : known.Where(k => !Same(k, name))).Prepend(name).Take(MostChoices).ToImmutableArray();
        return Spelled(source.Talk.Assume(label is null ? source.Question("powder") : source.Question("powder") + ":" + label, Codes.UnknownSample, $"The powder is {name}: {where}.", choices, name).Trim(), known);
    }

    private const int MostChoices = 6;

    /// <summary>Names of powders that the study has: of its measurements, its batches, its material.</summary>
    /// <param name="study">The study.</param>
    public static ImmutableArray<string> Known(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var names = study.Measurements.Select(m => m.Sample).Concat(study.Samples.Select(s => s.Batch).OfType<string>())
            .Concat(study.Details.TryGetValue("material", out var material) ? [material] : []);
        var known = ImmutableArray.CreateBuilder<string>();
        foreach (var name in names.Where(n => n.Length > 0))
        {
            if (!known.Any(k => Same(k, name)))
                known.Add(name);
        }

        return known.ToImmutable();
    }

    /// <summary>True when two names are one but for case, spaces and marks: "ZF-3" and "zf 3".</summary>
    /// <param name="a">One.</param>
    /// <param name="b">The other.</param>
    public static bool Same(string a, string b) => string.Equals(Key(a), Key(b), StringComparison.OrdinalIgnoreCase);

    private static string Spelled(string name, ImmutableArray<string> known) => known.FirstOrDefault(k => Same(k, name)) ?? name.Normalize();

    private static string Key(string name) => string.Concat(name.Normalize().Where(char.IsLetterOrDigit)) is { Length: > 0 } key ? key : name;
}
