using System.Text.RegularExpressions;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>Columns of times of the day, durations as hours and minutes, and dates.</summary>
internal sealed partial class Columns
{
    // "Shaking time (h:mm)": "contact" or the form says that it is no time of the day.
    private static bool IsDuration(HeadingReading h)
        => h.Has(HeadingWord.Contact) || h.Text.Contains("h:m", StringComparison.OrdinalIgnoreCase) || h.Text.Contains("hh:m", StringComparison.OrdinalIgnoreCase);

    // "started on" and "sampled on", where no column states a time.
    private (int Start, int End)? DatesOfContact()
    {
        var dates = Enumerable.Range(0, headings.Length).Where(LooksLikeDates).ToList();
        return dates is [var first, var second] && (headings[first].HasAny(HeadingWord.Start, HeadingWord.Contact) || headings[second].HasAny(HeadingWord.End, HeadingWord.Preparing))
            && !headings.Any(h => UnitKinds.Of(h.Unit) == UnitKind.Time) ? (first, second) : null;
    }

    private bool LooksLikeDates(int index)
    {
        var filled = layout.Body.Select(r => r.At(index)).Where(c => !c.IsBlank).Take(50).ToList();
        return filled.Count > 0 && filled.Count(c => c.Kind == CellKind.Date || DateText.Read(c.Text, "day-first", out _) is not null || DateAndTime().IsMatch(c.Text)) * 5 >= filled.Count * 4;
    }

    private bool LooksLikeClock(int index)
    {
        var filled = layout.Body.Select(r => r.At(index)).Where(c => !c.IsBlank).Take(50).ToList();
        var h = headings[index];
        return filled.Count > 0 && filled.Count(c => c.Kind == CellKind.Text && (CellParts.IsClock(c.Text) || (h.HasAny(HeadingWord.Start, HeadingWord.End) && c.Text.Contains(':', StringComparison.Ordinal) && DateAndTime().IsMatch(c.Text)))) * 5 >= filled.Count * 4;
    }

    // "2026-05-19 14:05", "19.05.2026 14:05:00", "14.05.26".
    [GeneratedRegex(@"^\d{1,4}[-./]\d{1,2}[-./]\d{1,4}([ T]+\d{1,2}:\d{2}(:\d{2})?)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex DateAndTime();
}
