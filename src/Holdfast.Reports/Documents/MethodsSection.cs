using System.Globalization;
using Holdfast.Calibration;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Methods text from what was really recorded, one sentence a fact; what no record holds is printed as a gap.</summary>
internal static class MethodsSection
{
    /// <summary>The section, with the places where its gaps are filled in.</summary>
    public static Section Of(Dossier dossier)
    {
        var text = Text(dossier);
        return new("methods", "Methods, as recorded", [.. text, .. MethodsGap.Places(text)]);
    }

    /// <summary>Its sentences, every gap marked where it is.</summary>
    public static IReadOnlyList<Node> Text(Dossier dossier) =>
    [
        Prose.Paragraph("These sentences are made from the records. A marked gap is something a reader will ask for and the records do not hold."),
        .. Parts(dossier.Evidence).SelectMany(p => p.Sentences.Select(s => (Node)Prose.Paragraph(s)).Prepend(Prose.Heading(p.Title))),
    ];

    /// <summary>What is recorded under each heading, in sentences and clauses that may hold gaps.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static IEnumerable<(string Title, IReadOnlyList<string> Sentences)> Parts(Evidence evidence)
    {
        yield return ("Material and vessels", [Material(evidence), Vessels(evidence), Acidity(evidence)]);
        yield return ("Concentrations", [.. Runs(evidence)]);
        if (FluorometerText.Of(evidence).ToArray() is { Length: > 0 } light)
            yield return ("Fluorescence", light);
        yield return ("Uncertainty and fitting",
        [
            "Uncertainties were propagated to first order with every shared source kept, and widened to 95 % by the effective degrees of freedom.",
            .. Fitting(evidence),
            Order(evidence.Study),
        ]);
    }

    private static string Material(Evidence evidence)
    {
        var study = evidence.Study;
        var named = evidence.Vessels.Select(v => v.Sample.Words(SampleProperties.Material)).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        var material = Detail(study, "material") ?? (named.Length > 0 ? InWords.Listed(named) : Prose.Gap("material"));
        var batches = evidence.Vessels.Select(v => v.Sample.Batch).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        return $"Sorbent: {material}{Prose.Clause($"; {(batches.Length > 1 ? "batches" : "batch")} {(batches.Length > 0 ? InWords.Listed(batches) : OfVessels(SampleProperties.Batch))}")}. Preparation: {Said(study, "preparation")}. "
            + $"Metal: {study.Analyte ?? Prose.Gap("analyte")}{Prose.Clause($", from {Said(study, "stock")}")}. Chemicals and water grade: {Said(study, "chemicals")}.";
    }

    private static string Vessels(Evidence evidence)
    {
        Vessel[] vessels = [.. evidence.Vessels.Where(v => v.Sample.Role == SampleRole.Vessel && !v.IsStruck)];
        var study = evidence.Study;
        if (vessels.Length == 0)
            return $"Vessels: {Prose.NotRecorded}.";
        var authors = vessels.Select(v => v.Sample.Words(SampleProperties.Author)).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        var water = vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        return $"{InWords.Count(vessels.Length, "vessel")} of {Range(BatchProperties.Volume, vessels)} holding {Range(BatchProperties.Mass, vessels)} of sorbent{Prose.Clause($" in {(water.Length > 0 ? InWords.Listed(water) : Detail(study, "water") ?? OfVessels(SampleProperties.Matrix))}")} "
            + $"were shaken{Prose.Clause($" at {Prose.Clause(Shaking(study, vessels) + " and ")}{Range(BatchProperties.Temperature, vessels)}")}{Prose.Clause($" for {Range(BatchProperties.ContactTime, vessels)}")}. "
            + $"The liquid was separated by {Said(study, "separation")}{Prose.Clause($" (uptake by the separating step: {Said(study, "separation-uptake")})")}."
            + (authors.Length > 0 ? $" The vessels were prepared by {InWords.Listed(authors)}." : "");
    }

    private static string Acidity(Evidence evidence)
    {
        Vessel[] vessels = [.. evidence.Vessels.Where(v => v.Sample.Role == SampleRole.Vessel && !v.IsStruck)];
        var start = vessels.Count(v => v.Sample.Number(BatchProperties.StartPh) is not null);
        var end = vessels.Count(v => v.Sample.Number(BatchProperties.EndPh) is not null);
        var controls = evidence.Vessels.Count(v => v.Sample.Role == SampleRole.Control && !v.IsStruck);
        var read = evidence.Study.Samples.Count(s => s.Role == SampleRole.StartSolution);
        return string.Create(CultureInfo.InvariantCulture,
            $"The start pH was recorded for {start} and the end pH for {end} of {InWords.Count(vessels.Length, "vessel")}{Prose.Clause($" (electrode calibrated at {Said(evidence.Study, "ph-buffers")})")}. ")
            + (controls > 0 ? $"{InWords.Count(controls, "control")} without sorbent {(controls == 1 ? "was" : "were")} read. " : $"Controls without sorbent: {Prose.Gap("role:control")}. ")
            + (read > 0 ? $"{InWords.Count(read, "start solution")} {(read == 1 ? "was" : "were")} read." : $"Readings of the start solutions: {Prose.Gap("role:start-solution")}; they count as made up.");
    }

    private static IEnumerable<string> Runs(Evidence evidence)
    {
        if (evidence.Runs.IsEmpty)
            yield return $"Concentrations were read by {Prose.NotRecorded}.";
        // Runs that read alike are one sentence; one with a gap stands alone, since its gap is its own.
        foreach (var alike in evidence.Runs.GroupBy(How, StringComparer.Ordinal))
        {
            CalibratedRun[] runs = [.. alike];
            var recoveries = runs.SelectMany(r => r.Checks).Select(c => c.Recovery).OfType<double>().ToArray();
            yield return $"{(runs.Length == 1 ? "Run" : "Runs")} {InWords.Listed(runs.Select(r => r.Run.Id))}: {alike.Key}"
                + (runs[0].Curve is null ? "" : recoveries.Length == 0 ? $" Check standards: {Prose.Gap("role:check-standard")}." : $" Check standards recovered {CalibrationSection.RecoveryRange(recoveries)}.");
        }
    }

    private static string How(CalibratedRun run)
    {
        var text = $"{Prose.Clause(Said(run, "Instrument") + ", ")}{Prose.Clause($"{Said(run, "Element")} at {Said(run, "Wavelength")}, ")}"
            + $"{Prose.Clause($"flame {Said(run, "Flame")}, ")}{Prose.Clause($"read on {Said(run, "Date")}; ")}";
        return run.Curve is not { } curve ? text + "without a line, so nothing was worked out from it."
            : run.BorrowedFrom is { } lender ? text + $"on the line of {lender}."
            : text + $"against {InWords.Count(curve.Standards.Select(s => s.Level).Distinct().Count(), "standard")} up to {InWords.Plain(curve.Top, "mg/L")} ({InWords.Count(curve.Standards.Count, "reading")}, {Weights(curve.Weights)}); "
                + $"detection limit {Limit(curve.Limits.Detection)}, limit of quantification {Limit(curve.Limits.Quantification)}.";
    }

    private static IEnumerable<string> Fitting(Evidence evidence)
    {
        (string Name, string How, string[] Curves)[] families =
        [
            .. new[] { ("Kinetic curves", evidence.Kinetics, "each time a vessel of its own"), ("Isotherms", evidence.Isotherms, "the error that q and Ce share counted once") }
                .Select(f => (Name: f.Item1, How: f.Item3, Curves: f.Item2.SelectMany(s => s.Fits).Select(t => t.Card.Name).Distinct(StringComparer.Ordinal).ToArray())).Where(f => f.Curves.Length > 0),
        ];
        if (families.Length > 0)
        {
            yield return $"{SentenceCase.Of(string.Join("; ", families.Select(f => $"{f.Name.ToLowerInvariant()} were fitted to the uptake of single vessels, {f.How}")))}. "
                + "The fits are by generalised least squares: the stated uncertainties with their shared parts, and a scatter between vessels in proportion to the uptake by restricted likelihood. "
                + "Intervals are 95 % profile-likelihood intervals with Student's t for the degrees of freedom behind each parameter. "
                + $"The curves are the whole list of the program, the same for every study. {string.Join(" ", families.Select(f => $"{f.Name}: {InWords.Listed(f.Curves)}."))}";
        }

        var strikes = evidence.Study.Strikes;
        yield return strikes.IsEmpty
            ? "No sample or reading was excluded."
            : $"{InWords.Count(strikes.Length, "sample or reading", "samples or readings")} {(strikes.Length == 1 ? "was" : "were")} excluded ({InWords.Listed(strikes.Select(s => s.Reason))}).";
    }

    private static string Order(Study study)
    {
        var margins = study.Margins.IsEmpty
            ? "No margin was fixed beforehand: the defaults of the rules were used."
            : "Margins fixed: " + string.Join("; ", study.Margins.Select(m => string.Create(CultureInfo.InvariantCulture,
                $"{m.Name} {InWords.Plain(m.Low)} to {InWords.Plain(m.High, m.Unit)} (entry {m.Entry})"))) + ". Others are the defaults of the rules.";
        return $"Order of the vessels, seed and blocks: {Said(study, "order")}. {margins} Plan and amendments: {Said(study, "plan")}.";
    }

    private static string Limit(DetectionLimit limit)
        => $"{(limit.Interval is { } i ? InWords.Of(limit.Value, i.Low, i.High, "mg/L") + ", 95 % interval," : InWords.Plain(limit.Value, "mg/L"))} by {limit.Formula[(limit.Formula.LastIndexOf(": ", StringComparison.Ordinal) + 1)..].Trim()}";

    private static string Weights(Weights weights) => weights.Kind switch
    {
        Weighting.Equal => "equal weights",
        Weighting.VarianceFunction => "weights from the scatter of replicates",
        Weighting.InverseLevel => "weights 1/c",
        _ => "weights 1/c²",
    };

    private static string Range(Property property, Vessel[] vessels)
    {
        double[] values = [.. vessels.Select(v => v.Sample.Number(property)).OfType<double>()];
        return values.Length == 0 ? OfVessels(property) : InWords.Span(values, property.Unit) + (values.Length < vessels.Length ? $" (recorded for {values.Length.ToString(CultureInfo.InvariantCulture)} of them)" : "");
    }

    private static string Said(CalibratedRun run, string key)
        => run.Run.Details.FirstOrDefault(d => string.Equals(d.Key.Trim(), key, StringComparison.OrdinalIgnoreCase)).Value is { Length: > 0 } said ? said : Prose.Gap(run.Run.Id, key);

    private static string Said(Study study, string key) => Detail(study, key) ?? Prose.Gap(key);

    private static string OfVessels(Property property) => Prose.Gap("vessels:" + property.Name);

    private static string Shaking(Study study, Vessel[] vessels)
        => Detail(study, "shaking") ?? (vessels.Any(v => v.Sample.Number(BatchProperties.StirringSpeed) is not null) ? Range(BatchProperties.StirringSpeed, vessels) : Prose.Gap("shaking"));

    private static string? Detail(Study study, string key) => study.Details.GetValueOrDefault(key) is { Length: > 0 } said ? said : null;
}
