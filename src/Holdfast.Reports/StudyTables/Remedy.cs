using Holdfast.Claims.Analyses;

namespace Holdfast.Reports.StudyTables;

/// <summary>What would give a missing result, and where that is done: in the browser and from the terminal.</summary>
public static class Remedy
{
    /// <summary>The command that gives it.</summary>
    /// <param name="missing">What is missing.</param>
    public static string Command(MissingResult missing)
    {
        ArgumentNullException.ThrowIfNull(missing);
        return missing switch
        {
            { Run: { } run, Lenders: [var lender, ..] } => $"holdfast calibrate {run} --by {lender}",
            { Run: not null } => "holdfast role CODE … --is standard --known \"5 mg/L\"",
            { Amount: { } amount } => $"holdfast set \"{amount.Name}=… {amount.Unit}\" --samples {string.Join(',', missing.Samples)}",
            _ => "holdfast take FILE",
        };
    }

    /// <summary>The page where it is done: its name and its address.</summary>
    /// <param name="missing">What is missing.</param>
    public static (string Words, string Address) Page(MissingResult missing)
    {
        ArgumentNullException.ThrowIfNull(missing);
        return missing switch
        {
            { Run: { } run, Lenders.IsEmpty: false } => ($"Run {run}", "/runs/" + Uri.EscapeDataString(run)),
            { Run: not null } => ("Say which samples are standards", "/samples?fill=role"),
            { Amount: { } amount } => ($"Fill in the {amount.Title}", "/samples?fill=" + amount.Name),
            _ => ("Bring readings in", "/readings"),
        };
    }

    /// <summary>Both for a text that is read elsewhere: "(page Samples, or holdfast set …)".</summary>
    /// <param name="missing">What is missing.</param>
    public static string Places(MissingResult missing)
    {
        ArgumentNullException.ThrowIfNull(missing);
        var page = missing switch
        {
            { Run: { } run, Lenders.IsEmpty: false } => "page Readings, run " + run,
            { Run: null, Amount: null } => "page Readings",
            _ => "page Samples",
        };
        return $"({page}, or {Command(missing)})";
    }
}
