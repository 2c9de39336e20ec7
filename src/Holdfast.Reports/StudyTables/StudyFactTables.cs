using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Tables;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>What was recorded beside the samples: strikes, apparatus, files, findings, deciding numbers.</summary>
public static class StudyFactTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["ni"] = "no interval belongs to it",
        ["nd"] = "not defined for these data",
        ["rel"] = "given as a share of the value",
        ["abs"] = "given in the unit of the value",
    };

    /// <summary>One row a strike.</summary>
    /// <param name="study">The study.</param>
    public static Table Strikes(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "strikes",
            "Struck samples and readings",
            [
                new Column("struck", "Struck") { NamesRows = true },
                new Column("reason", "Reason"),
                new Column("who", "Who"),
                new Column("when", "When"),
                new Column("entry", "Entry"),
            ],
            [.. study.Strikes.Select(s => Row.Of(
                s.Target, s.Reason, s.Who, s.When.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture), new NumberCell(s.Entry) { Decimals = 0 }))]);
    }

    /// <summary>One row an instrument.</summary>
    /// <param name="study">The study.</param>
    public static Table Apparatus(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "apparatus",
            "Apparatus and how well it is known",
            [
                new Column("apparatus", "Apparatus") { NamesRows = true },
                new Column("serves", "Serves"),
                new Column("u", "Standard uncertainty of one use"),
                new Column("unit", "Unit"),
                new Column("relative", "Relative") { Unit = "%" },
                new Column("shared", "Shared by what it served"),
                new Column("basis", "Basis"),
            ],
            [.. study.Apparatus.Select(a => Row.Of(
                a.Id,
                Property.Named(a.Serves)?.Title ?? a.Serves,
                a.U is { } u ? new NumberCell(u) : new MissingCell("rel"),
                a.U is null ? "" : Property.Named(a.Serves)?.Unit ?? "",
                a.RelativeU is { } r ? new NumberCell(100 * r) : new MissingCell("abs"),
                a.Shared ? "yes" : "no",
                a.Basis))],
            Codes);
    }

    /// <summary>One row a piece of planned work.</summary>
    /// <param name="study">The study.</param>
    public static Table Plan(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "plan",
            "Planned work",
            [
                new Column("planned", "Planned") { NamesRows = true },
                new Column("work", "Work"),
                new Column("claim", "For the claim"),
                new Column("when", "When planned"),
                new Column("who", "Who"),
                new Column("done", "Done"),
            ],
            [.. study.Plan.Select(p => Row.Of(
                p.Id, p.Work, p.Claim ?? "", p.When.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture), p.Who,
                p.Done?.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture) ?? ""))]);
    }

    /// <summary>One row a file taken in.</summary>
    /// <param name="study">The study.</param>
    public static Table Originals(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "files",
            "Files taken in, kept byte for byte",
            [
                new Column("file", "File") { NamesRows = true },
                new Column("bytes", "Bytes"),
                new Column("sha256", "SHA-256"),
            ],
            [.. study.Originals.Select(o => Row.Of(o.FileName, new NumberCell(o.Bytes) { Decimals = 0 }, o.Sha256))]);
    }

    /// <summary>One row a finding.</summary>
    /// <param name="findings">The findings.</param>
    public static Table Findings(IEnumerable<Finding> findings)
        => new(
            "findings",
            "Findings, each as it was raised",
            [
                new Column("code", "Code") { NamesRows = true },
                new Column("weight", "Weight"),
                new Column("sentence", "Finding"),
                new Column("concerns", "Concerns"),
            ],
            [.. findings.Select(f => Row.Of(f.Code, f.Weight.ToString().ToLowerInvariant(), f.Sentence, string.Join("; ", f.Concerns)))]);

    /// <summary>One row a number that decided a claim.</summary>
    /// <param name="verdicts">Judged claims.</param>
    public static Table Deciding(IEnumerable<Verdict> verdicts)
        => new(
            "deciding-numbers",
            "Numbers that decided the claims",
            [
                new Column("claim", "Claim") { NamesRows = true },
                new Column("number", "Number"),
                new Column("value", "Value"),
                new Column("low", "Lower end"),
                new Column("high", "Upper end"),
                new Column("unit", "Unit"),
                new Column("note", "Note"),
            ],
            [.. verdicts.SelectMany(v => v.Numbers.Select(n => Row.Of(
                v.Claim.Id, n.Name, Number(n.Value, "nd"), Number(n.Low, "ni"), Number(n.High, "ni"), n.Unit, n.Note ?? "")))],
            Codes);

    private static Cell Number(double? value, string code) => value is { } known && double.IsFinite(known) ? new NumberCell(known) : new MissingCell(code);
}
