using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Sense;

/// <summary>
/// Looks at vessels as a whole, once every file of a drop is understood: numbers that are each plausible and together are not. Nothing is guessed;
/// a question names the likely slip, and its answer changes what is taken in.
/// </summary>
internal static partial class PhysicalSense
{
    /// <summary>A removal or share left above this is no fraction of 1.</summary>
    internal const double LargestFraction = 1.05;

    /// <summary>A share above this is written in per cent for sure.</summary>
    internal const double SurelyPercent = 5;

    /// <summary>An end concentration may lie above its start by this share, as scatter of the two readings; common practice.</summary>
    internal const double StartExceededBy = 0.05;

    /// <summary>A gram of powder holds at most this many milligrams of metal before its own mass is in doubt.</summary>
    internal const double LargestUptake = 1000;

    /// <summary>Doses outside this range, in g/L, are no batch test.</summary>
    internal const double SmallestDose = 0.005, LargestDose = 60;

    /// <summary>Concentrations this many times above their start are in another unit rather than above it.</summary>
    internal const double OtherUnitFrom = 3;

    /// <summary>Results of like vessels this far apart are in different units; start and dose this near are alike.</summary>
    private const double JumpFrom = 200, JumpTo = 5000, AlikeWithin = 3;

    /// <summary>Most vessels: the column is in doubt, not single rows.</summary>
    private const double Most = 0.6;

    /// <summary>Applies the answers and raises what is open.</summary>
    /// <param name="before">The study before this drop.</param>
    /// <param name="after">The study as it would be.</param>
    /// <param name="understood">What each file was understood to be; changed in place.</param>
    /// <param name="answers">Answers to questions.</param>
    public static void Review(Study before, Study after, IncomingUnderstood[] understood, Answers answers)
    {
        var solutions = StartSolutions.Of(after);
        var vessels = Of(before, after, solutions).ToList();
        if (vessels.Count == 0)
            return;
        InTwoFiles(before, after, understood, answers);
        WhichStart(after, solutions, vessels, understood, answers);
        StartsThatDiffer(after, solutions, vessels, understood, answers);
        Above(vessels, understood, answers);
        Jump(vessels, understood, answers);
        Amounts(vessels, understood, answers);
        SwappedAmounts(vessels, understood, answers);
        TimesUnderMass(vessels, understood, answers);
        FallingTimes(vessels, understood, answers);
        LongTimes(vessels, understood, answers);
        OwnResults(vessels, understood, answers);
        RemovalThatFalls(after, vessels, understood, answers);
        StartOfControls(after, vessels, understood, answers);
        ControlsThatLost(before, after, vessels, understood);
    }

    // One vessel with a result in each of two files: a second reading agrees with the first, a slip of the code does not.
    private static void InTwoFiles(Study before, Study after, IncomingUnderstood[] understood, Answers answers)
    {
        if (after.Readings.All(r => r.Origin.Original == after.Readings[0].Origin.Original))
            return;
        var fresh = after.Readings.Skip(before.Readings.Length).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        var vessels = after.Samples.Where(s => s.Role == SampleRole.Vessel && fresh.Contains(s.Code)).Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        var differing = after.Readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name && r.Value is not null && vessels.Contains(r.Sample) && !after.IsStruck(r))
            .GroupBy(r => r.Sample, StringComparer.Ordinal)
            .Select(g => (Code: g.Key, Files: g.GroupBy(r => r.Origin.Original, StringComparer.Ordinal).Select(f => (f.First().Origin, Mean: f.Average(r => r.Value!.Value * r.Dilution))).ToList()))
            .Where(v => v.Files.Count > 1 && v.Files.Max(f => f.Mean) - v.Files.Min(f => f.Mean) > SameCodeTwice.SameReadingWithin * v.Files.Max(f => f.Mean)).ToList();
        if (differing.Count == 0)
            return;
        ImmutableArray<string> codes = [.. differing.Select(v => v.Code)];
        var (code, files) = differing[0];
        var place = Place(files[^1].Origin, understood);
        var (earlier, later) = (files[0].Origin.Original, files[^1].Origin.Original);
        Decide(place, understood, answers.For(place.File.Name), "two-files", $"{code} stands in {files[0].Origin.FileName} with {Text(files[0].Mean)} and in {files[^1].Origin.FileName} with {Text(files[^1].Mean)} mg/L"
            + (codes.Length > 1 ? $", and so do {Ordinal.Text(codes.Length - 1)} more" : "") + ". Which holds?", ["earlier", "later", "both", "leave-out"], codes,
            answer => Change(understood, codes, answer switch { "both" => null, "earlier" => s => Only(s, earlier), "later" => s => Only(s, later), _ => Without }), null);
    }

    private static (Sample, Func<Reading, Reading?>) Only(Sample sample, string? original)
        => (sample, r => r.Signal != SpectrometryProperties.ReportedConcentration.Name || r.Origin.Original == original ? r : r with { Value = null, Written = r.Written + " (the other file holds, as answered)" });

    private static void Above(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        var read = vessels.Where(v => v is { Start: > 0, End: not null }).ToList();
        var above = read.Where(v => v.End > v.Start * (1 + StartExceededBy)).ToList();
        if (above.Count == 0)
            return;
        var place = Place(above[0].EndAt ?? above[0].StartAt, understood);
        var own = answers.For(place.File.Name);
        var startHeading = above[0].StartAt?.Column ?? "C0";
        var endHeading = above[0].EndAt?.Column ?? "Ce";
        ImmutableArray<string> codes = [.. above.Select(v => v.Code)];
        if (read.Count >= 3 && above.Count >= Most * read.Count && above.TrueForAll(v => v.End < v.Start * 1000) && above.Count(v => v.End / 1000 > v.Start * 0.001 && v.End > v.Start * 100) * 2 < above.Count)
        {
            Decide(place, understood, own, "swap", $"{endHeading} is above {startHeading} in {Ordinal.Text(above.Count)} of {Ordinal.Text(read.Count)} vessels ({Shown(codes)}). Do the two columns stand under each other's headings?",
                ["swap", "keep", "leave-out"], codes, answer => Change(understood, codes, answer == "swap" ? Swapped : answer == "keep" ? null : Without), above[0]);
            return;
        }

        var unit = above.Where(v => v.End > v.Start * OtherUnitFrom && v.End / 1000 <= v.Start * (1 + StartExceededBy)).ToList();
        if (unit.Count > 0)
        {
            ImmutableArray<string> some = [.. unit.Select(v => v.Code)];
            Decide(place, understood, own, "unit-of-rows:" + endHeading, $"{Shown(some)}: {endHeading} is up to {Text(unit.Max(v => v.End!.Value / v.Start!.Value))} times above the start concentration. Are these in µg/L under a mg/L heading? "
                + $"{unit[0].Code} would be {Text(unit[0].End!.Value / 1000)} mg/L.", ["ug/L", "keep", "leave-out"], some,
                answer => Change(understood, some, answer == "ug/L" ? Thousandth : answer == "keep" ? null : Without), unit[0]);
        }

        ImmutableArray<string> rest = [.. above.Except(unit).Select(v => v.Code)];
        if (rest.Length > 0)
        {
            var first = above.Except(unit).First();
            Decide(place, understood, own, "above-start", $"{Shown(rest)}: {endHeading} ({Text(first.End!.Value)} mg/L) is above the start concentration ({Text(first.Start!.Value)} mg/L), so metal would have come out of the powder. A slip, or read so?",
                ["leave-out", "keep"], rest, answer => Change(understood, rest, answer == "keep" ? null : Without), first);
        }
    }

    // Like vessels in two files, one file's results a thousand times the other's: one of them is in another unit than its heading says.
    private static void Jump(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        var files = vessels.Where(v => v is { End: > 0, Start: > 0, EndAt: not null }).GroupBy(v => v.EndAt!.Original, StringComparer.Ordinal).Select(g => g.ToList()).Where(g => g.Count >= 2).ToList();
        if (files.Count != 2)
            return;
        var (high, low) = (files[0], files[1]);
        if (Middle(high, v => v.End!.Value) < Middle(low, v => v.End!.Value))
            (high, low) = (low, high);
        var ratio = Middle(high, v => v.End!.Value) / Middle(low, v => v.End!.Value);
        if (ratio is < JumpFrom or > JumpTo || Apart(high, low, v => v.Start!.Value) || Apart(high, low, v => v.Dose ?? 1))
            return;
        var place = Place(low[0].EndAt, understood);
        ImmutableArray<string> codes = [.. low.Select(v => v.Code)];
        Decide(place, understood, answers.For(place.File.Name), "unit-of-file:" + (low[0].EndAt!.Column ?? "Ce"), $"{Shown(codes)}: {low[0].EndAt!.Column} gives about a thousandth of what like vessels have in {high[0].EndAt!.FileName} "
            + $"({Text(low[0].End!.Value)} against {Text(high[0].End!.Value)} mg/L). Is the unit of {low[0].EndAt!.Column} right?", ["keep", "thousand-times", "leave-out"], codes,
            answer => Change(understood, codes, answer == "thousand-times" ? Thousandfold : answer == "keep" ? null : Without), low[0]);
    }

    private static double Middle(List<Whole> vessels, Func<Whole, double> of) => vessels.Select(of).Order().ElementAt(vessels.Count / 2);

    private static bool Apart(List<Whole> a, List<Whole> b, Func<Whole, double> of) => Middle(a, of) / Middle(b, of) is < 1 / AlikeWithin or > AlikeWithin;

    private static void Amounts(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        var weighed = vessels.Where(v => v is { Mass: > 0, Volume: > 0 }).ToList();
        if (weighed.Count == 0)
            return;
        var heavy = weighed.Where(v => v.Uptake > LargestUptake || v.Dose < SmallestDose).ToList();
        var light = weighed.Where(v => v.Dose > LargestDose).ToList();
        foreach (var (odd, up) in new[] { (heavy, true), (light, false) })
        {
            if (odd.Count == 0)
                continue;
            var first = odd[0];
            var place = Place(first.MassAt, understood);
            // What was asked about as a number by itself is not asked about again.
            if (place.Understanding.Questions.Any(q => q.Id == "values:" + BatchProperties.Mass.Name))
                continue;
            var own = answers.For(place.File.Name);
            ImmutableArray<string> codes = [.. odd.Select(v => v.Code)];
            var heading = first.MassAt?.Column ?? "mass";
            var whole = odd.Count >= Most * weighed.Count;
            var why = up ? first.Uptake > LargestUptake ? $"{first.Code} would hold {Text(first.Uptake!.Value)} mg of metal on each gram of powder" : $"{first.Code} would hold {Text(first.Dose!.Value)} g of powder in a litre"
                : $"{first.Code} would hold {Text(first.Dose!.Value)} g of powder in a litre";
            var other = up ? "g" : "mg";
            Decide(place, understood, own, whole ? "mass-unit:" + heading : "mass-unit-of-rows:" + heading,
                $"{why}. Is {heading} in {other} {(whole ? "" : $"for {Shown(codes)} ")}({first.MassWritten})?", [other, "keep", "leave-out"], codes,
                answer => Change(understood, codes, answer == other ? s => Scaled(s, BatchProperties.Mass, up ? 1000 : 0.001, other) : answer == "keep" ? null : WithoutMass), first);
        }
    }

    private static void Decide(IncomingUnderstood place, IncomingUnderstood[] understood, Answers own, string id, string text, ImmutableArray<string> choices, ImmutableArray<string> codes, Action<string> apply, Whole? example)
    {
        var answer = own.To(id);
        var at = Array.FindIndex(understood, u => u.File == place.File);
        var current = understood[at];
        var code = id.Contains("unit", StringComparison.Ordinal) ? Codes.UnitMissing : Codes.OddCell;
        understood[at] = current with
        {
            Understanding = current.Understanding with
            {
                Questions = current.Understanding.Questions.Add(new Question(id, code, text, choices, codes, answer) { Consequences = example is null ? [] : [.. choices.Select(c => Consequence(c, example))] }),
            },
        };
        if (answer is not null)
            apply(answer);
    }

    private static string Consequence(string choice, Whole v) => choice switch
    {
        "swap" => $"{v.Code}: from {Text(v.End!.Value)} to {Text(v.Start!.Value)} mg/L",
        "swap-amounts" => $"{v.Code}: {Text(v.Volume!.Value)} mg of powder in {Text(v.Mass!.Value)} mL",
        "h" => $"{v.Code}: {Text(v.Time!.Value * 60)} min",
        "ug/L" => $"{v.Code}: {Text(v.End!.Value / 1000)} mg/L",
        "g" when v.Dose is { } dose => $"{v.Code}: {Text(dose * 1000)} g/L of powder",
        "mg" when v.Dose is { } dose => $"{v.Code}: {Text(dose / 1000)} g/L of powder",
        "keep" => "as written",
        _ => "these values are not used",
    };

    /// <summary>What changes for one sample: its facts, and its readings.</summary>
    private delegate (Sample Sample, Func<Reading, Reading?> Reading) Edit(Sample sample);

    private static void Change(IncomingUnderstood[] understood, ImmutableArray<string> codes, Edit? edit)
    {
        if (edit is null)
            return;
        var swapped = new Dictionary<string, double?>(StringComparer.Ordinal);
        for (var i = 0; i < understood.Length; i++)
        {
            if (understood[i].Understanding.Proposal is not { } proposal)
                continue;
            var edits = proposal.Samples.Where(s => codes.Contains(s.Code)).ToDictionary(s => s.Code, s => edit(s), StringComparer.Ordinal);
            understood[i] = understood[i] with
            {
                Understanding = understood[i].Understanding with
                {
                    Proposal = proposal with
                    {
                        Samples = [.. proposal.Samples.Select(s => edits.TryGetValue(s.Code, out var e) ? e.Sample : s)],
                        Readings = [.. proposal.Readings.Select(r => codes.Contains(r.Sample) ? (edits.TryGetValue(r.Sample, out var e) ? e.Reading : edit(new Sample(r.Sample, SampleRole.Vessel, Ordinal.Facts)).Reading)(r) : r).OfType<Reading>()],
                    },
                },
            };
        }
    }

    private static (Sample, Func<Reading, Reading?>) Thousandth(Sample sample)
        => (sample, r => r.Signal != SpectrometryProperties.ReportedConcentration.Name ? r : r with { Value = r.Value / 1000, Below = r.Below / 1000, U = r.U / 1000, Written = r.Written + " (µg/L, as answered)" });

    private static (Sample, Func<Reading, Reading?>) Thousandfold(Sample sample)
        => (sample, r => r.Signal != SpectrometryProperties.ReportedConcentration.Name ? r : r with { Value = r.Value * 1000, Below = r.Below * 1000, U = r.U * 1000, Written = r.Written + " (mg/L, as answered)" });

    private static (Sample, Func<Reading, Reading?>) Without(Sample sample) => (sample, r => r.Signal == SpectrometryProperties.ReportedConcentration.Name ? r with { Value = null, Written = r.Written + " (left out, as answered)" } : r);

    private static (Sample, Func<Reading, Reading?>) WithoutMass(Sample sample) => (sample with { Facts = sample.Facts.Remove(BatchProperties.Mass.Name) }, r => r);

    private static (Sample, Func<Reading, Reading?>) Scaled(Sample sample, Property property, double factor, string unit)
        => (sample.Fact(property) is { } fact ? sample with { Facts = sample.Facts.SetItem(property.Name, fact with { Value = fact.Value * factor, U = fact.U * factor, Written = $"{fact.Written} (in {unit}, as answered)" }) } : sample, r => r);

    private static (Sample, Func<Reading, Reading?>) Swapped(Sample sample)
    {
        if (sample.Fact(BatchProperties.InitialConcentration) is not { Value: { } start } fact)
            return (sample, r => r);
        double? read = null;
        return (sample, r =>
        {
            if (r.Signal != SpectrometryProperties.ReportedConcentration.Name)
                return r;
            read = r.Value;
            return r with { Value = start, Written = $"{fact.Written} (columns swapped, as answered)" };
        }
        );
    }

    private static IncomingUnderstood Place(Origin? origin, IncomingUnderstood[] understood)
        => understood.FirstOrDefault(u => origin is not null && u.Understanding.Sha256 == origin.Original && u.Understanding.Proposal is not null)
            ?? understood.OrderBy(u => u.Turn).LastOrDefault(u => u.Understanding.Proposal is not null) ?? understood[0];

    private static IEnumerable<Whole> Of(Study before, Study after, StartSolutions solutions)
    {
        var old = before.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        var readings = after.Readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name && r.Value is not null && !after.IsStruck(r)).ToLookup(r => r.Sample, StringComparer.Ordinal);
        var fresh = after.Readings.Skip(before.Readings.Length).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        foreach (var sample in after.Samples.Where(s => s.Role is SampleRole.Vessel or SampleRole.Control))
        {
            // Only what this drop brings or completes.
            if (!fresh.Contains(sample.Code) && old.TryGetValue(sample.Code, out var same) && same.Facts.Count == sample.Facts.Count)
                continue;
            var read = readings[sample.Code].ToList();
            var start = solutions.Of(sample);
            double? end = read.Count > 0 ? read.Average(r => r.Value!.Value * r.Dilution)
                : start?.Value is { } c0 && sample.Number(BatchProperties.ReportedRemoval) is { } removal ? c0 * (1 - (removal / 100)) : null;
            var mass = sample.Role == SampleRole.Control ? null : sample.Fact(BatchProperties.Mass);
            yield return new Whole(sample.Code, start?.Value, end, mass?.Value, sample.Number(BatchProperties.Volume), start?.Origin, read.Count > 0 ? read[0].Origin : null, mass?.Origin, mass?.Written ?? "")
            {
                VolumeAt = sample.Fact(BatchProperties.Volume)?.Origin,
                Time = sample.Number(BatchProperties.ContactTime),
                TimeAt = sample.Fact(BatchProperties.ContactTime)?.Origin,
                OwnUptake = sample.Fact(BatchProperties.ReportedUptake),
            };
        }
    }

    private static string Shown(ImmutableArray<string> codes) => string.Join(", ", codes.Take(6)) + (codes.Length > 6 ? $" and {Ordinal.Text(codes.Length - 6)} more" : "");

    // Four digits, and no powers of ten as long as a person can count the zeros.
    private static string Text(double value)
    {
        var digits = value.ToString("G4", CultureInfo.InvariantCulture);
        return digits.Contains('E', StringComparison.Ordinal) && Math.Abs(value) is > 1e-6 and < 1e9
            ? double.Parse(digits, CultureInfo.InvariantCulture).ToString("0.##########", CultureInfo.InvariantCulture) : digits;
    }

    /// <summary>A vessel as far as facts and reported concentrations tell: mg/L, mg, mL.</summary>
    private sealed record Whole(string Code, double? Start, double? End, double? Mass, double? Volume, Origin? StartAt, Origin? EndAt, Origin? MassAt, string MassWritten)
    {
        /// <summary>Where the volume stands.</summary>
        public Origin? VolumeAt { get; init; }

        /// <summary>Contact time, min.</summary>
        public double? Time { get; init; }

        /// <summary>Where it stands.</summary>
        public Origin? TimeAt { get; init; }

        /// <summary>The uptake that the sheet itself gives, mg/g.</summary>
        public Fact? OwnUptake { get; init; }

        /// <summary>g/L.</summary>
        public double? Dose => Mass / Volume;

        /// <summary>mg of metal per g of powder.</summary>
        public double? Uptake => (Start - End) * Volume / Mass;
    }
}
