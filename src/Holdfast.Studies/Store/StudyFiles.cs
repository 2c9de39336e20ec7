namespace Holdfast.Studies.Store;

/// <summary>Names of the files and folders that make a study.</summary>
/// <param name="Root">The study folder, as a full path.</param>
public sealed record StudyFiles(string Root)
{
    /// <summary>The study that a folder would be.</summary>
    /// <param name="folder">Any path.</param>
    public static StudyFiles In(string folder) => new(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)));

    /// <summary>The history: one append-only table.</summary>
    public string Database => Path.Combine(Root, "study.db");

    /// <summary>Fingerprint of the database file when it was last closed.</summary>
    public string Check => Path.Combine(Root, "study.check");

    /// <summary>The file that one writer at a time holds locked.</summary>
    public string Lock => Path.Combine(Root, "study.lock");

    /// <summary>Who holds the lock; there only while someone does.</summary>
    public string Writer => Path.Combine(Root, "study.writer");

    /// <summary>What the folder is, in words.</summary>
    public string Readme => Path.Combine(Root, "README.md");

    /// <summary>Every file taken in, byte for byte, named by its SHA-256.</summary>
    public string Originals => Path.Combine(Root, "originals");

    /// <summary>The study as CSV and JSON, readable without Holdfast.</summary>
    public string Plain => Path.Combine(Root, "plain");

    /// <summary>Refuses a study in which one of our own names is a link: what is written there would land outside the folder.</summary>
    /// <exception cref="StudyException">One is a link (HF-437); it is named with its path.</exception>
    public void RefuseLinks()
    {
        foreach (var path in new[] { Database, Database + "-journal", Check, Lock, Writer, Readme, Originals, Plain })
            SafePath.RefuseLink(path);
    }

    /// <summary>Where one original is kept.</summary>
    /// <param name="sha256">Its fingerprint, lower-case hexadecimal.</param>
    public string Original(string sha256)
    {
        ArgumentNullException.ThrowIfNull(sha256);
        if (sha256.Length != 64 || !sha256.All(char.IsAsciiHexDigitLower))
            throw new ArgumentException($"{sha256} is not a SHA-256 in lower-case hexadecimal.", nameof(sha256));
        return Path.Combine(Originals, sha256);
    }
}
