using System.Collections.Immutable;

namespace Holdfast.Claims;

/// <summary>Something a claim can be about, by the name its rule reads it under, with what a form says beside its field.</summary>
/// <param name="Name">Name of the parameter: "time".</param>
/// <param name="Asks">What it is, in words: "by when".</param>
/// <param name="Example">How it is written: "120 min".</param>
/// <param name="Unit">The unit its rule works in, "" for a bare number, null for words.</param>
public sealed record ClaimParameter(string Name, string Asks, string Example, string? Unit)
{
    /// <summary>Parameters that may be left out although the wording has a place for them: the rule then takes the fullest of its kind.</summary>
    private static readonly ImmutableArray<string> Chosen = ["series", "run"];

    /// <summary>Every parameter there is.</summary>
    public static ImmutableArray<ClaimParameter> All { get; } =
    [
        new("series", "series of vessels", "KIN-20", null),
        new("run", "run of the instrument", "aas-run1", null),
        new("model", "curve", "Langmuir", null),
        new("rival", "curves it is set against", "Freundlich, Sips", null),
        new("time", "contact time", "120 min", "min"),
        new("concentration", "start concentration", "20 mg/L", "mg/L"),
        new("dose", "sorbent dose", "3 g/L", "g/L"),
        new("capacity", "capacity", "13.5 mg/g", "mg/g"),
        new("limit", "limit", "0.020 mg/L", "mg/L"),
        new("to", "upper end", "4 mg/L", "mg/L"),
        new("at", "concentration at which they are compared", "20 mg/L", "mg/L"),
        new("published", "published uptake", "11.0 mg/g", "mg/g"),
        new("published-u", "its standard uncertainty", "0.4 mg/g", "mg/g"),
        new("published-temperature", "temperature it was measured at", "298 K", "K"),
        new("published-ph", "pH it was measured at", "6", ""),
        new("published-water", "water it was measured in", "0.01 mol/L NaNO3", null),
        new("ph", "pH", "6", ""),
        new("saturation-ph", "pH at which the solid would form", "8.4", ""),
        new("solid", "solid that would form", "Ni(OH)2", null),
        new("ksp", "solubility product of that solid", "5.48e-16", ""),
        new("charge", "charge of the ion", "2", ""),
        new("against", "series it is set against", "ISO-298", null),
        new("water", "water that was treated", "rinse water", null),
        new("ion-radius", "radius of the hydrated ion", "0.404 nm", "nm"),
        new("mechanism", "static or dynamic", "static", null),
        new("formula", "formula of the powder", "Ca5(PO4)3OH", null),
        new("fraction", "share of the constituent in the powder", "40 %", "%"),
        new("direction", "endothermic or exothermic", "endothermic", null),
        new("ion", "ion that is given up", "Ca", null),
        new("ratio", "ions given up for one taken up", "1", ""),
        new("cycle", "number of the cycle", "3", ""),
        new("cycles", "how many times", "5", ""),
        new("over", "metals it is preferred over", "Cd, Zn", null),
        new("factor", "selectivity factor that is passed", "1", ""),
        new("c0", "concentration of the water", "20 mg/L", "mg/L"),
        new("isotherm", "series whose isotherm is used", "ISO-298", null),
        new("surface-area", "specific surface area", "120 m2/g", "m2/g"),
    ];

    /// <summary>The parameter with this name, or null.</summary>
    /// <param name="name">Its name.</param>
    public static ClaimParameter? Named(string name) => All.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.Ordinal));

    /// <summary>
    /// The parameters a rule reads: those its wording has a place for, in that order, then the further ones. A place that no parameter fills is filled
    /// from the study by the rule itself.
    /// </summary>
    /// <param name="rule">The rule.</param>
    public static ImmutableArray<ClaimParameter> Of(IClaimRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ClaimParameter? Known(string name) => rule.Own.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.Ordinal)) ?? Named(name);
        return
        [
            .. Places(rule.Wording).Select(Known).OfType<ClaimParameter>()
                .Concat(rule.AlsoReads.Select(name => Known(name) ?? throw new InvalidOperationException($"The rule {rule.Id} reads a parameter {name} that nothing is known about.")))
                .Concat(rule.Own)
                .DistinctBy(p => p.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>True when a claim of this rule cannot be judged without it.</summary>
    /// <param name="rule">The rule.</param>
    public bool IsNeededBy(IClaimRule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return Places(rule.Wording).Contains(Name) && !Chosen.Contains(Name);
    }

    private static IEnumerable<string> Places(string wording)
        => wording.Split('{').Skip(1).Select(part => part[..part.IndexOf('}', StringComparison.Ordinal)]);
}
