using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>A unit that a line states for a kind of column: "Concentration unit: mg/L".</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Row">Row of the line.</param>
internal sealed record NotedUnit(UnitKind Kind, Unit Unit, int Row);
