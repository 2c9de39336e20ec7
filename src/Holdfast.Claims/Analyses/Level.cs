using System.Collections.Immutable;

namespace Holdfast.Claims.Analyses;

/// <summary>The replicate vessels at one setting of the varied property.</summary>
/// <param name="X">The setting, in the varied property's unit.</param>
/// <param name="Vessels">Separate vessels: their number is n.</param>
public sealed record Level(double X, ImmutableArray<Vessel> Vessels)
{
    /// <summary>Uptakes in mg/g of the vessels that have one.</summary>
    public ImmutableArray<double> Uptakes => [.. Vessels.Where(v => v.Uptake is not null).Select(v => v.Uptake!.Value.Value)];

    /// <summary>Removals in % of the vessels that have one.</summary>
    public ImmutableArray<double> Removals => [.. Vessels.Where(v => v.Removal is not null).Select(v => v.Removal!.Value.Value)];

    /// <summary>Concentrations after contact in mg/L, signed, of the vessels that have one.</summary>
    public ImmutableArray<double> EndConcentrations => [.. Vessels.Where(v => v.End?.Value is not null).Select(v => v.End!.Value!.Value.Value)];
}
