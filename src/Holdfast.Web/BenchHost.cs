using System.Net;
using System.Net.Sockets;
using Holdfast.Studies.Store;
using Holdfast.Web.Doors;
using Holdfast.Web.Guards;
using Holdfast.Web.Live;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Holdfast.Web;

/// <summary>The bench: one study, served to the browsers of this computer and to nobody else.</summary>
public sealed class BenchHost : IAsyncDisposable
{
    private const long LargestPost = 512L << 20;
    private const int MostConnections = 512;
    private const int MostPages = 128;
    private const int MostWaiting = 32;
    private readonly WebApplication app;
    private readonly StartToken token;

    private BenchHost(WebApplication app, StartToken token) => (this.app, this.token) = (app, token);

    /// <summary>Scheme, name and port, without a slash at the end: "http://127.0.0.1:40123". Known once it runs.</summary>
    public string Address => app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses
        .First(a => a.Contains("127.0.0.1", StringComparison.Ordinal));

    /// <summary>The address to open: it carries the secret, and works once.</summary>
    public Uri StartAddress => new($"{Address}/?{StartToken.Parameter}={token.Secret}");

    /// <summary>Opens the study for writing, if the folder holds one, and makes the host; nothing listens yet.</summary>
    /// <param name="options">Study, clock, author.</param>
    /// <exception cref="Studies.StudyException">The study is damaged, or another program is writing in it.</exception>
    public static BenchHost Create(BenchOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        // Files lie beside the program, not in the folder it was started from.
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.Sources.Clear();
        builder.Logging.ClearProviders();
        builder.WebHost.UseStaticWebAssets();
        var waiting = new WaitingRoom(MostWaiting);
        builder.WebHost.ConfigureKestrel(kestrel => Listen(kestrel, options.Port, waiting));
        builder.Services.Configure<FormOptions>(form => (form.MultipartBodyLengthLimit, form.ValueCountLimit) = (LargestPost, Studies.Import.Limits.Files));
        // Keys live as long as the program: nothing of it lies on the disk.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents().AddHubOptions(hub => hub.MaximumReceiveMessageSize = 4 << 20);
        var place = new StudyPlace(options);
        builder.Services.AddSingleton(place);
        builder.Services.AddSingleton(_ => new OpenStudy(StudyFolder.Open(place.Folder, options.Clock), options.Clock, place.Who));
        builder.Services.AddSingleton(services => new Resampling(services.GetRequiredService<OpenStudy>(), options.Clock));
        builder.Services.AddSingleton<Tray>();
        builder.Services.AddSingleton<OpenPictures>();

        var token = new StartToken();
        var app = builder.Build();
        app.Use(Slips.Answer);
        app.Use(PageHeaders.Add);
        app.Use(HostNames.Admit);
        app.Use(token.Exchange);
        app.Use(SameOrigin.Admit);
        app.Use(token.Admit);
        app.Use(waiting.Admitted);
        app.Use(BeginDoor.Lead(place));
        app.UseAntiforgery();
        app.MapStaticAssets();
        FaceDoor.Map(app);
        BeginDoor.Map(app);
        ExampleDoor.Map(app);
        TrayDoor.Map(app);
        WriteUpDoor.Map(app);
        PictureDoor.Map(app);
        app.MapRazorComponents<Shell>().AddInteractiveServerRenderMode();
        // A study that is there is opened at once: trouble with it is told before any browser is.
        if (place.Exists)
            _ = app.Services.GetRequiredService<OpenStudy>();
        return new BenchHost(app, token);
    }

    /// <summary>Serves a study until it is stopped.</summary>
    /// <param name="options">Study, clock, author.</param>
    /// <param name="opened">Told the start address once it can be opened.</param>
    /// <param name="cancel">Stops it.</param>
    public static async Task Run(BenchOptions options, Action<Uri> opened, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(opened);
        var host = Create(options);
        await using (host.ConfigureAwait(false))
        {
            await host.Start(cancel).ConfigureAwait(false);
            opened(host.StartAddress);
            await host.app.WaitForShutdownAsync(cancel).ConfigureAwait(false);
        }
    }

    /// <summary>Starts listening.</summary>
    /// <param name="cancel">Gives up.</param>
    public Task Start(CancellationToken cancel = default) => app.StartAsync(cancel);

    /// <summary>Stops listening, writes the plain copy and lets the study go.</summary>
    public async ValueTask DisposeAsync()
    {
        await app.StopAsync().ConfigureAwait(false);
        await app.DisposeAsync().ConfigureAwait(false);
    }

    private static void Listen(KestrelServerOptions kestrel, int port, WaitingRoom waiting)
    {
        kestrel.AddServerHeader = false;
        // An empty Host header would otherwise reach the application.
        kestrel.AllowHostHeaderOverride = false;
        kestrel.Limits.MaxConcurrentConnections = MostConnections;
        kestrel.Limits.MaxConcurrentUpgradedConnections = MostPages;
        kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
        kestrel.Limits.MaxRequestBodySize = LargestPost;
        kestrel.Listen(IPAddress.Loopback, port, listen => listen.Use(next => connection => waiting.Enter(connection, next)));
        if (port != 0 && Socket.OSSupportsIPv6)
            kestrel.Listen(IPAddress.IPv6Loopback, port, listen => listen.Use(next => connection => waiting.Enter(connection, next)));
    }
}
