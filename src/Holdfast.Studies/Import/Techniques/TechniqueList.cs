using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Holdfast.Studies.Import.Techniques;

/// <summary>Every technique there is, and which of them a grid belongs to.</summary>
public static class TechniqueList
{
    /// <summary>The answer that reads a grid as an ordinary table after all.</summary>
    public const string Table = "table";

    private const int MostRows = 40_000;
    private const int RowsOfALongTable = 1_000;

    private static readonly Lazy<ImmutableArray<ITechnique>> Found = new(() => [.. Catalogue.Of<ITechnique>().OrderBy(t => t.Name, StringComparer.Ordinal)]);

    /// <summary>All of them, by name.</summary>
    public static ImmutableArray<ITechnique> All => Found.Value;

    /// <summary>The technique with this name, or null.</summary>
    /// <param name="name">Stable name.</param>
    public static ITechnique? Named(string name) => All.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.Ordinal));

    /// <summary>Those that recognise a grid, with their evidence; the one that is certain alone where there is one.</summary>
    /// <param name="grid">The grid.</param>
    internal static ImmutableArray<(ITechnique Technique, Recognition Says)> For(Grid grid) => Asked.GetValue(grid, static g => new(Of(g))).Value;

    // A grid is asked about while it is recognised, read and shown.
    private static readonly ConditionalWeakTable<Grid, StrongBox<ImmutableArray<(ITechnique Technique, Recognition Says)>>> Asked = [];

    private static ImmutableArray<(ITechnique Technique, Recognition Says)> Of(Grid grid)
    {
        // What instruments write of a powder has tens of thousands of rows at most; a longer table tells what it is by its beginning.
        if (grid.Rows.Length > MostRows)
            grid = grid with { Rows = grid.Rows[..RowsOfALongTable] };
        ImmutableArray<(ITechnique, Recognition Says)> all = [.. All.Select(t => (t, t.Recognise(grid))).Where(r => r.Item2.Evidence is not null)];
        var certain = all.Where(r => r.Says.IsCertain).ToImmutableArray();
        return certain.IsEmpty ? all : certain;
    }
}
