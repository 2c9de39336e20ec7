namespace Holdfast.Reports.Figures;

/// <summary>Something drawn in a panel. The closed set of kinds is what a reader of this trade expects; each has a record of its own.</summary>
public abstract record Layer
{
    /// <summary>Number of series styles: at most this many coloured series share a panel.</summary>
    public const int Slots = 4;

    private protected Layer()
    {
    }
}
