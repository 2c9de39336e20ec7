using Holdfast.Amounts;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Vessels of one setting beside each other, each with its own mass and result: "solid I | solid II | … | end I | end II". Turned into one row a vessel.</summary>
internal static class ReplicatesAside
{
    private static readonly HashSet<string> Marks = new("I II III IV 1 2 3 4 a b c d A B C D".Split(' '), StringComparer.Ordinal);

    /// <summary>The table with one row a vessel; null where masses and results are not counted alike.</summary>
    /// <param name="layout">The table.</param>
    public static TableLayout? Turn(TableLayout layout)
    {
        if (layout.Heading is not { } heading)
            return null;
        var headings = Columns.ReadHeadings(layout);
        var counted = headings.Select((h, i) => (Place: i, Mark: h.Name.Split(' ')[^1], Stem: h.Name.Contains(' ', StringComparison.Ordinal) ? h.Name[..h.Name.LastIndexOf(' ')] : "", Of: TableKinds.Meant(h)))
            .Where(c => c.Stem.Length > 0 && Marks.Contains(c.Mark)).GroupBy(c => c.Stem, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1).Select(g => g.ToList()).ToList();
        // Two readings of one vessel have no mass each.
        if (!counted.Exists(g => g.TrueForAll(c => c.Of == BatchProperties.Mass)) || !counted.Exists(g => g.TrueForAll(c => c.Of is { IsSignal: true })) || counted.Exists(g => !g.Select(c => c.Mark).SequenceEqual(counted[0].Select(c => c.Mark))))
            return null;
        var code = CodeColumns.Of(layout, headings);
        if (code < 0)
            return null;
        var marks = counted[0].ConvertAll(c => c.Mark);
        var alone = Enumerable.Range(0, headings.Length).Where(i => i != code && !counted.Exists(g => g.Exists(c => c.Place == i))).ToList();
        string Titled(string name, UnitText unit) => unit is UnitText.Known { Unit: { IsOne: false } known } ? $"{name} ({known.Plain})" : name;
        var rows = layout.Body.Where(r => !r.IsBlank).SelectMany(r => marks.Select((mark, k) => new GridRow(r.Number, [new Cell($"{r.At(code).Text} {mark}"), .. counted.Select(g => r.At(g[k].Place)), .. alone.Select(r.At)])));
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(heading.Number, [heading.At(code), .. counted.Select(g => new Cell(Titled(g[0].Stem, headings[g[0].Place].Unit))), .. alone.Select(i => new Cell(Titled(headings[i].Name, headings[i].Unit)))]), null, [.. rows])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a vessel: {string.Join(" and ", marks)} stood beside each other",
        };
    }
}
