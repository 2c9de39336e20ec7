using System.Collections.Immutable;
using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>What the constants of a metal say of the vessels at one pH.</summary>
/// <param name="Ruling">Contradicted where any vessel is, holds where all do.</param>
/// <param name="Reason">Why, of the vessel that decides.</param>
/// <param name="Numbers">The pH from which each solid forms at that vessel's start concentration.</param>
public sealed record ByConstants(Ruling Ruling, string Reason, ImmutableArray<Deciding> Numbers)
{
    /// <summary>From the guard; null where nothing is known of the metal or no vessel is guarded.</summary>
    /// <param name="guard">The guard of the study.</param>
    /// <param name="vessels">The vessels.</param>
    internal static ByConstants? Of(PrecipitationGuard guard, ImmutableArray<Vessel> vessels)
    {
        GuardedVial[] vials = [.. vessels.Select(v => guard.Named(v.Code)).OfType<GuardedVial>()];
        if (vials.Length == 0 || guard.Ions.Count == 0)
            return null;
        var worst = vials.FirstOrDefault(v => v.Ruling == Ruling.Contradicted) ?? vials.FirstOrDefault(v => v.Ruling == Ruling.NotShownYet) ?? vials[0];
        return new(worst.Ruling, worst.Reason,
        [
            .. worst.Onsets?.Onsets.Where(o => o.Ph is not null).Select(o => new Deciding(
                $"pH from which {o.Solid.Name} forms", o.Ph!.Value, o.Low, o.High, "", $"two standard uncertainties of the constants; {o.Solid.Status}")) ?? [],
        ]);
    }
}
