using System.Text.Json;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Web.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Holdfast.Web.Doors;

/// <summary>
/// Where dropped files and pasted blocks arrive: ordinary posts, since the live connection has a small limit and would lose a large block silently.
/// </summary>
internal static class TrayDoor
{
    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder to)
    {
        to.MapPost("/tray/files", Files);
        to.MapPost("/tray/text", Text);
    }

    private static async Task<IResult> Files(HttpRequest request, Tray tray, CancellationToken cancel)
    {
        if (!request.HasFormContentType)
            return Results.StatusCode(StatusCodes.Status415UnsupportedMediaType);
        IFormCollection form;
        try
        {
            form = await request.ReadFormAsync(cancel).ConfigureAwait(false);
        }
        catch (InvalidDataException e) when (e.Message.Contains("limit", StringComparison.Ordinal))
        {
            return TooMany();
        }
        catch (Exception e) when (e is InvalidDataException or (IOException and not BadHttpRequestException))
        {
            return Results.Text("The files did not arrive whole, so none is taken. Drop them again.", statusCode: StatusCodes.Status400BadRequest);
        }

        if (form.Files.Count > Limits.Files)
            return TooMany();
        var files = new List<IncomingFile>();
        foreach (var file in form.Files)
        {
            var name = NameOf(file.FileName);
            if (file.Length > Limits.File && await Largest(file, cancel).ConfigureAwait(false) is var largest && file.Length > largest)
            {
                files.Add(new IncomingFile(name, []) { Refusal = PlainFile.TooLarge(name, file.Length, largest) });
                continue;
            }

            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes, cancel).ConfigureAwait(false);
            files.Add(new IncomingFile(name, bytes.ToArray()));
        }

        tray.Put(files);
        return Results.Json(new { files = files.Count });
    }

    private static async Task<long> Largest(IFormFile file, CancellationToken cancel)
    {
        var head = new byte[FileReaders.Head];
        var stream = file.OpenReadStream();
        await using (stream.ConfigureAwait(false))
            await stream.ReadExactlyAsync(head, cancel).ConfigureAwait(false);
        return FileReaders.Largest(head);
    }

    private static async Task<IResult> Text(HttpRequest request, Tray tray, CancellationToken cancel)
    {
        if (!request.HasJsonContentType())
            return Results.StatusCode(StatusCodes.Status415UnsupportedMediaType);
        Block? block;
        try
        {
            block = await request.ReadFromJsonAsync<Block>(cancel).ConfigureAwait(false);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return Results.Text("The block did not arrive whole, so nothing was taken. Paste it again.", statusCode: StatusCodes.Status400BadRequest);
        }

        if (string.IsNullOrWhiteSpace(block?.Text))
            return Results.Text("The block is empty, so nothing was taken.", statusCode: StatusCodes.Status400BadRequest);
        if (System.Text.Encoding.UTF8.GetByteCount(block.Text) > Limits.File)
            return Results.Text("The block is larger than 64 MB, so nothing was taken. Save it as a file and keep only the columns you need.", statusCode: StatusCodes.Status413PayloadTooLarge);
        tray.Paste(block.Text);
        return Results.Json(new { characters = block.Text.Length });
    }

    private static IResult TooMany()
        => Results.Text(FormattableString.Invariant($"More than {Limits.Files} files were dropped at once, so none is taken. Drop them by folder."), statusCode: StatusCodes.Status413PayloadTooLarge);

    // A name is data: only its last part, never a path.
    private static string NameOf(string given)
    {
        var name = given.Replace('\\', '/').Split('/')[^1].Normalize();
        return name.Length == 0 ? "unnamed" : name;
    }

    private sealed record Block(string Text);
}
