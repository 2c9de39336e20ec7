using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>A refused request: a status and one plain sentence, nothing else.</summary>
internal static class Refusal
{
    /// <summary>Ends the request with this status and sentence.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">HTTP status.</param>
    /// <param name="sentence">What happened and what to do.</param>
    public static Task Write(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence, context.RequestAborted);
    }
}
