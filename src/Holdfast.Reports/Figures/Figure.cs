namespace Holdfast.Reports.Figures;

/// <summary>A figure as plain facts: what is plotted and what it says. How it looks is worked out once, by <see cref="FigureLayout"/>.</summary>
/// <param name="Id">Short stable name, used for files and for ids in a page: "isotherm-25c". Letters, digits and hyphens.</param>
/// <param name="Title">One line.</param>
/// <param name="Alt">Alternative text: what is plotted and the main reading, in one or two sentences.</param>
/// <param name="Panels">The panels, in reading order.</param>
public sealed record Figure(string Id, string Title, string Alt, IReadOnlyList<Panel> Panels)
{
    /// <summary>The caption draft; empty for the title alone.</summary>
    public RichText Caption { get; init; } = RichText.Empty;

    /// <summary>What the error bars are, what n counts, what was left out.</summary>
    public IReadOnlyList<RichText> Notes { get; init; } = [];

    /// <summary>Ids of the data, the version and the settings that made it; written into files, never drawn.</summary>
    public IReadOnlyList<string> MadeFrom { get; init; } = [];

    /// <summary>Codes of the samples behind marks that are means or constants and so have no sample of their own; empty where every mark names its own.</summary>
    public IReadOnlyList<string> RestsOn { get; init; } = [];

    /// <summary>The notes, followed by those that the picture itself calls for: arrows, hollow marks, short dashes, marks a log axis cannot show.</summary>
    public IReadOnlyList<RichText> AllNotes => [.. Notes, .. PictureNotes.Of(this)];
}
