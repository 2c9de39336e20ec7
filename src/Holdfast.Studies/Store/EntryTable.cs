using System.Collections.Immutable;
using System.Text.Json;
using Holdfast.Studies.History;
using Microsoft.Data.Sqlite;

namespace Holdfast.Studies.Store;

/// <summary>The one table of study.db: entries by number, each with its canonical bytes and its hash. Rows are added and never changed.</summary>
internal static class EntryTable
{
    /// <summary>Version of the file's form, kept in the database's own version field.</summary>
    public const int FormatVersion = 1;

    // "Hold" in ASCII: tells a study from any other database.
    private const int ApplicationId = 0x486F6C64;

    // The database keeps these texts, and a file that holds any other is not read: a view in disguise could do anything.
    private static readonly string[] Schema =
    [
        "CREATE TABLE entry (number INTEGER PRIMARY KEY CHECK (number > 0), body BLOB NOT NULL, hash BLOB NOT NULL CHECK (length(hash) = 32)) STRICT",
        "CREATE TRIGGER entry_is_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END",
        "CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END",
    ];

    /// <summary>Makes a new file that holds these entries, all or none.</summary>
    public static void Create(string file, ImmutableArray<Entry> entries)
    {
        var fresh = file + ".new";
        File.Delete(fresh);
        File.Delete(fresh + "-journal");
        try
        {
            using (var connection = Connect(fresh, SqliteOpenMode.ReadWriteCreate))
            {
                Run(connection, string.Create(System.Globalization.CultureInfo.InvariantCulture,
                    $"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {FormatVersion};"));
                using var transaction = connection.BeginTransaction();
                foreach (var text in Schema)
                    Run(connection, text, transaction);
                Insert(connection, transaction, entries);
                transaction.Commit();
            }
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(fresh, UnixFileMode.UserRead | UnixFileMode.UserWrite);
            File.Move(fresh, file, overwrite: false);
            DurableFile.FlushFolder(Path.GetDirectoryName(file)!);
        }
        catch (SqliteException e)
        {
            throw DiskTrouble.Of(e, file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DiskTrouble.Of(e, file);
        }
    }

    /// <summary>Opens the file and makes sure that it is a study of a form that this version knows.</summary>
    /// <exception cref="StudyException">Not a study (HF-434), newer (HF-435), damaged (HF-432).</exception>
    public static SqliteConnection Open(string file, bool toWrite)
    {
        if (!toWrite)
            Recover(file);
        SqliteConnection? connection = null;
        try
        {
            connection = Connect(file, toWrite ? SqliteOpenMode.ReadWrite : SqliteOpenMode.ReadOnly);
            var application = Ask(connection, "PRAGMA application_id");
            if (application != ApplicationId)
                throw new StudyException(Codes.NotAStudy, $"{Path.GetFileName(file)} is not a study of Holdfast, or its first page is damaged. Nothing is read from it.");
            var version = Ask(connection, "PRAGMA user_version");
            if (version > FormatVersion)
            {
                throw new StudyException(Codes.NewerVersion, $"This study has form {Ordinal.Text(version)}; this version of Holdfast reads up to "
                    + $"{Ordinal.Text(FormatVersion)}. It is left untouched. Use the newer version.");
            }
            if (!SchemaOf(connection).SequenceEqual(Schema, StringComparer.Ordinal))
                throw new StudyException(Codes.Damage, $"{Path.GetFileName(file)} is damaged: its table is not the one a study has. Nothing is computed from it.");
            return connection;
        }
        catch (SqliteException e)
        {
            connection?.Dispose();
            throw DiskTrouble.Of(e, file);
        }
        catch (StudyException)
        {
            connection?.Dispose();
            throw;
        }
    }

    /// <summary>
    /// The longest valid run of entries from the first, and what is wrong with the next one (null when nothing is).
    /// </summary>
    public static (ImmutableArray<Entry> Entries, string? Damage) Read(SqliteConnection connection)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var hash = Chain.Start;
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = "SELECT number, body, hash FROM entry ORDER BY number";
            using var rows = command.ExecuteReader();
            while (rows.Read())
            {
                var expected = entries.Count + 1;
                var number = rows.GetInt64(0);
                if (number != expected)
                    return (entries.ToImmutable(), $"entry {Ordinal.Text(expected)} is missing: {Ordinal.Text(number)} follows {Ordinal.Text(expected - 1)}");
                var body = (byte[])rows.GetValue(1);
                var stored = Convert.ToHexStringLower((byte[])rows.GetValue(2));
                if (!string.Equals(Chain.Link(hash, body), stored, StringComparison.Ordinal))
                    return (entries.ToImmutable(), $"entry {Ordinal.Text(expected)} does not match its hash");
                var entry = EntryText.Read(body, hash);
                if (entry.Number != expected)
                    return (entries.ToImmutable(), $"entry {Ordinal.Text(expected)} says that it is entry {Ordinal.Text(entry.Number)}");
                entries.Add(entry);
                hash = entry.Hash;
            }
        }
        catch (SqliteException e)
        {
            return (entries.ToImmutable(), $"entry {Ordinal.Text(entries.Count + 1)} cannot be read: {e.Message}");
        }
        catch (Exception e) when (e is InvalidCastException or InvalidDataException)
        {
            return (entries.ToImmutable(), $"entry {Ordinal.Text(entries.Count + 1)} is not of the form that entries have");
        }
        catch (JsonException)
        {
            // The chain holds, so the bytes are as they were written: by a version that knows more kinds of entry.
            throw new StudyException(Codes.NewerVersion, $"Entry {Ordinal.Text(entries.Count + 1)} is of a kind that this version of Holdfast does not know. "
                + "The study is left untouched. Use the newer version.");
        }
        var (whole, senseless) = Sense.Of(entries.ToImmutable());
        return (entries.ToImmutable()[..whole], entries.Count == 0 ? "it holds no entry" : senseless);
    }

    /// <summary>Adds entries in one transaction; when this returns they are on the disk.</summary>
    public static void Append(SqliteConnection connection, string file, long expectedVersion, ImmutableArray<Entry> entries)
    {
        try
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            using (var command = connection.CreateCommand())
            {
                command.Transaction = transaction;
                command.CommandText = "SELECT coalesce(max(number), 0) FROM entry";
                if ((long)command.ExecuteScalar()! is var stored && stored != expectedVersion)
                    throw Conflict(expectedVersion, stored);
            }
            Insert(connection, transaction, entries);
            transaction.Commit();
        }
        catch (SqliteException e)
        {
            var trouble = DiskTrouble.Of(e, file);
            throw trouble.Code is Codes.NotKept && IsThere(file, entries[^1]) ? Unconfirmed(entries[^1].Number, e) : trouble;
        }
    }

    // After a failed flush the entry may stand in the file all the same: whoever repeats it then has it twice.
    private static bool IsThere(string file, Entry entry)
    {
        try
        {
            using var connection = Connect(file, SqliteOpenMode.ReadWrite);
            using var command = connection.CreateCommand();
            command.CommandText = "SELECT count(*) FROM entry WHERE number = $number AND hash = $hash";
            command.Parameters.AddWithValue("$number", entry.Number);
            command.Parameters.AddWithValue("$hash", Convert.FromHexString(entry.Hash));
            return (long)command.ExecuteScalar()! == 1;
        }
        catch (SqliteException)
        {
            return false;
        }
    }

    private static StudyException Unconfirmed(long number, SqliteException e) => new(Codes.NotKept,
        $"Entry {Ordinal.Text(number)} stands in the history, but the disk did not confirm it. Do not repeat it: copy the study to another disk and inspect the copy.", e);

    /// <summary>The message for an append that did not see the newest entry.</summary>
    public static StudyException Conflict(long seen, long stored) => new(Codes.ChangedElsewhere,
        $"The study changed elsewhere: you saw entry {Ordinal.Text(seen)}, it now has {Ordinal.Text(stored)}. Nothing is kept. Read it again, then repeat.");

    /// <summary>What SQLite itself finds wrong with the file, or null.</summary>
    public static string? Structure(SqliteConnection connection)
    {
        try
        {
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA integrity_check(1)";
            var answer = (string?)command.ExecuteScalar();
            return string.Equals(answer, "ok", StringComparison.Ordinal) ? null : answer ?? "no answer";
        }
        catch (SqliteException e)
        {
            return e.Message;
        }
    }

    // A writer that was killed leaves its journal: rolling it back needs the right to write, and changes nothing that was kept.
    private static void Recover(string file)
    {
        if (!File.Exists(file + "-journal"))
            return;
        try
        {
            using var connection = Connect(file, SqliteOpenMode.ReadWrite);
            _ = Ask(connection, "SELECT count(*) FROM sqlite_schema");
        }
        catch (SqliteException)
        {
            // Opening for reading will say what is wrong.
        }
    }

    private static SqliteConnection Connect(string file, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = file,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = 5,
        }.ToString());
        try
        {
            connection.Open();
            Run(connection, "PRAGMA journal_mode = DELETE; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON;");
            return connection;
        }
        catch (SqliteException)
        {
            connection.Dispose();
            throw;
        }
    }

    private static void Insert(SqliteConnection connection, SqliteTransaction transaction, ImmutableArray<Entry> entries)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "INSERT INTO entry (number, body, hash) VALUES ($number, $body, $hash)";
        var number = command.Parameters.Add("$number", SqliteType.Integer);
        var body = command.Parameters.Add("$body", SqliteType.Blob);
        var hash = command.Parameters.Add("$hash", SqliteType.Blob);
        foreach (var entry in entries)
        {
            number.Value = entry.Number;
            body.Value = entry.Bytes.AsSpan().ToArray();
            hash.Value = Convert.FromHexString(entry.Hash);
            command.ExecuteNonQuery();
        }
    }

    private static List<string> SchemaOf(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT coalesce(sql, '') FROM sqlite_schema ORDER BY rowid";
        using var rows = command.ExecuteReader();
        var texts = new List<string>();
        while (rows.Read() && texts.Count <= 16)
            texts.Add(rows.GetString(0));
        return texts;
    }

    private static long Ask(SqliteConnection connection, string question)
    {
        using var command = connection.CreateCommand();
        command.CommandText = question;
        return (long)command.ExecuteScalar()!;
    }

    private static void Run(SqliteConnection connection, string text, SqliteTransaction? transaction = null)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = text;
        command.ExecuteNonQuery();
    }
}
