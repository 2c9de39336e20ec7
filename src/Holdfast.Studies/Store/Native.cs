using System.Runtime.InteropServices;

namespace Holdfast.Studies.Store;

/// <summary>The few calls of the operating system that the platform does not offer, or whose failure it hides.</summary>
internal static partial class Native
{
    public const int ReadOnly = 0;

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    public static partial int Fsync(int descriptor);

    [LibraryImport("libc", EntryPoint = "fcntl", SetLastError = true)]
    public static partial int Fcntl(int descriptor, int command);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "close", SetLastError = true)]
    public static partial int Close(int descriptor);

    [LibraryImport("libc", EntryPoint = "statx", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Statx(int folder, string path, int flags, uint mask, Span<byte> result);

    [LibraryImport("kernel32", EntryPoint = "FlushFileBuffers", SetLastError = true)]
    [return: MarshalAs(UnmanagedType.Bool)]
    public static partial bool FlushFileBuffers(SafeHandle handle);
}
