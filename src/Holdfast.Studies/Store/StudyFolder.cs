using System.Collections.Immutable;
using System.Security.Cryptography;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;
using Microsoft.Data.Sqlite;

namespace Holdfast.Studies.Store;

/// <summary>
/// A study on the disk. What <see cref="Append"/> returns from is on the disk; what it throws from is not kept. One writer at a time;
/// any number of readers.
/// </summary>
public sealed class StudyFolder : IDisposable
{
    private readonly SqliteConnection connection;
    private readonly WriterLock? writer;
    private readonly TimeProvider clock;
    private bool failed;

    private StudyFolder(StudyFiles files, SqliteConnection connection, WriterLock? writer, TimeProvider clock, Daybook daybook)
    {
        Files = files;
        this.connection = connection;
        this.writer = writer;
        this.clock = clock;
        Daybook = daybook;
    }

    /// <summary>Names of its files.</summary>
    public StudyFiles Files { get; }

    /// <summary>The whole history as of the last read or append.</summary>
    public Daybook Daybook { get; private set; }

    /// <summary>The present state.</summary>
    public Study Study => Daybook.Study;

    /// <summary>True when it was opened for writing and the disk has kept everything so far.</summary>
    public bool CanWrite => writer is not null && !failed;

    /// <summary>Begins a study in a folder that is new, or has no study in it yet, and opens it for writing.</summary>
    /// <param name="folder">Where.</param>
    /// <param name="who">Who begins it.</param>
    /// <param name="clock">Where the time comes from.</param>
    /// <param name="begun">What it is.</param>
    /// <exception cref="StudyException">There is a study already (HF-434); the disk is full or read-only (HF-430, HF-431).</exception>
    public static StudyFolder Begin(string folder, string who, TimeProvider clock, StudyBegun begun)
    {
        ArgumentNullException.ThrowIfNull(clock);
        Permitted.Check(new Daybook([]), begun, amending: false);
        return Begin(folder, clock, new Daybook([]).With(clock.GetLocalNow(), who, begun));
    }

    /// <summary>Begins a study that has this history already: a return from its plain form.</summary>
    internal static StudyFolder Begin(string folder, TimeProvider clock, Daybook daybook)
    {
        var files = StudyFiles.In(folder);
        try
        {
            DurableFile.MakeFolder(files.Root);
            SafePath.RefuseLink(files.Originals);
            DurableFile.MakeFolder(files.Originals);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DiskTrouble.Of(e, files.Root);
        }
        using (WriterLock.Take(files, clock.GetLocalNow()))
        {
            if (Path.Exists(files.Database))
                throw new StudyException(Codes.NotAStudy, $"{Path.GetFileName(files.Root)} holds a study already; it is left as it is. Choose another folder.");
            EntryTable.Create(files.Database, daybook.Entries);
            DurableFile.FlushFolder(Path.GetDirectoryName(files.Root)!);
        }
        return Open(folder, clock);
    }

    /// <summary>Opens a study for writing.</summary>
    /// <param name="folder">The study folder.</param>
    /// <param name="clock">Where the time comes from.</param>
    /// <exception cref="StudyException">
    /// Not a study (HF-434), of a newer version (HF-435), damaged (HF-432), open elsewhere (HF-422), read-only (HF-431).
    /// </exception>
    public static StudyFolder Open(string folder, TimeProvider clock)
    {
        var files = Existing(folder);
        var writer = WriterLock.Take(files, clock.GetLocalNow());
        try
        {
            return Opened(files, writer, clock);
        }
        catch
        {
            writer.Dispose();
            throw;
        }
    }

    /// <summary>Opens a study for reading only; it may be read-only on the disk, and open for writing elsewhere.</summary>
    /// <param name="folder">The study folder.</param>
    /// <exception cref="StudyException">Not a study (HF-434), of a newer version (HF-435), damaged (HF-432).</exception>
    public static StudyFolder OpenToRead(string folder) => Opened(Existing(folder), writer: null, TimeProvider.System);

    /// <summary>
    /// The longest run of entries that can be trusted, and what is wrong after it. For looking at a damaged study, never for computing on.
    /// </summary>
    /// <param name="folder">The study folder.</param>
    public static (Daybook Daybook, string? Damage) Salvage(string folder)
    {
        var files = Existing(folder);
        try
        {
            using var connection = EntryTable.Open(files.Database, toWrite: false);
            var (entries, damage) = EntryTable.Read(connection);
            return (new Daybook(entries), damage);
        }
        catch (StudyException e) when (e.Code is Codes.Damage or Codes.NotAStudy)
        {
            return (new Daybook([]), e.Message);
        }
    }

    /// <summary>Why everything that is kept from here on is an amendment: its reason stands before the changes of each append; null where they are none.</summary>
    public string? Amending { get; set; }

    /// <summary>Keeps changes as entries, all or none, and returns them once they are on the disk.</summary>
    /// <param name="expectedVersion">Number of the newest entry the caller has seen.</param>
    /// <param name="who">Who did it.</param>
    /// <param name="changes">What was done, in order; each must be <see cref="Permitted"/> after the one before.</param>
    /// <exception cref="StudyException">
    /// Changed elsewhere (HF-420), sealed (HF-421), unknown target (HF-404), nothing to change (HF-425), disk trouble (HF-43x).
    /// </exception>
    public ImmutableArray<Entry> Append(long expectedVersion, string who, params ReadOnlySpan<Change> changes)
    {
        if (string.IsNullOrWhiteSpace(who))
            throw new ArgumentException("An entry needs the name of the person who makes it.", nameof(who));
        if (writer is null)
            throw new StudyException(Codes.ReadOnlyFolder, "This study was opened for reading only, so nothing is kept. Open it for writing.");
        if (failed)
            throw new StudyException(Codes.NotKept, "The disk failed earlier, so nothing more is kept here. Copy the study to another disk and open it there.");
        if (expectedVersion != Daybook.Version)
            throw EntryTable.Conflict(expectedVersion, Daybook.Version);
        if (Amending is { } reason)
            changes = (Change[])[new Amended(reason), .. changes];
        var next = Daybook;
        var amending = false;
        foreach (var change in changes)
        {
            amending |= change is Amended;
            Permitted.Check(next, change, amending);
            next = next.With(clock.GetLocalNow(), who, change);
        }
        var added = next.Entries[(int)Daybook.Version..];
        try
        {
            EntryTable.Append(connection, Files.Database, Daybook.Version, added);
        }
        catch (StudyException e) when (e.Code is Codes.NotKept)
        {
            // After a failed flush a second try can report success for data that the system has dropped: no more writing.
            failed = true;
            throw;
        }
        Daybook = next;
        return added;
    }

    /// <summary>Undoes the newest entry in force.</summary>
    /// <param name="who">Who.</param>
    /// <exception cref="StudyException">There is nothing to undo (HF-425), or as for <see cref="Append"/>.</exception>
    public Entry UndoLast(string who) => Daybook.Undo.Next is { } entry
        ? Append(Daybook.Version, who, new Undone(entry.Number, entry.Change.Says()))[^1]
        : throw new StudyException(Codes.NothingChanges, "There is nothing to undo: only the beginning is left.");

    /// <summary>Brings back what was undone last.</summary>
    /// <param name="who">Who.</param>
    /// <exception cref="StudyException">There is nothing to redo (HF-425), or as for <see cref="Append"/>.</exception>
    public Entry RedoLast(string who) => Daybook.Undo.Back is { } entry
        ? Append(Daybook.Version, who, new Redone(entry.Number, entry.Change.Says()))[^1]
        : throw new StudyException(Codes.NothingChanges, "There is nothing to redo.");

    /// <summary>Keeps a file byte for byte and returns its name under originals/: its SHA-256, lower-case hexadecimal.</summary>
    /// <param name="bytes">All of it.</param>
    /// <exception cref="StudyException">The disk is full or read-only or failed (HF-43x).</exception>
    public string KeepOriginal(ReadOnlySpan<byte> bytes)
    {
        var name = Convert.ToHexStringLower(SHA256.HashData(bytes));
        var path = Files.Original(name);
        SafePath.RefuseLink(Files.Originals);
        if (!PlainFile.Is(path) || new FileInfo(path).Length != bytes.Length)
            DurableFile.Write(path, bytes, readOnly: true);
        return name;
    }

    /// <summary>An original, checked against its fingerprint.</summary>
    /// <param name="sha256">Its fingerprint.</param>
    /// <exception cref="StudyException">It is missing or damaged (HF-432).</exception>
    public byte[] ReadOriginal(string sha256)
    {
        var path = Files.Original(sha256);
        byte[]? bytes = null;
        try
        {
            bytes = PlainFile.Read(path, long.MaxValue);
        }
        catch (StudyException e) when (e.Code is Codes.Unreadable)
        {
            // Told below, as damage: a study keeps its originals.
        }
        return bytes is not null && string.Equals(Convert.ToHexStringLower(SHA256.HashData(bytes)), sha256, StringComparison.Ordinal)
            ? bytes
            : throw new StudyException(Codes.Damage, $"Original {sha256[..8]} is missing or damaged. What rests on it cannot be checked. Run inspect.");
    }

    /// <summary>Refreshes plain/, the README and study.check, and ends the writing.</summary>
    /// <remarks>
    /// What was kept is kept before this: trouble here is a remark, never "not kept". A reader who took it for that would do the same thing again, and undo
    /// a second entry.
    /// </remarks>
    /// <returns>What could not be refreshed, each with its reason (HF-438); none when all is well or nothing was open for writing.</returns>
    public ImmutableArray<Finding> Close()
    {
        var remarks = ImmutableArray.CreateBuilder<Finding>();
        if (CanWrite)
        {
            Refresh("plain/ and README.md", () => PlainPackage.Write(Files, Daybook));
            connection.Close();
            Refresh("study.check", () => FileCheck.Write(Files, Daybook));
        }

        Dispose();
        return remarks.ToImmutable();

        void Refresh(string what, Action work)
        {
            try
            {
                work();
            }
            catch (StudyException e)
            {
                remarks.Add(Finding.Of(Codes.NotRefreshed, Weight.Note,
                    $"Kept as entry {Ordinal.Text(Daybook.Version)}. Only {what} could not be refreshed ({e.Code}: {e.Message.Split(". ")[0].TrimEnd('.')}); the next entry does it.", what));
            }
        }
    }

    /// <summary>Lets go of the files without writing anything.</summary>
    public void Dispose()
    {
        connection.Dispose();
        writer?.Dispose();
    }

    private static StudyFiles Existing(string folder)
    {
        var files = StudyFiles.In(folder);
        return Path.Exists(files.Database)
            ? files
            : throw new StudyException(Codes.NotAStudy, $"{Path.GetFileName(files.Root)} is not a study: it has no study.db. Begin one, or give the study's folder.");
    }

    private static StudyFolder Opened(StudyFiles files, WriterLock? writer, TimeProvider clock)
    {
        if (!PlainFile.Is(files.Database))
            throw new StudyException(Codes.NotAStudy, "study.db is a link or no ordinary file, so it is not opened. Give the study's own folder.");
        var connection = EntryTable.Open(files.Database, toWrite: writer is not null);
        try
        {
            var (entries, damage) = EntryTable.Read(connection);
            if (damage is not null)
            {
                throw new StudyException(Codes.Damage, $"study.db is damaged: {damage}. Nothing is computed from it; "
                    + $"{Ordinal.Text(entries.Length)} entries before that are whole. Run inspect.");
            }
            return new StudyFolder(files, connection, writer, clock, new Daybook(entries));
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
