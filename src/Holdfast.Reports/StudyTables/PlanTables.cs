using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims.Plans;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Figures;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyTables;

/// <summary>A plan as tables: what it can show, the run table, the clock, solutions, needs, waste, cost, warnings, what was supposed; and planned against done.</summary>
public static class PlanTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["no"] = "not recorded yet", ["ns"] = "not set", ["np"] = "no power is worked out" };

    /// <summary>Everything about a plan that is not kept yet, in the order it is read; empty tables are left out.</summary>
    /// <param name="plan">The plan.</param>
    public static IEnumerable<Table> Of(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        IEnumerable<Table> all =
        [
            Shows(plan), Warnings(plan.Warnings), Series(plan), Runs(plan.Vessels), Clock(plan.Vessels, plan.Basis[PlanSetting.Begin], plan.Basis[PlanSetting.Starting], plan.Basis[PlanSetting.Stopping], [.. plan.Clocks.Select(c => $"{c.Series}, block {InWords.Plain(c.Block)}: {c.Starts.Says("min")}")]),
            Solutions(plan), Needs(plan), Waste(plan), Costs(plan), CostsByClaim(plan), Supposed(plan.Basis.Record),
        ];
        return all.Where(t => t.Rows.Count > 0);
    }

    /// <summary>What the vessels can show.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Shows(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            "shows", "What these vessels can show",
            [new Column("claim", "Claim") { NamesRows = true }, new Column("series", "Series"), new Column("margin", "Margin"), new Column("power", "Power") { Unit = "%" }, new Column("shows", "What can be shown")],
            [.. plan.Claims.Select(c => Row.Of(
                c.Question.Rule, string.Join(", ", c.Series), c.Question.Margin?.Name ?? "", c.Power.Power is { } p ? new NumberCell(Math.Round(100 * p)) { Decimals = 0 } : new MissingCell("np"), c.Power.Shows))],
            Codes)
        { Notes = ["Power is the chance to show the claim if it is true and the rest is as supposed, with readings, controls and what it stands on."] };
    }

    /// <summary>The plan tried out: how often each claim holds in invented studies that follow it, beside what was promised.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="studies">Studies for each claim, at least 1.</param>
    public static Table Tried(PlanDesign plan, int studies)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentOutOfRangeException.ThrowIfLessThan(studies, 1);
        return new(
            "tried", $"The plan tried out in {InWords.Count(studies, "invented study", "invented studies")} for each claim",
            [new Column("claim", "Claim") { NamesRows = true }, new Column("promised", "Promised") { Unit = "%" }, new Column("held", "Held") { Unit = "%" }, new Column("error", "Standard error") { Unit = "%" }],
            [.. plan.Claims.Select(c =>
            {
                var held = Enumerable.Range(0, studies).Count(seed => PlanTrial.Of(plan, c.Question, (ulong)seed) == Ruling.Holds) / (double)studies;
                return Row.Of(c.Question.Rule, c.Power.Power is { } p ? new NumberCell(100 * p) { Decimals = 0 } : new MissingCell("np"), new NumberCell(100 * held) { Decimals = 0 },
                    new NumberCell(100 * Math.Sqrt(Math.Max(held * (1 - held), 1.0 / studies) / studies)) { Decimals = 0 });
            })],
            Codes)
        { Notes = ["Each study follows the plan where the claim is true and the rest is as supposed; it is read, calibrated, fitted and judged as any other. Invented: nothing of it is kept."] };
    }

    /// <summary>What is doubtful.</summary>
    /// <param name="warnings">Warnings, of a plan or kept with one.</param>
    public static Table Warnings(IEnumerable<PlanWarning> warnings) => new(
        "warnings", "Before anything is weighed",
        [new Column("warning", "Warning") { NamesRows = true }, new Column("sentence", "What is doubtful"), new Column("answer", "Accepted because")],
        [.. warnings.Select(w => Row.Of(w.Name, w.Sentence, w.Answer ?? ""))]);

    /// <summary>The series.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Series(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            "planned-series", "Series and levels",
            [
                new Column("series", "Series") { NamesRows = true }, new Column("varied", "Varied"), new Column("levels", "Levels (vessels)"), new Column("vessels", "Vessels"),
                new Column("efficiency", "D-efficiency") { Unit = "%" }, new Column("lack_of_fit", "Degrees of freedom for misfit"), new Column("chosen", "How the levels were chosen"),
            ],
            [.. plan.Series.Select(s => Row.Of(
                s.Name, s.Unit.Length > 0 ? $"{s.Varied} / {s.Unit}" : s.Varied, string.Join(", ", s.Levels.Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.X:0.####} ({s.VesselsAt(l)})"))),
                Whole(s.Vessels), s.Efficiency is { } e ? Whole(Math.Round(100 * e)) : new MissingCell("nf"), s.Parameters > 0 ? Whole(s.LackOfFit) : new MissingCell("nf"), s.Says))],
            new SortedDictionary<string, string>(StringComparer.Ordinal) { ["nf"] = "no curve is fitted, or the levels follow those of another series" })
        { Notes = [.. plan.Sharing] };
    }

    /// <summary>The run table: one row a vessel, in the order of work.</summary>
    /// <param name="vessels">The vessels.</param>
    public static Table Runs(IEnumerable<PlannedVessel> vessels) => new(
        "runs", "Run table",
        [
            new Column("run", "Run") { NamesRows = true }, new Column("series", "Series"), new Column("role", "Role"), new Column("replicate", "Replicate"), new Column("block", "Block"),
            new Column("start", "Order of starting"), new Column("read", "Order of reading"), new Column("c0", "Start concentration") { Unit = "mg/L" },
            new Column("volume", "Volume") { Unit = "mL" }, new Column("mass", "Sorbent") { Unit = "mg" }, new Column("ph", "Start pH"), new Column("temperature", "Temperature") { Unit = "K" },
            new Column("time", "Contact time") { Unit = "min" }, new Column("expected", "Expected after contact") { Unit = "mg/L" }, new Column("dilution", "Dilution"), new Column("batch", "Sorbent batch"),
        ],
        [.. vessels.Select(v => Row.Of(
            v.Code, v.Series, RoleWords(v.Role), Whole(v.Replicate), Whole(v.Block), Whole(v.StartOrder), Whole(v.ReadOrder), Plain(v.InitialConcentration), Plain(v.Volume), Plain(v.Mass),
            v.Ph is { } ph ? Plain(ph) : new MissingCell("ns"), v.Temperature is { } t ? Plain(t) : new MissingCell("ns"), Plain(v.ContactTime), Plain(Math.Round(v.Expected, 4)), Plain(v.Dilution), v.Batch ?? ""))],
        Codes)
    { Notes = ["Targets have no uncertainty: what is weighed, measured and timed is written down as it really was. Order is random in complete blocks, drawn again while it follows the level."] };

    /// <summary>The clock table: what the hands do when.</summary>
    /// <param name="vessels">The vessels.</param>
    /// <param name="begin">Hour at which a block begins.</param>
    /// <param name="starting">Minutes that starting a vessel takes.</param>
    /// <param name="stopping">Minutes that stopping takes.</param>
    /// <param name="notes">How the tables were found.</param>
    public static Table Clock(IReadOnlyList<PlannedVessel> vessels, double begin, double starting, double stopping, IReadOnlyList<string> notes)
    {
        ArgumentNullException.ThrowIfNull(vessels);
        ArgumentNullException.ThrowIfNull(notes);
        var actions = vessels.SelectMany(v => new[] { (v, At: v.StartsAt, Long: starting, Word: "start"), (v, At: v.StartsAt + v.ContactTime, Long: stopping, Word: "stop") })
            .OrderBy(a => a.v.Series == vessels[0].Series ? 0 : 1).ThenBy(a => a.v.Series, StringComparer.Ordinal).ThenBy(a => a.v.Block).ThenBy(a => a.At);
        return new(
            "clock", "Clock table for one pair of hands",
            [
                new Column("series", "Series"), new Column("block", "Block"), new Column("clock", "Clock"), new Column("minute", "Minute") { Unit = "min" }, new Column("action", "Action"),
                new Column("run", "Run") { NamesRows = true }, new Column("takes", "Takes") { Unit = "min" },
            ],
            [.. actions.Select(a => Row.Of(a.v.Series, Whole(a.v.Block), TimeOfDay(begin, a.At), Plain(a.At), a.Word, a.v.Code, Plain(a.Long)))])
        { Notes = ["If you miss a time, do not correct it: write the true time. True times go into the fit.", .. notes] };
    }

    /// <summary>Solutions to make up.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Solutions(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            "solutions", "Start solutions, each made up once for its block",
            [new Column("series", "Series") { NamesRows = true }, new Column("block", "Block"), new Column("c0", "Concentration") { Unit = "mg/L" }, new Column("volume", "Needed, 10 % over") { Unit = "mL" }, new Column("how", "From the stock")],
            [.. plan.Solutions.Select(s => Row.Of(s.Series, Whole(s.Block), s.Made is { } made ? new MeasuredCell(made.Value, made.U) : Plain(s.Concentration), Plain(Math.Round(s.Volume, 1)), s.How))])
        { Notes = ["The uncertainty is that of pipettes and flasks of class A; that of the stock comes on top. Measure each solution three times before use: the start concentration is measured, not assumed."] };
    }

    /// <summary>What the plan takes.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Needs(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var b = plan.Budget;
        (string What, double Value, string Unit)[] rows =
        [
            ("vessels with sorbent and metal", b.Vessels, ""), ("controls without sorbent", b.Blanks, ""), ("controls without metal", b.SorbentControls, ""),
            ("solution with metal", b.Volume / 1000, "L"), ("metal in it", b.Metal, "mg"), ("sorbent, 10 % over", b.SorbentWithOverage / 1000, "g"),
            ("stock, 10 % over", b.StockVolume(plan.Basis[PlanSetting.Stock]), "mL"),
            .. plan.SaltMass is { } mass ? new[] { ($"salt for it, {plan.Salt!.Text}", mass, "g") } : [],
            ("readings of vessels", b.Readings, ""), ("readings with calibration and checks", b.ReadingsWithChecks, ""), ("time at the instrument", b.InstrumentTime(plan.Basis[PlanSetting.SecondsEach]), "min"),
        ];
        return new(
            "needs", "What it takes", [new Column("what", "What") { NamesRows = true }, new Column("amount", "Amount"), new Column("unit", "Unit")],
            [.. rows.Select(r => Row.Of(r.What, Plain(double.Parse(r.Value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)), r.Unit))])
        { Notes = ["Amounts are targets of the plan, without uncertainty."] };
    }

    /// <summary>Waste by stream.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Waste(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            "waste", "Waste, each stream in its own container",
            [new Column("stream", "Stream") { NamesRows = true }, new Column("volume", "Liquid") { Unit = "mL" }, new Column("solid", "Solid") { Unit = "mg" }, new Column("metal", "Metal by the plan") { Unit = "mg" }],
            [.. plan.Waste.Select(w => Row.Of(w.Name, Plain(Math.Round(w.Volume)), Plain(Math.Round(w.Solid)), Plain(Math.Round(w.Metal, 2))))])
        { Notes = ["The local rules and the responsible person decide where each goes. Standards and acid for the readings come on top."] };
    }

    /// <summary>Cost by item.</summary>
    /// <param name="plan">The plan.</param>
    public static Table Costs(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            "cost", "Cost, in the currency of the prices given",
            [new Column("item", "Item") { NamesRows = true }, new Column("cost", "Cost")],
            [.. plan.Costs.Select(c => Row.Of(c.Item, new NumberCell(c.Cost) { Decimals = 2 })), .. plan.Costs.Length > 1 ? new[] { Row.Of("in all", new NumberCell(plan.Costs.Sum(c => c.Cost)) { Decimals = 2 }) } : []]);
    }

    /// <summary>Cost by claim.</summary>
    /// <param name="plan">The plan.</param>
    public static Table CostsByClaim(PlanDesign plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            "cost-by-claim", "Cost by claim, in the currency of the prices given",
            [new Column("claim", "Claim") { NamesRows = true }, new Column("cost", "Cost")],
            [.. plan.CostsByClaim.Select(c => Row.Of(c.Question.Rule, new NumberCell(c.Cost) { Decimals = 2 }))])
        { Notes = ["Vessels that serve several claims are shared evenly between them, so that the sum is that of the items."] };
    }

    /// <summary>What was supposed.</summary>
    /// <param name="basis">Settings by name.</param>
    public static Table Supposed(IReadOnlyDictionary<string, string> basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        return new(
            "supposed", "What the plan supposes",
            [new Column("setting", "Setting") { NamesRows = true }, new Column("asks", "What it is"), new Column("value", "Supposed")],
            [.. PlanSetting.All.Where(s => basis.ContainsKey(s.Name)).Select(s => Row.Of(s.Name, s.Asks, basis[s.Name]))]);
    }

    /// <summary>Everything that can be said before a plan is worked out, with the usual answers.</summary>
    public static Table Settings => new(
        "settings", "What a plan asks; say it with --suppose NAME=VALUE",
        [new Column("setting", "Setting") { NamesRows = true }, new Column("asks", "What it is"), new Column("unit", "Unit"), new Column("usual", "Usual")],
        [.. PlanSetting.All.Select(s => Row.Of(s.Name, s.Asks, s.Unit, Plain(s.Usual)))]);

    /// <summary>The kinds of claim for which a plan can be worked out.</summary>
    public static Table Questions => new(
        "questions", "What a plan can be worked out for; say it with --show CLAIM",
        [new Column("claim", "Claim") { NamesRows = true }, new Column("asks", "Question"), new Column("margin", "Margin")],
        [.. PlanQuestion.All.Select(q => Row.Of(q.Rule, q.Asks, q.Margin is { } m ? $"{m.Name}: {InWords.Plain(m.Low)} to {InWords.Plain(m.High)} {m.Unit}, unless another was fixed" : ""))]);

    /// <summary>The claims that plans were made for, with what their vessels can show.</summary>
    /// <param name="study">The study.</param>
    public static Table PlannedClaims(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new(
            "planned-claims", "Claims the plan is for",
            [new Column("claim", "Claim") { NamesRows = true }, new Column("plan", "Plan"), new Column("series", "Series"), new Column("margin", "Margin"), new Column("shows", "What its vessels can show")],
            [.. study.Designs.SelectMany(d => d.Questions.Select(q => Row.Of(q.Rule, d.Id, string.Join(", ", q.Series), MarginOf(study, q.Margin), q.Shows)))],
            Codes);
    }

    private static Cell MarginOf(Study study, string? name)
        => name is null ? new MissingCell("ns")
            : study.Margins.FirstOrDefault(m => m.Name == name) is { } margin ? $"{name}: {InWords.Plain(margin.Low)} to {InWords.Plain(margin.High)} {margin.Unit}"
            : name + ": not fixed";

    /// <summary>Planned against done, series by series.</summary>
    /// <param name="study">The study.</param>
    public static Table PlannedSeries(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new(
            "planned-series", "Planned against done, by series",
            [
                new Column("series", "Series") { NamesRows = true }, new Column("plan", "Plan"), new Column("planned", "Vessels planned"), new Column("read", "Read"), new Column("struck", "Of these struck"),
                new Column("to_do", "Not read"), new Column("deviating", "Deviating"),
            ],
            [.. study.Designs.SelectMany(d => d.Vessels.GroupBy(v => v.Series, StringComparer.Ordinal).Select(g => Of(study, d, g.Key, [.. g])))]);
    }

    private static Row Of(Study study, DesignedPlan plan, string series, PlannedVessel[] vessels)
    {
        var read = study.Readings.Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        PlannedVessel[] done = [.. vessels.Where(v => read.Contains(v.Code))];
        return Row.Of(
            series, plan.Id, Whole(vessels.Length), Whole(done.Length), Whole(done.Count(v => study.IsStruck(study.Sample(v.Code)!))), Whole(vessels.Length - done.Length),
            Whole(vessels.Count(v => PlanDeviation.Of(v, study.Sample(v.Code)!).Any())));
    }

    /// <summary>Planned against done: one row a planned vessel, target beside what was recorded.</summary>
    /// <param name="study">The study.</param>
    public static Table Done(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new(
            "planned-vessels", "Planned against done",
            [
                new Column("run", "Run") { NamesRows = true }, new Column("plan", "Plan"), new Column("series", "Series"), new Column("state", "State"),
                new Column("mass_planned", "Sorbent planned") { Unit = "mg" }, new Column("mass", "Sorbent weighed") { Unit = "mg" },
                new Column("time_planned", "Contact time planned") { Unit = "min" }, new Column("time", "Contact time") { Unit = "min" },
                new Column("ph_planned", "Start pH planned"), new Column("ph", "Start pH"), new Column("deviation", "Deviation"),
            ],
            [.. study.Designs.SelectMany(d => d.Vessels.Select(v => Done(study, d, v)))],
            Codes)
        { Notes = Notes(study) };
    }

    private static ImmutableArray<RichText> Notes(Study study) =>
    [
        study.PlanFrozen is { } frozen
            ? string.Create(CultureInfo.InvariantCulture, $"Frozen {frozen.When:d MMM yyyy HH:mm} by {frozen.Who}, fingerprint {frozen.Sha256}.")
            : "The plan is not frozen: margins and vessels can still change without a reason.",
        .. study.PlanAmendments.Where(a => a.What.Length > 0).Select(a => (RichText)string.Create(CultureInfo.InvariantCulture, $"Amended {a.When:d MMM yyyy} by {a.Who}: {a.What}, because: {a.Reason}")),
    ];

    private static Row Done(Study study, DesignedPlan plan, PlannedVessel vessel)
    {
        var sample = study.Sample(vessel.Code)!;
        Cell Recorded(Property property) => sample.Number(property) is { } value ? Plain(value) : new MissingCell("no");
        var read = study.Readings.Any(r => string.Equals(r.Sample, vessel.Code, StringComparison.Ordinal));
        var state = study.IsStruck(sample) ? "struck" : read ? "read" : study.IsOnlyPlanned(sample) ? "to do" : "begun";
        return Row.Of(
            vessel.Code, plan.Id, vessel.Series, state, Plain(vessel.Mass), Recorded(BatchProperties.Mass), Plain(vessel.ContactTime), Recorded(BatchProperties.ContactTime),
            vessel.Ph is { } ph ? Plain(ph) : new MissingCell("ns"), Recorded(BatchProperties.StartPh), string.Join("; ", PlanDeviation.Of(vessel, sample)));
    }

    private static string TimeOfDay(double begin, double minute)
    {
        var all = (int)Math.Round(60 * begin + minute);
        return string.Create(CultureInfo.InvariantCulture, $"{(all >= 1440 ? $"+{all / 1440} d " : "")}{all / 60 % 24:00}:{all % 60:00}");
    }

    private static NumberCell Whole(double value) => new(value) { Decimals = 0 };

    private static NumberCell Plain(double value) => new(value) { Decimals = Enumerable.Range(0, 5).First(d => d == 4 || Math.Abs(Math.Round(value, d) - value) < 1e-9) };

    /// <summary>A role in words.</summary>
    /// <param name="role">The role.</param>
    public static string RoleWords(SampleRole role) => role switch
    {
        SampleRole.Control => "control without sorbent",
        SampleRole.SorbentBlank => "control without metal",
        _ => "vessel",
    };
}
