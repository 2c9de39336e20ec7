using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Studies.History;

namespace Holdfast.Power;

/// <summary>
/// The demo's sorption work begun from a plan: its questions that a plan can be worked out for, from no more vessels than it ran, in the truth that its files were drawn from (demo scenario, sections
/// 3 and 6; invented). Vessels scatter as there; they are read on the straight part of the line.
/// </summary>
internal static class DemoReplanned
{
    /// <summary>Vessels with sorbent of ISO-298, DOSE, KIN-05, KIN-20, TEMP-298, -308, -318 and PH, and the sorbent-free ones of PH-BLANK.</summary>
    public const int VesselsOfTheDemo = 24 + 18 + 27 + 27 + 3 * 10 + 21 + 14;

    // 0.15 mg/L at 20 mg/L.
    private const double OfControl = 0.0075;
    private const double Capacity = 14, Affinity = 0.35, Exponent = 0.90, Enthalpy = 9000, Room = 298.15;

    // What is claimed beside the series it is about; 3 g/L is the dose that suffices in the demo, and equilibrium is asked at 20 mg/L.
    private static readonly (string Rule, (string Name, string Words)[] Parameters)[] Questions =
    [
        ("capacity", [("series", "ISO")]), ("best-isotherm", [("series", "ISO"), ("model", "Langmuir"), ("rival", "Freundlich")]), ("removal-falls-with-concentration", [("series", "ISO")]),
        ("equilibrium-reached", [("series", "KIN"), ("time", "360 min")]), ("smallest-sufficient-dose", [("series", "DOSE"), ("dose", "3 g/L")]),
        ("not-precipitation", [("series", "PH"), ("ph", "6")]), ("reproducible", [("series", "BATCH")]),
    ];

    private static readonly (double Ph, double Removed, double Lost)[] OfPh = [(3, 0.38, 0), (4, 0.74, 0), (5, 0.79, 0), (6, 0.802, 0), (7, 0.84, 0.005), (8, 0.91, 0.025), (9, 0.986, 0.71)];

    /// <summary>The plan: what a pilot of the demo's kind tells, and no more vessels than the demo ran.</summary>
    public static PlanDesign Plan()
    {
        var study = new Study { Title = "demo replanned", Invented = true, Analyte = "Ni" };
        string[] supposed =
        [
            "capacity=13.5", "affinity=0.37", "scatter=2.5", "half-time=15", "time=360", "highest=60", "top-standard=2", "quantification-limit=0.1", "reading-share=0.8", "reading-floor=0.02", "filling=0.3",
            FormattableString.Invariant($"vessels={VesselsOfTheDemo}"),
        ];
        var basis = PlanBasis.Of(Evidence.Of(study), supposed.Select(s => s.Split('=')).ToDictionary(s => s[0], s => s[1])).Basis!;
        return PlanDesign.Of(study, PlanQuestion.Read([.. Questions.Select(q => q.Rule)]).Questions, basis, 1589, 2026);
    }

    /// <summary>How often each claim holds over so many seeds, and how many hold together; with the demo's own verdicts beside them.</summary>
    /// <param name="studies">Studies.</param>
    public static string Of(int studies)
    {
        var plan = Plan();
        ImmutableArray<StatedClaim> claims = [.. Questions.Select(q => Stated(plan, q.Rule, q.Parameters))];
        var held = new Dictionary<string, int>(StringComparer.Ordinal);
        var together = new List<int>();
        for (var seed = 0; seed < studies; seed++)
        {
            var study = PlanTrial.Study(plan, new SeededStream((ulong)seed, "demo replanned"), _ => true, Found, claims);
            var verdicts = Defence.Of(Evidence.Of(study), null).Where(v => claims.Any(c => c.Id == v.Claim.Id)).ToArray();
            foreach (var v in verdicts)
                held[v.Claim.Rule] = held.GetValueOrDefault(v.Claim.Rule) + (v.Ruling == Ruling.Holds ? 1 : 0);
            together.Add(verdicts.Count(v => v.Ruling == Ruling.Holds));
        }

        var demo = Demo();
        var kinds = PlanQuestion.All.Select(q => q.Rule).ToHashSet(StringComparer.Ordinal);
        var own = demo.Where(v => v.Claim.Stated && kinds.Contains(v.Claim.Rule)).ToArray();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""

            ## The demo, replanned

            Invented. The demo's sorption work ran {VesselsOfTheDemo} vessels and states {own.Length} claims of kinds that a plan can be worked out for, of which {own.Count(v => v.Ruling == Ruling.Holds)} hold. Planned beforehand
            ({plan.Vessels.Length} vessels, controls included; `DemoReplanned`), {Questions.Length} claims are asked, in the truth that the demo's files were drawn from. Over {studies} seeds {together.Average():0.0} hold on average, at least
            {together.Order().ElementAt(studies / 20)} in nineteen studies of twenty.

            | claim | demo | replanned, holds % | promised % |
            | --- | --- | --- | --- |

            """);
        foreach (var (rule, _) in Questions)
        {
            var promised = plan.Claims.Single(c => c.Question.Rule == rule).Power.Power;
            var said = string.Join(", ", own.Where(v => v.Claim.Rule == rule).Select(v => Word(v.Ruling)));
            text.Append(CultureInfo.InvariantCulture, $"| {rule} | {(said.Length == 0 ? "not stated" : said)} | {100.0 * held.GetValueOrDefault(rule) / studies:0} | {100 * promised:0} |\n");
        }

        text.Append("\nThe demo also states ").AppendJoin(", ", own.Where(v => Questions.All(q => q.Rule != v.Claim.Rule)).Select(v => $"{v.Claim.Rule} ({Word(v.Ruling)})")).Append(": its truth has no such optimum and no single rate law, so that a plan cannot bring them.\n");
        return text.ToString();
    }

    private static string Word(Ruling ruling) => ruling switch
    {
        Ruling.Holds => "holds",
        Ruling.Contradicted => "contradicted",
        _ => "not shown yet",
    };

    private static StatedClaim Stated(PlanDesign plan, string rule, (string Name, string Words)[] parameters)
    {
        var all = parameters.ToDictionary(p => p.Name, p => p.Words);
        all.TryAdd("series", string.Join(", ", plan.Claims.Single(c => c.Question.Rule == rule).Series));
        return new("asked-" + rule, rule, all.ToImmutableSortedDictionary(StringComparer.Ordinal), null, 10, default);
    }

    // The demo as its files are taken in.
    private static ImmutableArray<Verdict> Demo()
    {
        var root = Directory.CreateTempSubdirectory("holdfast-power-").FullName;
        using var folder = StudyFolder.Begin(Path.Combine(root, "demo"), "the author", TimeProvider.System, new StudyBegun("demo", "Ni", Invented: true));
        Take.Files(folder, [Path.Combine("samples", "demo")], new TakeOptions(), "the author");
        return Defence.Of(Evidence.Of(folder.Study));
    }

    // Concentration after contact with the noise of its series.
    private static double Found(PlannedVessel vessel, SeededStream stream)
    {
        var (start, n) = (vessel.InitialConcentration, stream.Normal());
        if (start == 0)
            return 0;
        if (vessel.Role == SampleRole.Control)
            return start * (1 - (vessel.Series == "PH" ? AtPh(vessel.Ph).Lost : 0) + OfControl * n);
        var (dose, reached) = (vessel.Mass / vessel.Volume, Reached(start, vessel.ContactTime));
        var affinity = Affinity * Math.Exp(-Enthalpy / Constants.MolarGas * (1 / (vessel.Temperature ?? Room) - 1 / Room));
        return vessel.Series switch
        {
            "PH" => start - start * AtPh(vessel.Ph).Removed * reached + 0.22 * n,
            "DOSE" => start - (start - Left(start, dose > 2 ? dose / (1 + Math.Pow((dose - 2) / 2.8, 1.7)) : dose, affinity)) * reached + 0.22 * n,
            "KIN" => start - (start - Left(start, dose, affinity)) * reached * (1 + 0.020 * n),
            _ => start - (start - Left(start, dose, affinity)) * reached * (1 + 0.025 * n),
        };
    }

    // Two exponentials; below 10 mg/L the fast one carries nine tenths.
    private static double Reached(double start, double minutes)
        => start < 10 ? 1 - 0.90 * Math.Exp(-0.15 * minutes) - 0.10 * Math.Exp(-0.030 * minutes) : 1 - 0.62 * Math.Exp(-0.10 * minutes) - 0.38 * Math.Exp(-0.009 * minutes);

    private static (double Ph, double Removed, double Lost) AtPh(double? ph) => OfPh.MinBy(p => Math.Abs(p.Ph - (ph ?? 6)));

    private static double Left(double start, double dose, double affinity)
    {
        double low = 0, high = start;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            var share = Math.Pow(affinity * middle, Exponent);
            if (middle + dose * Capacity * share / (1 + share) > start)
                high = middle;
            else
                low = middle;
        }

        return low;
    }
}
