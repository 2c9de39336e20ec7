using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "Uptake is spontaneous and endothermic": the 95 % interval of ΔH° lies above 0. "Spontaneous" follows from uptake being observed and moves with the
/// standard state chosen, so that only the enthalpy is judged.
/// </summary>
/// <remarks>
/// Slope of ln K on 1/T with n − 2 degrees of freedom, or with the propagated uncertainty of each ln K where that leaves the wider interval. Four
/// temperatures or more (Lima and co-workers, J. Mol. Liq. 334 (2021) 116542).
/// </remarks>
public sealed class Endothermic : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 5;
    }

    private const double Further = 10;

    /// <inheritdoc/>
    public string Id => "spontaneous-and-endothermic";

    /// <inheritdoc/>
    public string Wording => "Uptake is spontaneous and {direction} ({series}).";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => TemperatureStudy.Of(evidence).Families.Select(f => Claim.Raised(Id, ("series", f.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FamilyOf(claim, evidence) is not { } family ? []
            : family.Isotherms.SelectMany(i => Grounds.OfSorption(evidence, i.Fitted.Series).Concat(Grounds.OfEquilibrium(evidence, i.Fitted.Series))).DistinctBy(c => c.Id, StringComparer.Ordinal);

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var family = FamilyOf(claim, evidence);
        var exothermic = string.Equals(claim.Words("direction"), "exothermic", StringComparison.OrdinalIgnoreCase);
        var sentence = Phrase.Sentence(claim, Wording, ("direction", exothermic ? "exothermic" : "endothermic"), ("series", family?.Name ?? claim.Words("series") ?? "no series"));
        var vessels = family?.Isotherms.SelectMany(i => i.Fitted.Series.Vessels).ToArray() ?? [];
        var decision = family?.Line is { } line
            ? Decide(line, family.Choice, exothermic, [.. family.Isotherms.Select(i => i.Fitted.Series.Levels.Length)])
            : Decision.Missing("The line of ln K on 1/T needs a Langmuir constant at three temperatures or more; four are asked for.", Plan([293.15, 303.15, 313.15, 323.15], null));
        if (family is not null && decision.Numbers.Length > 0)
            decision = decision with { Questions = [.. decision.Questions, .. Asked(family)] };
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges the sign of ΔH°.</summary>
    /// <param name="line">The line of ln K on 1/T.</param>
    /// <param name="choice">Which constant was taken; null when its standard state is not stated.</param>
    /// <param name="exothermic">True when the claim says that heat is given off.</param>
    /// <param name="levels">Levels of each isotherm.</param>
    public static Decision Decide(VantHoff line, ConstantChoice? choice, bool exothermic, ImmutableArray<int> levels)
    {
        ArgumentNullException.ThrowIfNull(line);
        Estimate wide = line.WiderEnthalpy, scatter = line.Enthalpy;
        var temperatures = line.Line.Temperatures.Distinct().Order().ToArray();
        var interval = wide.Interval();
        var ruling = interval.Low > 0 ? Ruling.Holds : interval.High < 0 ? Ruling.Contradicted : Ruling.NotShownYet;
        if (exothermic && ruling != Ruling.NotShownYet)
            ruling = ruling == Ruling.Holds ? Ruling.Contradicted : Ruling.Holds;
        var propagated = line.PropagatedEnthalpy.U;
        var free = line.FreeEnergy(line.Line.HarmonicMeanTemperature);
        return new Decision(
            ruling,
            $"ΔH° is {Phrase.With(wide.Value, "kJ/mol")}, {Phrase.Interval(interval, "kJ/mol")} (half-width {Phrase.Number(interval.Half)}, {Freedom(wide)}; {Phrase.Count(temperatures.Length, "temperature")}). "
                + (interval.Contains(0) ? "It includes 0." : "It excludes 0."),
            "van 't Hoff line, two-sided 95 % interval of its slope")
        {
            Numbers =
            [
                Deciding.Of("ΔH°", wide, Confidence.Level, "kJ/mol"),
                Deciding.Of("ΔH° by the scatter about the line", scatter, Confidence.Level, "kJ/mol"),
                Deciding.Plain("standard error of ΔH° by the scatter", scatter.StandardError, "kJ/mol"),
                Deciding.Plain("95 % half-width by the scatter", scatter.Interval().Half, "kJ/mol"),
                .. propagated > 0 ? [Deciding.Plain("standard uncertainty of ΔH° propagated from each ln K", propagated, "kJ/mol")] : Array.Empty<Deciding>(),
                .. choice?.StandardState is null ? [] : new[]
                {
                    Deciding.Of("ΔS°", line.Entropy, Confidence.Level, "J/(mol K)"),
                    Deciding.Of($"ΔG° at {Phrase.With(line.Line.HarmonicMeanTemperature, "K")}", free, Confidence.Level, "kJ/mol"),
                },
                Deciding.Plain("correlation of ΔH° and ΔS°", line.Correlation, "", "close to 1 by construction"),
            ],
            Gates =
            [
                new("temperatures", temperatures.Length >= ReciprocalTemperatureLine.EnoughTemperatures, $"{Phrase.Count(temperatures.Length, "temperature")}; {ReciprocalTemperatureLine.EnoughTemperatures} are needed"),
                new("levels", levels.Length > 0 && levels.Min() >= Limits.Levels, levels.Length == 0 ? "the levels of each isotherm are not known" : $"the shortest isotherm has {Phrase.Count(levels.Min(), "level")}; {Limits.Levels} are needed"),
            ],
            Warnings =
            [
                choice?.StandardState is { } state
                    ? $"“Spontaneous” follows from uptake being observed: ΔG° is below 0 for a standard state of {state}, and moves by 10 kJ/mol with another."
                    : "The molar mass of the metal is not known, so K has a unit: only ΔH° is given, and “spontaneous” says nothing.",
            ],
            Questions = temperatures.Length <= 3 ? [new("Q35", $"{Phrase.Count(temperatures.Length, "temperature")}: how many degrees of freedom does your line have?")] : [],
            Next = Plan([temperatures[0] - Further, .. temperatures, temperatures[^1] + Further], Math.Max(scatter.StandardError, propagated) / VantHoff.PlannedError(line.Line.Temperatures, 1)),
        };
    }

    private static string Freedom(Estimate e) => double.IsPositiveInfinity(e.DegreesOfFreedom) ? "propagated uncertainty"
        : Phrase.Count((int)Math.Floor(e.DegreesOfFreedom), "degree") + " of freedom";

    private static NextExperiment Plan(double[] temperatures, double? u) => new(
        $"Measure isotherms of {Limits.Levels} levels with two vessels each at {Phrase.Listed(temperatures.Select(t => Phrase.With(t, "K")))}, pH and equilibrium checked at each.",
        temperatures.Length * Limits.Levels * 2, [.. temperatures.Select(t => Phrase.With(t, "K"))],
        u is { } one and > 0
            ? $"predicted 95 % half-width {Phrase.With(VantHoff.PlannedError(temperatures, one) * StudentDistribution.TwoSided(Confidence.Level, temperatures.Length - 2), "kJ/mol")} at the scatter found"
            : "four temperatures over 30 K (common practice)");

    private static IEnumerable<Question> Asked(TemperatureFamily family)
    {
        if (family.Choice is null)
            yield return new("Q36", "Your constant has a unit: if you change it, does ΔG° change sign?");
    }

    private static TemperatureFamily? FamilyOf(Claim claim, Evidence evidence)
    {
        var families = TemperatureStudy.Of(evidence).Families;
        if (claim.Words("series") is not { } words)
            return families.Length == 1 ? families[0] : null;
        var names = words.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var named = TemperatureStudy.OfSeries(evidence, names);
        return named.Isotherms.IsEmpty ? null : named;
    }
}
