using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>Tells what a table is from its headings.</summary>
internal static class TableKinds
{
    /// <summary>What it is.</summary>
    public static TableKind Of(TableLayout layout)
    {
        var keys = layout.Headings.Select(h => HeadingWords.Key(Header.Read(h).Name)).ToList();
        bool Has(IReadOnlySet<string> words) => keys.Any(words.Contains);
        if (Has(HeadingWords.Margin) && (Has(HeadingWords.Low) || Has(HeadingWords.High)))
            return TableKind.Margins;
        if (Has(HeadingWords.Apparatus) && Has(HeadingWords.Serves))
            return TableKind.Apparatus;
        if (Has(HeadingWords.Rule) || Has(HeadingWords.Claim))
            return TableKind.Claims;
        if (SpectraTable.Is(layout))
            return TableKind.Spectra;
        var code = Columns.CodeColumn(keys);
        if (code >= 0 && layout.Heading is not null)
        {
            var others = keys.Where((_, i) => i != code).ToList();
            if (others.Any(IsSignal))
                return TableKind.Readings;
            if (others.Any(k => HeadingWords.Properties(k).Length > 0))
                return TableKind.Samples;
        }
        return PointsColumns.Are(layout) ? TableKind.Points : TableKind.Unknown;
    }

    private static bool IsSignal(string key)
        => HeadingWords.Properties(key).Concat(HeadingWords.Properties(key.TrimEnd("0123456789".ToCharArray()))).Any(p => p.IsSignal);
}
