using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Holdfast.Studies.Store;

/// <summary>
/// Files that are on the disk when the call returns: new bytes to a fresh file beside the target, flushed and the outcome looked at,
/// renamed over the target, the folder flushed too.
/// </summary>
/// <remarks>The platform's own flush hides failure on Unix, so the operating system is asked directly.</remarks>
internal static class DurableFile
{
    private const int MacFullFsync = 51;

    /// <summary>Writes a file whole, or throws and leaves what was there.</summary>
    /// <param name="path">Target.</param>
    /// <param name="bytes">All of it.</param>
    /// <param name="readOnly">True to take away everyone's right to write to it afterwards.</param>
    /// <exception cref="StudyException">The disk is full (HF-430), the folder read-only (HF-431), or the disk did not keep it (HF-436).</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes, bool readOnly = false)
    {
        var fresh = path + ".new";
        try
        {
            File.Delete(fresh);
            using (var handle = File.OpenHandle(fresh, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None))
            {
                RandomAccess.Write(handle, bytes, 0);
                Flush(handle, path);
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
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
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
