using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SkiaSharp;

namespace Holdfast.Browser;

/// <summary>Thirty rods of a drawn, invented picture, measured with the pointer and again with keys alone. The truth is what was drawn: 2.5 nm a pixel, bar 200 pixels for 500 nm.</summary>
[Collection("browser")]
public sealed partial class PictureTests(Browsing browsing) : IClassFixture<Browsing>
{
    private const int Width = 1000, Height = 720, Count = 30;
    private const double PerPixel = 2.5;

    private static readonly (int X1, int Y1, int X2, int Y2)[] Rods = [.. Enumerable.Range(0, Count).Select(i => (60 + 150 * (i % 6), 60 + 120 * (i / 6), 60 + 150 * (i % 6) + 50 + 7 * (i % 5), 60 + 120 * (i / 6) + 9 * (i % 7)))];

    [Fact]
    public async Task ThirtyRods_WithThePointer_AreMeasuredUndoneAndStruck()
    {
        await using var made = await MadeBench.Start([("rods-01.png", Drawn())]);
        var page = await Opened(made);
        await page.FillAsync("#bar-says", "500 nm");
        for (var i = 0; i < 2; i++)
            await Line(page, (760, 690, 960, 690), i == 0 ? "second time" : "drawn 2 times");
        // With the scale known, lengths are next: the page says so before a hand draws one.
        await page.WaitForFunctionAsync("() => document.querySelector('.picture').dataset.tool === 'line'");
        var started = TimeProvider.System.GetTimestamp();
        for (var i = 0; i < Count; i++)
            await Line(page, Rods[i], $"Particle {i + 1}:");
        Assert.True(TimeProvider.System.GetElapsedTime(started).TotalSeconds < Count, "a mark is answered within a second");
        await Agree(page, within: 2 * PerPixel);

        // A look that is accessible, and a mean that is that of the drawn rods.
        await Accessibility.Faultless(page);
        var mean = Rods.Average(Length) * PerPixel;
        var said = await page.GetByText("mean ").First.InnerTextAsync();
        Assert.Equal(mean, double.Parse(MeanSaid().Match(said).Groups[1].Value, CultureInfo.InvariantCulture), PerPixel);

        await page.Locator(".picture").FocusAsync();
        await page.Keyboard.PressAsync("Control+z");
        await page.GetByText($"{Count - 1} particles marked").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike particle 3", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike M-0001" }).Last.IsVisibleAsync();
        await page.Locator("[data-strike]").First.ClickAsync();
        await page.FillAsync("#strike-reason", "two rods that lie across each other");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the line" }).ClickAsync();
        await page.GetByText($"{Count - 2} particles marked").WaitForAsync();

        // The bar and an outline by hand, then cells that are counted.
        await page.GetByLabel("an outline").CheckAsync();
        foreach (var (x, y) in new[] { (400, 640), (460, 640), (460, 680), (400, 680), (401, 641) })
            await Click(page, x, y);
        await page.GetByText("equal-area diameter").First.WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Lay the cells" }).ClickAsync();
        await page.GetByText("The field has cells").WaitForAsync();
        await page.GetByLabel("a cell to count").CheckAsync();
        await Click(page, 300, 300);
        await page.GetByText("Counted: cell 6 of 12").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task ThirtyRods_WithKeysAlone_AreMeasured()
    {
        await using var made = await MadeBench.Start([("rods-01.png", Drawn())]);
        var page = await Opened(made);
        await page.Locator("#bar-says").FocusAsync();
        await page.Keyboard.TypeAsync("500 nm");
        await page.Keyboard.PressAsync("Tab");
        Assert.True(await page.EvaluateAsync<bool>("() => document.activeElement.matches('.picture')"), "one Tab leads to the picture");
        (int X, int Y)? at = null;
        for (var i = 0; i < 2; i++)
            at = await Keys(page, at, (760, 690, 960, 690), i == 0 ? "second time" : "drawn 2 times");
        for (var i = 0; i < Count; i++)
            at = await Keys(page, at, Rods[i], $"Particle {i + 1}:");
        await Agree(page, within: 0.05 * PerPixel);

        // Ten again: the page leads from one to the next.
        await page.Locator("[data-repeat]").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Draw it again as if").WaitForAsync();
        await page.Locator(".picture").FocusAsync();
        for (var i = 0; i < 10; i++)
            at = await Keys(page, at, (Rods[i].X1, Rods[i].Y1, Rods[i].X2 + (i % 2 == 0 ? 1 : -1), Rods[i].Y2), $"{i + 1} of 10 measured again");
        await page.GetByText("from 10 repeats").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    private async Task<IPage> Opened(MadeBench made)
    {
        var page = await made.Open(browsing);
        await page.GotoAsync(made.Host.Address + "/measurements/M-0001");
        await page.Locator(".picture[data-ready][data-scale]").WaitForAsync();
        await page.GetByText("Nothing says how large a pixel is yet").WaitForAsync();
        return page;
    }

    private static double Length((int X1, int Y1, int X2, int Y2) rod) => Math.Sqrt(Math.Pow(rod.X2 - rod.X1, 2) + Math.Pow(rod.Y2 - rod.Y1, 2));

    private static async Task Agree(IPage page, double within)
    {
        var rows = await page.Locator(".picture-list tbody tr").AllInnerTextsAsync();
        Assert.Equal(Count, rows.Count);
        foreach (var (i, row) in rows.Reverse().Index())
            Assert.Equal(Length(Rods[i]) * PerPixel, double.Parse(SizeSaid().Match(row).Groups[1].Value, CultureInfo.InvariantCulture), within + 0.06);
    }

    private static async Task Line(IPage page, (int X1, int Y1, int X2, int Y2) rod, string said)
    {
        await Click(page, rod.X1, rod.Y1);
        await Click(page, rod.X2, rod.Y2);
        await page.Locator(".picture-said", new() { HasText = said }).WaitForAsync();
    }

    private static async Task Click(IPage page, int x, int y)
    {
        var place = await page.EvaluateAsync<double[]>("""
            async ([x, y]) => {
              const frame = document.querySelector(".picture");
              frame.scrollIntoView({ block: "center" });
              await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
              const edge = frame.querySelector("canvas").getBoundingClientRect();
              return [edge.x + (x - frame.dataset.left) * frame.dataset.scale, edge.y + (y - frame.dataset.top) * frame.dataset.scale];
            }
            """, new[] { x, y });
        await page.Mouse.ClickAsync((float)place[0], (float)place[1]);
    }

    private static async Task<(int X, int Y)?> Keys(IPage page, (int X, int Y)? at, (int X1, int Y1, int X2, int Y2) rod, string said)
    {
        if (at is null)
        {
            // Where the cross begins is told below the picture.
            await page.Keyboard.PressAsync("ArrowRight");
            await page.Locator("[data-place]", new() { HasText = "px" }).WaitForAsync();
            var place = PlaceSaid().Match(await page.Locator("[data-place]").InnerTextAsync());
            at = ((int)double.Parse(place.Groups[1].Value, CultureInfo.InvariantCulture), (int)double.Parse(place.Groups[2].Value, CultureInfo.InvariantCulture));
        }

        foreach (var (x, y) in new[] { (rod.X1, rod.Y1), (rod.X2, rod.Y2) })
        {
            await Steps(page, x - at.Value.X, "ArrowRight", "ArrowLeft");
            await Steps(page, y - at.Value.Y, "ArrowDown", "ArrowUp");
            await page.Keyboard.PressAsync("Space");
            at = (x, y);
        }

        await page.Locator(".picture-said", new() { HasText = said }).WaitForAsync();
        return at;
    }

    private static async Task Steps(IPage page, int by, string forward, string back)
    {
        var key = by > 0 ? forward : back;
        for (var i = 0; i < Math.Abs(by) / 10; i++)
            await page.Keyboard.PressAsync("Shift+" + key);
        for (var i = 0; i < Math.Abs(by) % 10; i++)
            await page.Keyboard.PressAsync(key);
    }

    private static byte[] Drawn()
    {
        using var bitmap = new SKBitmap(new SKImageInfo(Width, Height, SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(60, 60, 60));
        using var paint = new SKPaint { Color = new SKColor(190, 190, 190), StrokeWidth = 9, IsAntialias = true };
        foreach (var (x1, y1, x2, y2) in Rods)
            canvas.DrawLine(x1, y1, x2, y2, paint);
        paint.Color = SKColors.White;
        canvas.DrawLine(760, 690, 960, 690, paint);
        canvas.Flush();
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 90);
        return data.ToArray();
    }

    [GeneratedRegex(@"length ([0-9.]+) ±", RegexOptions.NonBacktracking)]
    private static partial Regex SizeSaid();

    [GeneratedRegex(@"mean ([0-9.]+) ±", RegexOptions.NonBacktracking)]
    private static partial Regex MeanSaid();

    [GeneratedRegex(@"at ([0-9.]+), ([0-9.]+) px", RegexOptions.NonBacktracking)]
    private static partial Regex PlaceSaid();
}
