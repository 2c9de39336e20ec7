using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace Holdfast.Web.Guards;

/// <summary>
/// Keeps other programs and other users of this computer out: the start address carries a secret once, which is exchanged for a
/// cookie and dropped from the address by a redirect. The command line sends the secret as a header and never a cookie.
/// </summary>
public sealed class StartToken
{
    /// <summary>Query parameter of the start address.</summary>
    public const string Parameter = "start";

    /// <summary>Header the command line sends instead of a cookie.</summary>
    public const string Header = "X-Holdfast-Start";

    private readonly byte[] secret = RandomNumberGenerator.GetBytes(32);
    private readonly byte[] session = RandomNumberGenerator.GetBytes(32);
    private int exchanged;

    /// <summary>The secret as it stands in the start address.</summary>
    public string Secret => Convert.ToHexStringLower(secret);

    /// <summary>Lets a request through that carries the cookie or the header, exchanges the start address once, refuses the rest.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">What comes after.</param>
    public Task Admit(HttpContext context, RequestDelegate next)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(next);
        // Cookies ignore ports: the port in the name keeps two benches on one computer apart.
        var cookie = "holdfast-" + context.Connection.LocalPort.ToString(CultureInfo.InvariantCulture);
        if (Matches(context.Request.Cookies[cookie], session) || Matches(context.Request.Headers[Header], secret))
            return next(context);
        if (HttpMethods.IsGet(context.Request.Method)
            && Matches(context.Request.Query[Parameter], secret)
            && Interlocked.Exchange(ref exchanged, 1) == 0)
        {
            context.Response.Cookies.Append(cookie, Convert.ToHexStringLower(session), new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                Path = "/",
                IsEssential = true,
            });
            context.Response.Redirect(context.Request.Path.HasValue ? context.Request.Path.Value! : "/");
            return Task.CompletedTask;
        }

        return Refusal.Write(
            context,
            StatusCodes.Status403Forbidden,
            "This address opens once, in one browser. Close this page and type \"holdfast bench\" again for a fresh one.");
    }

    private static bool Matches(string? given, byte[] expected)
        => given is not null
        && CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(given), Encoding.ASCII.GetBytes(Convert.ToHexStringLower(expected)));
}
