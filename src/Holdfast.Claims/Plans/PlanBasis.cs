using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;

namespace Holdfast.Claims.Plans;

/// <summary>What a plan supposes: an answer to every <see cref="PlanSetting"/>, and where it comes from.</summary>
public sealed class PlanBasis
{
    private readonly ImmutableDictionary<PlanSetting, (double Value, string From)> answers;

    private PlanBasis(ImmutableDictionary<PlanSetting, (double Value, string From)> answers) => this.answers = answers;

    /// <summary>The answer to a setting, in its unit.</summary>
    /// <param name="setting">Which.</param>
    public double this[PlanSetting setting] => answers.TryGetValue(setting, out var answer) ? answer.Value : setting.Usual;

    /// <summary>Standard deviation of one vessel to plan with, as a share of its uptake: the upper 80 % bound where it was found from a few vessels.</summary>
    public double Scatter => this[PlanSetting.Scatter] / 100 * (this[PlanSetting.Pilot] >= 2 ? StandardDeviationFactor.At(0.8, this[PlanSetting.Pilot] - 1) : 1);

    /// <summary>Every setting with its answer and where it comes from, for the record: "capacity" → "20 mg/g, usual".</summary>
    public ImmutableSortedDictionary<string, string> Record
        => PlanSetting.All.Where(s => !s.Name.StartsWith("price", StringComparison.Ordinal) || this[s] > 0).ToImmutableSortedDictionary(
            s => s.Name, s => $"{Phrase.With(this[s], s.Unit)}, {(answers.TryGetValue(s, out var answer) ? answer.From : "usual")}", StringComparer.Ordinal);

    /// <summary>What the study's own fits say, the rest at its usual values.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="typed">What was typed, by name of the setting; it wins. A unit may stand behind the number.</param>
    /// <returns>The basis, or what is in the way.</returns>
    public static (PlanBasis? Basis, Refused? Refusal) Of(Evidence evidence, IReadOnlyDictionary<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(typed);
        var known = ImmutableDictionary.CreateBuilder<PlanSetting, (double, string)>();
        if (evidence.Isotherms.Select(f => (f.Series.Name, Curve: LangmuirDesign.Of(f))).FirstOrDefault(f => f.Curve is not null) is { Curve: { } curve, Name: var name })
        {
            var from = "fit of " + name;
            (known[PlanSetting.Capacity], known[PlanSetting.Affinity], known[PlanSetting.Dose]) = ((curve.Capacity, from), (curve.Affinity, from), (curve.Dose, from));
        }

        foreach (var (setting, words) in typed)
        {
            if (PlanSetting.All.FirstOrDefault(s => string.Equals(s.Name, setting, StringComparison.Ordinal)) is not { } asked)
                return (null, new(setting, $"A plan asks nothing called {setting}."));
            if (string.IsNullOrWhiteSpace(words))
                continue;
            if (Read(words, asked.Unit) is not { } value)
                return (null, new(setting, $"“{words}” is no answer to: {asked.Asks}. Type a number{(asked.Unit.Length > 0 ? " in " + asked.Unit : "")}, for example {Phrase.With(asked.Usual, asked.Unit)}."));
            if (!(value >= asked.Least && value <= asked.Most))
                return (null, new(setting, $"{Phrase.With(value, asked.Unit)} cannot be: {asked.Asks}, from {Phrase.Number(asked.Least)} to {Phrase.With(asked.Most, asked.Unit)}."));
            known[asked] = (value, "given");
        }

        var basis = new PlanBasis(known.ToImmutable());
        return basis[PlanSetting.Concentration] > basis[PlanSetting.Stock] || basis[PlanSetting.Highest] > basis[PlanSetting.Stock]
            ? (null, new("stock", $"The stock, {Phrase.With(basis[PlanSetting.Stock], "mg/L")}, is weaker than a start concentration. Make a stronger one, or lower the highest concentration."))
            : (basis, null);
    }

    private static double? Read(string words, string unit)
    {
        if (CellText.Read(words.Trim(), null) is CellText.Number bare)
            return bare.Value;
        if (unit.Length == 0 || unit.Contains("per", StringComparison.Ordinal) || unit == "each")
            return null;
        return QuantityText.Read(words).Value is { } quantity && quantity.Unit.IsConvertibleTo(Unit.Parse(unit)) ? quantity.Unit.Convert(quantity.Value, Unit.Parse(unit)) : null;
    }
}
