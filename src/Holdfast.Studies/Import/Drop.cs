using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Import;

/// <summary>Files and folders that were dropped: found, looked over for size and kind of file, read.</summary>
public static class Drop
{
    /// <summary>The files. One that cannot be opened, or is too large, comes with its refusal and without its bytes.</summary>
    /// <param name="paths">Files and folders; a folder brings every file in it.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">The drop is past a limit (HF-407), or a path does not exist (HF-406).</exception>
    public static List<IncomingFile> Read(IReadOnlyList<string> paths, CancellationToken cancel)
    {
        var files = new List<string>();
        foreach (var path in paths)
        {
            if (Directory.Exists(path) && new DirectoryInfo(path).LinkTarget is null)
                files.AddRange(Within(path));
            else
                files.Add(path);
            if (files.Count > Limits.Files)
                throw new StudyException(Codes.LimitExceeded, $"More than {Ordinal.Text(Limits.Files)} files were dropped at once, so nothing is kept. Take them in by folder.");
        }
        var total = 0L;
        var incoming = new List<IncomingFile>();
        foreach (var path in files)
        {
            cancel.ThrowIfCancellationRequested();
            var name = Path.GetFileName(path).Normalize();
            try
            {
                var bytes = PlainFile.Read(path, Limits.File, FileReaders.Largest);
                total += bytes.Length;
                if (total > Limits.Drop)
                    throw Limits.Exceeded("The drop", "more than 2 GB");
                incoming.Add(new IncomingFile(name, bytes));
            }
            catch (StudyException e) when (total <= Limits.Drop)
            {
                incoming.Add(new IncomingFile(name, []) { Refusal = e });
            }
        }
        return incoming;
    }

    // Hidden files and what other programs leave behind are no evidence; links are not followed.
    private static IEnumerable<string> Within(string folder)
    {
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = Limits.Depth,
            AttributesToSkip = FileAttributes.ReparsePoint | FileAttributes.Hidden | FileAttributes.System,
            IgnoreInaccessible = true,
        };
        return Directory.EnumerateFiles(folder, "*", options).Take(Limits.Files + 1).Order(StringComparer.Ordinal);
    }
}
