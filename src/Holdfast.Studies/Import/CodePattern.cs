using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;
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
        var legend = Legend(source.Layout.Notes.Lines, vessels.ConvertAll(r => r.Written));
        // More codes without a setting than may be: no pattern, and no need to look at a hundred thousand others.
        if (vessels.Take((int)((1 - ShareThatMustFit) * vessels.Count) + 1).All(r => Of(r.Written, legend).Count == 0))
            return;
        var read = vessels.Select(r => (Row: r, Settings: Of(r.Written, legend))).ToList();
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

    // "name of a tube = start concentration, shaking time, replicate": what each part of the codes is; null where no line says it of all codes.
    private static ImmutableArray<HeadingReading>? Legend(ImmutableArray<string> lines, List<string> codes)
    {
        foreach (var line in lines)
        {
            if (Explains().Match(line) is not { Success: true } m || !Lexicon.Of(m.Groups["what"].Value).Contains(HeadingWord.Sample))
                continue;
            ImmutableArray<HeadingReading> parts = [.. LegendMarks().Split(m.Groups["parts"].Value).Select(p => HeadingReading.Of(p.Trim(' ', '.')))];
            if (parts.Length > 1 && codes.TrueForAll(c => Parts(c).Length == parts.Length) && parts.Any(p => Notes.PropertyOf(p) is not null))
                return parts;
        }

        return null;
    }

    private static string[] Parts(string code) => code.Split(['-', '_', ' ', '/', ',', '–'], StringSplitOptions.RemoveEmptyEntries);

    // "25" under "start concentration in mg/L", "Co10mgL" under "start concentration".
    private static (Property Property, double Value)? Explained(string part, HeadingReading means)
    {
        if (Notes.PropertyOf(means) is not { } property || Labelled().Match(part) is not { Success: true } m || CellText.Read(m.Groups["number"].Value, null) is not CellText.Number number)
            return null;
        var unit = m.Groups["unit"].Value is { Length: > 0 } own ? HeadingReading.UnitOf(own) : means.Unit;
        if (property.Unit.Length == 0)
            return (property, number.Value);
        return unit is UnitText.Known known && UnitBridge.Between(known, property, null)?.Convert(number.Value) is { } value ? (property, value) : null;
    }

    private static Dictionary<Property, (double Value, string Written)> Of(string code, ImmutableArray<HeadingReading>? legend)
    {
        var found = new Dictionary<Property, (double, string)>();
        foreach (var (place, part) in Parts(code).Index())
        {
            if (legend is { } means && Explained(part, means[place]) is var (explained, said))
            {
                found.TryAdd(explained, (said, part));
                continue;
            }

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

    [GeneratedRegex(@"^\W*(?<what>[^:=]{3,40}?)\s*(:|=|\bis\b)\s*(?<parts>.+)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Explains();

    [GeneratedRegex(@"\s+[-–/]\s+|\s*[,;|_]\s*|-", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex LegendMarks();

    [GeneratedRegex(@"^[A-Za-z]*(?<number>\d+([.,]\d+)?)(?<unit>[A-Za-zµμ°]*)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Labelled();

    [GeneratedRegex(@"^(?<number>\d+([.,]\d+)?)(?<unit>[A-Za-zµμ°]+)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Amount();

    [GeneratedRegex(@"^[pP][hH](?<number>\d{1,2}([.,]\d+)?)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex AcidLevel();
}
