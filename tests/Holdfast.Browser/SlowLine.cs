using System.Globalization;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>
/// A bench that answers late. With <c>HOLDFAST_LATE</c> set to milliseconds, every answer reaches the page that much later, as on a busy machine:
/// a page that loses what was typed meanwhile, or a test that acts before the page can have answered, fails each time instead of once in a hundred.
/// </summary>
internal static class SlowLine
{
    private static readonly int Late = int.TryParse(Environment.GetEnvironmentVariable("HOLDFAST_LATE"), NumberStyles.None, CultureInfo.InvariantCulture, out var late) ? late : 0;

    /// <summary>Delays the answers to all pages of a reader, in their order.</summary>
    public static async Task Lay(IBrowserContext context)
    {
        if (Late <= 0)
            return;
        await context.RouteWebSocketAsync("**", line =>
        {
            var bench = line.ConnectToServer();
            var before = Task.CompletedTask;
            line.OnMessage(said => Pass(bench, said));
            bench.OnMessage(said => before = After(before, Task.Delay(Late), () => Pass(line, said)));
        });
    }

    private static async Task After(Task before, Task wait, Action pass)
    {
        await before;
        await wait;
        pass();
    }

    private static void Pass(IWebSocketRoute to, IWebSocketFrame said)
    {
        if (said.Binary is { } bytes)
            to.Send(bytes);
        else
            to.Send(said.Text ?? "");
    }
}
