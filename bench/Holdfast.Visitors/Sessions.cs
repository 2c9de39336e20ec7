using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Visitors;

/// <summary>
/// Many windows on one study, all correcting the masses of the same few vials. An edit is timed in the page, from Enter to the moment the page says that it
/// is kept, or shows the conflict with both values. At the end every edit that a page called kept must stand in the Daybook.
/// </summary>
internal static class Sessions
{
    private const int Contested = 20;
    private const int MassColumn = 2;
    private const int PauseMs = 20_000; // reading a balance and typing a mass: three edits a minute from each window

    // Typed as a person would: the cell takes the focus, a key opens it, Enter ends it. The answer is waited for by watching the page.
    private const string Edit = """
        ([row, column, value]) => new Promise(done => {
          const cell = document.querySelector(`td[data-row="${row}"][data-col="${column}"]`);
          const editor = document.querySelector('.cell-editor');
          cell.focus();
          cell.dispatchEvent(new KeyboardEvent('keydown', { key: '1', bubbles: true }));
          editor.value = value;
          const began = performance.now();
          const end = how => { watch.disconnect(); done({ ms: performance.now() - began, how, code: cell.dataset.code }); };
          const look = () => {
            if ([...document.querySelectorAll('[role=status]')].some(s => s.textContent.includes(': ' + value + ' kept'))) { end('kept'); }
            else if (document.querySelector('.conflict')?.textContent.includes(value)) { end('conflict'); }
          };
          const watch = new MutationObserver(look);
          watch.observe(document.body, { subtree: true, childList: true, characterData: true });
          editor.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
          setTimeout(() => end('no answer'), 30000);
        })
        """;

    private const string Reason = """
        words => {
          const field = document.getElementById('edit-reason');
          field.value = words;
          field.dispatchEvent(new Event('input', { bubbles: true }));
        }
        """;

    // Fifty painted windows do not fit on one small computer, and what is asked is how the program answers, not how fast a browser paints.
    private const string Unpainted = """
        addEventListener('DOMContentLoaded', () => {
          const sheet = new CSSStyleSheet();
          sheet.replaceSync('.bench { content-visibility: hidden; }');
          document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
        })
        """;

    public static async Task<int> Run(ServedStudy bench, int many, int seconds)
    {
        var pages = new List<Microsoft.Playwright.IPage>();
        var visitor = await bench.Visitor();
        await visitor.AddInitScriptAsync(Unpainted);
        for (var i = 0; i < many; i++)
        {
            var page = await visitor.NewPageAsync();
            await page.GotoAsync(bench.Host.Address + "/samples", new() { WaitUntil = Microsoft.Playwright.WaitUntilState.NetworkIdle });
            await page.EvaluateAsync(Reason, string.Create(CultureInfo.InvariantCulture, $"window {i + 1} of the load script"));
            pages.Add(page);
        }

        Console.WriteLine($"{many} windows are open; {seconds} s of edits begin.");
        var times = new ConcurrentBag<double>();
        var kept = new ConcurrentBag<(string Code, string Value)>();
        var (conflicts, silent, number) = (0, 0, 0);
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(seconds));
        await Task.WhenAll(pages.Select((page, i) => One(page, i)));
        await bench.Close();

        using var study = StudyFolder.Open(bench.Folder, TimeProvider.System);
        // The first number typed into an empty cell is an entry of its own kind; every later one is a correction.
        var written = study.Daybook.Entries.SelectMany(e => e.Change switch
        {
            FactCorrected corrected => [(corrected.Sample, corrected.Fact)],
            TakenIn taken => taken.Samples.SelectMany(s => s.Facts.Values.Select(f => (s.Code, f))),
            _ => Enumerable.Empty<(string Sample, Fact Fact)>(),
        }).Where(c => c.Item2.Value is not null).Select(c => (c.Item1, c.Item2.Value!.Value.ToString("R", CultureInfo.InvariantCulture))).ToHashSet();
        var lost = kept.Count(k => !written.Contains(k));
        var sorted = times.Order().ToArray();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{sorted.Length} edits, {kept.Count} kept, {conflicts} conflicts shown with both values, {silent} without an answer in 30 s, {lost} kept edits missing from the Daybook of {study.Daybook.Version} entries"));
        if (sorted.Length > 0)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"from Enter to the answer: median {At(0.5):0} ms, p95 {At(0.95):0} ms, p99 {At(0.99):0} ms, longest {sorted[^1]:0} ms"));
        }

        return lost == 0 && silent == 0 && sorted.Length > 0 ? 0 : 1;

        double At(double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];

        async Task One(Microsoft.Playwright.IPage page, int window)
        {
            var draw = new Random(window);
            while (!stop.IsCancellationRequested)
            {
                await Task.Delay(draw.Next(PauseMs / 2, PauseMs * 3 / 2), CancellationToken.None);
                var value = (20 + Interlocked.Increment(ref number) / 100000.0).ToString("R", CultureInfo.InvariantCulture);
                var answer = await page.EvaluateAsync<JsonElement>(Edit, new object[] { draw.Next(Contested), MassColumn, value });
                times.Add(answer.GetProperty("ms").GetDouble());
                switch (answer.GetProperty("how").GetString())
                {
                    case "kept":
                        kept.Add((answer.GetProperty("code").GetString()!, value));
                        break;
                    case "conflict":
                        Interlocked.Increment(ref conflicts);
                        await page.EvaluateAsync("() => document.querySelector('.conflict button.quiet').click()");
                        break;
                    default:
                        Interlocked.Increment(ref silent);
                        break;
                }
            }
        }
    }
}
