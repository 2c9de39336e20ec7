using Holdfast.Reports.Tables;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>Remarks of readers with what became of them.</summary>
public static class RemarkTable
{
    /// <summary>One row a remark.</summary>
    /// <param name="remarks">The remarks, in the order they came.</param>
    public static Table Of(IEnumerable<Remark> remarks) => new(
        "remarks", "Remarks of readers",
        [
            new Column("id", "Remark") { NamesRows = true }, new Column("by", "By"), new Column("on", "On"), new Column("quote", "Words or number"), new Column("words", "What is said"), new Column("answer", "Answer"),
            new Column("state", "State"),
        ],
        [.. remarks.Select(r => Row.Of(r.Id, r.By, $"{r.Pin.Kind} {r.Pin.Target}", r.Pin.Quote, r.Pin.Words, r.Answer?.Words ?? "", State(r)))]);

    /// <summary>How a remark stands, in a word.</summary>
    /// <param name="remark">The remark.</param>
    public static string State(Remark remark)
    {
        ArgumentNullException.ThrowIfNull(remark);
        return remark.Closed is not null ? "closed" : remark.Answer is not null ? "answered" : "open";
    }
}
