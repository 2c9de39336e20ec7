using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>New samples, and facts that are new for known ones. A fact that is known with another value is asked about.</summary>
internal static class SampleFacts
{
    private const double SamePhWithin = 0.5;

    /// <summary>The samples that these rows bring, in the order of their first row.</summary>
    public static ImmutableArray<Sample> Of(List<SampleRow> rows, TableSource source)
    {
        var known = source.Known;
        var brought = new Dictionary<string, Sample>(StringComparer.Ordinal);
        var order = new List<string>();
        var clashes = new List<(SampleRow Row, Fact Fact, Fact Before)>();
        foreach (var row in rows)
        {
            var before = known.GetValueOrDefault(row.Code!);
            if (before is null && !brought.ContainsKey(row.Code!))
            {
                brought[row.Code!] = new Sample(row.Code!, row.Role ?? SampleRole.Vessel, row.Facts);
                order.Add(row.Code!);
                continue;
            }

            if (!brought.TryGetValue(row.Code!, out var sample))
            {
                sample = new Sample(row.Code!, before?.Role ?? row.Role ?? SampleRole.Vessel, Ordinal.Facts);
                order.Add(row.Code!);
            }
            if (row.Role is { } role && role != sample.Role)
            {
                source.Talk.Note(Codes.Duplicate, Weight.Caution, $"Row {Ordinal.Text(row.Row.Number)} says that {row.Code} is a {role}; it stays a {sample.Role}.", row.Code!);
            }
            foreach (var fact in row.Facts.Values)
            {
                var earlier = sample.Facts.GetValueOrDefault(fact.Property) ?? before?.Facts.GetValueOrDefault(fact.Property);
                if (earlier is null || (IsEmpty(earlier) && !IsEmpty(fact)))
                    sample = sample with { Facts = sample.Facts.SetItem(fact.Property, fact) };
                else if (string.Equals(fact.Property, SampleProperties.Remark.Name, StringComparison.Ordinal) && !IsSame(earlier, fact))
                    sample = sample with { Facts = sample.Facts.SetItem(fact.Property, Together(earlier, fact)) };
                else if (WrittenRounder.Source(earlier, fact) is { } exact)
                    sample = exact == earlier ? sample : sample with { Facts = sample.Facts.SetItem(fact.Property, fact) };
                else if (!IsSame(earlier, fact) && !IsEmpty(fact))
                    clashes.Add((row, fact, earlier));
            }
            brought[row.Code!] = sample;
        }
        Settle(clashes, brought, source);
        return [.. order.Select(c => brought[c]).Where(s => s.Facts.Count > 0 || !known.ContainsKey(s.Code))];
    }

    private static void Settle(List<(SampleRow Row, Fact Fact, Fact Before)> clashes, Dictionary<string, Sample> brought, TableSource source)
    {
        clashes = [.. clashes.Except(MeasuredPh(clashes, brought, source))];
        clashes = [.. clashes.Except(ReadAgain(clashes, brought, source))];
        if (clashes.Count == 0)
            return;
        var (row, fact, before) = clashes[0];
        var text = $"{row.Code} has {Title(fact)} {before.Written} already ({before.Origin}); this file says {fact.Written}."
            + (clashes.Count > 1 ? $" {Ordinal.Text(clashes.Count)} values differ so." : "") + " Keep the earlier, or take the new?";
        var answer = source.Talk.Ask("differing", Codes.Duplicate, text, ["keep", "take"], [.. clashes.Select(c => c.Row.Code!).Distinct(StringComparer.Ordinal)]);
        foreach (var clash in clashes)
        {
            clash.Row.IsUndecided |= answer is null;
            if (answer is "take")
                brought[clash.Row.Code!] = brought[clash.Row.Code!] with { Facts = brought[clash.Row.Code!].Facts.SetItem(clash.Fact.Property, clash.Fact) };
        }
    }

    // A second element beside the result, read as often as the result itself: its mean is kept, as of any repeated reading.
    private static List<(SampleRow Row, Fact Fact, Fact Before)> ReadAgain(List<(SampleRow Row, Fact Fact, Fact Before)> clashes, Dictionary<string, Sample> brought, TableSource source)
    {
        var again = clashes.Where(c => c is { Fact.Value: not null, Before.Value: not null, Row.Signals.Count: > 0 } && c.Before.Origin.Original == source.Sha256
            && Property.Named(c.Fact.Property) is { Unit.Length: > 0 } p && p.Unit == SpectrometryProperties.ReportedConcentration.Unit && p != BatchProperties.InitialConcentration && p != SpectrometryProperties.StandardConcentration).ToList();
        foreach (var group in again.GroupBy(c => (c.Row.Code, c.Fact.Property)))
        {
            Fact[] all = [group.First().Before, .. group.Select(c => c.Fact)];
            var sample = brought[group.Key.Code!];
            brought[group.Key.Code!] = sample with { Facts = sample.Facts.SetItem(group.Key.Property, all[0] with { Value = all.Average(f => f.Value!.Value), Written = "mean of " + string.Join(", ", all.Select(f => f.Written)) }) };
        }

        return again;
    }

    // A sheet says which pH was aimed at, 3 or 5.5, and the meter's log what it was: the measured one holds.
    private static List<(SampleRow Row, Fact Fact, Fact Before)> MeasuredPh(List<(SampleRow Row, Fact Fact, Fact Before)> clashes, Dictionary<string, Sample> brought, TableSource source)
    {
        var levels = clashes.Where(c => c.Fact.Property == BatchProperties.StartPh.Name && c is { Fact.Value: not null, Before.Value: not null } && Math.Abs(c.Fact.Value.Value - c.Before.Value.Value) <= SamePhWithin).ToList();
        var earlier = levels.Count > 0 && levels.TrueForAll(c => IsAimedAt(c.Before)) && levels.Exists(c => !IsAimedAt(c.Fact));
        var later = levels.Count > 0 && levels.TrueForAll(c => IsAimedAt(c.Fact)) && levels.Exists(c => !IsAimedAt(c.Before));
        if (earlier == later)
            return [];
        var (row, fact, before) = levels[0];
        var (aimed, measured) = earlier ? (before, fact) : (fact, before);
        var takes = source.Talk.Assume("measured-ph", Codes.Duplicate, $"{row.Code}: pH {aimed.Written} was aimed at ({aimed.Origin}), {measured.Written} was measured ({measured.Origin}), and so for {Ordinal.Text(levels.Count)} values. The measured pH is kept.", ["measured", "aimed-at"], [.. levels.Select(c => c.Row.Code!).Distinct(StringComparer.Ordinal)]) == "measured";
        foreach (var clash in levels.Where(_ => takes == earlier))
            brought[clash.Row.Code!] = brought[clash.Row.Code!] with { Facts = brought[clash.Row.Code!].Facts.SetItem(clash.Fact.Property, clash.Fact) };
        return levels;
    }

    private static bool IsAimedAt(Fact fact) => Math.Abs((2 * fact.Value!.Value) - Math.Round(2 * fact.Value.Value)) < 1e-9;

    // Remarks of two sheets do not contradict each other: both are kept.
    private static Fact Together(Fact earlier, Fact fact)
        => earlier.Words!.Contains(fact.Words!, StringComparison.Ordinal) ? earlier : fact with { Words = earlier.Words + "; " + fact.Words, Written = earlier.Written + "; " + fact.Written };

    private static bool IsEmpty(Fact fact) => fact is { Value: null, Below: null, Words: null };

    private static bool IsSame(Fact a, Fact b)
        => Nullable.Equals(a.Value, b.Value) && Nullable.Equals(a.Below, b.Below) && string.Equals(a.Words, b.Words, StringComparison.Ordinal);

    private static string Title(Fact fact) => Property.Named(fact.Property)?.Title ?? fact.Property;
}
