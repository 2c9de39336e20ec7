using System.Collections.Immutable;
using Holdfast.BatchSorption;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Sense;

/// <content>Controls without powder that lost metal: what vanished there was not taken up, and the vessel beside is in doubt.</content>
internal static partial class PhysicalSense
{
    /// <summary>
    /// Share of its start that a control must have lost to be named while files are read: twice the loss that is worth correcting, since nothing is known of the scatter of
    /// start and end yet.
    /// </summary>
    internal const double ControlLostFrom = 2 * ControlCorrection.LossWorthCorrecting;

    private const int FewestOfOneStart = 2;

    // Powder moves the pH: a control set to the pH of a vessel ends further from it than two of one kind do.
    private const double SamePhWithin = 0.5;

    /// <summary>Share of its start that every flask without powder must have lost before the start that a line states is doubted rather than the flasks.</summary>
    internal const double StartDoubtedFrom = 0.35;

    // "start 50 mg/L" in the title, and two flasks without powder that read 25: made up at half, or read diluted.
    private static void StartOfControls(Study after, List<Whole> all, IncomingUnderstood[] understood, Answers answers)
    {
        var samples = after.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        foreach (var line in all.Where(v => v is { Start: > 0, End: not null, StartAt: { Column: null } }).GroupBy(v => (v.StartAt!.Original, v.Start)).Select(g => g.ToList()))
        {
            var controls = line.Where(v => samples[v.Code].Role == SampleRole.Control).ToList();
            var vessels = line.Except(controls).ToList();
            if (controls.Count < FewestOfOneStart || vessels.Count == 0 || controls.Exists(c => c.End > c.Start * (1 - StartDoubtedFrom)) || !Tolerances.SameStart(controls.Min(c => c.End!.Value), controls.Max(c => c.End!.Value)))
                continue;
            var read = controls.Average(c => c.End!.Value);
            ImmutableArray<string> codes = [.. vessels.Select(v => v.Code)];
            var place = Place(controls[0].EndAt, understood);
            Decide(place, understood, answers.For(place.File.Name), "start-of-controls", $"A line says that all began with {Text(controls[0].Start!.Value)} mg/L; {Shown([.. controls.Select(c => c.Code)])}, without powder, read {Text(read)} mg/L. Which did the vessels begin with?",
                ["measured", "line", "leave-out"], codes, answer => Change(understood, codes, answer switch
                {
                    "line" => null,
                    "measured" => s => (s.Fact(BatchProperties.InitialConcentration) is { } start ? s with { Facts = s.Facts.SetItem(BatchProperties.InitialConcentration.Name, start with { Value = read, U = null, Written = $"{Text(read)} (as the flasks without powder, as answered)" }) } : s, r => r),
                    _ => s => (s with { Facts = s.Facts.Remove(BatchProperties.InitialConcentration.Name) }, r => r),
                }), null);
        }
    }

    private static void ControlsThatLost(Study before, Study after, List<Whole> all, IncomingUnderstood[] understood)
    {
        var samples = after.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        double? Ph(Whole v) => samples[v.Code].Number(BatchProperties.EndPh) ?? samples[v.Code].Number(BatchProperties.StartPh);
        bool IsControl(Whole v) => samples[v.Code].Role == SampleRole.Control;
        var read = all.Where(v => v is { Start: > 0, End: not null }).ToList();
        var controls = read.Where(IsControl).ToList();
        if (controls.Count == 0)
            return;
        var doubtful = read.Where(v => !IsControl(v)).Select(v => (Vessel: v, Control: controls.Where(c => Tolerances.SameStart(v.Start!.Value, c.Start!.Value) && (Ph(c) is null) == (Ph(v) is null))
                .Select(c => (Control: c, Apart: Ph(c) is { } there && Ph(v) is { } here ? Math.Abs(here - there) : 0)).Where(c => c.Apart <= SamePhWithin).OrderBy(c => c.Apart).Select(c => c.Control).FirstOrDefault()))
            .Where(p => p.Control is { } c && c.End < c.Start * (1 - ControlLostFrom)).ToList();
        foreach (var group in doubtful.GroupBy(p => p.Control!.Code, StringComparer.Ordinal).Where(g => before.Samples.All(s => s.Code != g.Key) || g.Any(p => before.Samples.All(s => s.Code != p.Vessel.Code))))
        {
            var control = group.First().Control!;
            ImmutableArray<string> codes = [.. group.Select(p => p.Vessel.Code)];
            var place = Place(control.EndAt, understood);
            var at = Array.FindIndex(understood, u => u.File == place.File);
            var where = Ph(control) is { } ph ? $" at pH {Text(ph)}" : "";
            understood[at] = understood[at] with
            {
                Understanding = understood[at].Understanding with
                {
                    Findings = understood[at].Understanding.Findings.Add(Finding.Of(Codes.OddCell, Weight.Caution, $"{Shown(codes)}: the control {control.Code}{where} lost {Text(Math.Round(100 * (1 - (control.End!.Value / control.Start!.Value))))} % without powder, so what {(codes.Length == 1 ? "this vessel" : "these vessels")} lost is not all uptake. A solid may have formed, or the wall took it. Strike {(codes.Length == 1 ? "it" : "them")}, or say so beside the result.", [.. codes, control.Code])),
                },
            };
        }
    }
}
