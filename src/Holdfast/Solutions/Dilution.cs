using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Solutions;

/// <summary>A way from a stock to a target concentration.</summary>
/// <param name="Steps">The steps in order.</param>
/// <param name="Concentration">What they give, with the sources of stock, pipettes and flasks, in the unit of the stock.</param>
/// <param name="StockVolume">Stock used, mL.</param>
public sealed record Dilution(IReadOnlyList<DilutionStep> Steps, Measured Concentration, double StockVolume)
{
    /// <summary>Concentration after one step, c·p/f.</summary>
    /// <param name="concentration">Concentration before, any unit.</param>
    /// <param name="pipetted">Volume taken, mL.</param>
    /// <param name="flask">Volume made up to, mL.</param>
    public static T Step<T>(T concentration, T pipetted, T flask) where T : struct, IReal<T> => concentration * pipetted / flask;

    /// <summary>Carries out steps from a stock. Every level of a chain carries the sources of the levels before it.</summary>
    /// <remarks>A pipette or flask that is used twice in the chain is one piece: its tolerance counts as one source.</remarks>
    /// <param name="id">Stable identity of the dilution: "D-5".</param>
    /// <param name="stock">Concentration of the stock, any unit.</param>
    /// <param name="steps">The steps in order, at least one.</param>
    public static Dilution Of(string id, Measured stock, params IReadOnlyList<DilutionStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        if (steps.Count == 0)
            throw new ArgumentException("A dilution has at least one step.", nameof(steps));
        var concentration = stock;
        for (var i = 0; i < steps.Count; i++)
        {
            var step = steps[i];
            var act = string.Create(CultureInfo.InvariantCulture, $"{id} step {i + 1}");
            concentration = Step(
                concentration,
                step.Pipette.Take(Piece(step.Pipette), $"{act} taken", step.Volume),
                step.Flask.Take(Piece(step.Flask), $"{act} made up"));
        }

        return new(steps, concentration, steps[0].Volume);
    }

    /// <summary>The steps in words: "take 2.00 mL with the 2 mL pipette, make up to 50 mL".</summary>
    public IReadOnlyList<string> Instructions
        => [.. Steps.Select(s => string.Create(CultureInfo.InvariantCulture,
            $"take {s.Volume.ToString(s.Volume < 1 ? "0.000" : "0.00", CultureInfo.InvariantCulture)} mL with the {s.Pipette.Nominal} mL {(s.Pipette.Kind == WareKind.PistonPipette ? "piston pipette" : "pipette")}, make up to {s.Flask.Nominal} mL"))];

    private static string Piece(VolumetricWare ware)
        => string.Create(CultureInfo.InvariantCulture, $"{(ware.Kind == WareKind.Flask ? 'F' : ware.Kind == WareKind.PistonPipette ? 'M' : 'P')}{ware.Nominal}");
}
