namespace Holdfast.Infrared;

/// <summary>A group that a band is consistent with, and what else speaks for it or against it. Never an identification.</summary>
/// <param name="Range">The row of the table that the band fits.</param>
/// <param name="Seen">Other vibrations of the group that are seen too.</param>
/// <param name="Missing">Strong vibrations of the group that the spectrum covers and does not show: they weaken it.</param>
public sealed record GroupPossibility(GroupRange Range, IReadOnlyList<GroupRange> Seen, IReadOnlyList<GroupRange> Missing)
{
    /// <summary>True when a strong vibration that belongs to the group is not there.</summary>
    public bool IsWeakened => Missing.Count > 0;

    /// <summary>What every band may be: all rows that it fits, those without a missing partner first, then by how many of the group's other vibrations are seen, then broad rows for broad bands.</summary>
    /// <param name="spectrum">The spectrum, for its range.</param>
    /// <param name="bands">Its bands.</param>
    public static IReadOnlyList<(Band Band, IReadOnlyList<GroupPossibility> Possibilities)> Of(InfraredSpectrum spectrum, IReadOnlyList<Band> bands)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        ArgumentNullException.ThrowIfNull(bands);
        var seen = GroupRange.All.ToDictionary(r => r, r => bands.Any(r.Fits));
        return [.. bands.Select(b => (b, (IReadOnlyList<GroupPossibility>)[.. GroupRange.All.Where(r => r.Fits(b)).Select(Judge)
            .OrderBy(p => p.IsWeakened).ThenByDescending(p => p.Seen.Count).ThenByDescending(p => p.Range.IsBroad == GroupRange.IsBroadBand(b)).ThenBy(p => p.Range.High - p.Range.Low)]))];

        GroupPossibility Judge(GroupRange row)
        {
            var others = GroupRange.All.Where(r => r.Group == row.Group && r != row).ToList();
            return new(row, [.. others.Where(r => seen[r])], [.. others.Where(r => r.IsStrong && !seen[r] && spectrum.Covers(r.Low, r.High))]);
        }
    }
}
