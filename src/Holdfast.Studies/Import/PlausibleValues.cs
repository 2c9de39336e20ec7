using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Asks about numbers that cannot be or hardly can: below zero, or far from what was planned.</summary>
internal static class PlausibleValues
{
    // Outside these a mass is asked about; outside a fifth either way it is only mentioned.
    private const double FarBelow = 0.1, FarAbove = 10, NearBelow = 0.8, NearAbove = 1.2;
    private const double FarFromOthers = 50;

    /// <summary>Looks at every number of every row.</summary>
    public static void Ask(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        foreach (var column in columns.Where(c => c is { Use: ColumnUse.Fact, Property.Holds: Holds.Number }))
        {
            var property = column.Property!;
            var values = rows.Select(r => (Row: r, Value: r.Facts.GetValueOrDefault(property.Name)?.Value)).Where(x => x.Value is not null).ToList();
            var doubts = new List<(SampleRow Row, string Why, bool Impossible)>();
            List<double> masses = property == BatchProperties.Mass ? [.. values.Select(v => v.Value!.Value).Where(m => m > 0).Order()] : [];
            foreach (var (row, value) in values)
            {
                if (Plausible.Doubt(property, value!.Value, out var impossible) is { } why)
                {
                    if (impossible || !HasAnEverydayDose(row, column))
                        doubts.Add((row, why, impossible));
                }
                else if (property == BatchProperties.Mass && Mass(row, value.Value, masses, source) is { } far)
                    doubts.Add((row, far, false));
            }
            Settle(doubts, column, source);
        }
        foreach (var row in rows.Where(r => r.Dilution is { } d && Plausible.Doubt(SpectrometryProperties.Dilution, d, out _) is not null))
        {
            var answer = source.Talk.Ask("values:dilution", Codes.OddCell, $"Row {Ordinal.Text(row.Row.Number)} is diluted {Text(row.Dilution!.Value)} times. A dilution factor is 1 or more. "
                + "Keep it, or leave such rows out?", ["leave-out", "keep"], row.Written);
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    private static void Settle(List<(SampleRow Row, string Why, bool Impossible)> doubts, Column column, TableSource source)
    {
        if (doubts.Count == 0)
            return;
        var name = column.Property!.Name;
        var (first, why, _) = doubts[0];
        var impossible = doubts.Any(d => d.Impossible);
        var more = doubts.Count > 1 ? $" ({Ordinal.Text(doubts.Count)} such rows)" : "";
        var text = $"{first.Written}: {column.Property.Title} {first.Facts[name].Written} is {why}{more}. "
            + (impossible ? "Leave the values out, or mend the file." : "Keep them as written, or leave the values out?");
        ImmutableArray<string> choices = impossible ? ["leave-out"] : ["keep", "leave-out"];
        var answer = source.Talk.Ask("values:" + name, Codes.OddCell, text, choices, [.. doubts.Select(d => d.Row.Written)]);
        foreach (var (row, reason, cannotBe) in doubts)
        {
            row.IsUndecided |= answer is null || (cannotBe && answer is not "leave-out");
            if (answer is "leave-out" || cannotBe)
            {
                var fact = row.Facts[name];
                column.Note(row.Row.Number, row.Row.At(column.Index), reason);
                row.Facts = row.Facts.SetItem(name, fact with { Value = null });
            }
        }
    }

    // Kilograms in cubic metres are a pilot plant: large numbers whose dose is an everyday one, under a unit that the sheet states.
    private static bool HasAnEverydayDose(SampleRow row, Column column)
        => column.Unit is not null && (column.Property == BatchProperties.Mass || column.Property == BatchProperties.Volume)
            && row.Facts.GetValueOrDefault(BatchProperties.Mass.Name)?.Value is { } mass && row.Facts.GetValueOrDefault(BatchProperties.Volume.Name)?.Value is > 0 and var volume
            && mass / volume is >= Sense.PhysicalSense.SmallestDose and <= Sense.PhysicalSense.LargestDose;

    private static string? Mass(SampleRow row, double mass, List<double> others, TableSource source)
    {
        var sample = row.Code is null ? null : source.Known.GetValueOrDefault(row.Code);
        double? Number(Property p) => row.Facts.GetValueOrDefault(p.Name)?.Value ?? sample?.Number(p);
        if (mass <= 0)
            return null;
        if (Number(BatchProperties.Dose) is > 0 and var dose && Number(BatchProperties.Volume) is > 0 and var volume)
        {
            var planned = dose * volume;
            var ratio = mass / planned;
            if (ratio is < FarBelow or > FarAbove)
                return $"{Text(Math.Round(ratio, 3))} times the planned {Text(planned)} mg";
            if (ratio is < NearBelow or > NearAbove)
                source.Talk.Note(Codes.OddCell, Weight.Note, $"{row.Written} weighs {Text(mass)} mg, planned were {Text(planned)} mg. It is kept as weighed.", row.Written);
            return null;
        }
        var middle = others[others.Count / 2];
        return others.Count >= 3 && (mass > middle * FarFromOthers || mass < middle / FarFromOthers) ? $"{Text(Math.Round(mass / middle, 3))} times what most vessels hold" : null;
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
