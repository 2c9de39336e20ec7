using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Data.Sqlite;

namespace Holdfast.Cli.Tests;

/// <summary>Rewrites the history of a study as somebody else could: the chain of hashes is whole again afterwards, whatever the entries then say.</summary>
internal static class CraftedStudy
{
    /// <summary>The entries, each as JSON.</summary>
    public static List<JsonNode> Entries(string folder)
    {
        using var connection = Open(folder);
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT body FROM entry ORDER BY number";
        using var rows = command.ExecuteReader();
        var entries = new List<JsonNode>();
        while (rows.Read())
            entries.Add(JsonNode.Parse((byte[])rows.GetValue(0))!);
        return entries;
    }

    /// <summary>Writes these entries in the place of the history, chained anew as the plain package describes it: SHA-256 of the hash before and the body.</summary>
    public static void Write(string folder, IEnumerable<JsonNode> entries)
    {
        using var connection = Open(folder);
        var triggers = new List<string>();
        using (var read = connection.CreateCommand())
        {
            read.CommandText = "SELECT sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid";
            using var rows = read.ExecuteReader();
            while (rows.Read())
                triggers.Add(rows.GetString(0));
        }

        Run(connection, "DROP TRIGGER entry_is_kept; DROP TRIGGER entry_stays; DELETE FROM entry;");
        var before = new byte[32];
        var number = 0;
        foreach (var entry in entries)
        {
            var body = Encoding.UTF8.GetBytes(entry.ToJsonString());
            before = SHA256.HashData([.. before, .. body]);
            using var insert = connection.CreateCommand();
            insert.CommandText = "INSERT INTO entry (number, body, hash) VALUES ($number, $body, $hash)";
            insert.Parameters.AddWithValue("$number", ++number);
            insert.Parameters.AddWithValue("$body", body);
            insert.Parameters.AddWithValue("$hash", before);
            insert.ExecuteNonQuery();
        }

        foreach (var trigger in triggers)
            Run(connection, trigger);
        File.Delete(Path.Combine(folder, "study.check"));
    }

    /// <summary>Every node below a node, by the way to it.</summary>
    public static IEnumerable<JsonNode> All(JsonNode? node)
    {
        if (node is null)
            yield break;
        yield return node;
        IEnumerable<JsonNode?> inside = node switch
        {
            JsonObject o => o.Select(p => p.Value),
            JsonArray a => a,
            _ => [],
        };
        foreach (var below in inside.SelectMany(All))
            yield return below;
    }

    private static SqliteConnection Open(string folder)
    {
        var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "study.db")};Pooling=False");
        connection.Open();
        return connection;
    }

    private static void Run(SqliteConnection connection, string text)
    {
        using var command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }
}
