using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>
/// Answers only to the names of this computer. A page elsewhere can point its own host name at 127.0.0.1 and would otherwise be
/// same-origin with the bench (DNS rebinding); the exact Host header gives it away.
/// </summary>
internal static class HostNames
{
    private static readonly string[] Allowed = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>Refuses a request whose Host header is missing or not one of ours.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public static Task Admit(HttpContext context, RequestDelegate next)
    {
        var host = context.Request.Host;
        var ours = host.HasValue
            && Allowed.Contains(host.Host, StringComparer.OrdinalIgnoreCase)
            && host.Port == context.Connection.LocalPort;
        return ours
            ? next(context)
            : Refusal.Write(context, StatusCodes.Status400BadRequest, "Holdfast answers on this computer only, under the address it printed.");
    }
}
