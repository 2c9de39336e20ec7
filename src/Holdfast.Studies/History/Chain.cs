using System.Security.Cryptography;

namespace Holdfast.Studies.History;

/// <summary>The hash chain: H(n) = SHA-256(H(n−1) ‖ bytes of entry n), with 32 zero bytes before the first.</summary>
/// <remarks>It shows accidental or casual change. It does not stop someone who rewrites everything: the printed fingerprint does.</remarks>
public static class Chain
{
    /// <summary>What stands before the first entry.</summary>
    public static string Start { get; } = new('0', 64);

    /// <summary>Hash of an entry.</summary>
    /// <param name="before">Hash of the entry before it, hexadecimal.</param>
    /// <param name="bytes">The entry's canonical bytes.</param>
    public static string Link(string before, ReadOnlySpan<byte> bytes)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Convert.FromHexString(before));
        hash.AppendData(bytes);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
