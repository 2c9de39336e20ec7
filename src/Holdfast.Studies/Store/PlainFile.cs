using System.Buffers.Binary;
using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Holdfast.Studies.Store;

/// <summary>Opens ordinary files for reading and refuses everything that only looks like one: links, pipes, devices.</summary>
/// <remarks>Opened without following a link and without waiting, then asked what it is: a pipe would otherwise block for ever.</remarks>
public static class PlainFile
{
    private const int NoFollowLinux = 0x20000, NonBlockLinux = 0x800, CloseOnExecLinux = 0x80000;
    private const int NoFollowMac = 0x100, NonBlockMac = 0x4, CloseOnExecMac = 0x1000000;
    private const int TooManyLinksLinux = 40, TooManyLinksMac = 62, NoSuchFile = 2, NotAFolder = 20;
    private const int EmptyPath = 0x1000, TypeMask = 0xF000, RegularFile = 0x8000, ModeOffset = 28, StatxSize = 256;

    /// <summary>All bytes of an ordinary file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="limit">Most bytes that are read.</param>
    /// <param name="ofHead">The limit of a longer file from its first bytes; null for the same one.</param>
    /// <exception cref="StudyException">Not an ordinary file, or not readable (HF-406); larger than the limit (HF-407).</exception>
    public static byte[] Read(string path, long limit, Func<byte[], long>? ofHead = null)
    {
        using var handle = Open(path);
        try
        {
            var length = RandomAccess.GetLength(handle);
            if (length > limit && ofHead is not null)
            {
                var head = new byte[Import.FileReaders.Head];
                _ = RandomAccess.Read(handle, head, 0);
                limit = ofHead(head);
            }
            if (length > limit)
                throw TooLarge(path, length, limit);
            var bytes = new byte[length];
            var read = 0;
            while (read < bytes.Length && RandomAccess.Read(handle, bytes.AsSpan(read), read) is var n and > 0)
                read += n;
            return read == bytes.Length ? bytes : throw Unreadable(path, "it became shorter while it was read");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw Unreadable(path, "the disk could not read it", e);
        }
    }

    /// <summary>The message for a file past a limit.</summary>
    /// <param name="path">The file.</param>
    /// <param name="length">Its length in bytes.</param>
    /// <param name="limit">The limit in bytes.</param>
    public static StudyException TooLarge(string path, long length, long limit) => new(Codes.LimitExceeded,
        $"{Path.GetFileName(path)} is {Megabytes(length)} MB; the limit is {Megabytes(limit)} MB, so nothing is kept. Export only the columns you need.");

    /// <summary>True when the name is an ordinary file, not a link to one.</summary>
    /// <param name="path">The file.</param>
    public static bool Is(string path)
    {
        try
        {
            using var handle = Open(path);
            return true;
        }
        catch (StudyException)
        {
            return false;
        }
    }

    /// <summary>Opens an ordinary file for reading.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="StudyException">It is not one, or cannot be read (HF-406).</exception>
    public static SafeFileHandle Open(string path)
    {
        if (OperatingSystem.IsLinux() || OperatingSystem.IsMacOS())
            return OpenUnix(path);
        var info = new FileInfo(path);
        if (!info.Exists)
            throw Missing(path);
        if (info.Attributes.HasFlag(FileAttributes.ReparsePoint) || info.Attributes.HasFlag(FileAttributes.Device))
            throw NotOrdinary(path);
        try
        {
            return File.OpenHandle(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(path, "the system does not let it be opened", e);
        }
    }

    private static SafeFileHandle OpenUnix(string path)
    {
        var linux = OperatingSystem.IsLinux();
        var flags = linux ? NoFollowLinux | NonBlockLinux | CloseOnExecLinux : NoFollowMac | NonBlockMac | CloseOnExecMac;
        var descriptor = Native.Open(path, Native.ReadOnly | flags);
        if (descriptor < 0)
        {
            throw Marshal.GetLastPInvokeError() switch
            {
                NoSuchFile or NotAFolder => Missing(path),
                TooManyLinksLinux or TooManyLinksMac => NotOrdinary(path),
                _ => Unreadable(path, "the system does not let it be opened"),
            };
        }
        var handle = new SafeFileHandle(descriptor, ownsHandle: true);
        if (linux ? IsRegular(descriptor) : File.Exists(path) && !path.StartsWith("/dev/", StringComparison.Ordinal))
            return handle;
        handle.Dispose();
        throw NotOrdinary(path);
    }

    private static bool IsRegular(int descriptor)
    {
        Span<byte> result = stackalloc byte[StatxSize];
        return Native.Statx(descriptor, "", EmptyPath, mask: 1, result) == 0
            && (BinaryPrimitives.ReadUInt16LittleEndian(result[ModeOffset..]) & TypeMask) == RegularFile;
    }

    private static StudyException Missing(string path)
        => new(Codes.Unreadable, $"There is no file {Path.GetFileName(path)} here, so nothing is taken in. Check the name.");

    private static StudyException NotOrdinary(string path) => new(Codes.Unreadable,
        $"{Path.GetFileName(path)} is a link, folder, pipe or device, so it is not opened. Give the file itself.");

    private static StudyException Unreadable(string path, string why, Exception? inner = null)
        => new(Codes.Unreadable, $"{Path.GetFileName(path)} cannot be read: {why}. Nothing is taken in from it.", inner);

    private static string Megabytes(long bytes) => (bytes / 1048576.0).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
}
