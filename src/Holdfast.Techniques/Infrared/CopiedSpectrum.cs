using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Infrared;

/// <summary>Two columns of one table that are the same to the last digit: measured spectra never share their noise, so one was pasted twice.</summary>
internal static class CopiedSpectrum
{
    private const int FewestRows = 50;

    /// <summary>Columns to leave out; empty for none, null while it is not answered.</summary>
    /// <param name="source">The file.</param>
    /// <param name="table">Its table.</param>
    /// <param name="pairs">Its spectra.</param>
    /// <param name="mark">The decimal mark.</param>
    public static ImmutableHashSet<int>? Ask(MeasurementSource source, MeasuredTable table, ImmutableArray<(int X, int Y)> pairs, DecimalMark mark)
    {
        var seen = new List<(int Column, ImmutableArray<double?> Numbers)>();
        foreach (var (_, y) in pairs)
        {
            var numbers = table.Numbers(y, mark);
            // An empty beam is the same everywhere and no copy of anything.
            if (seen.Find(s => s.Numbers.SequenceEqual(numbers)) is { Numbers.IsDefault: false } same && numbers.OfType<double>().Distinct().Count() >= FewestRows)
            {
                var (first, second) = (table.Named(same.Column), table.Named(y));
                var answer = source.Talk.Ask(source.Question("copied"), Codes.Duplicate, $"“{second}” is the same as “{first}” in every digit, noise included: was the column pasted twice? Leave it out, or keep both as they are?", ["leave-out", "keep"], first, second);
                return answer is null ? null : answer == "leave-out" ? [y] : [];
            }

            seen.Add((y, numbers));
        }

        return [];
    }
}
