namespace Holdfast.Cli;

/// <summary>Values given by name on the command line: "capacity=13 mg/g".</summary>
internal static class NamedValues
{
    /// <summary>The values by name in the order given, or what cannot be read. The last of two of one name counts.</summary>
    /// <param name="typed">As typed; null for none.</param>
    /// <param name="option">The option, for the message.</param>
    public static (Dictionary<string, string>? Values, string? Trouble) Read(string[]? typed, string option)
    {
        var pairs = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var one in typed ?? [])
        {
            var at = one.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || at == one.Length - 1)
                return (null, $"“{one}” is not understood: write {option} NAME=VALUE.");
            pairs[one[..at].Trim()] = one[(at + 1)..].Trim();
        }

        return (pairs, null);
    }
}
