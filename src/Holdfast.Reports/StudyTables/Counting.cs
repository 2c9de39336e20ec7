using System.Globalization;

namespace Holdfast.Reports.StudyTables;

/// <summary>Counted work on its way: how much is done, and how long the rest takes at the pace so far.</summary>
/// <param name="Done">How many are done.</param>
/// <param name="All">How many there are.</param>
/// <param name="Gone">Time since it began.</param>
public readonly record struct Counting(int Done, int All, TimeSpan Gone)
{
    private static readonly TimeSpan InSeconds = TimeSpan.FromSeconds(90);

    /// <summary>Time left at the pace so far; null while nothing is done.</summary>
    public TimeSpan? Left => Done > 0 ? Gone * ((double)(All - Done) / Done) : null;

    /// <summary>"1 240 of 5 000, about 6 s left"; from 90 s on in minutes, rounded up either way.</summary>
    public string Words => $"{Whole(Done)} of {Whole(All)}" + (Left switch
    {
        null => "",
        { } left when left < InSeconds => string.Create(CultureInfo.InvariantCulture, $", about {Math.Ceiling(left.TotalSeconds):0} s left"),
        { } left => string.Create(CultureInfo.InvariantCulture, $", about {Math.Ceiling(left.TotalMinutes):0} min left"),
    });

    /// <summary>The share that is done in words, so that it can be announced now and then: "a quarter", "half", "three quarters"; empty before.</summary>
    public string Share => (4L * Done / Math.Max(All, 1)) switch
    {
        0 => "",
        1 => "a quarter",
        2 => "half",
        3 => "three quarters",
        _ => "all",
    };

    /// <summary>A count with a gap before each three digits, as the SI brochure writes them: neither comma nor point can be taken for a decimal mark.</summary>
    /// <param name="count">The count.</param>
    public static string Whole(int count) => count.ToString("N0", CultureInfo.InvariantCulture).Replace(',', '\u00A0');
}
