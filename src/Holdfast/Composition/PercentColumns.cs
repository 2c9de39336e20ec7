using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>Checks a column of mass percent against one of atomic percent with the atomic weights.</summary>
/// <param name="Labels">How they fit.</param>
/// <param name="OffAsLabelled">Largest difference of atomic percent as labelled.</param>
/// <param name="OffExchanged">Largest difference of atomic percent with the headings exchanged.</param>
public sealed record PercentColumns(PercentLabels Labels, double OffAsLabelled, double OffExchanged)
{
    /// <summary>Two columns of one table agree within this: rounding to a tenth and older atomic weights; atomic percent.</summary>
    public const double Agreement = 0.25;

    /// <summary>Compares the columns, each scaled to 100 first, since one may be normalised and the other not.</summary>
    /// <param name="rows">Element, what stands under mass percent, what stands under atomic percent; two elements or more.</param>
    public static PercentColumns Of(IReadOnlyList<(Element Element, double Mass, double Atomic)> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows.Count, 2, nameof(rows));
        var asLabelled = Off(rows.Select(r => (r.Element, r.Mass, r.Atomic)));
        var exchanged = Off(rows.Select(r => (r.Element, Mass: r.Atomic, Atomic: r.Mass)));
        var labels = (asLabelled <= Agreement, exchanged <= Agreement) switch
        {
            (true, true) => PercentLabels.Either,
            (true, false) => PercentLabels.AsLabelled,
            (false, true) => PercentLabels.Exchanged,
            _ => PercentLabels.Neither,
        };
        return new(labels, asLabelled, exchanged);
    }

    private static double Off(IEnumerable<(Element Element, double Mass, double Atomic)> rows)
    {
        var list = rows.ToList();
        var total = list.Sum(r => r.Atomic);
        if (!(total > 0) || !(list.Sum(r => r.Mass) > 0))
            return double.PositiveInfinity;
        var atomic = Percentages.ToAtomic([.. list.Select(r => new KeyValuePair<Element, Measured>(r.Element, r.Mass))]);
        return atomic.Zip(list, (a, r) => Math.Abs(a.Value.Value - 100 * r.Atomic / total)).Max();
    }
}

/// <summary>How two columns of percent fit together when one is said to be mass and the other atoms.</summary>
public enum PercentLabels
{
    /// <summary>They fit as labelled.</summary>
    AsLabelled,

    /// <summary>They fit only when their headings are exchanged.</summary>
    Exchanged,

    /// <summary>They fit either way, so it does not matter.</summary>
    Either,

    /// <summary>They fit neither way: the columns are not two views of one table.</summary>
    Neither,
}
