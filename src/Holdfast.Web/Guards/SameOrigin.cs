using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>
/// Lets only the bench's own pages write or open the live connection: Origin must be our own, and Sec-Fetch-Site, where the browser
/// sends it, must say same-origin. Another port of this computer counts as elsewhere.
/// </summary>
internal static class SameOrigin
{
    /// <summary>Checks writes and live connections; page loads pass when they were not started by another site.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public static Task Admit(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        var origin = request.Headers.Origin.ToString();
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        // What prepares the live connection is fetched by our own page, and browsers send no Origin with such a read: its word for "same-origin" stands in.
        var prepares = request.Path.StartsWithSegments("/_blazor", StringComparison.OrdinalIgnoreCase) && !string.Equals(site, "same-origin", StringComparison.Ordinal);
        var reads = (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) && !IsUpgrade(request) && !prepares;
        var own = request.Scheme + "://" + request.Host.Value;

        var originFits = origin.Length == 0
            ? reads
            : string.Equals(origin, own, StringComparison.OrdinalIgnoreCase);
        var siteFits = site.Length == 0
            || string.Equals(site, "same-origin", StringComparison.Ordinal)
            || (reads && string.Equals(site, "none", StringComparison.Ordinal));
        return originFits && siteFits
            ? next(context)
            : Refusal.Write(context, StatusCodes.Status403Forbidden, "The request came from another site. Nothing was read or changed.");
    }

    private static bool IsUpgrade(HttpRequest request)
        => request.HttpContext.WebSockets.IsWebSocketRequest || request.Headers.Upgrade.Count > 0;
}
