using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Settings that sit in the codes themselves: "20ppm-60min-r2". Shown as applied, and can be declined.</summary>
internal static partial class CodePattern
{
    private const double ShareThatMustFit = 0.8;
    private const int FewestCodes = 3;

    /// <summary>Reads them where all codes follow one pattern and the sheet does not say the same in a column.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="source">The table.</param>
    public static void Fill(List<SampleRow> rows, TableSource source)
    {
        var vessels = rows.Where(r => r is { IsLeftOut: false } && r.Role is null or SampleRole.Vessel or SampleRole.Control && !r.CodeCell.IsBlank).ToList();
        if (vessels.Count < FewestCodes)
            return;
        var read = vessels.Select(r => (Row: r, Settings: Of(r.Written))).ToList();
        var lacking = read.SelectMany(r => r.Settings.Keys).Distinct()
            .Where(p => read.Count(r => r.Settings.ContainsKey(p)) >= ShareThatMustFit * read.Count)
            .Where(p => read.TrueForAll(r => !r.Row.Facts.ContainsKey(p.Name) && source.Known.GetValueOrDefault(r.Row.Code ?? "")?.Fact(p) is null))
            .ToImmutableArray();
        if (lacking.IsEmpty)
            return;
        var first = read.First(r => lacking.All(r.Settings.ContainsKey));
        var shown = string.Join(", ", lacking.Select(p => $"{p.Title} {first.Settings[p].Written}"));
        if (source.Talk.Assume("codes", Codes.Ambiguous, $"Settings are read from the sample codes: {first.Row.Written} is {shown}.", ["read", "ignore"], first.Row.Written) != "read")
            return;
        foreach (var (row, settings) in read)
        {
            foreach (var property in lacking.Where(settings.ContainsKey))
            {
                row.Facts = row.Facts.SetItem(property.Name, new Fact(property.Name, settings[property].Value, null, null, null, settings[property].Written,
                    source.At(row.Row.Number, source.Layout.Headings.Length > 0 ? "sample code" : null)));
            }
        }
    }

    private static Dictionary<Property, (double Value, string Written)> Of(string code)
    {
        var found = new Dictionary<Property, (double, string)>();
        foreach (var part in code.Split(['-', '_', ' ', '/', ',', '–'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (AcidLevel().Match(part) is { Success: true } ph && CellText.Read(ph.Groups["number"].Value, null) is CellText.Number level)
            {
                found.TryAdd(BatchProperties.StartPh, (level.Value, part));
                continue;
            }

            if (Amount().Match(part) is not { Success: true } m || CellText.Read(m.Groups["number"].Value, null) is not CellText.Number number)
                continue;
            var spelled = m.Groups["unit"].Value is "C" or "c" ? "degC" : m.Groups["unit"].Value;
            var unit = HeadingReading.UnitOf(spelled);
            Property? property = UnitKinds.Of(unit) switch
            {
                UnitKind.Concentration => BatchProperties.InitialConcentration,
                UnitKind.Time => BatchProperties.ContactTime,
                UnitKind.Mass => BatchProperties.Mass,
                UnitKind.Volume => BatchProperties.Volume,
                UnitKind.Temperature => BatchProperties.Temperature,
                _ => null,
            };
            if (property is null)
                continue;
            var known = unit switch { UnitText.Known k => k, UnitText.Ambiguous several => new UnitText.Known(several.Candidates[0]), _ => null };
            if (known is not null && UnitBridge.Between(known, property, null)?.Convert(number.Value) is { } value)
                found.TryAdd(property, (value, part));
        }

        return found;
    }

    [GeneratedRegex(@"^(?<number>\d+([.,]\d+)?)(?<unit>[A-Za-zµμ°]+)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Amount();

    [GeneratedRegex(@"^[pP][hH](?<number>\d{1,2}([.,]\d+)?)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex AcidLevel();
}
