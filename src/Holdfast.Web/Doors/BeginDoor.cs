using Holdfast.Web.Live;
using Holdfast.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Holdfast.Web.Doors;

/// <summary>Where a bench without a study begins one. Until then it is the only page there is; from then on there is none.</summary>
internal static class BeginDoor
{
    private const string Address = "/begin";

    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder to)
    {
        to.MapGet(Address, (StudyPlace place) => new RazorComponentResult<BeginDocument>(new { Place = place }));
        to.MapPost(Address, (NewStudy study, StudyPlace place) => place.Begin(study) is { } refused
            ? Results.Json(new { field = refused.Field, sentence = refused.Sentence })
            : Results.Json(new { begun = true }));
        to.MapPost(Address + "/{name}", (string name, StudyPlace place) => place.GoTo(name)
            ? Results.Json(new { begun = true })
            : Results.Json(new { field = "title", sentence = $"There is no study {name} here any more. Reload this page." }));
    }

    /// <summary>Leads to the beginning while there is no study, and away from it when there is one.</summary>
    /// <param name="place">Where the study is or will be.</param>
    public static Func<HttpContext, RequestDelegate, Task> Lead(StudyPlace place) => (context, next) =>
    {
        var path = context.Request.Path;
        var begins = path.StartsWithSegments(Address, StringComparison.Ordinal);
        if (place.Exists ? !begins : begins || path == ExampleDoor.Address || path.StartsWithSegments("/_content", StringComparison.Ordinal))
            return next(context);
        if (!HttpMethods.IsGet(context.Request.Method))
            return Guards.Refusal.Write(context, StatusCodes.Status409Conflict, "The study was begun, or is not begun yet. Reload the page.");
        context.Response.Redirect(place.Exists ? "/" : Address);
        return Task.CompletedTask;
    };
}
