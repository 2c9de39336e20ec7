using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Holdfast.Visitors;

/// <summary>What each page weighs on the wire, how long it takes until its numbers stand there, and what one more open page costs the program.</summary>
internal static class Pages
{
    private const int Extra = 20;
    private static readonly string[] Paths =
        ["/", "/plan", "/preparations", "/samples", "/readings", "/quantities", "/quantities/q/ISO-20-1", "/findings", "/defence", "/write-up", "/daybook", "/apparatus"];

    public static async Task<int> Run(ServedStudy bench)
    {
        Console.WriteLine("page | first visit, kB on the wire | requests | next visit, kB | usable after, ms");
        foreach (var path in Paths)
        {
            var visitor = await bench.Visitor();
            var page = await visitor.NewPageAsync();
            var wire = await Wire.On(page);
            await Visit(bench, page, path);
            var (first, requests) = (wire.Taken(), wire.Requests);
            var watch = Stopwatch.StartNew();
            await Visit(bench, page, path);
            var usable = watch.Elapsed.TotalMilliseconds;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{path} | {first / 1024.0:0} | {requests} | {wire.Taken() / 1024.0:0} | {usable:0}"));
            await visitor.CloseAsync();
        }

        foreach (var path in new[] { "/samples", "/findings" })
        {
            var before = Settled();
            var visitor = await bench.Visitor();
            for (var i = 0; i < Extra; i++)
                await Visit(bench, await visitor.NewPageAsync(), path);

            var after = Settled();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"memory of the program per further open {path}: {(after - before) / Extra / 1024.0:0} kB managed (mean of {Extra}); {before / 1048576.0:0} MB before; working set {Environment.WorkingSet / 1048576.0:0} MB"));
            await visitor.CloseAsync();
        }

        return 0;
    }

    // Usable: the live connection answers, and no part says that it is still being worked out.
    private static async Task Visit(ServedStudy bench, IPage page, string path)
    {
        await page.GotoAsync(bench.Host.Address + path, new() { WaitUntil = WaitUntilState.DOMContentLoaded });
        await page.WaitForFunctionAsync("() => !document.querySelector('.defence .working, [aria-busy=true]') && window.Blazor");
    }

    private static long Settled()
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        return GC.GetTotalMemory(forceFullCollection: true);
    }

    /// <summary>Counts bytes on the wire as the browser does, the live connection's frames included.</summary>
    private sealed class Wire
    {
        private double bytes;

        public int Requests { get; private set; }

        public static async Task<Wire> On(IPage page)
        {
            var wire = new Wire();
            var session = await page.Context.NewCDPSessionAsync(page);
            await session.SendAsync("Network.enable");
            session.Event("Network.loadingFinished").OnEvent += (_, e) =>
            {
                wire.bytes += e!.Value.GetProperty("encodedDataLength").GetDouble();
                wire.Requests++;
            };
            session.Event("Network.webSocketFrameReceived").OnEvent += (_, e) =>
            {
                var frame = e!.Value.GetProperty("response");
                var length = frame.GetProperty("payloadData").GetString()!.Length;
                wire.bytes += frame.GetProperty("opcode").GetDouble() == 2 ? length * 0.75 : length;
            };
            return wire;
        }

        public double Taken()
        {
            var now = bytes;
            bytes = 0;
            return now;
        }
    }
}
