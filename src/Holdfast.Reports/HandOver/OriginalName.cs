using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;

namespace Holdfast.Reports.HandOver;

/// <summary>Names under which files that were taken in lie in a package: their own as far as any computer can hold it, told apart by their fingerprints where two are the same.</summary>
internal static class OriginalName
{
    private const int Longest = 120;

    /// <summary>The name of each file by its fingerprint.</summary>
    /// <param name="files">The files, in the order of the history.</param>
    public static ImmutableDictionary<string, string> All(IEnumerable<TakenFile> files)
    {
        var names = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        var given = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var file in files)
        {
            var name = Safe(file.FileName);
            if (!given.Add(name.Normalize()))
            {
                name = $"{Path.GetFileNameWithoutExtension(name)}-{file.Sha256[..12]}{Path.GetExtension(name)}";
                given.Add(name.Normalize());
            }

            names[file.Sha256] = name;
        }

        return names.ToImmutable();
    }

    private static string Safe(string name)
    {
        var safe = string.Concat(name.Normalize().EnumerateRunes().Select(r => SafeZip.WhatIsWrong($"a{r.ToString()}b") is null && r.Value != '/' ? r.ToString() : "_")).Trim(' ').TrimEnd('.', ' ');
        if (safe.Length > Longest)
            safe = safe[..(Longest - 16)].TrimEnd('.', ' ') + Path.GetExtension(safe) is { } cut && cut.Length <= Longest ? cut : safe[..Longest].TrimEnd('.', ' ');
        safe = safe.Length == 0 ? "file" : safe[0] is '.' or '~' ? "_" + safe[1..] : safe;
        return SafeZip.WhatIsWrong(safe) is null ? safe : "file-" + string.Concat(safe.Where(char.IsAsciiLetterOrDigit));
    }
}
