using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>What every answer tells the browser it may do: run our own scripts and styles, talk to us, and nothing else.</summary>
internal static class PageHeaders
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; base-uri 'self'; object-src 'none'; frame-ancestors 'none'";

    /// <summary>Adds the headers; an original that is served as a download is sandboxed on top.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public static Task Add(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (!IsStaticAsset(context.Request.Path))
            headers.CacheControl = "no-store";
        return next(context);
    }

    private static bool IsStaticAsset(PathString path)
        => path.StartsWithSegments("/_content", StringComparison.Ordinal) || path.StartsWithSegments("/_framework", StringComparison.Ordinal);
}
