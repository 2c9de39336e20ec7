using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Acts;

/// <summary>One value for many samples, before it is kept: what it fills, what is recorded already, and what looks unlikely.</summary>
/// <param name="Property">Which fact.</param>
/// <param name="Fills">Cells in which nothing is recorded yet.</param>
/// <param name="Replaces">Cells in which something else is recorded; it stays unless that is asked for.</param>
/// <param name="Same">How many samples have this very value.</param>
/// <param name="Doubts">Why the value hardly can be, a sentence a kind; empty for none.</param>
public sealed record ConstantForMany(
    Property Property, ImmutableArray<TypedCell> Fills, ImmutableArray<(TypedCell Cell, string Recorded)> Replaces, int Same, ImmutableArray<string> Doubts)
{
    /// <summary>Works out what a value would do.</summary>
    /// <param name="study">The study.</param>
    /// <param name="samples">The samples it is for.</param>
    /// <param name="property">Which fact.</param>
    /// <param name="text">The value as typed, with a unit where it is not the property's own.</param>
    /// <param name="trouble">What is wrong with it; "" when nothing is.</param>
    public static ConstantForMany? Of(Study study, ImmutableArray<Sample> samples, Property property, string text, out string trouble)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(property);
        if (TypedFact.Read("the vessel", property, text, out trouble, study.Analyte) is not { } fact)
            return null;
        var shown = TypedFact.Shown(fact);
        var (fills, replaces, doubts, same) = (ImmutableArray.CreateBuilder<TypedCell>(), ImmutableArray.CreateBuilder<(TypedCell, string)>(), new List<(string Code, string Why)>(), 0);
        foreach (var sample in samples)
        {
            var recorded = sample.Fact(property);
            if (recorded is not null && string.Equals(TypedFact.Shown(recorded), shown, StringComparison.Ordinal))
            {
                same++;
                continue;
            }

            if (TypedDoubt.Of(study, sample, fact) is { } why)
                doubts.Add((sample.Code, why));
            if (recorded is null)
                fills.Add(new TypedCell(sample.Code, fact));
            else
                replaces.Add((new TypedCell(sample.Code, fact), recorded.Written));
        }

        return new ConstantForMany(property, fills.ToImmutable(), replaces.ToImmutable(), same, [.. doubts.GroupBy(d => d.Why, StringComparer.Ordinal).Select(g =>
            $"{property.Title} {fact.Written} is {g.Key} for {(g.Count() == 1 ? g.First().Code : g.Count().ToString(CultureInfo.InvariantCulture) + " samples")}.")]);
    }

    /// <summary>The cells that would be kept.</summary>
    /// <param name="replace">True to replace what is recorded as well.</param>
    public ImmutableArray<TypedCell> Cells(bool replace) => replace ? Fills.AddRange(Replaces.Select(r => r.Cell)) : Fills;
}
