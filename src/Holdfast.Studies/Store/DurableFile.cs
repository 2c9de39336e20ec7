using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Holdfast.Studies.Store;

/// <summary>
/// Files that are on the disk when the call returns: new bytes to a fresh file beside the target, flushed and the outcome looked at,
/// renamed over the target, the folder flushed too.
/// </summary>
/// <remarks>The platform's own flush hides failure on Unix, so the operating system is asked directly.</remarks>
public static class DurableFile
{
    private const int MacFullFsync = 51;

    /// <summary>Writes a file whole, or throws and leaves what was there.</summary>
    /// <param name="path">Target.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="readOnly">True to take away everyone's right to write to it afterwards.</param>
    /// <param name="shared">True for what leaves the study to be read by others: then the rights are those that the system gives a new file.</param>
    /// <exception cref="StudyException">The disk is full (HF-430), the folder read-only (HF-431), or the disk did not keep it (HF-436).</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes, bool readOnly = false, bool shared = false)
    {
        var fresh = path + ".new";
        try
        {
            File.Delete(fresh);
            using (var file = new FileStream(fresh, shared ? new() { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, Share = FileShare.None, BufferSize = 0 } : ForOwner(FileMode.CreateNew)))
            {
                RandomAccess.Write(file.SafeFileHandle, bytes, 0);
                Flush(file.SafeFileHandle, path);
            }
            if (new FileInfo(fresh).Length != bytes.Length)
                throw new IOException("The file came out shorter than what was written.");
            if (readOnly)
                TakeAwayWriting(fresh);
            File.Move(fresh, path, overwrite: true);
            FlushFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Discard(fresh);
            throw DiskTrouble.Of(e, path);
        }
        catch (StudyException)
        {
            Discard(fresh);
            throw;
        }
    }

    /// <summary>How a file of a study is opened for writing: nobody else may read it, since other people may use this computer.</summary>
    /// <param name="mode">New, or new where it is not there.</param>
    public static FileStreamOptions ForOwner(FileMode mode)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = FileShare.None, BufferSize = 0 };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return options;
    }

    /// <summary>Makes a folder of a study where it is not there yet; nobody else may look into it.</summary>
    /// <param name="path">The folder.</param>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(path);
        else
            Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>Flushes an open file to the disk and throws when the disk says no.</summary>
    /// <param name="handle">The open file.</param>
    /// <param name="path">Its name, for the message.</param>
    public static void Flush(SafeFileHandle handle, string path)
    {
        if (OperatingSystem.IsWindows())
        {
            if (!Native.FlushFileBuffers(handle))
                throw DiskTrouble.OfWindows(Marshal.GetLastPInvokeError(), path);
            return;
        }
        var descriptor = handle.DangerousGetHandle().ToInt32();
        if ((OperatingSystem.IsMacOS() ? Native.Fcntl(descriptor, MacFullFsync) : Native.Fsync(descriptor)) < 0)
            throw DiskTrouble.OfUnix(Marshal.GetLastPInvokeError(), path);
    }

    /// <summary>Flushes a folder, so that a renamed name survives a power cut. Windows keeps names in its own journal.</summary>
    /// <param name="folder">The folder.</param>
    public static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            return;
        var descriptor = Native.Open(folder, Native.ReadOnly);
        if (descriptor < 0)
            throw DiskTrouble.OfUnix(Marshal.GetLastPInvokeError(), folder);
        var failed = Native.Fsync(descriptor) < 0;
        var error = Marshal.GetLastPInvokeError();
        _ = Native.Close(descriptor);
        if (failed)
            throw DiskTrouble.OfUnix(error, folder);
    }

    private static void TakeAwayWriting(string path)
    {
        if (OperatingSystem.IsWindows())
            File.SetAttributes(path, FileAttributes.ReadOnly);
        else
            File.SetUnixFileMode(path, UnixFileMode.UserRead);
    }

    private static void Discard(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A leftover is harmless: the next write replaces it and inspect names it.
        }
    }
}
