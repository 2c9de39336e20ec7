using System.Globalization;
using System.Text;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Package;

/// <summary>The README of a study folder: what it is, for a reader who has no Holdfast and knows no one to ask.</summary>
internal static class FolderReadme
{
    /// <summary>The text.</summary>
    public static string Of(Daybook daybook)
    {
        var study = daybook.Study;
        var text = new StringBuilder();
        Line(text, $"# {study.Title.ReplaceLineEndings(" ")}");
        Line(text);
        if (study.Invented)
        {
            Line(text, "**Invented demo data: no number here is a measurement.**");
            Line(text);
        }
        Line(text, $"A study kept by Holdfast: {Count(study.Samples.Length, "sample")}, {Count(study.Readings.Length, "reading")}, {Count(study.Strikes.Length, "strike")}, "
            + $"{Count(study.Claims.Length, "claim")}, {Count(study.Originals.Length, "original file")}.");
        Line(text, $"Begun {Day(daybook.Entries[0].When)}; last entry, number {Ordinal.Text(daybook.Version)}, of {Day(daybook.Entries[^1].When)}.");
        Line(text);
        Line(text, "Fingerprint of the history, printed in every document made from it:");
        Line(text);
        Line(text, "    " + daybook.Fingerprint);
        Line(text);
        if (Store.Seal.Of(daybook) is { } seal)
        {
            Line(text, $"Sealed on {Day(seal.When)} by {seal.Who}: {seal.Note.ReplaceLineEndings(" ")}. The line of the seal, as printed:");
            Line(text);
            Line(text, "    " + seal.Line);
            Line(text);
            foreach (var document in seal.Documents)
                Line(text, $"- handed in: {document.FileName.ReplaceLineEndings(" ")}, {Ordinal.Text(document.Bytes)} bytes, kept as `originals/{document.Sha256}`");
            foreach (var amendment in study.Amendments)
                Line(text, $"- amended since, entry {Ordinal.Text(amendment.Entry)}, {Day(amendment.When)}: {amendment.Reason.ReplaceLineEndings(" ")}");
            if (!seal.Documents.IsEmpty || !study.Amendments.IsEmpty)
                Line(text);
        }

        Line(text, "## What is here");
        Line(text);
        Line(text, "- `plain/`: everything as CSV and JSON, readable with any program. `datapackage.json` says what each column holds, with its unit.");
        Line(text, "- `originals/`: every file taken in, byte for byte, named by its SHA-256; `plain/originals.csv` tells which is which.");
        Line(text, "- `study.db`: the history, an SQLite file with one table to which entries are only ever added.");
        Line(text, "- `study.check`: fingerprint of `study.db` when it was last closed.");
        Line(text);
        Line(text, "Nothing is edited in place. A value that no longer counts is struck with a reason and stays legible.");
        Line(text, "`holdfast inspect` looks the folder over for damage. A study can be made anew from `plain/` and `originals/` alone: `holdfast copy-in`.");
        return text.ToString();
    }

    private static void Line(StringBuilder text, string line = "") => text.Append(line).Append('\n');

    private static string Count(int n, string what) => Ordinal.Text(n) + " " + what + (n == 1 ? "" : "s");

    private static string Day(DateTimeOffset when) => when.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
