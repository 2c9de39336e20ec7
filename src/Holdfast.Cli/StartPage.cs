using System.Net;
using Holdfast.Studies.Store;

namespace Holdfast.Cli;

/// <summary>
/// A page on the disk that leads a browser to the start address. It lies in a folder of its own that nobody else on this computer can look into, and is gone
/// when the bench ends.
/// </summary>
internal sealed class StartPage : IDisposable
{
    private string? folder;

    /// <summary>Writes the page.</summary>
    /// <param name="address">The start address, with its secret.</param>
    /// <returns>Its path.</returns>
    public string LeadTo(Uri address)
    {
        folder = Path.Combine(Path.GetTempPath(), "holdfast-" + Path.GetRandomFileName());
        DurableFile.MakeFolder(folder);
        var path = Path.Combine(folder, "start.html");
        var target = WebUtility.HtmlEncode(address.ToString());
        using var page = new StreamWriter(new FileStream(path, DurableFile.ForOwner(FileMode.CreateNew)));
        page.Write($"<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"referrer\" content=\"no-referrer\"><meta http-equiv=\"refresh\" content=\"0;url={target}\">"
            + $"<title>Holdfast</title></head><body><p><a href=\"{target}\">Open the bench</a></p></body></html>");
        return path;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        try
        {
            if (folder is not null && Directory.Exists(folder))
                Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Its secret ended when it was exchanged.
        }
    }
}
