using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Store;

/// <summary>
/// The seal of a study: one line that fits on paper and holds the hash of the whole history up to it, the fingerprints of what was handed in included. Whoever has the line
/// can tell whether one byte of the history or of a document was changed since; who rewrites everything cannot rewrite the paper.
/// </summary>
/// <param name="Entry">Number of the entry that sealed the study.</param>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
/// <param name="Note">Why: "submitted".</param>
/// <param name="Program">Program and version; empty where it was not said.</param>
/// <param name="Fingerprint">Hash of that entry, SHA-256, lower-case hexadecimal.</param>
/// <param name="Documents">What was handed in.</param>
public sealed partial record Seal(long Entry, DateTimeOffset When, string Who, string Note, string Program, string Fingerprint, ImmutableArray<TakenFile> Documents)
{
    private const string Begins = "holdfast-seal/1";

    /// <summary>The line: what it is, the entry, when in UTC, program and version, hash.</summary>
    public string Line => string.Create(CultureInfo.InvariantCulture,
        $"{Begins} entry={Entry} date={When.UtcDateTime:yyyy-MM-ddTHH:mm:ssZ} by={(Program.Length == 0 ? "unknown" : Program.Replace(' ', '-'))} sha256={Fingerprint}");

    /// <summary>The seal of a study, the last where it was sealed again after amendments; null while it is open.</summary>
    /// <param name="daybook">Its history.</param>
    public static Seal? Of(Daybook daybook)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        return daybook.Entries.LastOrDefault(e => e.Change is Sealed) is { Change: Sealed s } e
            ? new(e.Number, e.When, e.Who, s.Note, s.Program ?? "", e.Hash, s.Documents ?? [])
            : null;
    }

    /// <summary>Seals a study: every document is kept byte for byte, and the entry names their fingerprints.</summary>
    /// <param name="study">The study, open for writing.</param>
    /// <param name="who">Who seals it.</param>
    /// <param name="note">Why: "submitted".</param>
    /// <param name="program">Program and version.</param>
    /// <param name="documents">Name and bytes of what is handed in.</param>
    /// <exception cref="StudyException">Sealed already (HF-421), or disk trouble (HF-43x).</exception>
    public static Seal Put(StudyFolder study, string who, string note, string program, IReadOnlyCollection<(string Name, byte[] Bytes)> documents)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(documents);
        // Refused before anything is written.
        Permitted.Check(study.Daybook, new Sealed(note), study.Amending is not null);
        TakenFile[] kept = [.. documents.Select(d => new TakenFile(study.KeepOriginal(d.Bytes), d.Name, d.Bytes.Length))];
        study.Append(study.Daybook.Version, who, new Sealed(note) { Documents = kept.Length == 0 ? null : [.. kept], Program = program });
        return Of(study.Daybook)!;
    }

    /// <summary>Holds a line on paper against a history.</summary>
    /// <param name="daybook">The history.</param>
    /// <param name="line">The line as printed or scanned; more than one space between its parts does not matter.</param>
    /// <returns>Null where the history up to the seal is what it was; else what is wrong.</returns>
    public static Finding? Differs(Daybook daybook, string line)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        ArgumentNullException.ThrowIfNull(line);
        if (Parts().Match(line.Trim()) is not { Success: true } match || !long.TryParse(match.Groups["entry"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return Finding.Of(Codes.Unreadable, Weight.Stop, $"This is no line of a seal, so nothing was compared. One begins with {Begins} and ends with the 64 signs of a SHA-256.");
        var told = match.Groups["hash"].Value.ToLowerInvariant();
        if (number < 1 || number > daybook.Version)
            return Finding.Of(Codes.Damage, Weight.Stop, $"The line seals entry {Ordinal.Text(number)}, and the history ends at {Ordinal.Text(daybook.Version)}: entries are missing, or it is the line of another study.");
        var entry = daybook.Entries[(int)number - 1];
        return string.Equals(entry.Hash, told, StringComparison.Ordinal) && entry.Change is Sealed ? null
            : Finding.Of(Codes.Damage, Weight.Stop, $"The history is not the one that was sealed: entry {Ordinal.Text(number)} has the hash {entry.Hash}, the line says {told}. It was rewritten after the seal, or it is the line of another study.");
    }

    /// <summary>Holds a file against what was handed in.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <returns>Null where the seal holds these very bytes; else what is wrong.</returns>
    public Finding? Differs(string name, ReadOnlySpan<byte> bytes)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
        if (Documents.Any(d => string.Equals(d.Sha256, hash, StringComparison.Ordinal)))
            return null;
        return Documents.FirstOrDefault(d => string.Equals(d.FileName, name, StringComparison.Ordinal)) is { } sealedAs
            ? Finding.Of(Codes.Damage, Weight.Stop, $"{name} is not the document that was sealed: it has {Ordinal.Text(bytes.Length)} bytes and the SHA-256 {hash[..16]}…, sealed were {Ordinal.Text(sealedAs.Bytes)} bytes with {sealedAs.Sha256[..16]}….", name)
            : Finding.Of(Codes.Damage, Weight.Stop, $"{name} was not sealed with this study: no document of the seal has its bytes or its name.", name);
    }

    /// <summary>The fingerprints of what was handed in, in the form that sha256sum -c reads.</summary>
    public string Checksums => string.Concat(Documents.Select(d => $"{d.Sha256}  {d.FileName}\n"));

    [GeneratedRegex(@"^holdfast-seal/1\s+entry=(?<entry>\d{1,18})\s+date=\S+\s+by=\S+\s+sha256=(?<hash>[0-9a-fA-F]{64})$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Parts();
}
