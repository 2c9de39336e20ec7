namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Something on a sheet: a path, a text, or a group of both.</summary>
public abstract record SheetItem
{
    private protected SheetItem()
    {
    }
}
