using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.StudyTables;

/// <summary>Every number that follows from several vessels together, each cell with its trail; parameters of fitted curves stand with their curves instead.</summary>
public static class DerivedTable
{
    /// <summary>One row a number; null when there is none.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static Table? Of(Evidence evidence)
    {
        NumberTrail[] numbers = [.. DerivedTrails.Of(evidence).All.Where(t => !t.Inputs.IsEmpty)];
        return numbers.Length == 0 ? null : new(
            "derived",
            "Numbers derived from several vessels",
            [new Column("number", "Number") { NamesRows = true }, new Column("value", "Value"), new Column("unit", "Unit"), new Column("address", "Address")],
            [.. numbers.Select(t => Row.Of(t.Name, Value(t), UnitWords.Of(t.Unit), t.Address))])
        {
            Notes = ["± is the standard uncertainty; where a line made the number, by the scatter about it."],
        };
    }

    private static Cell Value(NumberTrail trail)
        => trail.Value.U > 0 ? new MeasuredCell(trail.Value.Value, trail.Value.U) { Address = trail.Address } : new NumberCell(trail.Value.Value) { Address = trail.Address };
}
