using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>
/// Keeps other programs and other users of this computer out: the start address carries a secret, which is good for one thing, to be exchanged for a cookie,
/// and for nothing from then on.
/// </summary>
public sealed class StartToken
{
    /// <summary>Query parameter of the start address.</summary>
    public const string Parameter = "start";

    // A page of our own leads on, and not a redirect: a cookie that only goes with requests of the same site is not sent along a chain that another program began.
    private const string Onward = "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta http-equiv=\"refresh\" content=\"0;url=/\"><link rel=\"icon\" href=\"data:,\"><title>Holdfast</title></head>"
        + "<body><p><a href=\"/\">Open the bench</a></p></body></html>";

    private readonly byte[] secret = RandomNumberGenerator.GetBytes(32);
    private readonly byte[] session = RandomNumberGenerator.GetBytes(32);
    private int exchanged;

    /// <summary>The secret as it stands in the start address.</summary>
    public string Secret => Convert.ToHexStringLower(secret);

    /// <summary>Exchanges the secret of the start address for the cookie, once; everything else goes on.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public Task Exchange(HttpContext context, RequestDelegate next)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(next);
        if (!HttpMethods.IsGet(context.Request.Method) || !Matches(context.Request.Query[Parameter], secret) || Interlocked.Exchange(ref exchanged, 1) != 0)
            return next(context);
        context.Response.Cookies.Append(Cookie(context), Convert.ToHexStringLower(session), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Path = "/",
            IsEssential = true,
        });
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(Onward, context.RequestAborted);
    }

    /// <summary>Lets a request through that carries the cookie; refuses the rest.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public Task Admit(HttpContext context, RequestDelegate next)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(next);
        return Matches(context.Request.Cookies[Cookie(context)], session)
            ? next(context)
            : Refusal.Write(
                context,
                StatusCodes.Status403Forbidden,
                "This address opens once, in one browser. Close this page and type \"holdfast bench\" again for a fresh one.");
    }

    // Cookies ignore ports: the port in the name keeps two benches on one computer apart.
    private static string Cookie(HttpContext context) => "holdfast-" + context.Connection.LocalPort.ToString(CultureInfo.InvariantCulture);

    private static bool Matches(string? given, byte[] expected)
        => given is not null
        && CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(given), Encoding.ASCII.GetBytes(Convert.ToHexStringLower(expected)));
}
