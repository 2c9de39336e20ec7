using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Coverage;

/// <summary>How the instrument scatters.</summary>
internal enum Noise
{
    /// <summary>The same at every level.</summary>
    Constant,

    /// <summary>In proportion to the reading, with a small floor.</summary>
    Proportional,
}

/// <summary>One kind of study with its hidden truth: what is simulated, a thousand times and more.</summary>
/// <param name="Name">Stable name, by which its counts are kept.</param>
/// <param name="Model">The true curve, which is also the one fitted.</param>
/// <param name="Truth">Its true parameters in the card's order, mg/L, mg/g and min.</param>
/// <param name="Settings">Start concentrations in mg/L of an isotherm, or times in min of a kinetic series.</param>
/// <param name="Vessels">Vessels at each setting.</param>
/// <param name="Dose">Dose, g/L.</param>
/// <param name="Noise">Scatter of the instrument.</param>
/// <param name="Scatter">Scatter from vessel to vessel, as a share of the uptake.</param>
/// <param name="Start">Start concentration of a kinetic series, mg/L; null for an isotherm.</param>
/// <param name="InAmount">True when vessels scatter in the amount taken up, false when each comes to an equilibrium of its own.</param>
internal sealed record Condition(
    string Name, Model Model, double[] Truth, double[] Settings, int Vessels, double Dose, Noise Noise, double Scatter, double? Start = null, bool InAmount = false)
{
    /// <summary>Every condition, in a fixed order.</summary>
    public static IReadOnlyList<Condition> All { get; } = [.. Isotherms(), .. Kinetics()];

    private static IEnumerable<Condition> Isotherms()
    {
        (string Range, Model Model, double[] Truth, double Low, double High, double Dose)[] truths =
        [
            ("good", Model.Of<Langmuir>(), [20, 0.2], 3, 100, 2),
            ("steep", Model.Of<Langmuir>(), [20, 3], 5, 80, 2),
            ("low removal", Model.Of<Langmuir>(), [20, 0.2], 3, 100, 0.4),
            ("good", Model.Of<Freundlich>(), [4, 2], 3, 100, 2),
            ("steep", Model.Of<Freundlich>(), [10, 3], 5, 80, 2),
            ("low removal", Model.Of<Freundlich>(), [4, 2], 3, 100, 0.4),
            ("good", Model.Of<Sips>(), [20, 0.2, 0.7], 3, 100, 2),
            ("steep", Model.Of<Sips>(), [20, 3, 0.7], 5, 80, 2),
            ("low removal", Model.Of<Sips>(), [20, 0.2, 0.7], 3, 100, 0.4),
            ("good", Model.Of<RedlichPeterson>(), [4, 0.3, 0.85], 3, 100, 2),
            ("steep", Model.Of<RedlichPeterson>(), [40, 3, 0.85], 5, 80, 2),
            ("low removal", Model.Of<RedlichPeterson>(), [4, 0.3, 0.85], 3, 100, 0.4),
        ];
        foreach (var (range, model, truth, low, high, dose) in truths)
        {
            foreach (var (levels, vessels, noise, scatter) in Designs())
            {
                yield return new(
                    $"{model.Card.Name}, {range}, {Design(levels, vessels, noise, scatter)}", model, truth,
                    [.. Enumerable.Range(0, levels).Select(i => Math.Round(low * Math.Pow(high / low, i / (levels - 1.0)), 2))], vessels, dose, noise, scatter);
            }

            if (range != "good")
                continue;
            foreach (var vessels in new[] { 1, 3 })
            {
                yield return new(
                    $"{model.Card.Name}, {range}, {Design(8, vessels, Noise.Constant, 0.02)} in the amount", model, truth,
                    [.. Enumerable.Range(0, 8).Select(i => Math.Round(low * Math.Pow(high / low, i / 7.0), 2))], vessels, dose, Noise.Constant, 0.02, InAmount: true);
            }
        }
    }

    private static IEnumerable<Condition> Kinetics()
    {
        (Model Model, double[] Truth)[] truths =
        [
            (Model.Of<PseudoFirstOrder>(), [8, 0.05]),
            (Model.Of<PseudoSecondOrder>(), [8, 0.01]),
            (Model.Of<DoubleExponential>(), [8, 0.6, 0.2, 0.01]),
        ];
        foreach (var (model, truth) in truths)
        {
            foreach (var (levels, vessels, noise, scatter) in Designs())
            {
                yield return new(
                    $"{model.Card.Name}, {Design(levels, vessels, noise, scatter)}", model, truth,
                    [.. Enumerable.Range(0, levels).Select(i => Math.Round(3 * Math.Pow(100, i / (levels - 1.0)), 1))], vessels, 2, noise, scatter, Start: 20);
            }
        }
    }

    private static IEnumerable<(int Levels, int Vessels, Noise Noise, double Scatter)> Designs()
        => from levels in new[] { 6, 8, 12 }
           from vessels in new[] { 1, 3 }
           from noise in new[] { Noise.Constant, Noise.Proportional }
           from scatter in new[] { 0, 0.02, 0.05 }
           select (levels, vessels, noise, scatter);

    private static string Design(int levels, int vessels, Noise noise, double scatter)
        => FormattableString.Invariant($"{levels} × {vessels}, {(noise == Noise.Constant ? "constant" : "proportional")} noise, vessels scatter {100 * scatter:0} %");
}
