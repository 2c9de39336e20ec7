using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Sense;

/// <content>What only the rows together show: columns exchanged, a unit that changes on the way down, results of her own that do not close.</content>
internal static partial class PhysicalSense
{
    /// <summary>Fewest vessels that show a habit.</summary>
    private const int FewestAlike = 4;

    /// <summary>Her own uptake and the one worked out agree within this share; common practice of rounding.</summary>
    internal const double OwnResultWithin = 0.1;

    /// <summary>One factor between her uptake and the one worked out: it scatters by less than this share, as rounding does.</summary>
    private const double OneFactorWithin = 0.02;

    private const double MinutesOfAnHour = 60;

    // A vessel of the same time reads within this share of the other.
    private const double LeftOfAReplicate = 0.2;

    /// <summary>A series over time that goes on for longer than a week, in min, may be minutes under a heading of hours; common practice.</summary>
    internal const double LongestUsual = 7 * 24 * 60;

    /// <summary>What remains of it as minutes still is a series over time.</summary>
    private const double ShortestUsual = 30;

    // One mass for all, and volumes like weighings: "50, 50, 50" under mg and "25.3, 51.3, 102.7", or "19.8, 20.3, 19.5", under mL.
    private static void SwappedAmounts(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        foreach (var file in vessels.Where(v => v is { Mass: > 0, Volume: > 0, MassAt: not null, VolumeAt: not null } && v.MassAt.Original == v.VolumeAt.Original).GroupBy(v => v.MassAt!.Original, StringComparer.Ordinal).Select(g => g.ToList()))
        {
            var volumes = file.Select(v => v.Volume!.Value).ToList();
            if (SomeSwapped(file) is { Count: > 0 } some)
            {
                ImmutableArray<string> these = [.. some.Select(v => v.Code)];
                var of = Place(some[0].MassAt, understood);
                Decide(of, understood, answers.For(of.File.Name), "amounts", $"{Shown(these)}: {some[0].MassAt!.Column ?? "the mass"} is {Text(some[0].Mass!.Value)}, as {some[0].VolumeAt!.Column ?? "the volume"} is elsewhere, and {Text(some[0].Volume!.Value)} stands under the volume. Do the two stand under each other's headings there?",
                    ["swap-amounts", "keep", "leave-out"], these, answer => Change(understood, these, answer == "swap-amounts" ? AmountsSwapped : answer == "keep" ? null : WithoutMass), some[0]);
                continue;
            }

            if (file.Count < FewestAlike || file.Any(v => !v.Mass!.Value.Equals(file[0].Mass!.Value)) || !IsRound(file[0].Mass!.Value)
                || volumes.Distinct().Count() < FewestAlike || volumes.Count(v => !IsRound(v)) * 2 <= volumes.Count)
                continue;
            var (mass, volume) = (file[0].MassAt!.Column ?? "the mass", file[0].VolumeAt!.Column ?? "the volume");
            ImmutableArray<string> codes = [.. file.Select(v => v.Code)];
            var place = Place(file[0].MassAt, understood);
            Decide(place, understood, answers.For(place.File.Name), "amounts", $"{mass} is {Text(file[0].Mass!.Value)} for every vessel, and {volume} runs from {Text(volumes.Min())} to {Text(volumes.Max())} like weighings. Do {mass} and {volume} stand under each other's headings?",
                ["swap-amounts", "keep", "leave-out"], codes, answer => Change(understood, codes, answer == "swap-amounts" ? AmountsSwapped : answer == "keep" ? null : WithoutMass), file[0]);
        }
    }

    // "24.7 | 40", "24.9 | 40", then "40 | 25.1": the one volume of all others under the mass, and a mass like theirs under the volume.
    private static List<Whole> SomeSwapped(List<Whole> file)
    {
        if (file.GroupBy(v => v.Volume!.Value).MaxBy(g => g.Count()) is not { } most || most.Count() < FewestAlike || most.Count() * 2 <= file.Count || most.Count() == file.Count)
            return [];
        var (least, largest) = (most.Min(v => v.Mass!.Value), most.Max(v => v.Mass!.Value));
        var others = file.Where(v => !v.Volume!.Value.Equals(most.Key)).ToList();
        return largest < most.Key && others.TrueForAll(v => v.Mass!.Value.Equals(most.Key) && v.Volume!.Value > least * (1 - OwnResultWithin) && v.Volume.Value < largest * (1 + OwnResultWithin)) ? others : [];
    }

    // What is poured is a round number; what is weighed is not.
    private static bool IsRound(double value) => Math.Abs(value - (5 * Math.Round(value / 5))) < 1e-9 || value is 1 or 2 or 3 or 4;

    private static (Sample, Func<Reading, Reading?>) AmountsSwapped(Sample sample) => Exchanged(sample, BatchProperties.Mass, BatchProperties.Volume);

    // The numbers change places and keep what they were written as.
    private static (Sample, Func<Reading, Reading?>) Exchanged(Sample sample, Property one, Property other)
        => (sample.Fact(one) is { } a && sample.Fact(other) is { } b ? sample with { Facts = sample.Facts.SetItem(one.Name, From(a, b)).SetItem(other.Name, From(b, a)) } : sample, r => r);

    private static Fact From(Fact fact, Fact other) => fact with { Value = other.Value, U = null, Written = $"{other.Written} (columns exchanged, as answered)" };

    // 5, 15, 30, 60, then 2, 4, 8, 24 while the metal goes on falling: from there on the times are hours.
    private static void FallingTimes(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        foreach (var file in vessels.Where(v => v is { Time: > 0, TimeAt: not null, End: not null }).GroupBy(v => v.TimeAt!.Original, StringComparer.Ordinal).Select(g => g.ToList()))
        {
            var falls = Enumerable.Range(1, Math.Max(0, file.Count - 1)).Where(i => file[i].Time < file[i - 1].Time).ToList();
            if (falls is not [var at] || at < 3 || file.Count - at < 2)
                continue;
            var (before, after) = (file[..at], file[at..]);
            var last = before[^1];
            if (!Rises(before) || !Rises(after) || after.Exists(v => before.Exists(b => b.Time.Equals(v.Time) && v.End > b.End * (1 - LeftOfAReplicate)) || v.End > last.End * (1 + StartExceededBy) || v.Start != last.Start)
                || after[0].Time * MinutesOfAnHour <= last.Time || Apart(before, after, v => v.Dose ?? 1))
                continue;
            ImmutableArray<string> codes = [.. after.Select(v => v.Code)];
            var heading = after[0].TimeAt!.Column ?? "the contact time";
            var place = Place(after[0].TimeAt, understood);
            Decide(place, understood, answers.For(place.File.Name), "time-unit-of-rows:" + heading, $"{Shown(codes)}: {heading} falls from {Text(last.Time!.Value)} to {Text(after[0].Time!.Value)}, and what is left in the water goes on falling. Are these hours (h) under a heading of minutes?",
                ["h", "keep", "leave-out"], codes, answer => Change(understood, codes, answer == "h" ? s => Scaled(s, BatchProperties.ContactTime, MinutesOfAnHour, "h") : answer == "keep" ? null : WithoutTime), after[0]);
        }
    }

    // 5, 10, 20, 40, 60, 120, 240 under h: ten days on a shaker are rare, four hours are usual.
    private static void LongTimes(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        foreach (var file in vessels.Where(v => v is { Time: > 0, TimeAt: not null }).GroupBy(v => v.TimeAt!.Original, StringComparer.Ordinal).Select(g => g.ToList()))
        {
            var (most, least) = (file.Max(v => v.Time!.Value), file.Min(v => v.Time!.Value));
            if (most < LongestUsual || file.Select(v => v.Time).Distinct().Count() < FewestAlike || most / MinutesOfAnHour < ShortestUsual || least / MinutesOfAnHour > MinutesOfAnHour)
                continue;
            ImmutableArray<string> codes = [.. file.Select(v => v.Code)];
            var heading = file[0].TimeAt!.Column ?? "the contact time";
            var place = Place(file[0].TimeAt, understood);
            Decide(place, understood, answers.For(place.File.Name), "time-unit:" + heading, $"{heading} runs to {Text(most / MinutesOfAnHour)} h, {Text(most / MinutesOfAnHour / 24)} days. Are these times hours, or minutes ({Text(most / MinutesOfAnHour)} min)?",
                ["h", "min", "leave-out"], codes, answer => Change(understood, codes, answer == "min" ? s => Scaled(s, BatchProperties.ContactTime, 1 / MinutesOfAnHour, "min") : answer == "h" ? null : WithoutTime), file[0]);
        }
    }

    private static bool Rises(List<Whole> vessels) => Enumerable.Range(1, vessels.Count - 1).All(i => vessels[i].Time > vessels[i - 1].Time);

    private static (Sample, Func<Reading, Reading?>) WithoutTime(Sample sample) => (sample with { Facts = sample.Facts.Remove(BatchProperties.ContactTime.Name) }, r => r);

    // Her own uptake does not follow from her own numbers: one of them is not what it says. By one factor throughout it is an amount, which is hers to say; elsewhere it is said.
    private static void OwnResults(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        foreach (var file in vessels.Where(v => v is { OwnUptake.Value: > 0, Uptake: > 0 }).GroupBy(v => v.OwnUptake!.Origin.Original, StringComparer.Ordinal).Select(g => g.ToList()))
        {
            var off = file.Where(v => Math.Abs(Ratio(v) - 1) > OwnResultWithin).ToList();
            if (off.Count == 0)
                continue;
            var place = Place(off[0].OwnUptake!.Origin, understood);
            var ratio = Middle(off, Ratio);
            var alike = off.Count >= FewestAlike && off.TrueForAll(v => Math.Abs((Ratio(v) / ratio) - 1) < OwnResultWithin);
            var first = off[0];
            ImmutableArray<string> codes = [.. off.Select(v => v.Code)];
            if (alike && off.Count == file.Count && first.Volume is { } all && off.TrueForAll(v => Math.Abs((Ratio(v) / ratio) - 1) < OneFactorWithin))
            {
                Decide(place, understood, answers.For(place.File.Name), "own-uptake", $"{first.OwnUptake!.Origin.Column ?? "Your uptake"} is {Text(ratio)} times what C0, Ce, volume and mass beside it give, in every row: {Text(first.OwnUptake.Value!.Value)} against {Text(first.Uptake!.Value)} mg/g for {first.Code}. "
                    + $"A volume of {Text(all * ratio)} mL instead of {Text(all)} mL would fit, or a mass so many times smaller. Do the volume and the mass hold as they stand?", ["keep", "leave-out"], codes, answer => Change(understood, codes, answer == "keep" ? null : WithoutMass), first);
                continue;
            }

            var sentence = $"{first.OwnUptake!.Origin.Column ?? "Your uptake"} of {Shown(codes)} is not what C0, Ce, volume and mass beside it give: {Text(first.OwnUptake.Value!.Value)} against {Text(first.Uptake!.Value)} mg/g for {first.Code}"
                + (alike && first.Volume is { } volume ? $", {Text(ratio)} times throughout. A volume of {Text(volume * ratio)} mL instead of {Text(volume)} mL would fit, or a mass so many times smaller" : "") + ". Which of them holds? It is worked out from what stands beside it.";
            var index = Array.FindIndex(understood, u => u.File == place.File);
            understood[index] = understood[index] with
            {
                Understanding = understood[index].Understanding with { Findings = understood[index].Understanding.Findings.Add(Finding.Of(Codes.OddCell, Weight.Caution, sentence, [.. codes])) },
            };
        }
    }

    /// <summary>A removal that falls by more than this with more and more powder, in per cent, is rather what remains.</summary>
    internal const double FallsBy = 20;

    // 90, 78, 55, 33 % with 6, 12, 25, 45 mg in the same water: more powder takes out more.
    private static void RemovalThatFalls(Study after, List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        var samples = after.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        var stated = vessels.Where(v => v is { Dose: > 0, Start: > 0 }).Select(v => (Vessel: v, Removal: samples[v.Code].Fact(BatchProperties.ReportedRemoval))).Where(v => v.Removal?.Value is not null).ToList();
        foreach (var file in stated.GroupBy(v => v.Removal!.Origin.Original, StringComparer.Ordinal).Select(g => g.OrderBy(v => v.Vessel.Dose).ToList()))
        {
            if (file.Count < FewestAlike || !Tolerances.SameStart(file.Min(v => v.Vessel.Start!.Value), file.Max(v => v.Vessel.Start!.Value)) || file[0].Removal!.Value - file[^1].Removal!.Value <= FallsBy
                || Enumerable.Range(1, file.Count - 1).Any(i => file[i].Vessel.Dose <= file[i - 1].Vessel.Dose || file[i].Removal!.Value >= file[i - 1].Removal!.Value))
                continue;
            ImmutableArray<string> codes = [.. file.Select(v => v.Vessel.Code)];
            var heading = file[0].Removal!.Origin.Column ?? "the removal";
            var place = Place(file[0].Removal!.Origin, understood);
            Decide(place, understood, answers.For(place.File.Name), "removed-or-left", $"{heading} falls from {Text(file[0].Removal!.Value!.Value)} to {Text(file[^1].Removal!.Value!.Value)} % as the powder grows from {codes[0]} to {codes[^1]}, in the same water. Is it what was removed, or what remained?",
                ["remaining", "removed", "leave-out"], codes, answer => Change(understood, codes, answer == "remaining" ? AsRemaining : answer == "removed" ? null : s => (s with { Facts = s.Facts.Remove(BatchProperties.ReportedRemoval.Name) }, r => r)), null);
        }
    }

    private static (Sample, Func<Reading, Reading?>) AsRemaining(Sample sample) => (sample.Fact(BatchProperties.ReportedRemoval) is { } removal
        ? sample with { Facts = sample.Facts.Remove(removal.Property).SetItem(BatchProperties.ReportedRemaining.Name, removal with { Property = BatchProperties.ReportedRemaining.Name, Written = $"{removal.Written} (what remained, as answered)" }) } : sample, r => r);

    // "29.7 | 5", "29.3 | 10", then "15 | 29.4": masses of the other rows under the time.
    private static void TimesUnderMass(List<Whole> vessels, IncomingUnderstood[] understood, Answers answers)
    {
        foreach (var file in vessels.Where(v => v is { Mass: > 0, Time: > 0, MassAt: not null, TimeAt: not null } && v.MassAt.Original == v.TimeAt.Original).GroupBy(v => v.MassAt!.Original, StringComparer.Ordinal).Select(g => g.ToList()))
        {
            var off = file.Where(v => IsRound(v.Mass!.Value) && !IsRound(v.Time!.Value)).ToList();
            var sound = file.Except(off).ToList();
            if (off.Count < 2 || sound.Count < FewestAlike || off.Select(v => v.Mass).Distinct().Count() < off.Count)
                continue;
            var (least, most) = (sound.Min(v => v.Mass!.Value), sound.Max(v => v.Mass!.Value));
            if (most > least * (1 + OwnResultWithin) || !off.TrueForAll(v => v.Time > least * (1 - OwnResultWithin) && v.Time < most * (1 + OwnResultWithin)) || !off.Exists(v => v.Mass > most * 2 || v.Mass < least / 2))
                continue;
            ImmutableArray<string> codes = [.. off.Select(v => v.Code)];
            var (mass, time) = (off[0].MassAt!.Column ?? "the mass", off[0].TimeAt!.Column ?? "the contact time");
            var place = Place(off[0].MassAt, understood);
            Decide(place, understood, answers.For(place.File.Name), "mass-and-time", $"{Shown(codes)}: {mass} runs from {Text(off.Min(v => v.Mass!.Value))} to {Text(off.Max(v => v.Mass!.Value))}, and {time} stays near {Text(off[0].Time!.Value)}, as {mass} does elsewhere. Do the two stand under each other's headings there?",
                ["swap", "keep", "leave-out"], codes, answer => Change(understood, codes, answer == "swap" ? s => Exchanged(s, BatchProperties.Mass, BatchProperties.ContactTime) : answer == "keep" ? null : s => (s with { Facts = s.Facts.Remove(BatchProperties.Mass.Name).Remove(BatchProperties.ContactTime.Name) }, r => r)), null);
        }
    }

    private static double Ratio(Whole vessel) => vessel.OwnUptake!.Value!.Value / vessel.Uptake!.Value;
}
