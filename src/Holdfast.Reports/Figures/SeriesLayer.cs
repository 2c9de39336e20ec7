namespace Holdfast.Reports.Figures;

/// <summary>A layer that belongs to a series: colour, shape and dash follow from its slot, and it may carry a label.</summary>
public abstract record SeriesLayer : Layer
{
    private readonly int slot;

    private protected SeriesLayer()
    {
    }

    /// <summary>Style of the series, 0 to 3. Layers of one series share it: marks and the line fitted to them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 3; more series belong in small multiples.</exception>
    public int Slot
    {
        get => slot;
        init => slot = value is >= 0 and < Slots
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A series style is 0 to 3; put further series into small multiples.");
    }

    /// <summary>Direct label at the end of the series; null for none.</summary>
    public RichText? Label { get; init; }
}
