using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Web.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Holdfast.Web.Doors;

/// <summary>The worked example as its report, to be read beside one's own study: it touches nothing.</summary>
internal static class ExampleDoor
{
    /// <summary>Where it is.</summary>
    public const string Address = "/example";

    // The report brings its own styles and typeface, and loads nothing.
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>Adds the address.</summary>
    public static void Map(IEndpointRouteBuilder to)
    {
        Lazy<string>? page = null;
        to.MapGet(Address, (StudyPlace place, HttpResponse response) =>
        {
            if (place.Example is not { } make)
                return Results.NotFound();
            page ??= new(() => StudyReport.Html(Dossier.Of(make())));
            response.Headers.ContentSecurityPolicy = Policy;
            return Results.Content(page.Value, "text/html; charset=utf-8");
        });
    }
}
