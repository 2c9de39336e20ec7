using Holdfast.Studies;
using Holdfast.Techniques.Micrographs;
using Holdfast.Web.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Holdfast.Web.Doors;

/// <summary>Pieces of micrographs, as the page asks for them.</summary>
internal static class PictureDoor
{
    /// <summary>Adds the address. The fingerprint stands in it, so that what the browser keeps is never another picture.</summary>
    public static void Map(IEndpointRouteBuilder to)
        => to.MapGet("/pictures/{sha256}/{id}/{level:int}/{column:int}/{row:int}.png", (string sha256, string id, int level, int column, int row, OpenStudy study, OpenPictures pictures, HttpResponse response) =>
        {
            if (study.Now.Study.Measurement(id) is not { } measurement || measurement.Origin.Original != sha256 || Micrograph.Of(study.Now.Study, measurement) is not { } micrograph)
                return Results.NotFound();
            try
            {
                if (pictures.Of(micrograph).Piece(level, column, row) is not { } piece)
                    return Results.NotFound();
                response.Headers.CacheControl = "private, max-age=86400, immutable";
                return Results.Bytes(piece, "image/png");
            }
            catch (StudyException)
            {
                // The page says what is wrong with the original.
                return Results.NotFound();
            }
        });
}
