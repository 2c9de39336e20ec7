using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Regeneration;
using Holdfast.Studies.History;

namespace Holdfast.Claims;

/// <summary>A kind of margin: how large a difference still counts as none where a rule asks for one. The windows of spectra are fixed in the same way, beforehand.</summary>
/// <param name="Name">Name it is fixed under.</param>
/// <param name="Low">Lower end where nobody fixed one, in the unit given.</param>
/// <param name="High">Upper end where nobody fixed one, in the unit given.</param>
/// <param name="Unit">The unit its rules work in.</param>
/// <param name="Meaning">What lies inside it, in words.</param>
public sealed record MarginKind(string Name, double Low, double High, string Unit, string Meaning)
{
    /// <summary>How the caveat about a margin that nobody fixed goes on after its name and window.</summary>
    public const string LeftToDefault = "is the default: nobody fixed one before the data were seen.";

    /// <summary>What is done where nobody fixed it, for a window that has no default: its ends are then examples. Null for a margin with a default.</summary>
    public string? Otherwise { get; init; }

    /// <summary>Steps of a plateau.</summary>
    public static MarginKind Plateau { get; } = new("plateau", -5, 5, "%", "a later uptake counts as the same as the plateau's");

    /// <summary>Removal of two doses.</summary>
    public static MarginKind Removal { get; } = new("removal", -2, 2, "percentage points", "two doses remove the same");

    /// <summary>Capacities and uptakes of batches.</summary>
    public static MarginKind Capacity { get; } = new("capacity", -10, 10, "%", "two capacities, or the uptakes of two batches, count as the same");

    /// <summary>Share that is found again.</summary>
    public static MarginKind MassBalance { get; } = new("mass-balance", 90, 110, "%", "what left the water counts as found again");

    /// <summary>Check standards.</summary>
    public static MarginKind CheckStandard { get; } = new("check-standard", 90, 110, "%", "a check standard counts as found at its value");

    /// <summary>Share of the first uptake that a used sorbent must keep.</summary>
    public static MarginKind Retention { get; } = new("retention", 100 * CycleEvidence.DefaultRetention, 100, "%", "a regenerated sorbent has kept enough of its first uptake");

    /// <summary>Ions given up for one taken up.</summary>
    public static MarginKind ExchangeRatio { get; } = new("exchange-ratio", -10, 10, "%", "the ions given up count as matching those taken up");

    /// <summary>Change of a sensor's signal by another ion.</summary>
    public static MarginKind Interference { get; } = new(
        "interference", -100 * Fluorescence.Interference.UsualMargin, 100 * Fluorescence.Interference.UsualMargin, "%", "another ion leaves the signal as it is");

    /// <summary>Recovery of what was added to a real water.</summary>
    public static MarginKind Recovery { get; } = new("recovery", 80, 110, "%", "what was added to a real water counts as found");

    /// <summary>Where the maximum of an emission spectrum is looked for, on the blank.</summary>
    public static MarginKind PeakWindow { get; } = new("peak-window", 600, 630, "nm", "the maximum of the blank is looked for, and the intensity is the mean of the five points around it")
    {
        Otherwise = "the whole spectrum is searched, the exciting light and its second order kept clear of",
    };

    /// <summary>Limits between which an emission spectrum is integrated.</summary>
    public static MarginKind AreaWindow { get; } = new("area-window", 605, 627, "nm", "the spectrum is integrated, and the intensity is the area")
    {
        Otherwise = "the peak is read",
    };

    /// <summary>Vessels that one person can run for one claim; advice beyond that is no advice.</summary>
    public static MarginKind Effort { get; } = new("effort", 1, 24, "vessels", "one person can run what would settle a claim");

    /// <summary>All of them.</summary>
    public static ImmutableArray<MarginKind> All { get; } = [Plateau, Removal, Capacity, MassBalance, CheckStandard, Retention, ExchangeRatio, Interference, Recovery, PeakWindow, AreaWindow, Effort];

    /// <summary>The kind with this name, or null.</summary>
    /// <param name="name">Its name.</param>
    public static MarginKind? Named(string name) => All.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.Ordinal));

    /// <summary>A margin as typed, or what is in the way. Both ends are in the unit of the kind.</summary>
    /// <param name="name">Name of the kind.</param>
    /// <param name="low">Lower end as typed.</param>
    /// <param name="high">Upper end as typed.</param>
    public static (MarginFixed? Margin, Refused? Refusal) Read(string name, string low, string high)
    {
        if (Named(name) is not { } kind)
            return (null, new("margin", $"There is no margin {name}. Choose one of: {string.Join(", ", All.Select(k => k.Name))}."));
        if (End(low) is not { } from)
            return (null, new("low", $"“{low}” is no number. Type the lower end in {kind.Unit}, for example {Example(kind.Low)}."));
        if (End(high) is not { } to)
            return (null, new("high", $"“{high}” is no number. Type the upper end in {kind.Unit}, for example {Example(kind.High)}."));
        return from < to
            ? (new MarginFixed(kind.Name, from, to, kind.Unit), null)
            : (null, new("high", $"The upper end, {Example(to)}, is not above the lower end, {Example(from)}. Exchange them or widen the margin."));
    }

    private static double? End(string typed)
        => CellText.Read((typed ?? "").Trim().Replace('−', '-'), null) is CellText.Number number ? number.Value : null;

    private static string Example(double end) => end.ToString("0.####", CultureInfo.InvariantCulture);
}
