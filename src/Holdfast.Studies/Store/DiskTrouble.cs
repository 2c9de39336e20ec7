using Microsoft.Data.Sqlite;

namespace Holdfast.Studies.Store;

/// <summary>What the disk, the folder or the database said, in our words and with our code.</summary>
internal static class DiskTrouble
{
    private const int NoRights = 13, NotPermitted = 1, NoSpace = 28, ReadOnlyDisk = 30, LinuxQuota = 122, MacQuota = 69;
    private const int WindowsNoRights = 5, WindowsWriteProtected = 19, WindowsHandleDiskFull = 39, WindowsDiskFull = 112;

    /// <summary>An exception of the platform.</summary>
    public static StudyException Of(Exception e, string path)
    {
        if (e is UnauthorizedAccessException)
            return ReadOnly(path, e);
        var code = e.HResult & 0xFFFF;
        return OperatingSystem.IsWindows() ? OfWindows(code, path, e) : OfUnix(code, path, e);
    }

    /// <summary>An error number of Linux or macOS.</summary>
    public static StudyException OfUnix(int error, string path, Exception? inner = null) => error switch
    {
        NoSpace or LinuxQuota or MacQuota => Full(path, inner),
        NoRights or NotPermitted or ReadOnlyDisk => ReadOnly(path, inner),
        _ => NotKept(path, inner),
    };

    /// <summary>An error number of Windows.</summary>
    public static StudyException OfWindows(int error, string path, Exception? inner = null) => error switch
    {
        WindowsDiskFull or WindowsHandleDiskFull => Full(path, inner),
        WindowsNoRights or WindowsWriteProtected => ReadOnly(path, inner),
        _ => NotKept(path, inner),
    };

    /// <summary>What SQLite said; its primary result codes are documented with it.</summary>
    public static StudyException Of(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        13 => Full(path, e),
        3 or 8 or 14 => ReadOnly(path, e),
        5 or 6 => new StudyException(Codes.OpenElsewhere, $"Another program holds {Name(path)}. Nothing is kept. Close it there and try again.", e),
        11 or 26 => new StudyException(Codes.Damage, $"{Name(path)} is damaged: {e.Message.TrimEnd('.')}. Nothing is computed from it. Run inspect.", e),
        _ => NotKept(path, e),
    };

    private static StudyException Full(string path, Exception? inner)
        => new(Codes.DiskFull, $"The disk is full, so {Name(path)} is not kept. What was kept before stands. Free 10 MB and try again.", inner);

    private static StudyException ReadOnly(string path, Exception? inner)
        => new(Codes.ReadOnlyFolder, $"{Name(path)} cannot be written: the folder or disk is read-only here. Nothing is kept. Copy the study elsewhere.", inner);

    private static StudyException NotKept(string path, Exception? inner)
        => new(Codes.NotKept, $"The disk did not keep {Name(path)}. Treat it as not kept, copy the study to another disk, then inspect it.", inner);

    private static string Name(string path) => Path.GetFileName(Path.TrimEndingDirectorySeparator(path));
}
