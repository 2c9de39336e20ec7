using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>Hands that never touch the mouse. Wherever the focus comes to rest on the way, it must be visible: outlined, in view, and under nothing.</summary>
internal sealed class TypingHands(IPage page)
{
    private const int Most = 400;

    private const string Focus = """
        () => {
          const on = document.activeElement;
          if (!on || on === document.body) return "";
          const style = getComputedStyle(on);
          const box = on.getBoundingClientRect();
          const name = on.tagName + (on.id ? "#" + on.id : "") + " " + (on.getAttribute("aria-label") ?? on.textContent ?? "").trim().slice(0, 40);
          if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2) return "no outline: " + name;
          if (box.bottom <= 0 || box.top >= innerHeight || box.right <= 0 || box.left >= innerWidth) return "out of view: " + name;
          const [left, right] = [Math.max(box.left, 0) + 1, Math.min(box.right, innerWidth) - 1];
          const [top, bottom] = [Math.max(box.top, 0) + 1, Math.min(box.bottom, innerHeight) - 1];
          for (const x of [left, (left + right) / 2, right])
            for (const y of [top, (top + bottom) / 2, bottom]) {
              const there = document.elementFromPoint(x, y);
              // Marks of a figure may lie over each other; the outline is drawn over them all.
              if (there && (on.contains(there) || there.contains(on) || (on.ownerSVGElement && on.ownerSVGElement === there.ownerSVGElement))) return "";
            }
          const over = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
          return "covered: " + name + ", by " + (over ? over.tagName + "." + over.className : "nothing") + " at " + Math.round(box.top) + " of " + innerHeight;
        }
        """;

    /// <summary>Where the focus was not to be seen, in the order it happened.</summary>
    public List<string> Unseen { get; } = [];

    /// <summary>Presses keys as a person does: "Enter", "Control+v".</summary>
    public async Task Press(params string[] keys)
    {
        foreach (var key in keys)
        {
            await page.Keyboard.PressAsync(key);
            await Look(key);
        }
    }

    /// <summary>Types words into what has the focus.</summary>
    public Task Type(string words) => page.Keyboard.TypeAsync(words);

    /// <summary>Presses Tab until something that matches has the focus.</summary>
    /// <param name="selector">CSS selector.</param>
    /// <param name="words">Words it must hold; "" for any.</param>
    public async Task TabTo(string selector, string words = "")
    {
        for (var i = 0; i < Most; i++)
        {
            if (await page.EvaluateAsync<bool>("([selector, words]) => document.activeElement.matches(selector) && ((document.activeElement.getAttribute('aria-label') ?? '') + document.activeElement.textContent).includes(words)", new[] { selector, words }))
                return;
            await Press("Tab");
        }

        Assert.Fail($"{Most} presses of Tab did not reach {selector} {words}.");
    }

    /// <summary>Pastes what a person copied elsewhere.</summary>
    /// <param name="text">The clipboard.</param>
    public async Task Paste(string text)
    {
        await page.EvaluateAsync("text => navigator.clipboard.writeText(text)", text);
        await Press("Control+v");
    }

    private async Task Look(string key)
    {
        if (await page.EvaluateAsync<string>(Focus) is { Length: > 0 } trouble)
            Unseen.Add($"{new Uri(page.Url).AbsolutePath}: {trouble}, after {key}");
    }
}
