using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims.Rules;
using Holdfast.Composition;
using Holdfast.Planning;
using Holdfast.Solutions;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Plans;

/// <summary>
/// A plan: from the claims that are to be shown to vessels in random order, with what they can show, what they need and what is doubtful about them. Worked out
/// anew from the same questions, basis and seed it is the same on every computer.
/// </summary>
/// <param name="Basis">What is supposed.</param>
/// <param name="Seed">Seed of the random orders.</param>
/// <param name="Series">The series with their levels and replicates.</param>
/// <param name="Vessels">The run table, in the order of work.</param>
/// <param name="Claims">Each claim with its power and what the vessels can show.</param>
/// <param name="Clocks">The table of starts of each series and block.</param>
/// <param name="Budget">What it all takes.</param>
/// <param name="Sharing">What serves more than one series, in words.</param>
public sealed record PlanDesign(
    PlanBasis Basis, ulong Seed, ImmutableArray<SeriesDraft> Series, ImmutableArray<PlannedVessel> Vessels,
    ImmutableArray<(PlanQuestion Question, PlanPower Power, ImmutableArray<string> Series)> Claims, ImmutableArray<BlockClock> Clocks, PlanBudget Budget,
    ImmutableArray<string> Sharing)
{
    /// <summary>More replicates than this at one setting are not planned: claim less, or find a steadier method.</summary>
    public const int MostReplicates = 12;

    private const long EffortOfAClock = 400_000;
    private const int Controls = 2;
    private static readonly double[] Dilutions = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

    /// <summary>A gain of power that is not worth a vessel.</summary>
    internal const double Unseen = 0.02;

    /// <summary>A reading may reach this share of the highest standard; common practice.</summary>
    internal const double HighestReading = 0.95;

    /// <summary>Symbol of the metal, or null.</summary>
    public string? Analyte { get; init; }

    /// <summary>Salt of the stock, or null where it was not said and none is listed for the metal.</summary>
    public Formula? Salt { get; init; }

    /// <summary>Whether a series of the plan or of the study, planned or run, follows the uptake over time.</summary>
    public bool TestsEquilibrium { get; init; }

    /// <summary>Whether the study says what the powder is made of, where it claims that it stays in water.</summary>
    public bool TestsStability { get; init; }

    /// <summary>What is doubtful about it.</summary>
    public ImmutableArray<PlanWarning> Warnings => PlanWarnings.Of(this);

    /// <summary>Solutions to be made up for each block.</summary>
    public ImmutableArray<PlannedSolution> Solutions => PlannedSolution.Of(this);

    /// <summary>Mass of salt for the stock, g, overage included; null where the salt is not known.</summary>
    public double? SaltMass => Salt is { } salt && Analyte is { } metal && salt.Count(metal) > 0 ? Budget.MetalWithOverage / 1000 / salt.MassFraction(metal).Value : null;

    /// <summary>Waste by stream; the standards are not in it, since nobody knows yet how many are poured.</summary>
    public IReadOnlyList<PlanWaste> Waste => [.. PlanWaste.Of(
        Vessels.Select(v => (v.Volume, v.InitialConcentration, v.Expected, v.Mass)), Budget.MetalWithOverage - Budget.Metal, 0, 0).Where(w => w.Volume > 0 || w.Solid > 0)];

    /// <summary>Cost by item, without unit of money; empty where no price was given.</summary>
    public ImmutableArray<(string Item, double Cost)> Costs
    {
        get
        {
            (string Item, double Price, double Amount)[] items =
            [
                ("sorbent", Basis[PlanSetting.PriceSorbent], Budget.SorbentWithOverage / 1000),
                ("salt", Basis[PlanSetting.PriceSalt], SaltMass ?? 0),
                ("instrument", Basis[PlanSetting.PriceInstrument], Budget.InstrumentTime(Basis[PlanSetting.SecondsEach]) / 60),
                ("vessels", Basis[PlanSetting.PriceVessel], Budget.All),
                ("waste", Basis[PlanSetting.PriceWaste], Waste.Sum(w => w.Volume) / 1000),
            ];
            return [.. items.Where(i => i.Price > 0).Select(i => (i.Item, i.Price * i.Amount))];
        }
    }

    /// <summary>What each claim costs, without unit of money: its series' vessels, a series that serves several claims shared evenly, so that the sum is that of <see cref="Costs"/>. Empty where no price was given.</summary>
    public ImmutableArray<(PlanQuestion Question, double Cost)> CostsByClaim
    {
        get
        {
            // A vessel's part of an item is its part of what the item is paid for.
            var amounts = new Dictionary<string, Func<PlannedVessel, double>>(StringComparer.Ordinal)
            {
                ["sorbent"] = v => v.Mass,
                ["salt"] = v => v.InitialConcentration * v.Volume,
                ["instrument"] = _ => 1,
                ["vessels"] = _ => 1,
                ["waste"] = v => v.Volume,
            };
            var rates = Costs.Select(c => (Amount: amounts[c.Item], Rate: c.Cost / Vessels.Sum(amounts[c.Item]))).ToArray();
            double Of(PlannedVessel vessel) => rates.Sum(r => r.Rate * r.Amount(vessel));
            var ofSeries = Vessels.GroupBy(v => v.Series, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(Of) / Claims.Count(c => c.Series.Contains(g.Key)), StringComparer.Ordinal);
            return rates.Length == 0 ? [] : [.. Claims.Select(c => (c.Question, c.Series.Sum(s => ofSeries[s])))];
        }
    }

    /// <summary>Works a plan out.</summary>
    /// <param name="study">The study it is for: its metal, its margins, the vessels planned already.</param>
    /// <param name="questions">The claims, at least one.</param>
    /// <param name="basis">What is supposed.</param>
    /// <param name="seed">Seed of the random orders.</param>
    /// <param name="year">Year, for the codes.</param>
    /// <param name="salt">Salt of the stock, or null for the nitrate, or the first listed salt, of the metal.</param>
    public static PlanDesign Of(Study study, IReadOnlyList<PlanQuestion> questions, PlanBasis basis, ulong seed, int year, Formula? salt = null)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(questions);
        ArgumentNullException.ThrowIfNull(basis);
        var drafts = questions.Select(q => q.Series).Distinct().Order().SelectMany(k => SeriesDraft.Of(k, basis, questions)).ToArray();
        foreach (var question in questions)
            Replicate(drafts, question, study, basis);
        if (basis[PlanSetting.Vessels] is > 0 and var most)
            Cut(drafts, (int)most);

        var sharing = ImmutableArray.CreateBuilder<string>();
        if (questions.Any(q => q.Series == SeriesKind.Temperature) && questions.Any(q => q.Series == SeriesKind.Isotherm) && drafts.Count(d => d.Kind == SeriesKind.Temperature) == 3)
            sharing.Add("ISO is the isotherm at its temperature for the heat of uptake too: the claims that rest on it are not independent.");
        var vessels = new List<PlannedVessel>();
        var clocks = new List<BlockClock>();
        var counter = study.PlannedEver;
        foreach (var draft in drafts)
        {
            var rows = Rows(draft, basis, vessels, sharing);
            var (ordered, times) = Ordered(rows, draft, basis, seed);
            vessels.AddRange(ordered.Select(v => v with { Code = RunCode.Of(year, draft.Name, ++counter) }));
            clocks.AddRange(times);
        }

        var budget = vessels.Aggregate(PlanBudget.None, (sum, v) => sum.With(v.InitialConcentration, v.Volume, v.Mass));
        var claims = questions.Select(q => (q, PlanPower.Of(q, basis, Half(study, q), Serving(drafts, q)), Serving(drafts, q).Select(d => d.Name).ToImmutableArray()));
        return new(basis, seed, [.. drafts], [.. vessels], [.. claims], [.. clocks], budget, sharing.ToImmutable())
        {
            Analyte = study.Analyte,
            TestsEquilibrium = questions.Any(q => q.Series == SeriesKind.Kinetic) || IsKinetic(study),
            TestsStability = study.Claims.Any(c => c.Rule == StableInWater.RuleId),
            Salt = salt ?? (study.Analyte is { } metal ? SaltCheck.SaltsOf(metal).OrderByDescending(s => s.Count("N") > 0).FirstOrDefault() : null),
        };
    }

    /// <summary>The entry that puts the plan on the Plan.</summary>
    /// <param name="answers">Answers to its warnings, by name; a warning without one stays open until the plan is frozen.</param>
    public SeriesDesigned Entry(IReadOnlyDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        return new(
            [.. Claims.Select(c => new PlannedClaim(c.Question.Rule, c.Series, c.Question.Margin?.Name, Said(c.Power)))],
            Seed.ToString(CultureInfo.InvariantCulture), Basis.Record, Vessels, [.. Warnings.Select(w => w with { Answer = answers.GetValueOrDefault(w.Name) })]);
    }

    /// <summary>What the vessels can show of a claim, with the power.</summary>
    /// <param name="power">Its power.</param>
    public static string Said(PlanPower power)
    {
        ArgumentNullException.ThrowIfNull(power);
        var said = SentenceCase.Of(power.Shows) + ".";
        return power.Power is { } p ? $"Power {Phrase.With(Math.Round(100 * p), "%")}. {said}" : said;
    }

    private static bool IsKinetic(Study study)
    {
        const int times = 3;
        return study.Designs.SelectMany(d => d.Vessels).Where(v => v.Role == SampleRole.Vessel).Select(v => (v.Series, Time: (double?)v.ContactTime))
            .Concat(study.Samples.Where(s => s.Role == SampleRole.Vessel && s.Series is not null).Select(s => (Series: s.Series!, Time: s.Number(BatchProperties.ContactTime))))
            .Where(v => v.Time is not null).GroupBy(v => v.Series, StringComparer.Ordinal).Any(g => g.Select(v => v.Time).Distinct().Count() >= times);
    }

    private static double Half(Study study, PlanQuestion question)
        => question.Margin is not { } kind ? 0
            : study.Margins.FirstOrDefault(m => m.Name == kind.Name && m.Unit == kind.Unit) is { } own ? Math.Min(Math.Abs(own.Low), Math.Abs(own.High)) : Math.Min(Math.Abs(kind.Low), Math.Abs(kind.High));

    private static SeriesDraft[] Serving(SeriesDraft[] drafts, PlanQuestion question)
        => question.Series == SeriesKind.Temperature && drafts.Count(d => d.Kind == SeriesKind.Temperature) < 4
            ? [.. drafts.Where(d => d.Kind is SeriesKind.Temperature or SeriesKind.Isotherm)]
            : [.. drafts.Where(d => d.Kind == question.Series)];

    // The fewest replicates with which the claim has the power that is wanted; where none has, the fewest that have as much as the most.
    private static void Replicate(SeriesDraft[] drafts, PlanQuestion question, Study study, PlanBasis basis)
    {
        var own = drafts.Select((d, i) => (d, i)).Where(d => d.d.Kind == question.Series).Select(d => d.i).ToArray();
        var before = drafts.ToArray();
        var draws = new PlanDraws(new(basis), question, Half(study, question));
        double With(int n)
        {
            before.CopyTo(drafts, 0);
            foreach (var i in own)
            {
                // A pH shows sorption by its controls.
                drafts[i] = question == PlanQuestion.NotPrecipitation ? drafts[i] : drafts[i] with { Replicates = n };
                drafts[i] = question.Series == SeriesKind.Ph ? drafts[i].WithControls(Math.Max(n, drafts[i].Levels.Max(l => l.Blanks))) : drafts[i];
            }

            return PlanPower.Of(draws, Serving(drafts, question));
        }

        var (low, high) = (own.Max(i => question == PlanQuestion.NotPrecipitation ? drafts[i].Levels.Max(l => l.Blanks) : drafts[i].Replicates), MostReplicates);
        var least = With(low);
        if (least >= PlanPower.Wanted)
            return;
        var wanted = Math.Min(PlanPower.Wanted, With(high) - Unseen);
        if (least >= wanted)
            high = low;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (With(middle) >= wanted)
                high = middle;
            else
                low = middle;
        }

        With(high);
    }

    // Fewer vessels: the series with the most replicates gives first, none below what its rules accept.
    private static void Cut(SeriesDraft[] drafts, int most)
    {
        while (drafts.Sum(d => d.Vessels + d.Levels.Sum(l => l.Blanks) + Controls) > most)
        {
            if (Enumerable.Range(0, drafts.Length).Where(k => drafts[k].Replicates > drafts[k].Fewest).OrderByDescending(k => drafts[k].Replicates).ThenByDescending(k => drafts[k].Vessels)
                .Cast<int?>().FirstOrDefault() is not { } i)
                return;
            drafts[i] = drafts[i] with { Replicates = drafts[i].Replicates - 1 };
        }
    }

    /// <summary>The least dilution with which a concentration is read inside the calibration; the largest there is where none does.</summary>
    /// <param name="concentration">Concentration, mg/L.</param>
    /// <param name="top">Highest standard, mg/L.</param>
    internal static double DilutionFor(double concentration, double top) => Dilutions.FirstOrDefault(d => concentration / d <= HighestReading * top, Dilutions[^1]);

    private static List<(PlannedVessel Vessel, double X)> Rows(SeriesDraft draft, PlanBasis basis, List<PlannedVessel> before, ImmutableArray<string>.Builder sharing)
    {
        var supposed = new Supposed(basis);
        var volume = basis[PlanSetting.Volume];
        var rows = new List<(PlannedVessel, double)>();
        PlannedVessel Row(PlannedLevel l, SampleRole role, int replicate, double start, double dose) => new("", draft.Name, role, replicate, 0, 0, 0)
        {
            InitialConcentration = start,
            Volume = volume,
            Mass = Math.Round(dose * volume, 4),
            Ph = l.Ph,
            Temperature = l.Temperature,
            ContactTime = l.Time,
            StartsAt = 0,
            Expected = start == 0 ? 0 : supposed.Left(start, dose, l.Time),
            Dilution = DilutionFor(start == 0 ? 0 : supposed.Left(start, dose, l.Time), basis[PlanSetting.TopStandard]),
            Batch = l.Batch,
        };

        var shared = 0;
        foreach (var level in draft.Levels)
        {
            for (var i = 1; i <= draft.VesselsAt(level); i++)
                rows.Add((Row(level, SampleRole.Vessel, i, level.Start, level.Dose), level.X));
            for (var i = 1; i <= level.Blanks; i++)
            {
                var blank = Row(level, SampleRole.Control, i, level.Start, 0);
                var alike = before.Count(b => b.Role == SampleRole.Control && b.InitialConcentration.Equals(blank.InitialConcentration) && b.Ph == blank.Ph
                    && b.Temperature == blank.Temperature && b.ContactTime >= blank.ContactTime && b.Replicate == i);
                if (alike > 0)
                    shared++;
                else
                    rows.Add((blank, level.X));
            }
        }

        if (shared > 0)
            sharing.Add($"{draft.Name} uses {Phrase.Count(shared, "control")} without sorbent of another series at the same concentration, pH and temperature.");
        var middle = draft.Kind == SeriesKind.Ph ? draft.Levels.MinBy(l => Math.Abs(l.X - basis[PlanSetting.Ph]))! : draft.Levels[draft.Levels.Length / 2];
        for (var i = 1; i <= Controls; i++)
            rows.Add((Row(middle, SampleRole.SorbentBlank, i, 0, middle.Dose), middle.X));
        return rows;
    }

    private static (IEnumerable<PlannedVessel> Vessels, List<BlockClock> Clocks) Ordered(List<(PlannedVessel Vessel, double X)> rows, SeriesDraft draft, PlanBasis basis, ulong seed)
    {
        var blocks = Math.Min((int)Math.Ceiling(rows.Count / basis[PlanSetting.PerDay]), rows.Where(r => r.Vessel.Role == SampleRole.Vessel).GroupBy(r => r.X).Min(g => g.Count()));
        var order = RunOrder.Draw([.. rows.Select(r => r.X)], blocks, seed, draft.Name);
        var drawn = rows.Select((r, i) => r.Vessel with { Block = order.Block[i], StartOrder = order.Start[i], ReadOrder = order.Read[i] }).OrderBy(v => v.StartOrder).ToList();
        var (done, clocks) = (new List<PlannedVessel>(), new List<BlockClock>());
        foreach (var block in drawn.GroupBy(v => v.Block).OrderBy(b => b.Key))
        {
            PlannedVessel[] vessels = [.. block];
            var starts = StaggeredStarts.Of(
                [.. vessels.Select(v => (int)Math.Round(v.ContactTime))], (int)basis[PlanSetting.Starting], (int)basis[PlanSetting.Stopping], EffortOfAClock);
            clocks.Add(new(draft.Name, block.Key, starts, draft.Kind != SeriesKind.Kinetic ? order.StartCorrelation : null, order.ReadCorrelation));

            // Where contact times differ the clock decides who is first, not the draw.
            done.AddRange(vessels.Select((v, i) => v with { StartsAt = starts.Starts[i] }).OrderBy(v => v.StartsAt));
        }

        return (done.Select((v, i) => v with { StartOrder = i + 1 }), clocks);
    }
}
