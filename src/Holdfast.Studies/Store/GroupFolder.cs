namespace Holdfast.Studies.Store;

/// <summary>A folder in which a group keeps its studies: each a folder of its own, at any of a few levels.</summary>
public static class GroupFolder
{
    /// <summary>How many levels of folders below the group's are looked into.</summary>
    public const int Levels = 4;

    /// <summary>The studies in a folder, or the folder itself where it is one: name and full path, in the order of their names whatever the language.</summary>
    /// <param name="folder">Full path.</param>
    /// <returns>Names are paths below the folder, with "/"; a folder that is a study has its own name. Empty when there is none. Links are not followed.</returns>
    public static IReadOnlyList<(string Name, string Path)> Studies(string folder)
    {
        if (IsStudy(folder))
            return [(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)), folder)];
        var found = new List<(string Name, string Path)>();
        Look(folder, "", Levels);
        return [.. found.OrderBy(s => s.Name, StringComparer.Ordinal)];

        void Look(string at, string below, int left)
        {
            var own = new EnumerationOptions { AttributesToSkip = FileAttributes.ReparsePoint, IgnoreInaccessible = true };
            foreach (var child in Directory.EnumerateDirectories(at, "*", own))
            {
                var name = below + Path.GetFileName(child);
                if (IsStudy(child))
                    found.Add((name, child));
                else if (left > 1)
                    Look(child, name + "/", left - 1);
            }
        }
    }

    private static bool IsStudy(string folder) => File.Exists(Path.Combine(folder, "study.db"));
}
