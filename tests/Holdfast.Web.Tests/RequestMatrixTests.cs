using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace Holdfast.Web.Tests;

/// <summary>
/// Every combination of Host, Origin, Sec-Fetch-Site, way of asking and secret, spoken by hand to the running host. What may pass is written down
/// here from the rules of Fetch and of DNS rebinding, not from the code: our own name, no other site's doing, and the secret.
/// </summary>
public sealed class RequestMatrixTests(RequestMatrixTests.Running running) : IClassFixture<RequestMatrixTests.Running>
{
    private static readonly string[] Hosts = ["127.0.0.1:{port}", "localhost:{port}", "127.0.0.1:1", "127.0.0.1", "evil.example:{port}", "localhost.evil.example:{port}", "127.0.0.1.nip.example:{port}", ""];
    private static readonly string?[] Origins = [null, "own", "http://evil.example", "http://127.0.0.1:1", "null"];
    private static readonly string?[] Sites = [null, "same-origin", "none", "same-site", "cross-site"];
    private static readonly string[] Ways = ["GET /", "GET /_blazor/initializers", "POST /tray/text", "UPGRADE /_blazor", "POST /_blazor/negotiate"];
    private static readonly string[] Secrets = ["cookie", "cookie and header", "start again", "none", "wrong"];

    [Fact]
    public async Task Requests_EveryCombination_OnlyOursPass()
    {
        var wrong = new List<string>();
        var (tried, passed) = (0, 0);
        foreach (var host in Hosts)
        {
            foreach (var origin in Origins)
            {
                foreach (var site in Sites)
                {
                    foreach (var way in Ways)
                    {
                        foreach (var secret in Secrets)
                        {
                            var status = await Status(host, origin, site, way, secret);
                            var (expected, got) = (MayPass(host, origin, site, way, secret), status is >= 100 and < 400);
                            tried++;
                            passed += got ? 1 : 0;
                            if (expected != got)
                                wrong.Add(FormattableString.Invariant($"{status} for Host '{host}', Origin '{origin}', Sec-Fetch-Site '{site}', {way}, secret {secret}"));
                        }
                    }
                }
            }
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Take(20)));
        Assert.Equal(Hosts.Length * Origins.Length * Sites.Length * Ways.Length * Secrets.Length, tried);
        Assert.InRange(passed, 40, tried / 10);
    }

    [Fact]
    public async Task StartAddress_AskedTwice_OpensOnce()
    {
        await using var bench = await DemoBench.Start();
        var path = bench.Host.StartAddress.PathAndQuery;
        Assert.Equal(200, await Send(bench.Host, $"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{Port(bench.Host)}\r\nConnection: close\r\n\r\n"));
        Assert.Equal(403, await Send(bench.Host, $"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{Port(bench.Host)}\r\nConnection: close\r\n\r\n"));
    }

    // A page on the disk leads a browser there, which counts as another site: the secret is enough, once.
    [Fact]
    public async Task StartAddress_FromAPageOnTheDisk_IsExchangedAndLeadsOn()
    {
        await using var bench = await DemoBench.Start();
        using var answer = await Answer(bench.Host, $"GET {bench.Host.StartAddress.PathAndQuery} HTTP/1.1\r\nHost: 127.0.0.1:{Port(bench.Host)}\r\nSec-Fetch-Site: cross-site\r\nConnection: close\r\n\r\n");
        var text = await answer.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.StartsWith("HTTP/1.1 200", text, StringComparison.Ordinal);
        Assert.Contains("samesite=strict", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("http-equiv=\"refresh\" content=\"0;url=/\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain(bench.Host.StartAddress.Query["?start=".Length..], text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/tray/text", "application/json", "{\"text\": \"a", 400)]
    [InlineData("/tray/text", "application/json", "[1,2,3]", 400)]
    [InlineData("/tray/text", "application/json", "", 400)]
    [InlineData("/tray/text", "application/json; charset=nothing", "{}", 400)]
    [InlineData("/tray/files", "multipart/form-data", "x", 400)]
    [InlineData("/tray/files", "multipart/form-data; boundary=b", "--b\r\nContent-Disposition: form-data; name=\"f\"; filename=\"a.csv\"\r\n\r\n1;2", 400)]
    [InlineData("/tray/files", "multipart/form-data; boundary=b", "no boundary at all", 400)]
    [InlineData("/tray/files", "text/plain", "x", 415)]
    public async Task Posts_ThatAreBroken_AreToldSo(string path, string type, string body, int status)
        => Assert.Equal(status, await Post(path, type, body));

    [Fact]
    public async Task Posts_OfTooManyFiles_AreRefusedByNumber()
    {
        var body = new StringBuilder();
        for (var i = 0; i <= Studies.Import.Limits.Files; i++)
            body.Append(CultureInfo.InvariantCulture, $"--b\r\nContent-Disposition: form-data; name=\"f\"; filename=\"{i}.csv\"\r\n\r\n1;2\r\n");
        Assert.Equal(413, await Post("/tray/files", "multipart/form-data; boundary=b", body.Append("--b--\r\n").ToString()));
    }

    // Another user of this computer opens connections and says nothing: the owner is still served.
    [Fact]
    public async Task Connections_ThatSayNothing_DoNotKeepTheOwnerOut()
    {
        var silent = new List<Socket>();
        try
        {
            for (var i = 0; i < 700; i++)
            {
                var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
                await socket.ConnectAsync("127.0.0.1", Port(running.Bench.Host), TestContext.Current.CancellationToken);
                silent.Add(socket);
            }

            Assert.Equal(200, await Send(running.Bench.Host, $"GET /figures.css HTTP/1.1\r\nHost: 127.0.0.1:{Port(running.Bench.Host)}\r\nCookie: {running.Cookie}\r\nConnection: close\r\n\r\n"));
        }
        finally
        {
            silent.ForEach(s => s.Dispose());
        }
    }

    // Types of files: ECMA-376 part 1, 11.3.10 and 12.3.23, as registered.
    [Theory]
    [InlineData("/write-up/chapter.html", 200, "text/html")]
    [InlineData("/write-up/chapter.docx", 200, "application/vnd.openxmlformats-officedocument.wordprocessingml.document")]
    [InlineData("/write-up/record.docx", 200, "application/vnd.openxmlformats-officedocument.wordprocessingml.document")]
    [InlineData("/write-up/workbook.xlsx", 200, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")]
    [InlineData("/write-up/chapter.pdf", 200, "application/pdf")]
    [InlineData("/write-up/chapter.zip", 200, "application/zip")]
    [InlineData("/write-up/workbook.docx", 404, "")]
    [InlineData("/write-up/thesis.docx", 404, "")]
    public async Task Documents_OfTheWriteUp_ComeAsDownloadsOfTheirType(string path, int status, string type)
    {
        using var answer = await Answer(running.Bench.Host, $"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{Port(running.Bench.Host)}\r\nCookie: {running.Cookie}\r\nConnection: close\r\n\r\n");
        var head = new StringBuilder();
        while (await answer.ReadLineAsync(TestContext.Current.CancellationToken) is { Length: > 0 } line)
            head.Append(line).Append('\n');
        Assert.Contains(FormattableString.Invariant($"HTTP/1.1 {status}"), head.ToString(), StringComparison.Ordinal);
        if (status != 200)
            return;
        Assert.Contains("Content-Type: " + type, head.ToString(), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("attachment", head.ToString(), StringComparison.Ordinal);
    }

    private Task<int> Post(string path, string type, string body)
    {
        var port = Port(running.Bench.Host);
        return Send(running.Bench.Host, $"POST {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nOrigin: http://127.0.0.1:{port}\r\nCookie: {running.Cookie}\r\nConnection: close\r\n"
            + $"Content-Type: {type}\r\nContent-Length: {Encoding.ASCII.GetByteCount(body)}\r\n\r\n{body}");
    }

    private static bool MayPass(string host, string? origin, string? site, string way, string secret)
    {
        // Browsers send no Origin with the read that prepares the live connection; "same-origin" in Sec-Fetch-Site is asked for instead.
        var reads = way.StartsWith("GET", StringComparison.Ordinal) && (!way.Contains("_blazor", StringComparison.Ordinal) || site == "same-origin");
        return (host is "127.0.0.1:{port}" or "localhost:{port}")
            && (origin == "own" || (origin is null && reads))
            && (site is null or "same-origin" || (reads && site == "none"))
            && (secret is "cookie" or "cookie and header");
    }

    private async Task<int> Status(string host, string? origin, string? site, string way, string secret)
    {
        var port = Port(running.Bench.Host).ToString(CultureInfo.InvariantCulture);
        var name = host.Replace("{port}", port, StringComparison.Ordinal);
        var (verb, path) = (way.Split(' ')[0], way.Split(' ')[1]);
        var body = verb == "POST" && path.StartsWith("/tray", StringComparison.Ordinal) ? "{\"text\":\"a;b\\n1;2\"}" : "";
        var text = new StringBuilder()
            .Append(CultureInfo.InvariantCulture, $"{(verb == "UPGRADE" ? "GET" : verb)} {path}{(path.EndsWith("negotiate", StringComparison.Ordinal) ? "?negotiateVersion=1" : "")} HTTP/1.1\r\nHost: {name}\r\n");
        if (origin is not null)
            text.Append(CultureInfo.InvariantCulture, $"Origin: {(origin == "own" ? "http://" + name : origin)}\r\n");
        if (site is not null)
            text.Append(CultureInfo.InvariantCulture, $"Sec-Fetch-Site: {site}\r\n");
        text.Append(secret switch
        {
            "cookie" => $"Cookie: {running.Cookie}\r\n",
            // No header stands in for the origin or the cookie, whatever it says and whoever sends it.
            "cookie and header" => $"Cookie: {running.Cookie}\r\nX-Holdfast-Start: anything\r\n",
            "start again" => $"X-Holdfast-Start: {running.Bench.Host.StartAddress.Query["?start=".Length..]}\r\n",
            "wrong" => $"Cookie: {running.Cookie.Split('=')[0]}={new string('0', 64)}\r\n",
            _ => "",
        });
        if (verb == "UPGRADE")
            text.Append("Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n\r\n");
        else
            text.Append(CultureInfo.InvariantCulture, $"Connection: close\r\n{(verb == "POST" ? $"Content-Type: application/json\r\nContent-Length: {body.Length}\r\n" : "")}\r\n{body}");
        return await Send(running.Bench.Host, text.ToString());
    }

    private static int Port(BenchHost host) => new Uri(host.Address).Port;

    private static async Task<int> Send(BenchHost host, string request)
    {
        using var line = await Answer(host, request);
        return int.Parse((await line.ReadLineAsync(TestContext.Current.CancellationToken))!.Split(' ')[1], CultureInfo.InvariantCulture);
    }

    private static async Task<StreamReader> Answer(BenchHost host, string request)
    {
        var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        await socket.ConnectAsync("127.0.0.1", Port(host), TestContext.Current.CancellationToken);
        var stream = new NetworkStream(socket, ownsSocket: true);
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request), TestContext.Current.CancellationToken);
        return new StreamReader(stream);
    }

    /// <summary>One bench for all combinations, with the cookie that the start address gave.</summary>
    public sealed class Running : IAsyncLifetime
    {
        /// <summary>The bench.</summary>
        public DemoBench Bench { get; private set; } = null!;

        /// <summary>Name and value of the cookie.</summary>
        public string Cookie { get; private set; } = "";

        /// <inheritdoc/>
        public async ValueTask InitializeAsync()
        {
            Bench = await DemoBench.Start();
            using var answer = await Answer(Bench.Host, $"GET {Bench.Host.StartAddress.PathAndQuery} HTTP/1.1\r\nHost: 127.0.0.1:{Port(Bench.Host)}\r\nConnection: close\r\n\r\n");
            while (await answer.ReadLineAsync(TestContext.Current.CancellationToken) is { Length: > 0 } line)
            {
                if (line.StartsWith("Set-Cookie: ", StringComparison.OrdinalIgnoreCase))
                    Cookie = line["Set-Cookie: ".Length..].Split(';')[0];
            }

            Assert.NotEqual("", Cookie);
        }

        /// <inheritdoc/>
        public ValueTask DisposeAsync() => Bench.DisposeAsync();
    }
}
