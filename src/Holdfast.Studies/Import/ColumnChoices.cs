using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Everything that a column can be said to hold, for menus and for `column:HEADING=…`.</summary>
public static class ColumnChoices
{
    private static readonly (string Name, string Title, ColumnUse Use)[] Uses =
    [
        ("weighed-filled", "weighing with powder and solution", ColumnUse.WeighedFilled),
        ("weighed-full", "weighing with the powder in its boat", ColumnUse.WeighedFull),
        ("weighed-empty", "weighing of the empty boat", ColumnUse.WeighedEmpty),
        ("clock-start", "time of day, start", ColumnUse.ClockStart),
        ("clock-end", "time of day, end", ColumnUse.ClockEnd),
        ("diluted-from", "volume taken to be diluted", ColumnUse.DilutedFrom),
        ("diluted-to", "volume it was made up to", ColumnUse.DilutedTo),
        ("titre", "titrant used", ColumnUse.Titre),
        ("burette-start", "burette before", ColumnUse.BuretteStart),
        ("burette-end", "burette after", ColumnUse.BuretteEnd),
        ("aliquot", "volume titrated", ColumnUse.Aliquot),
        ("taken-out", "concentration taken out of the water", ColumnUse.TakenOut),
        ("portion", "which portion of the sample", ColumnUse.Portion),
        ("position", "running number, replicate", ColumnUse.Position),
        ("leave-out", "not used", ColumnUse.LeftOut),
    ];

    private static readonly ImmutableArray<Property> NeededForUptake =
    [
        BatchProperties.Mass, BatchProperties.Volume, BatchProperties.InitialConcentration, BatchProperties.ContactTime, BatchProperties.Dose,
        BatchProperties.ReportedUptake, SpectrometryProperties.ReportedConcentration, SpectrometryProperties.StandardConcentration,
    ];

    /// <summary>All of them, what a vessel needs first.</summary>
    public static ImmutableArray<ColumnChoice> All { get; } =
    [
        .. Property.All.Where(p => p.Headings.Length > 0 || p.IsSignal)
            .OrderBy(p => Place(p)).ThenBy(p => p.Title, StringComparer.Ordinal)
            .Select(p => new ColumnChoice(p.Name, p.Symbol is { } symbol ? $"{p.Title} ({symbol})" : p.Title, p.Unit, GroupOf(p))),
        .. Uses.Select(u => new ColumnChoice(u.Name, u.Title, "", u.Use == ColumnUse.LeftOut ? "not used" : "how the sheet is laid out")),
    ];

    /// <summary>What such an answer makes of a column, or null when it names a property.</summary>
    /// <param name="name">The answer.</param>
    public static ColumnUse? Use(string name)
        => string.Equals(name, SampleProperties.Code.Name, StringComparison.OrdinalIgnoreCase) ? ColumnUse.Code
            : Array.Find(Uses, u => string.Equals(u.Name, name, StringComparison.OrdinalIgnoreCase)) is { Name: not null } use ? use.Use : null;

    /// <summary>The property that an answer names: by its name, its title or one of its listed headings; null for none.</summary>
    /// <param name="name">The answer.</param>
    public static Property? Named(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Property.Named(name.Trim().ToLowerInvariant().Replace(' ', '-')) ?? Property.All.FirstOrDefault(p => string.Equals(p.Title, name.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? Property.All.FirstOrDefault(p => string.Equals(p.Symbol, name.Trim(), StringComparison.Ordinal)) ?? HeadingWords.Properties(HeadingWords.Key(name)).FirstOrDefault();
    }

    /// <summary>The name that is written most like an answer.</summary>
    /// <param name="name">The answer.</param>
    public static string Nearest(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return All.MinBy(c => Math.Min(Distance(c.Name, name.ToLowerInvariant()), Distance(c.Title, name.ToLowerInvariant())))!.Name;
    }

    /// <summary>True for what an uptake cannot be worked out without.</summary>
    internal static bool IsNeeded(Property property) => NeededForUptake.Contains(property);

    /// <summary>Usual units of a property, the likelier first by the size of its values.</summary>
    internal static ImmutableArray<string> UnitsFor(Property property, IReadOnlyList<double> values)
    {
        var middle = values.Count == 0 ? 0 : values.Select(Math.Abs).Order().ElementAt(values.Count / 2);
        return property.Unit switch
        {
            "mg" => middle is > 0 and < 1 ? ["g", "mg"] : ["mg", "g"],
            "mL" => middle is > 0 and < 1 ? ["L", "mL"] : ["mL", "L"],
            "mg/L" => ["mg/L", "ug/L", "mmol/L"],
            "g/L" => middle > 20 ? ["mg/L", "g/L"] : ["g/L", "mg/L"],
            "min" => ["min", "h"],
            "K" => middle > 200 ? ["K", "degC"] : ["degC", "K"],
            "" => ["one"],
            var unit => [unit],
        };
    }

    private static string GroupOf(Property p)
        => p.IsSignal ? "what was read"
            : NeededForUptake.Contains(p) || p == BatchProperties.StartPh || p == BatchProperties.EndPh || p == BatchProperties.Temperature || p == BatchProperties.ReportedRemoval || p == BatchProperties.ReportedRemaining ? "the vessel"
            : p.Holds == Holds.Words ? "words about the sample" : "other tests";

    private static int Place(Property p) => p == SampleProperties.Code ? -1 : GroupOf(p) switch { "the vessel" => 0, "what was read" => 1, "words about the sample" => 2, _ => 3 };

    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                (corner, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1)));
        }

        return row[b.Length];
    }
}
