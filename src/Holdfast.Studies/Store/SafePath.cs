namespace Holdfast.Studies.Store;

/// <summary>Writing never follows a link: a folder from a stranger may hold one that leads to any file of this computer.</summary>
public static class SafePath
{
    /// <summary>Refuses a name that is a link.</summary>
    /// <param name="path">File or folder that is to be written; it need not be there.</param>
    /// <exception cref="StudyException">It is a link (HF-437).</exception>
    public static void RefuseLink(string path)
    {
        try
        {
            // A link is seen as itself, whether or not there is anything where it leads.
            if (new FileInfo(path).LinkTarget is null)
                return;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return;
        }

        throw new StudyException(Codes.Link, $"{path} is a link. Holdfast writes through none, since it may lead out of the folder; nothing is kept. Remove the link and try again.");
    }

    /// <summary>Refuses a file whose name, or any folder on the way to it below a given one, is a link. Links above that folder are the reader's own.</summary>
    /// <param name="path">The file that is to be written.</param>
    /// <param name="below">The folder in which the path begins: the current one.</param>
    /// <exception cref="StudyException">One is a link (HF-437).</exception>
    public static void RefuseLinks(string path, string below)
    {
        var full = Path.GetFullPath(path);
        var root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(below)) + Path.DirectorySeparatorChar;
        RefuseLink(full);
        for (var folder = Path.GetDirectoryName(full); folder is not null && folder.StartsWith(root, StringComparison.Ordinal); folder = Path.GetDirectoryName(folder))
            RefuseLink(folder);
    }
}
