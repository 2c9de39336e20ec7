using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>One measurement of a powder: a curve or table as the file gave it, before any arithmetic. What it means is its technique's affair.</summary>
/// <param name="Id">Stable address: "M-0001".</param>
/// <param name="Technique">Name of the technique that read it: "nitrogen-sorption".</param>
/// <param name="Sample">The powder, material or batch that was measured, as it is called.</param>
/// <param name="Settings">What was said of how it was measured.</param>
/// <param name="Columns">Its columns, as long as each other.</param>
/// <param name="Origin">Where it was read.</param>
public sealed record Measurement(
    string Id, string Technique, string Sample, ImmutableArray<MeasuredSetting> Settings, ImmutableArray<MeasuredColumn> Columns, Origin Origin)
{
    /// <summary>How many rows it has.</summary>
    public int Rows() => Columns.IsEmpty ? 0 : Columns[0].Length;

    /// <summary>The column of this name, or null.</summary>
    /// <param name="name">Name that the technique gives it: "amount".</param>
    public MeasuredColumn? Column(string name) => Columns.FirstOrDefault(c => string.Equals(c.Name, name, StringComparison.Ordinal));

    /// <summary>The setting of this name, or null.</summary>
    /// <param name="name">Name that the technique gives it: "mass".</param>
    public MeasuredSetting? Setting(string name) => Settings.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.Ordinal));
}

/// <summary>One thing said of how something was measured.</summary>
/// <param name="Name">Name that the technique gives it: "mass"; the file's own word for what no technique knows.</param>
/// <param name="Written">As it was written, with its unit: "0.1032 g".</param>
/// <param name="Value">The number, in <paramref name="Unit"/>; null for words.</param>
/// <param name="Unit">Its unit as stated or answered; empty for none.</param>
/// <param name="Row">Line or row of the file; 0 for what was answered.</param>
public sealed record MeasuredSetting(string Name, string Written, double? Value, string Unit, int Row);

/// <summary>One column of a measurement: numbers or words, row by row.</summary>
/// <param name="Name">Name that the technique gives it: "amount".</param>
/// <param name="Heading">Its heading as written; empty where it has none.</param>
/// <param name="Unit">Unit of its numbers as stated or answered; empty for none.</param>
public sealed record MeasuredColumn(string Name, string Heading, string Unit)
{
    /// <summary>Its numbers as they stand in the file; null in a row that holds none. Null for a column of words.</summary>
    public ImmutableArray<double?>? Numbers { get; init; }

    /// <summary>Its words, empty in a row that holds none. Null for a column of numbers.</summary>
    public ImmutableArray<string>? Words { get; init; }

    /// <summary>How many rows it has.</summary>
    internal int Length => Numbers?.Length ?? Words?.Length ?? 0;
}
