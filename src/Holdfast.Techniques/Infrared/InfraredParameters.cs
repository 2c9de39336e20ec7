using System.Collections.Immutable;
using Holdfast.Claims;

namespace Holdfast.Techniques.Infrared;

/// <summary>What the claims about spectra share.</summary>
internal static class InfraredParameters
{
    /// <summary>The powder.</summary>
    public static ClaimParameter Powder { get; } = new("powder", "powder, as its measurements call it", "HAp-1", null);

    /// <summary>A powder before something was done to it.</summary>
    public static ClaimParameter Before { get; } = new("before", "powder before", "HAp-1", null);

    /// <summary>The powder after it.</summary>
    public static ClaimParameter After { get; } = new("after", "powder after", "HAp-1 loaded", null);

    /// <summary>A band.</summary>
    public static ClaimParameter Wavenumber { get; } = new("wavenumber", "wavenumber of the band", "1041 cm-1", "cm^-1");

    /// <summary>No spectrum of a powder.</summary>
    /// <param name="powder">Its name as the claim has it, or null.</param>
    public static Decision NoSpectrum(string? powder) => Decision.Missing(
        powder is null ? "The claim names no powder." : $"There is no infrared spectrum of {powder} that can be read.",
        new("Take in an infrared spectrum of the powder, with resolution and background noted.", null, [], "a spectrum is needed"));

    /// <summary>Where a claim about spectra holds.</summary>
    /// <param name="spectra">The spectra.</param>
    public static string? Scope(ImmutableArray<MeasuredSpectrum> spectra)
        => spectra.IsEmpty ? null
            : $"powder {Phrase.Listed(spectra.Select(s => s.Powder).Distinct(StringComparer.Ordinal))}, {Phrase.Count(spectra.Length, "spectrum", "spectra")}, "
                + $"{Phrase.Listed(spectra.Select(s => s.Path ?? "path of the light not recorded").Distinct(StringComparer.Ordinal))}, resolution {Phrase.Span(spectra.Min(s => s.Spectrum!.Limit), spectra.Max(s => s.Spectrum!.Limit), "cm⁻¹")}";
}
