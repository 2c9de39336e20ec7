using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tables;

/// <summary>Words: a name, a verdict.</summary>
/// <param name="Text">The words.</param>
public sealed record TextCell(RichText Text) : Cell;
