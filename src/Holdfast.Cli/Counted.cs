using System.Globalization;

namespace Holdfast.Cli;

/// <summary>Counted progress of long work on the error stream: silent for the first two seconds, then a line each second with what is left.</summary>
/// <param name="what">What is worked on.</param>
/// <param name="count">How many there are.</param>
/// <param name="door">Where it is written, and the time.</param>
internal sealed class Counted(string what, int count, Door door) : IProgress<double>
{
    private static readonly TimeSpan First = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Next = TimeSpan.FromSeconds(1);
    private readonly Lock gate = new();
    private readonly long begun = door.Clock.GetTimestamp();
    private TimeSpan due = First;

    /// <inheritdoc/>
    public void Report(double value)
    {
        lock (gate)
        {
            var gone = door.Clock.GetElapsedTime(begun);
            if (gone < due || value >= 1)
                return;
            due = gone + Next;
            var left = value > 0 ? string.Create(CultureInfo.InvariantCulture, $", about {Math.Ceiling(gone.TotalSeconds * (1 - value) / value):0} s left") : "";
            door.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {value * count:0} of {count}{left}. Ctrl+C stops."));
        }
    }
}
