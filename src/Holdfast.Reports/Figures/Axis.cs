namespace Holdfast.Reports.Figures;

/// <summary>One axis: what is plotted, in which unit, how it is laid out.</summary>
/// <param name="Symbol">Markup of the quantity's symbol, or a word: "q_e", "pH", "Absorbance".</param>
/// <param name="Unit">The unit: "mg g^-1", "mg/g"; null for none.</param>
/// <param name="Name">The quantity in words, for readers who listen and for table headings: "loading at equilibrium".</param>
public sealed record Axis(string Symbol, string? Unit, string Name)
{
    /// <summary>Linear, logarithmic or named places.</summary>
    public AxisScale Scale { get; init; }

    /// <summary>True when values fall to the right (or upwards), as wavenumbers do.</summary>
    public bool Reversed { get; init; }

    /// <summary>Lower end, in the axis unit; null to take it from the data.</summary>
    public double? Min { get; init; }

    /// <summary>Upper end, in the axis unit; null to take it from the data.</summary>
    public double? Max { get; init; }

    /// <summary>True when only whole numbers make sense: cycles, counts.</summary>
    public bool WholeNumbers { get; init; }

    /// <summary>True when the experimenter chooses the values along it, so that a setting yet to be run has its place there; false for what is found.</summary>
    public bool Chosen { get; init; }

    /// <summary>The places of an axis of named places, in order.</summary>
    public IReadOnlyList<RichText> Places { get; init; } = [];

    /// <summary>The label: symbol / unit.</summary>
    public RichText Title => RichText.Quantity(Symbol, Unit);

    /// <summary>The label in words: "loading at equilibrium, in milligrams per gram".</summary>
    public string Spoken => string.IsNullOrWhiteSpace(Unit) ? Name : $"{Name}, in {Speech.OfUnit(Unit)}";

    /// <summary>An axis of named places.</summary>
    /// <param name="name">What the places are, in words; it becomes the label.</param>
    /// <param name="places">Their names, in order.</param>
    public static Axis OfPlaces(string name, params IEnumerable<RichText> places)
        => new(name, null, name) { Scale = AxisScale.Named, Places = places.ToArray() };
}
