using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>The rules of axe-core on what is shown: no serious and no critical fault.</summary>
internal static class Accessibility
{
    // Run on the page itself: the package's own way opens a second page for every result, which took longer than the rules. Only faults cross the line.
    private const string Faulty = """
        async (asked) => {
          const of = typeof asked === 'string' ? document : asked;
          const rules = asked === 'colour' ? { runOnly: ['color-contrast', 'link-in-text-block'] } : {};
          const { violations } = await axe.run(of, { resultTypes: ['violations'], ...rules });
          return violations.filter(v => v.impact === 'serious' || v.impact === 'critical')
            .map(v => `${location.href}: ${v.id}, ${v.help}: ${v.nodes.slice(0, 3).map(n => n.html.slice(0, 200)).join(' | ')}`);
        }
        """;

    private static readonly string Rules = new BundledAxeScriptProvider().GetScript();

    /// <summary>Serious and critical faults of a page, a line each.</summary>
    /// <param name="page">The page.</param>
    public static async Task<string[]> Faults(IPage page)
    {
        await Ready(page);
        return await page.EvaluateAsync<string[]>(Faulty, "all");
    }

    /// <summary>Those of its colours alone, for the second theme of a page: a theme changes nothing else.</summary>
    /// <param name="page">The page.</param>
    public static async Task<string[]> FaultsOfColour(IPage page)
    {
        await Ready(page);
        return await page.EvaluateAsync<string[]>(Faulty, "colour");
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
        await Ready(part.Page);
        var faults = await part.EvaluateAsync<string[]>(Faulty);
        Assert.True(faults.Length == 0, string.Join("\n", faults));
    }

    private static async Task Ready(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        if (!await page.EvaluateAsync<bool>("() => !!window.axe"))
            await page.EvaluateAsync($"() => {{ {Rules} }}");
    }
}
