using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Cli;

/// <summary>
/// Counted progress of long work on the error stream. A person at a terminal sees nothing for the first two seconds, then one line that renews itself each
/// second; a program that asked for JSON gets a line of it at once and each second; a file or pipe gets none.
/// </summary>
internal sealed class CountedProgress : IProgress<int>
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly string what;
    private readonly int all;
    private readonly bool json;
    private readonly Door door;
    private readonly long begun;
    private TimeSpan due;
    private int width;

    private CountedProgress(string what, int all, bool json, Door door)
    {
        (this.what, this.all, this.json, this.door, begun) = (what, all, json, door, door.Clock.GetTimestamp());
        due = json ? TimeSpan.Zero : 2 * Second;
    }

    /// <summary>The option that asks for it as JSON.</summary>
    public static Option<string?> Form()
    {
        var form = new Option<string?>("--progress") { Description = "json: counted progress as lines of JSON on the error stream" };
        form.AcceptOnlyFromAmong("json");
        return form;
    }

    /// <summary>Progress where somebody wants it, else null.</summary>
    /// <param name="what">What is worked on.</param>
    /// <param name="all">How many there are.</param>
    /// <param name="form">"json", or null for words at a terminal.</param>
    /// <param name="door">Where it is written, and the time.</param>
    public static CountedProgress? Of(string what, int all, string? form, Door door)
        => form is not null || door.IsWatched ? new(what, all, form is not null, door) : null;

    /// <inheritdoc/>
    public void Report(int value)
    {
        var counting = new Counting(value, all, door.Clock.GetElapsedTime(begun));
        if (counting.Gone < due)
            return;
        due = counting.Gone + Second;
        if (json)
        {
            door.Error.WriteLine(JsonSerializer.Serialize(
                new { schema = "holdfast/1", progress = new { what, done = value, all, seconds_left = counting.Left is { } left ? (int)Math.Ceiling(left.TotalSeconds) : (int?)null } }, Plain));
            return;
        }

        var line = $"{what}: {counting.Words}. Ctrl+C stops.";
        door.Error.Write("\r" + line.PadRight(width));
        width = line.Length;
    }

    /// <summary>Takes the line away again, so that what follows begins a line of its own.</summary>
    public void Clear()
    {
        if (width > 0)
            door.Error.Write("\r" + new string(' ', width) + "\r");
        width = 0;
    }
}
