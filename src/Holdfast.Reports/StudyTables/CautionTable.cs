using Holdfast.Reports.Tables;
using Holdfast.Safety;

namespace Holdfast.Reports.StudyTables;

/// <summary>Cautions as a table.</summary>
public static class CautionTable
{
    /// <summary>One row a caution.</summary>
    /// <param name="cautions">The cautions.</param>
    public static Table Of(IEnumerable<Caution> cautions)
    {
        ArgumentNullException.ThrowIfNull(cautions);
        return new(
            "cautions",
            "Usual cautions",
            [
                new Column("class", "Class") { NamesRows = true },
                new Column("example", "Codes are for"),
                new Column("hazards", "Hazard codes (GHS)"),
                new Column("signal", "Signal word"),
                new Column("advice", "Mind"),
                new Column("status", "How it is known"),
            ],
            [.. cautions.Select(c => Row.Of(c.Class, c.Example, c.Hazards, c.Signal, c.Advice, c.Status))])
        {
            Notes = [Caution.Reservation],
        };
    }
}
