using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Sense;

/// <content>A start solution that reads far from what the sheet says of every vessel: which is C0 is asked.</content>
internal static partial class PhysicalSense
{
    private static void WhichStart(Study after, StartSolutions solutions, List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        // Several levels have several solutions.
        if (!solutions.AreOne)
            return;
        var samples = after.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        var stated = vessels.Where(v => v.StartAt is not null && samples[v.Code].Fact(BatchProperties.InitialConcentration) is not null).ToList();
        if (stated.Count == 0 || stated.Exists(v => v.Start != stated[0].Start) || stated[0].Start is not { } said || Tolerances.SameSolution(said, solutions.Mean))
            return;
        var place = Place(stated[0].StartAt, understood);
        ImmutableArray<string> codes = [.. stated.Select(v => v.Code)];
        var controls = vessels.Where(v => v.End is not null && samples[v.Code].Role == SampleRole.Control).ToList();
        var beside = controls.Count > 0 ? $" The controls without powder ({Shown([.. controls.Select(c => c.Code)])}) read {Text(controls.Average(c => c.End!.Value))}." : "";
        Decide(place, understood, answers.For(place.File.Name), "which-start", $"{stated[0].StartAt!.Column ?? "C0"} says that the vessels began at {Text(said)} mg/L, but {Shown([.. solutions.Each.Select(s => s.Sample.Code)])} reads {Text(solutions.Mean)} mg/L.{beside} Which is C0?",
            ["measured", "as-stated", "leave-out"], codes, answer => Change(understood, codes, answer switch { "measured" => WithoutStart, "as-stated" => null, _ => Without }), null);
    }

    // One solution read before and after a series agrees with itself; two that differ by more were not one, and their mean is right for no vessel.
    private static void StartsThatDiffer(Study after, StartSolutions solutions, List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        if (solutions.Each.Length < 2 || !solutions.AreOne || Tolerances.SameStart(solutions.Each.Min(s => s.Read), solutions.Each.Max(s => s.Read)))
            return;
        var samples = after.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        ImmutableArray<string> codes = [.. vessels.Where(v => samples[v.Code].Fact(BatchProperties.InitialConcentration) is null && samples[v.Code].Words(BatchProperties.StartSolution) is null).Select(v => v.Code)];
        if (codes.IsEmpty)
            return;
        var place = Place(solutions.Each[0].First.Origin, understood);
        var each = solutions.Each.DistinctBy(s => s.Sample.Code).ToList();
        var apart = 100 * (1 - solutions.Each.Min(s => s.Read) / solutions.Each.Max(s => s.Read));
        Decide(place, understood, answers.For(place.File.Name), "starts-differ", $"The start solution reads {string.Join(" and ", each.Select(s => $"{Text(s.Read)} mg/L ({s.Sample.Code})"))}, {Text(Math.Round(apart))} % apart: two readings of one solution differ less. Which vessels began with which? One answer holds for all of this drop; where it is not one, set the start solution vessel by vessel.",
            ["mean", .. each.Select(s => s.Sample.Code), "leave-out"], codes,
            answer => Change(understood, codes, answer == "mean" ? null : each.Find(s => s.Sample.Code == answer) is { Sample: not null } chosen ? s => StartedWith(s, chosen.Sample.Code, chosen.First.Origin) : Without), null);
    }

    private static (Sample, Func<Reading, Reading?>) StartedWith(Sample sample, string solution, Origin origin)
        => (sample with { Facts = sample.Facts.SetItem(BatchProperties.StartSolution.Name, new Fact(BatchProperties.StartSolution.Name, null, null, null, solution, solution + " (as answered)", origin)) }, r => r);

    private static (Sample, Func<Reading, Reading?>) WithoutStart(Sample sample) => (sample with { Facts = sample.Facts.Remove(BatchProperties.InitialConcentration.Name) }, r => r);
}
