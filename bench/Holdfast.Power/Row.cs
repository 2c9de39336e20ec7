using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Simulated;
using Holdfast.Studies;

namespace Holdfast.Power;

/// <summary>One plan, and one of its claims.</summary>
/// <param name="Rule">Id of the rule that judges the claim.</param>
/// <param name="Name">What is supposed, in words; "as usual" where nothing was said.</param>
/// <param name="Plan">The plan.</param>
internal sealed record Row(string Rule, string Name, PlanDesign Plan)
{
    private const string Equilibrium = "equilibrium-reached";

    /// <summary>All of them: each kind of claim as usual, and otherwise.</summary>
    public static IReadOnlyList<Row> All { get; } =
    [
        .. Of("capacity", Equilibrium, "", "scatter=6", "capacity=14 affinity=0.35 scatter=2 half-time=10"),
        .. Of("best-isotherm", Equilibrium, "", "scatter=6", "capacity=14 affinity=0.35 scatter=2 half-time=10"),
        .. Of("removal-falls-with-concentration", Equilibrium, "", "scatter=6"),
        .. Of("equilibrium-reached", null, "", "scatter=2", "scatter=6", "half-time=30"),
        .. Of("best-kinetic-model", null, "", "scatter=8", "half-time=30 scatter=2"),
        .. Of("smallest-sufficient-dose", null, "", "scatter=1", "scatter=5"),
        .. Of("optimum-dose", null, "", "margin=5", "margin=5 scatter=1"),
        .. Of("optimum-ph", Equilibrium, "ph=5 margin=5", "ph=5 margin=5 scatter=1", "ph=5 margin=8"),
        .. Of("not-precipitation", null, "", "dose=1", "concentration=10"),
        .. Of("spontaneous-and-endothermic", Equilibrium, "", "enthalpy=12 scatter=1", "enthalpy=40 scatter=6"),
        .. Of("reproducible", null, "", "scatter=5", "batches=5"),
    ];

    /// <summary>Power that the plan promises.</summary>
    public double Promised => Claim.Power.Power!.Value;

    /// <summary>Whether curves are fitted on the way to the verdict.</summary>
    public bool FitsCurves => Plan.Series.Any(s => s.Kind is SeriesKind.Isotherm or SeriesKind.Kinetic or SeriesKind.Temperature);

    /// <summary>How the study of a seed is judged.</summary>
    /// <param name="seed">Any number.</param>
    public Ruling Judge(ulong seed) => PlanTrial.Of(Plan, Claim.Question, seed);

    /// <summary>Counts its studies until there are so many.</summary>
    /// <param name="ledger">Where they are kept.</param>
    /// <param name="studies">How many.</param>
    public void Fill(Ledger ledger, int studies) => ledger.Fill(Key, studies, seed => Judge(seed) == Ruling.Holds ? 0 : 1);

    /// <summary>What was counted.</summary>
    /// <param name="ledger">Where it is kept.</param>
    public Count In(Ledger ledger) => ledger[Key] is [var holds, var others] ? new(holds, others) : default;

    // The vessels stand for the plan: another plan is another row.
    private string Key => FormattableString.Invariant($"{Rule} | {Name} | {Plan.Vessels.Length}");

    private (PlanQuestion Question, PlanPower Power, System.Collections.Immutable.ImmutableArray<string> Series) Claim => Plan.Claims.Single(c => c.Question.Rule == Rule);

    private static IEnumerable<Row> Of(string rule, string? ground, params string[] supposed)
    {
        foreach (var words in supposed)
        {
            var said = words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => w.Split('=')).ToDictionary(w => w[0], w => w[1]);
            var margin = said.Remove("margin", out var half) ? double.Parse(half, System.Globalization.CultureInfo.InvariantCulture) : (double?)null;
            var study = new Study { Title = "invented", Invented = true, Analyte = "Ni", Margins = margin is { } m ? [new("removal", -m, m, "percentage points", 1)] : [] };
            var basis = PlanBasis.Of(Evidence.Of(study), said).Basis!;
            var questions = PlanQuestion.Read(ground is null ? [rule] : [rule, ground]).Questions;
            yield return new(rule, words.Length == 0 ? "as usual" : words, PlanDesign.Of(study, questions, basis, 1589, 2026));
        }
    }
}
