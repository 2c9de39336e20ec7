namespace Holdfast.Reports.Figures;

/// <summary>How a figure is written as SVG.</summary>
public sealed record SvgOptions
{
    /// <summary>For a file: colours of the light sheet, nothing to click.</summary>
    public static SvgOptions File { get; } = new();

    /// <summary>For a page: classes that a theme can colour, and marks that answer.</summary>
    /// <param name="markAddress">Address behind the mark of an id, usually its trail; null for marks that only speak.</param>
    public static SvgOptions Screen(Func<string, string?>? markAddress = null) => new() { OnScreen = true, MarkAddress = markAddress };

    /// <summary>True for classes, spoken series and marks, and larger places to hit.</summary>
    public bool OnScreen { get; private init; }

    /// <summary>Address behind the mark of an id.</summary>
    public Func<string, string?>? MarkAddress { get; private init; }

    /// <summary>Put before every id in the tree, so that one figure may stand twice on a page.</summary>
    public string IdPrefix { get; init; } = "";
}
