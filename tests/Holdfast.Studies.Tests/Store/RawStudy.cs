using System.Security.Cryptography;
using Microsoft.Data.Sqlite;

namespace Holdfast.Studies.Tests.Store;

/// <summary>Reads study.db with none of the store's code, as the plain package describes the chain: the checker must not share the store's mistakes.</summary>
internal static class RawStudy
{
    /// <summary>Hashes of the entries, worked out from their bodies.</summary>
    public static List<string> Hashes(string folder)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "study.db")};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT number, body, hash FROM entry ORDER BY number";
        using var rows = command.ExecuteReader();
        var hashes = new List<string>();
        var before = new byte[32];
        while (rows.Read())
        {
            Assert.Equal(hashes.Count + 1, rows.GetInt64(0));
            before = SHA256.HashData([.. before, .. (byte[])rows.GetValue(1)]);
            Assert.Equal((byte[])rows.GetValue(2), before);
            hashes.Add(Convert.ToHexStringLower(before));
        }
        return hashes;
    }
}
