using System.Text;
using Holdfast.Testing;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>What a student brings from the instrument room: fourteen files of every kind in one go.</summary>
[Collection("browser")]
public sealed class TrayTests(Browsing browsing) : IClassFixture<Browsing>
{
    // A drop as the browser hands it over: files in a DataTransfer, of any names and bytes.
    private const string Drop = """
        files => {
          const carried = new DataTransfer();
          for (const [name, base64] of files) {
            carried.items.add(new File([Uint8Array.from(atob(base64), c => c.charCodeAt(0))], name));
          }
          const box = document.querySelector('[data-tray-drop]');
          box.dispatchEvent(new DragEvent('dragover', { dataTransfer: carried, bubbles: true, cancelable: true }));
          box.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
        }
        """;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task FourteenFiles_ChosenOrDroppedAtOnce_EachSaysWhatItIsOrWhyNot(bool dropped)
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/readings");
        byte[] Demo(string name) => File.ReadAllBytes(Repository.Path("samples", "demo", name));
        (string Name, byte[] Bytes, string Says)[] files =
        [
            ("vessels.csv", Text("sample,time (min),mass (mg),volume (mL)\nMIX-1,60,20.1,50\nMIX-2,60,20.2,50\n"), "2 rows"),
            ("semicolons.csv", Text("sample;time (min);mass (mg);volume (mL)\nMIX-3;60;20,15;50\nMIX-4;60;20,25;50\n"), "2 rows"),
            ("preamble.txt", Text("Spectrometer (invented)\nOperator: A\n\nsample\tAbs 1\nISO-20-1\t0.1115\nISO-20-2\t0.1121\n"), "2 rows"),
            ("blank.csv", [], "HF-406"),
            ("noise.dat", [.. Enumerable.Range(0, 400).Select(i => (byte)(i * 37 % 256))], "HF-406"),
            ("micrograph.png", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52], "HF-406"),
            ("Untitled(3).csv", Demo("aas-run1.csv"), "HF-405"),
            ("again.xlsx", Demo("aas-run3.xlsx"), "HF-405"),
            ("doubtful.csv", Text("sample,mass (mg)\nMIX-5,\"1,234\"\n"), "HF-402"),
            ("no-unit.csv", Text("sample,mass,volume\nMIX-6,20.1,50\n"), "HF-401"),
            ("strangers.csv", Text("sample,Abs 1\nNOBODY-1,0.111\nNOBODY-2,0.112\n"), "HF-404"),
            ("claims.csv", Text("claim,series,time,wording\nequilibrium-reached,KIN-20,90 min,Invented.\n"), "1 row"),
            ("margins.csv", Text("margin,low,high,unit\nplateau,-4,4,%\n"), "1 row"),
            ("letter.html", Text("<html><body><script>alert(1)</script><p>Dear all</p></body></html>"), ""),
        ];
        if (dropped)
            await page.EvaluateAsync(Drop, files.Select(f => new[] { f.Name, Convert.ToBase64String(f.Bytes) }).ToArray());
        else
            await page.Locator("#tray-files").SetInputFilesAsync(files.Select(f => new FilePayload { Name = f.Name, MimeType = "application/octet-stream", Buffer = f.Bytes }).ToArray());
        await page.WaitForFunctionAsync($"() => document.querySelectorAll('.incoming').length === {files.Length}");
        var articles = page.Locator(".incoming");
        var wrong = new List<string>();
        for (var i = 0; i < files.Length; i++)
        {
            var name = await articles.Nth(i).Locator("h3").InnerTextAsync();
            var words = await articles.Nth(i).InnerTextAsync() + string.Concat(await page.Locator($".asked-of[data-of='{name}']").AllInnerTextsAsync());
            Assert.Equal(files[i].Name, name);
            if ((await articles.Nth(i).Locator("strong").First.InnerTextAsync()).Trim().Length == 0)
                wrong.Add($"{name} says nothing");
            if (!words.Contains(files[i].Says, StringComparison.Ordinal))
                wrong.Add($"{name} does not say {files[i].Says}: {words[..Math.Min(400, words.Length)]}");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        // What is asked keeps nothing back that is sure: the rest can be kept first.
        Assert.True(await page.Locator("[data-accept]").IsDisabledAsync());
        await page.Locator("[data-accept-ready]").ClickAsync();
        await page.GetByText("Kept as entry").First.WaitForAsync();
        // What is not understood stays in view until somebody takes it out.
        await page.Locator(".incoming", new() { HasText = "noise.dat" }).WaitForAsync();
        await browsing.Go(page, "/");
        await page.GetByText("in the tray").First.WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("[data-redo]").WaitForAsync();
        await browsing.Go(page, "/readings");
        while (await page.GetByRole(AriaRole.Button, new() { Name = "Remove" }).CountAsync() is > 0 and var left)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Remove" }).First.ClickAsync();
            await page.WaitForFunctionAsync($"() => document.querySelectorAll('.incoming').length < {left} && !document.querySelector('.tray .working')");
        }

        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task TwoFilesOfOneName_AreTwoFiles_AndTheSameFileTwiceIsOne()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/readings");
        FilePayload Sheet(string mass) => new() { Name = "Untitled.csv", MimeType = "text/csv", Buffer = Text($"sample,mass (mg),volume (mL)\nTWIN-1,{mass},50\n") };
        foreach (var mass in new[] { "20.1", "20.2", "20.2" })
        {
            await page.Locator("#tray-files").SetInputFilesAsync(Sheet(mass));
            await page.Locator("[data-tray-said]", new() { HasText = "In the tray." }).WaitForAsync();
            await page.Locator(".incoming").First.WaitForAsync();
        }

        await page.Locator(".incoming h3", new() { HasText = "Untitled, 2.csv" }).WaitForAsync();
        Assert.Equal(["Untitled.csv", "Untitled, 2.csv"], await page.Locator(".incoming h3").AllInnerTextsAsync());
        foreach (var name in new[] { "Untitled, 2.csv", "Untitled.csv" })
        {
            await page.Locator(".incoming", new() { Has = page.Locator("h3", new() { HasText = name }) }).GetByRole(AriaRole.Button, new() { Name = "Remove" }).ClickAsync();
            await page.Locator(".incoming h3", new() { HasText = name }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        }

        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task FileDroppedOnHome_TheTrayIsGoneTo()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/");
        await page.Locator("#tray-files").SetInputFilesAsync(new FilePayload { Name = "home.csv", MimeType = "text/csv", Buffer = Text("sample,mass (mg),volume (mL)\nHOME-1,20.1,50\n") });
        await page.Locator(".incoming h3", new() { HasText = "home.csv" }).WaitForAsync();
        Assert.EndsWith("/readings", page.Url, StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove" }).ClickAsync();
        await page.Locator(".incoming").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    // A drag from outside the browser, as the browser itself carries it: only such a one brings folders.
    [Fact]
    public async Task Folder_DraggedInFromOutside_BringsEveryFileInIt()
    {
        var page = await browsing.Open();
        var root = Directory.CreateTempSubdirectory("holdfast-drag-").FullName;
        try
        {
            var folder = Directory.CreateDirectory(Path.Combine(root, "instrument"));
            var below = folder.CreateSubdirectory("second day");
            await File.WriteAllBytesAsync(Path.Combine(folder.FullName, "one.csv"), Text("sample,mass (mg),volume (mL)\nDRAG-1,20.1,50\n"), TestContext.Current.CancellationToken);
            await File.WriteAllBytesAsync(Path.Combine(below.FullName, "two.csv"), Text("sample,mass (mg),volume (mL)\nDRAG-2,20.2,50\n"), TestContext.Current.CancellationToken);
            await browsing.Go(page, "/readings");
            var box = (await page.Locator("[data-tray-drop]").First.BoundingBoxAsync())!;
            var hand = await page.Context.NewCDPSessionAsync(page);
            foreach (var type in new[] { "dragEnter", "dragOver", "drop" })
            {
                await hand.SendAsync("Input.dispatchDragEvent", new Dictionary<string, object>
                {
                    ["type"] = type,
                    ["x"] = box.X + box.Width / 2,
                    ["y"] = box.Y + 10,
                    ["data"] = new Dictionary<string, object> { ["items"] = Array.Empty<object>(), ["files"] = new[] { folder.FullName }, ["dragOperationsMask"] = 1 },
                });
            }

            await page.Locator(".incoming h3", new() { HasText = "two.csv" }).WaitForAsync();
            Assert.Equal(["one.csv", "two.csv"], (await page.Locator(".incoming h3").AllInnerTextsAsync()).Order());
            while (await page.GetByRole(AriaRole.Button, new() { Name = "Remove" }).CountAsync() is > 0 and var left)
            {
                await page.GetByRole(AriaRole.Button, new() { Name = "Remove" }).First.ClickAsync();
                await page.WaitForFunctionAsync($"() => document.querySelectorAll('.incoming').length < {left} && !document.querySelector('.tray .working')");
            }
        }
        finally
        {
            Directory.Delete(root, recursive: true);
        }

        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);
}
