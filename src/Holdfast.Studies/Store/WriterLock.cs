namespace Holdfast.Studies.Store;

/// <summary>One writer per study: a lock of the operating system, which ends with the process however it ends.</summary>
internal sealed class WriterLock : IDisposable
{
    private readonly FileStream held;
    private readonly StudyFiles files;

    private WriterLock(FileStream held, StudyFiles files)
    {
        this.held = held;
        this.files = files;
    }

    /// <summary>Takes the lock or says who has it.</summary>
    /// <exception cref="StudyException">Held elsewhere (HF-422), read-only (HF-431), or one of the study's names is a link (HF-437).</exception>
    public static WriterLock Take(StudyFiles files, DateTimeOffset now)
    {
        files.RefuseLinks();
        FileStream held;
        try
        {
            held = new FileStream(files.Lock, DurableFile.ForOwner(FileMode.OpenOrCreate));
        }
        catch (IOException e) when (File.Exists(files.Lock) && IsSharing(e))
        {
            throw new StudyException(Codes.OpenElsewhere, $"This study is open for writing elsewhere{Holder(files)}. Nothing is kept. Close it there, or read it only.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DiskTrouble.Of(e, files.Root);
        }
        var taken = new WriterLock(held, files);
        try
        {
            // A name left behind is replaced, never written into.
            File.Delete(files.Writer);
            using var note = new StreamWriter(new FileStream(files.Writer, DurableFile.ForOwner(FileMode.CreateNew)));
            note.Write(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"process {Environment.ProcessId} since {now:yyyy-MM-dd HH:mm:ss zzz}"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            taken.Dispose();
            throw DiskTrouble.Of(e, files.Root);
        }
        return taken;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        try
        {
            File.Delete(files.Writer);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The name of a holder that is gone does no harm: the lock itself decides.
        }
        held.Dispose();
    }

    // Sharing violation: 32 on Windows, EWOULDBLOCK on Linux (11) and macOS (35).
    private static bool IsSharing(IOException e) => (e.HResult & 0xFFFF) is 32 or 11 or 35;

    private static string Holder(StudyFiles files)
    {
        try
        {
            return ", by " + System.Text.Encoding.UTF8.GetString(PlainFile.Read(files.Writer, 4096));
        }
        catch (StudyException)
        {
            return "";
        }
    }
}
