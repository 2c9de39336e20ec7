using System.Collections.Immutable;

namespace Holdfast.Claims.Plans;

/// <summary>A kind of claim for which a plan can be worked out: the series it rests on and the margin it is judged by.</summary>
/// <param name="Rule">Id of the rule that judges it.</param>
/// <param name="Series">The series it needs.</param>
/// <param name="Margin">Its margin, or null where it has none.</param>
/// <param name="Asks">The question as one would ask it.</param>
public sealed record PlanQuestion(string Rule, SeriesKind Series, MarginKind? Margin, string Asks)
{
    /// <summary>Uptake at equilibrium.</summary>
    public static PlanQuestion Capacity { get; } = new("capacity", SeriesKind.Isotherm, MarginKind.Capacity, "How much can it take up?");

    /// <summary>Langmuir told from Freundlich.</summary>
    public static PlanQuestion BestIsotherm { get; } = new("best-isotherm", SeriesKind.Isotherm, null, "Which isotherm describes it?");

    /// <summary>Removal over concentration.</summary>
    public static PlanQuestion RemovalFalls { get; } = new("removal-falls-with-concentration", SeriesKind.Isotherm, null, "Does it remove less from stronger solutions?");

    /// <summary>Plateau of the uptake.</summary>
    public static PlanQuestion Equilibrium { get; } = new("equilibrium-reached", SeriesKind.Kinetic, MarginKind.Plateau, "By when is equilibrium reached?");

    /// <summary>First told from second order.</summary>
    public static PlanQuestion BestKinetics { get; } = new("best-kinetic-model", SeriesKind.Kinetic, null, "Which rate law describes it?");

    /// <summary>Least dose.</summary>
    public static PlanQuestion SufficientDose { get; } = new("smallest-sufficient-dose", SeriesKind.Dose, MarginKind.Removal, "What is the smallest dose that suffices?");

    /// <summary>Best dose.</summary>
    public static PlanQuestion BestDose { get; } = new("optimum-dose", SeriesKind.Dose, MarginKind.Removal, "Which dose is best?");

    /// <summary>Best pH.</summary>
    public static PlanQuestion BestPh { get; } = new("optimum-ph", SeriesKind.Ph, MarginKind.Removal, "Which pH is best?");

    /// <summary>Sorption, no solid.</summary>
    public static PlanQuestion NotPrecipitation { get; } = new("not-precipitation", SeriesKind.Ph, null, "Is it sorbed, not precipitated?");

    /// <summary>Heat of uptake.</summary>
    public static PlanQuestion Heat { get; } = new("spontaneous-and-endothermic", SeriesKind.Temperature, null, "Does uptake take or give heat?");

    /// <summary>Batches alike.</summary>
    public static PlanQuestion Reproducible { get; } = new("reproducible", SeriesKind.Batches, MarginKind.Capacity, "Is each batch of powder like the other?");

    /// <summary>Whether its rule asks that equilibrium was reached.</summary>
    internal bool StandsOnEquilibrium => Series is SeriesKind.Isotherm or SeriesKind.Temperature || this == BestPh;

    /// <summary>All of them.</summary>
    public static ImmutableArray<PlanQuestion> All { get; } =
        [Capacity, BestIsotherm, RemovalFalls, Equilibrium, BestKinetics, SufficientDose, BestDose, BestPh, NotPrecipitation, Heat, Reproducible];

    /// <summary>What the claim says when it is written down as the plan supposes it, by name of the parameter.</summary>
    /// <param name="plan">The plan.</param>
    internal IEnumerable<KeyValuePair<string, string>> Parameters(PlanDesign plan)
    {
        yield return new("series", string.Join(", ", plan.Claims.Single(c => c.Question == this).Series));
        var basis = plan.Basis;
        switch (Rule)
        {
            case "best-isotherm":
                yield return new("model", Supposed.Langmuir.Card.Name);
                yield return new("rival", Supposed.Freundlich.Card.Name);
                break;
            case "best-kinetic-model":
                yield return new("model", Supposed.FirstOrder.Card.Name);
                yield return new("rival", Supposed.SecondOrder.Card.Name);
                break;
            case "equilibrium-reached":
                yield return new("time", Phrase.Plain(basis[PlanSetting.Time], "min"));
                break;
            case "optimum-dose" or "smallest-sufficient-dose":
                yield return new("dose", Phrase.Plain(basis[PlanSetting.Dose], "g/L"));
                break;
            case "optimum-ph" or "not-precipitation":
                yield return new("ph", Phrase.Plain(basis[PlanSetting.Ph], ""));
                break;
            case "spontaneous-and-endothermic":
                yield return new("direction", "endothermic");
                break;
            default:
                break;
        }
    }

    /// <summary>The questions of these rules, or what is in the way.</summary>
    /// <param name="rules">Ids of rules.</param>
    public static (ImmutableArray<PlanQuestion> Questions, Refused? Refusal) Read(IReadOnlyList<string> rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        if (rules.FirstOrDefault(r => All.All(q => q.Rule != r)) is { } unknown)
            return ([], new("show", $"No plan is worked out for claims of the kind {unknown}. Choose among: {string.Join(", ", All.Select(q => q.Rule))}."));
        return rules.Count == 0
            ? ([], new("show", $"Say what you want to show, at least one of: {string.Join(", ", All.Select(q => q.Rule))}."))
            : ([.. All.Where(q => rules.Contains(q.Rule))], null);
    }
}
