using Holdfast.Reports.Figures;
using Holdfast.Reports.Fonts;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Holdfast.Web.Doors;

/// <summary>
/// The colours and the typeface of figures. Labels are measured with this typeface, so a computer that lacks it would draw them too wide for their room.
/// </summary>
internal static class FaceDoor
{
    private static readonly (string File, string Name, bool Bold, bool Italic)[] Faces =
    [
        ("regular", "Liberation Sans", false, false),
        ("italic", "Liberation Sans Italic", false, true),
        ("bold", "Liberation Sans Bold", true, false),
        ("bold-italic", "Liberation Sans Bold Italic", true, true),
    ];

    private static readonly string Css = string.Concat(Faces.Select(f =>
        LiberationSans.Rule(f.Bold, f.Italic, $"local(\"{f.Name}\"), url(\"/faces/{f.File}.ttf\") format(\"truetype\")"))) + Palette.Stylesheet();

    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder to)
    {
        to.MapGet("/figures.css", () => Results.Text(Css, "text/css"));
        to.MapGet("/faces/{file}.ttf", (string file, HttpResponse response) =>
        {
            if (Array.Find(Faces, f => f.File == file) is not { File: not null } face)
                return Results.NotFound();
            response.Headers.CacheControl = "private, max-age=31536000, immutable";
            return Results.Bytes(LiberationSans.Face(face.Bold, face.Italic).File, "font/ttf");
        });
    }
}
