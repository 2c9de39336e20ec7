using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>What the columns of a table of samples mean.</summary>
internal static partial class Columns
{
    /// <summary>Reads the headings, the line of units and the answers about them.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="talk">Where questions go.</param>
    /// <param name="analyte">Element that is taken up: its molar mass turns amounts into masses. Null when not said.</param>
    public static ImmutableArray<Column> Read(TableLayout layout, Dialogue talk, string? analyte)
    {
        var headings = layout.Headings.Select((text, i) => (Index: i, Text: text, Header: Header.Read(text))).ToList();
        var keys = headings.ConvertAll(h => HeadingWords.Key(h.Header.Name));
        var code = CodeColumn(keys);
        var columns = new Column[headings.Count];
        var signals = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, text, header) in headings)
        {
            columns[index] = index == code
                ? new Column(index, text, ColumnUse.Code, Studies.Properties.SampleProperties.Code, null, null)
                : Understand(index, text, header, keys[index], layout.Units?.At(index).Text, talk, analyte);
            if (columns[index].Use == ColumnUse.Signal && !IsMean(keys[index]))
                signals.Add(columns[index].Property!.Name);
        }
        var hasSignal = columns.Any(c => c.Use == ColumnUse.Signal);
        for (var i = 0; i < columns.Length; i++)
        {
            var column = columns[i];
            if (column.Use == ColumnUse.Signal && IsMean(keys[i]) && signals.Contains(column.Property!.Name))
                columns[i] = new Column(i, column.Heading, ColumnUse.LeftOut, column.Property, column.Unit, "A mean of columns that are read themselves.");
            else if (column.Use == ColumnUse.Fact && column.Property == Studies.Properties.SpectrometryProperties.Dilution && hasSignal)
                columns[i] = new Column(i, column.Heading, ColumnUse.Dilution, column.Property, column.Unit, null);
        }
        return [.. columns];
    }

    /// <summary>Place of the column that holds the sample's code, or −1.</summary>
    public static int CodeColumn(IReadOnlyList<string> keys)
    {
        // "sample" names the sample more surely than "id" or "name" do.
        foreach (var heading in Studies.Properties.SampleProperties.Code.Headings)
        {
            for (var i = 0; i < keys.Count; i++)
            {
                if (string.Equals(keys[i], heading, StringComparison.Ordinal))
                    return i;
            }
        }
        return -1;
    }

    private static Column Understand(int index, string text, Header header, string key, string? unitLine, Dialogue talk, string? analyte)
    {
        var said = talk.Answers.To("column:" + header.Name);
        if (said is not null && !string.Equals(said, "leave-out", StringComparison.OrdinalIgnoreCase) && Property.Named(said) is null)
            throw new ArgumentException($"There is no property named {said}, so the column {header.Name} cannot be that.", nameof(talk));
        if (string.Equals(said, "leave-out", StringComparison.OrdinalIgnoreCase))
            return new Column(index, text, ColumnUse.LeftOut, null, null, "Left out as you asked.");
        if (said is null && Fixed(key) is { } use)
            return new Column(index, text, use, null, null, null);

        var unit = header.Unit is UnitText.Absent && unitLine is { Length: > 0 } ? Unit.Read(unitLine) : header.Unit;
        var uncertainty = said is null ? UncertaintyOf().Match(text) : Match.Empty;
        if (uncertainty.Success && Find(HeadingWords.Key(uncertainty.Groups["of"].Value), uncertainty.Groups["of"].Value, unit, analyte) is { Holds: Holds.Number } of)
            return Settle(index, text, header.Name, ColumnUse.Uncertainty, of, unit, talk, analyte);

        var property = said is null ? Find(key, header.Name, unit, analyte) : Property.Named(said);
        if (property is null)
            return new Column(index, text, ColumnUse.NotUnderstood, null, null, "Not understood: it stays in the original only.");
        if (property == Studies.Properties.SampleProperties.Role)
            return new Column(index, text, ColumnUse.Role, property, null, null);
        if (property == Studies.Properties.SampleProperties.Code)
            return new Column(index, text, ColumnUse.NotUnderstood, null, null, "Another column holds the sample's code already.");
        if (property.Holds == Holds.Words)
            return new Column(index, text, ColumnUse.Fact, property, null, null);
        return Settle(index, text, header.Name, property.IsSignal ? ColumnUse.Signal : ColumnUse.Fact, property, unit, talk, analyte);
    }

    private static ColumnUse? Fixed(string key)
        => HeadingWords.Position.Contains(key) || HeadingWords.Repeat.Contains(key) ? ColumnUse.Position
            : HeadingWords.Portion.Contains(key) ? ColumnUse.Portion : null;

    // The name first; where the unit does not fit it, the symbol as written: t is a time, T a temperature.
    private static Property? Find(string key, string name, UnitText unit, string? analyte)
    {
        var named = HeadingWords.Properties(key);
        if (named.IsEmpty)
            named = [.. HeadingWords.Properties(key.TrimEnd("0123456789".ToCharArray())).Where(p => p.IsSignal)];
        var bySymbol = Property.All.Where(p => string.Equals(p.Symbol, name, StringComparison.Ordinal)).ToList();
        return named.Concat(bySymbol).FirstOrDefault(p => Fits(p, unit, analyte)) ?? named.FirstOrDefault();
    }

    private static bool Fits(Property property, UnitText unit, string? analyte) => property.Holds == Holds.Words || unit switch
    {
        UnitText.Known known => IsUsable(known, property, analyte),
        UnitText.Ambiguous several => several.Candidates.Any(c => IsUsable(new UnitText.Known(c), property, analyte)),
        _ => true,
    };

    private static bool IsUsable(UnitText.Known stated, Property property, string? analyte) => property.Unit.Length == 0
        ? stated.Unit.IsOne || stated.Unit.IsConvertibleTo(Unit.One) || string.Equals(stated.Unit.Plain, "a.u.", StringComparison.Ordinal)
        : UnitBridge.Between(stated, property, analyte) is not null;

    private static Column Settle(int index, string text, string name, ColumnUse use, Property property, UnitText unit, Dialogue talk, string? analyte)
    {
        if (talk.Answers.To("unit:" + name) is { } answer)
        {
            unit = Unit.Read(answer);
            if (unit is not UnitText.Known)
                throw new ArgumentException($"'{answer}' is not one clear unit, so it cannot be that of {name}.", nameof(talk));
            talk.Ask("unit:" + name, Codes.UnitMissing, $"Which unit is {name} in?", [answer], name);
        }
        if (property.Unit.Length == 0)
        {
            return unit is UnitText.Known plain && !IsUsable(plain, property, analyte)
                ? Unusable(index, text, name, property, $"{name} is in {plain.Unit.Plain}, but {property.Title} has no unit.", talk)
                : new Column(index, text, use, property, null, null);
        }
        switch (unit)
        {
            case UnitText.Known known when UnitBridge.Between(known, property, analyte) is { } bridge:
                return new Column(index, text, use, property, known.Unit, bridge.Remark, bridge);
            case UnitText.Known known:
                var basis = known.Basis?.As is { } species ? " as " + species : "";
                return Unusable(index, text, name, property, $"{name} is in {known.Unit.Plain}{basis}, which cannot become {property.Unit}"
                    + (analyte is null ? ": the study does not say which element it is about." : "."), talk);
            case UnitText.Ambiguous several:
                talk.Ask("unit:" + name, Codes.Ambiguous, $"{several.Text} can mean several units in {name}. {several.Question}", [.. several.Candidates.Select(c => c.Plain)], name);
                return new Column(index, text, ColumnUse.WithoutUnit, property, null, "Its unit must be chosen.");
            case UnitText.Unknown unknown:
                return Unusable(index, text, name, property, $"{unknown.Text} is no unit that is known here.", talk);
            default:
                return Unusable(index, text, name, property, $"{name} has no unit.", talk);
        }
    }

    private static Column Unusable(int index, string text, string name, Property property, string what, Dialogue talk)
    {
        var unit = property.Unit.Length > 0 ? property.Unit : "one";
        talk.Note(Codes.UnitMissing, Weight.Caution, $"{what} It is kept as written and feeds nothing. Choose one, for example {unit}: unit:{name}={unit}.", name);
        return new Column(index, text, ColumnUse.WithoutUnit, property, null, what + " It feeds nothing.");
    }

    private static bool IsMean(string key)
        => key.StartsWith("mean", StringComparison.Ordinal) || key.StartsWith("avg", StringComparison.Ordinal) || key.StartsWith("average", StringComparison.Ordinal);

    // "u(C0) (mg/L)", "u C0", "C0 uncertainty".
    [GeneratedRegex(@"^\s*(u\s*\((?<of>[^()]+)\)|u\s+(?<of>[^()/\[]+)|(?<of>[^()/\[]+?)\s+(standard )?uncertainty)\s*([(/\[].*)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex UncertaintyOf();
}
