using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Infrared;

namespace Holdfast.Techniques.Infrared;

/// <summary>
/// "The spectrum shows this group": its strong vibrations are seen where the spectrum covers them, and at least one of them is nothing else that is always there.
/// </summary>
/// <remarks>A spectrum is consistent with a group; it never identifies one alone. Bands count from five standard deviations of the noise.</remarks>
public sealed class GroupShown : IClaimRule
{
    /// <summary>The limits of the rule.</summary>
    public static class Limits
    {
        /// <summary>Fewest vibrations of a group of several that are to be seen.</summary>
        public const int Vibrations = 2;
    }

    /// <inheritdoc/>
    public string Id => "group-shown";

    /// <inheritdoc/>
    public string Wording => "The spectrum of {powder} shows {group}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [InfraredParameters.Powder, new("group", "group of atoms", "phosphate", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var spectra = InfraredStudy.Of(evidence).For(claim.Words("powder"));
        var sentence = ClaimSentence.Of(claim, this);
        var group = GroupNamed(claim.Words("group"));
        var decision = spectra.IsEmpty ? InfraredParameters.NoSpectrum(claim.Words("powder"))
            : group.IsEmpty ? Decision.NotNamed(claim, "group", "phosphate")
            : Decide(group, spectra[0]);
        return decision.On(claim, sentence, InfraredParameters.Scope(spectra), spectra.Select(s => s.Measurement.Id));
    }

    /// <summary>Judges one spectrum.</summary>
    /// <param name="group">Rows of the correlation table that belong to the group.</param>
    /// <param name="spectrum">The spectrum.</param>
    public static Decision Decide(ImmutableArray<GroupRange> group, MeasuredSpectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        var measured = spectrum.Spectrum!;
        var seen = group.Select(r => (Row: r, Band: spectrum.Bands.Where(b => r.Fits(b.Band)).MaxBy(b => b.Band.Prominence))).ToList();
        var covered = seen.Where(s => measured.Covers(s.Row.Low, s.Row.High)).ToList();
        var found = seen.Where(s => s.Band is not null).ToList();
        var missing = covered.Where(s => s.Band is null && s.Row.IsStrong).ToList();
        var own = found.Where(s => s.Band!.Air.IsEmpty).ToList();
        var needed = Math.Min(Limits.Vibrations, Math.Max(1, covered.Count));
        var strong = covered.Where(s => s.Row.IsStrong).ToList();
        var ruling = strong.Count > 0 && strong.TrueForAll(s => s.Band is null) && found.Count == 0 ? Ruling.Contradicted
            : missing.Count == 0 && found.Count >= needed && own.Count > 0 ? Ruling.Holds
            : Ruling.NotShownYet;
        var name = group[0].Group;
        return new(
            ruling,
            (found.Count == 0 ? $"No band above {Phrase.Number(BandSearch.LeastProminence)} standard deviations of the noise lies where {name} absorbs"
                : $"Consistent with {name}: {Phrase.Listed(found.Select(f => $"{Text(f.Band!.Band.Wavenumber)} cm⁻¹ ({f.Row.Vibration})"))}")
            + (missing.Count > 0 ? $". Not seen although strong: {Phrase.Listed(missing.Select(m => $"{m.Row.Vibration} at {Text(m.Row.Low)} to {Text(m.Row.High)} cm⁻¹"))}" : "")
            + (found.Count > 0 && own.Count == 0 ? $". Each of them may be {Phrase.Listed(found.SelectMany(f => f.Band!.Air.Select(a => a.Name)).Distinct(StringComparer.Ordinal))} too" : "") + ".",
            "bands against a correlation table, with the companion bands of the group")
        {
            Numbers = [.. found.Select(f => new Deciding($"{f.Row.Vibration}", f.Band!.Band.Wavenumber, null, null, "cm⁻¹", null) { U = f.Band.Band.U })],
            Gates =
            [
                new("vibrations", found.Count >= needed, $"{Phrase.Count(found.Count, "vibration")} of {Phrase.Number(covered.Count)} that the spectrum covers; {Phrase.Number(needed)} are needed"),
                new("range", covered.Count > 0, covered.Count > 0 ? "the spectrum covers the group's region" : "the spectrum does not reach the group's region") { Silences = true },
            ],
            Questions =
            [
                .. found.Count == 1 && group.Length > 1 ? [new Question("Q12", $"Which second band of {name} should be there, and is it?")] : Array.Empty<Question>(),
                .. found.Count > 0 && own.Count == 0 ? [new Question("Q12", "How would water, carbonate of the air or grease look here?")] : Array.Empty<Question>(),
            ],
            Next = new("Measure the powder dried and in a fresh pellet, with a background taken right before, over the whole range; look for every band of the group.", null, [], "companion bands (common practice)"),
        };
    }

    /// <summary>Rows of the group with this name; empty where none or several groups fit it.</summary>
    /// <param name="words">"phosphate".</param>
    internal static ImmutableArray<GroupRange> GroupNamed(string? words)
    {
        if (string.IsNullOrWhiteSpace(words))
            return [];
        var groups = GroupRange.All.GroupBy(r => r.Group, StringComparer.Ordinal).ToList();
        var exact = groups.FirstOrDefault(g => string.Equals(g.Key, words.Trim(), StringComparison.OrdinalIgnoreCase));
        if (exact is not null)
            return [.. exact];
        var near = groups.Where(g => g.Key.Contains(words.Trim(), StringComparison.OrdinalIgnoreCase) || words.Contains(g.Key, StringComparison.OrdinalIgnoreCase)).ToList();
        return near.Count == 1 ? [.. near[0]] : [];
    }

    private static string Text(double wavenumber) => wavenumber.ToString("F0", CultureInfo.InvariantCulture);
}
