using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.StudyTables;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Reports.Trails;

/// <summary>Trails of numbers that follow from many vessels together: fitted parameters, enthalpies, selectivities, doses. Worked out once for a study.</summary>
public sealed class DerivedTrails
{
    private static readonly Lazy<ImmutableArray<IDerivedNumbers>> Areas = new(() => [.. Catalogue.Of<IDerivedNumbers>().OrderBy(a => a.GetType().Name, StringComparer.Ordinal)]);

    private static readonly Analysis<DerivedTrails> Known = new(e => new(e));

    private readonly Dictionary<string, NumberTrail> byAddress = new(StringComparer.Ordinal);

    private DerivedTrails(Evidence evidence)
    {
        var areas = Areas.Value.Select(a => Room.Of("the trails of " + a.GetType().Name.Replace("Numbers", "", StringComparison.Ordinal).ToLowerInvariant(), () => a.Of(evidence).ToArray())).ToArray();
        foreach (var trail in areas.SelectMany(a => a.Value ?? []))
            byAddress.TryAdd(trail.Address, trail);
        Fallen = [.. areas.SelectMany(a => a.Findings)];
        All = [.. byAddress.Values];
    }

    /// <summary>Every derived number, area by area.</summary>
    public ImmutableArray<NumberTrail> All { get; }

    /// <summary>Areas whose numbers could not be followed.</summary>
    public ImmutableArray<Finding> Fallen { get; }

    /// <summary>Every derived number of a study.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static DerivedTrails Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The trail of an address, or null when there is no such derived number.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="address">"dH:TEMP-298".</param>
    public static NumberTrail? Of(Evidence evidence, string address) => Of(evidence).byAddress.GetValueOrDefault(address);

    /// <summary>The trail of a number that decided a claim; null when it is none of the derived numbers.</summary>
    /// <param name="verdict">The judged claim.</param>
    /// <param name="number">One of its deciding numbers.</param>
    /// <param name="evidence">The study worked out.</param>
    /// <remarks>
    /// A rule names its numbers in words and takes them from the analyses that the trails go back to: the same number in the same unit, to the last digits,
    /// from samples that the claim rests on, is that number. One without an uncertainty could be alike by chance and is left alone.
    /// </remarks>
    public static NumberTrail? Of(Verdict verdict, Deciding number, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(number);
        return Of(evidence).All.FirstOrDefault(t => t.Value.U > 0
            && Math.Abs(t.Value.Value - number.Value) <= 1e-9 * Math.Abs(number.Value)
            && string.Equals(t.Unit, number.Unit, StringComparison.Ordinal)
            && t.Samples.Any(verdict.Data.Contains));
    }

    /// <summary>The derived numbers that decided a claim, and those that its own words made: a cost has the claim's id in its address.</summary>
    /// <param name="verdict">The judged claim.</param>
    /// <param name="evidence">The study worked out.</param>
    public static ImmutableArray<NumberTrail> Behind(Verdict verdict, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return [.. verdict.Numbers.Select(n => Of(verdict, n, evidence)).OfType<NumberTrail>()
            .Concat(Of(evidence).All.Where(t => t.Address.EndsWith(":" + verdict.Claim.Id, StringComparison.Ordinal)))
            .DistinctBy(t => t.Address)];
    }

    /// <summary>An estimate as a measured number with one source: the scatter that it was judged by.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="address">Address of the number; it names the source.</param>
    /// <param name="scatter">What scattered, in words.</param>
    internal static Measured Measured(Estimate estimate, string address, string scatter)
    {
        var error = estimate.Scale == Scale.Logarithmic ? estimate.Value * estimate.StandardError : estimate.StandardError;
        return double.IsFinite(error) && error > 0
            ? Amounts.Measured.From(estimate.Value, new Source(address, scatter, error, estimate.DegreesOfFreedom, Evaluation.Repetition))
            : estimate.Value;
    }

    /// <summary>A fit as the end of a trail.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="x">Symbol of the abscissa.</param>
    /// <param name="y">Symbol of the ordinate.</param>
    /// <param name="trail">Address of the trail of a point by its sample, or null.</param>
    internal static TrailFit Fit(FitResult fit, string x, string y, Func<string, string?> trail)
        => new(
            $"{fit.Card.Name} ({fit.Card.Formula}) by least squares to {InWords.Count(fit.N, "point")}, {InWords.Count(fit.P, "parameter")}"
                + (fit.ResidualSd is { } s ? $", residual standard deviation {InWords.Plain(s, fit.Weights.Distinct().Count() == 1 ? fit.Points.YUnit : "")}" : ""),
            WithUnit(x, fit.Points.XUnit), WithUnit(y, fit.Points.YUnit),
            [.. fit.Points.Ids.Select((id, i) => new TrailPoint(id, fit.Points.X[i], fit.Points.Y[i], fit.Fitted[i], trail(id)))]);

    /// <summary>The readings of some samples, those struck left out, in the order they came.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="samples">Codes of the samples.</param>
    internal static ImmutableArray<Reading> Readings(Evidence evidence, IEnumerable<string> samples)
    {
        var wanted = samples.ToHashSet(StringComparer.Ordinal);
        return [.. evidence.Study.Readings.Where(r => wanted.Contains(r.Sample) && !evidence.Study.IsStruck(r))];
    }

    /// <summary>The last part of an address from a name: small letters, digits and hyphens.</summary>
    /// <param name="name">Name of a curve or a water.</param>
    internal static string Short(string name) => LevelTable.Id(name);

    private static string WithUnit(string symbol, string unit) => unit.Length == 0 ? symbol : $"{symbol} ({unit})";
}
