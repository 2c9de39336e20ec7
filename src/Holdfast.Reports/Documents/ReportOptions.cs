namespace Holdfast.Reports.Documents;

/// <summary>What a report says of itself beside the study.</summary>
public sealed record ReportOptions
{
    /// <summary>Said on every page of a document whose data are invented.</summary>
    internal const string Invented = "Invented demo data: nothing in this report was measured.";

    /// <summary>Day printed on the report; null prints none, so that the same study gives the same bytes.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Program and version that made it.</summary>
    public string MadeBy { get; init; } = "Holdfast " + typeof(ReportOptions).Assembly.GetName().Version!.ToString(3);
}
