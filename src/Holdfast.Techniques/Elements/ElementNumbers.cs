using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.Elements;

/// <summary>Shares of atoms over the places of a powder: "share:ZC@Co-Zn" for Co/(Co+Zn).</summary>
internal sealed class ElementNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
        => ElementStudy.Of(evidence).Powders.SelectMany(p => p.Shares.Select(s => One(p, s)));

    /// <summary>Address of a share.</summary>
    /// <param name="powder">The powder.</param>
    /// <param name="share">The share.</param>
    public static string Address(AnalysedPowder powder, ElementRatio share) => $"share:{powder.Name}@{string.Join('-', share.Below.Select(e => e.Symbol))}";

    private static NumberTrail One(AnalysedPowder powder, ElementRatio share)
    {
        var address = Address(powder, share);

        // One place tells nothing of the powder's scatter: its value comes without an uncertainty, as the trail then says.
        var mean = powder.Whole(share);
        var value = mean ?? powder.Ratios(share)[0].Value.Value;
        return new(
            address, $"{share} of {powder.Name}", value, "",
            $"{(mean is null ? $"{share} in one place" : $"mean of {share} over the places")}; atoms from masses by the standard atomic weights",
            [.. powder.Ratios(share).Select(r => new TrailInput(r.Place.Name, r.Value, "", $"{r.Place.Measurement.Id}, {r.Place.Measurement.Origin}, column {r.Place.Heading}"))],
            []);
    }
}
