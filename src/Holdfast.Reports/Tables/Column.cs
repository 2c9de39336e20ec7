using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tables;

/// <summary>One column: one quantity in one unit.</summary>
/// <param name="Name">Name in data files, without unit: "ce". Letters, digits and underscores.</param>
/// <param name="Heading">The heading, unit left out.</param>
public sealed record Column(string Name, RichText Heading)
{
    /// <summary>Name in data files, without unit.</summary>
    public string Name { get; } = IsName(Name)
        ? Name
        : throw new ArgumentException($"'{Name}' is no column name: a letter, then letters, digits and underscores.", nameof(Name));

    /// <summary>The unit of all its cells: "mg L^-1", "mg/L"; null for none.</summary>
    public string? Unit { get; init; }

    /// <summary>The heading in words; null to read the heading itself.</summary>
    public string? Spoken { get; init; }

    /// <summary>True when its cells name their rows.</summary>
    public bool NamesRows { get; init; }

    /// <summary>A column for a quantity by its symbol.</summary>
    /// <param name="name">Name in data files, without unit.</param>
    /// <param name="symbol">Markup of the symbol: "q_e".</param>
    /// <param name="unit">The unit; null for none.</param>
    /// <param name="spoken">The quantity in words: "loading at equilibrium".</param>
    public static Column Of(string name, string symbol, string? unit, string spoken)
        => new(name, RichText.Quantity(symbol, null)) { Unit = unit, Spoken = spoken };

    /// <summary>Heading and unit in words.</summary>
    internal string SpokenHeading => (Spoken ?? Heading.Spoken) + (string.IsNullOrWhiteSpace(Unit) ? "" : ", in " + Speech.OfUnit(Unit));

    /// <summary>Name in data files with the unit: "ce_mg_per_L".</summary>
    /// <param name="part">Put before the name: "u_" for the uncertainty.</param>
    internal string DataName(string part = "") => part + Name + (string.IsNullOrWhiteSpace(Unit) ? "" : "_" + DataUnit.Of(Unit));

    private static bool IsName(string name)
        => !string.IsNullOrEmpty(name) && char.IsAsciiLetter(name[0]) && name.All(c => char.IsAsciiLetterOrDigit(c) || c == '_');
}
