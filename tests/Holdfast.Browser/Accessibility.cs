using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>The rules of axe-core on what is shown: no serious and no critical fault.</summary>
internal static class Accessibility
{
    private const int LongestMarkup = 200;

    // What passed is not asked for: on a page with every figure it is megabytes.
    private static readonly AxeRunOptions OnlyFaults = new() { ResultTypes = [ResultType.Violations] };

    /// <summary>Serious and critical faults of a page, a line each.</summary>
    /// <param name="page">The page.</param>
    public static async Task<string[]> Faults(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        return Serious(page.Url, await page.RunAxe(OnlyFaults));
    }

    /// <summary>Asserts that a page has none.</summary>
    /// <param name="page">The page.</param>
    public static async Task Faultless(IPage page)
    {
        var faults = await Faults(page);
        Assert.True(faults.Length == 0, string.Join("\n", faults));
    }

    /// <summary>Asserts that a part of a page has none.</summary>
    /// <param name="part">The part.</param>
    public static async Task Faultless(ILocator part)
    {
        ArgumentNullException.ThrowIfNull(part);
        var faults = Serious(part.Page.Url, await part.RunAxe(OnlyFaults));
        Assert.True(faults.Length == 0, string.Join("\n", faults));
    }

    private static string[] Serious(string where, AxeResult result)
        => [.. result.Violations.Where(v => v.Impact is "serious" or "critical")
            .Select(v => $"{where}: {v.Id}, {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html[..Math.Min(LongestMarkup, n.Html.Length)]))}")];
}
