using System.Collections.Immutable;
using Holdfast.Speciation;

namespace Holdfast.Claims.Analyses;

/// <summary>The pH from which each solid of a metal can form at one concentration: oxides and hydroxides without carbonate, carbonates open to air.</summary>
/// <param name="Concentration">Metal, mg/L.</param>
/// <param name="IonicStrength">Ionic strength, mol/L.</param>
/// <param name="Temperature">Temperature, K.</param>
/// <param name="Onsets">The onsets, ion by ion.</param>
public sealed record SolidOnsets(double Concentration, double IonicStrength, double Temperature, ImmutableArray<PrecipitationOnset> Onsets)
{
    /// <summary>Works them out for every ion that the metal may be.</summary>
    /// <param name="ions">The ions; several where the oxidation state is not said.</param>
    /// <param name="concentration">Metal, mg/L, above 0.</param>
    /// <param name="ionicStrength">Ionic strength, mol/L.</param>
    /// <param name="temperature">Temperature, K.</param>
    public static SolidOnsets Of(IReadOnlyList<MetalIon> ions, double concentration, double ionicStrength, double temperature)
    {
        ArgumentNullException.ThrowIfNull(ions);
        return new(concentration, ionicStrength, temperature,
        [
            .. ions.SelectMany(ion =>
            {
                var total = concentration / 1000 / ion.MolarMass;
                var bare = new MetalInWater(ion, total, ionicStrength);
                var airy = new MetalInWater(ion, total, ionicStrength, CarbonateConstants.LgAir);
                return ion.Solids.Select(s => PrecipitationOnset.Of(s.Carbonates > 0 ? airy : bare, s, temperature));
            }),
        ]);
    }

    /// <summary>The onset with the lowest pH among some solids, or null when none of them is reached.</summary>
    /// <param name="which">Which solids.</param>
    public PrecipitationOnset? Lowest(Func<Solid, bool> which) => Onsets.Where(o => o.Ph is not null && which(o.Solid)).MinBy(o => o.Ph);

    /// <summary>The lowest pH at which any of these solids could form within two standard uncertainties; null when none can.</summary>
    /// <param name="air">Contact with air.</param>
    public double? SafeBelow(AirContact air) => Relevant(air).Min(o => o.Low);

    /// <summary>
    /// How a pH stands: holds below every onset, contradicted where a solid that forms at once is surely supersaturated, open between. A fresh hydroxide
    /// counts when every ion that the metal may be has one; a carbonate where the vessel is open to air.
    /// </summary>
    /// <param name="ph">Highest pH reached.</param>
    /// <param name="u">Its standard uncertainty.</param>
    /// <param name="air">Contact with air.</param>
    public Ruling At(double ph, double u, AirContact air)
    {
        if (Relevant(air).All(o => o.Low is not { } low || ph + 2 * u < low))
            return Ruling.Holds;
        return Forms(ph - 2 * u, air) is not null ? Ruling.Contradicted : Ruling.NotShownYet;
    }

    /// <summary>The solid that surely can form at once at a pH, or null.</summary>
    /// <param name="ph">The pH, already less its uncertainty.</param>
    /// <param name="air">Contact with air.</param>
    public PrecipitationOnset? Forms(double ph, AirContact air)
    {
        var sure = Relevant(air)
            .Where(o => o.Solid.Kind == SolidKind.Fresh || (o.Solid.Carbonates > 0 && air == AirContact.Open))
            .Where(o => o.High < ph && !(o.HighEnd < ph))
            .ToLookup(o => o.Solid.Metal, StringComparer.Ordinal);
        return sure.Count == Onsets.Select(o => o.Solid.Metal).Distinct(StringComparer.Ordinal).Count() ? sure.SelectMany(s => s).MinBy(o => o.High) : null;
    }

    private IEnumerable<PrecipitationOnset> Relevant(AirContact air) => Onsets.Where(o => o.Solid.Carbonates == 0 || air != AirContact.Excluded);
}
