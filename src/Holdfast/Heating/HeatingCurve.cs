using System.Collections.Immutable;
using Holdfast.Amounts;

namespace Holdfast.Heating;

/// <summary>Mass of a portion while it is heated: what it loses between two temperatures, and where it loses most.</summary>
/// <remarks>
/// A step is a stretch in which mass is lost faster than elsewhere; its ends are where the loss per kelvin is least between two steps, so that neighbours meet there (common practice).
/// No cause follows from a step: water, a linker and a carbonate may all leave in one.
/// </remarks>
public sealed class HeatingCurve
{
    /// <summary>Fewest points of a curve.</summary>
    public const int FewestPoints = 20;

    /// <summary>What a change of buoyancy may pretend over a whole curve, mg (the characterisation chapter's limit; a blank run would tell).</summary>
    public const double Buoyancy = 0.1;

    // Width over which the loss per kelvin is taken, K: narrower is noise, wider joins steps. A curve typed from a print has few points, and three must lie inside.
    private const double Narrowest = 15, StepsInside = 3;

    // A stretch loses when it is faster than this part of the fastest; two maxima are two steps when the loss between them falls below this part of the smaller.
    private const double Losing = 0.05, Parted = 0.6;

    // A step reaches out to where the loss per kelvin is lost in the noise, or is this part of the fastest.
    private const double Spent = 1e-3;

    private readonly double[] temperature, mass;

    private HeatingCurve(double[] temperature, double[] mass, double? milligrams) => (this.temperature, this.mass, Milligrams) = (temperature, mass, milligrams);

    /// <summary>Mass at the start, mg; null where only per cent are known.</summary>
    public double? Milligrams { get; }

    /// <summary>Temperatures, °C, rising.</summary>
    public ReadOnlySpan<double> Temperatures => temperature;

    /// <summary>Masses, per cent of the first.</summary>
    public ReadOnlySpan<double> Percent => mass;

    /// <summary>The curve, or null for fewer than 20 points while the temperature rises.</summary>
    /// <param name="points">Temperature in °C and mass in one unit, in the order of time; points at which it fell back are left out.</param>
    /// <param name="milligrams">Milligrams in one unit of the masses; null where they are per cent.</param>
    public static HeatingCurve? Of(IEnumerable<(double Temperature, double Mass)> points, double? milligrams)
    {
        ArgumentNullException.ThrowIfNull(points);
        var kept = new List<(double T, double M)>();
        foreach (var (t, m) in points.Where(p => double.IsFinite(p.Temperature) && p.Mass > 0))
        {
            if (kept.Count == 0 || t > kept[^1].T)
                kept.Add((t, m));
        }

        return kept.Count < FewestPoints ? null : new([.. kept.Select(p => p.T)], [.. kept.Select(p => 100 * p.M / kept[0].M)], milligrams * kept[0].M);
    }

    /// <summary>Mass at a temperature, per cent of the first: straight between points, the last beyond the end.</summary>
    /// <param name="at">Temperature, °C.</param>
    public double At(double at)
    {
        var i = Array.BinarySearch(temperature, at);
        if (i >= 0)
            return mass[i];
        i = ~i;
        return i == 0 ? mass[0] : i == mass.Length ? mass[^1] : mass[i - 1] + (mass[i] - mass[i - 1]) * (at - temperature[i - 1]) / (temperature[i] - temperature[i - 1]);
    }

    /// <summary>Loss between two temperatures, per cent of the first mass, with the scatter of the balance at both ends and what buoyancy may pretend.</summary>
    /// <param name="from">°C.</param>
    /// <param name="to">°C.</param>
    /// <param name="name">Name of the number, for its sources.</param>
    public Measured Loss(double from, double to, string name)
    {
        var loss = Measured.From(At(from) - At(to), new Source(name, "scatter of the balance at both ends", Scatter * Math.Sqrt(2), Unit: "%"));
        return Milligrams is { } start ? loss + Measured.From(0, new Source(name + ", buoyancy", "buoyancy up to 0.1 mg, no blank run taken off", 100 * Buoyancy / start / Math.Sqrt(3), Unit: "%")) : loss;
    }

    /// <summary>Scatter of single masses, per cent of the first: from third differences, which no smooth curve leaves.</summary>
    public double Scatter
    {
        get
        {
            // A third difference of independent readings has twenty times their variance.
            double[] third = [.. Enumerable.Range(0, mass.Length - 3).Select(i => Math.Abs(mass[i + 3] - 3 * mass[i + 2] + 3 * mass[i + 1] - mass[i])).Order()];
            return 1.4826 * third[third.Length / 2] / Math.Sqrt(20);
        }
    }

    /// <summary>The steps, from low to high temperatures.</summary>
    public ImmutableArray<HeatingStep> Steps()
    {
        var window = Window;
        var rate = Rates(window);
        var top = rate.Max();
        // The scatter of a mean over the window, as a rate.
        var noise = 5 * Scatter * Math.Sqrt(2) / window;
        var least = Math.Max(Losing * top, noise);
        var parts = new List<(int From, int To)>();
        for (var i = 0; i < rate.Length;)
        {
            if (rate[i] < least)
            {
                i++;
                continue;
            }

            var from = i;
            while (i < rate.Length && rate[i] >= least)
                i++;
            Cut(from, i - 1);
        }

        var spent = Math.Max(Spent * top, noise);
        var steps = ImmutableArray.CreateBuilder<HeatingStep>();
        for (var k = 0; k < parts.Count; k++)
        {
            var (from, to) = parts[k];
            // Neighbours meet where least is lost between them.
            var left = k == 0 ? 0 : Least(parts[k - 1].To, from);
            var right = k == parts.Count - 1 ? rate.Length - 1 : Least(to, parts[k + 1].From);
            var fastest = Enumerable.Range(from, to - from + 1).MaxBy(j => rate[j]);
            while (from > left && rate[from] > spent)
                from--;
            while (to < right && rate[to] > spent)
                to++;
            steps.Add(new(temperature[from], temperature[to], temperature[fastest], Endless: parts[k].To == rate.Length - 1));
        }

        return steps.ToImmutable();

        int Least(int from, int to) => Enumerable.Range(from, to - from + 1).MinBy(j => rate[j]);

        void Cut(int from, int to)
        {
            // The deepest valley between two maxima parts them.
            for (var v = from + 1; v < to; v++)
            {
                if (rate[v] > rate[v - 1] || rate[v] > rate[v + 1])
                    continue;
                var (left, right) = (rate[from..v].Max(), rate[(v + 1)..(to + 1)].Max());
                if (rate[v] <= Parted * Math.Min(left, right) && rate[v] <= rate[from..(to + 1)].Where((_, k) => k + from > Array.IndexOf(rate, left, from) && k + from < Array.IndexOf(rate, right, v)).DefaultIfEmpty(rate[v]).Min() + 1e-12)
                {
                    Cut(from, v);
                    Cut(v, to);
                    return;
                }
            }

            parts.Add((from, to));
        }
    }

    private double Window
    {
        get
        {
            double[] steps = [.. Enumerable.Range(1, temperature.Length - 1).Select(i => temperature[i] - temperature[i - 1]).Order()];
            return Math.Max(Narrowest, StepsInside * steps[steps.Length / 2]);
        }
    }

    // Loss per kelvin at each point, from the line through all points within the window.
    private double[] Rates(double window)
    {
        var rate = new double[mass.Length];
        for (int i = 0, low = 0, high = 0; i < mass.Length; i++)
        {
            while (temperature[i] - temperature[low] > window / 2)
                low++;
            while (high + 1 < mass.Length && temperature[high + 1] - temperature[i] <= window / 2)
                high++;
            var n = high - low + 1;
            double t = 0, m = 0, tt = 0, tm = 0;
            for (var k = low; k <= high; k++)
                (t, m) = (t + temperature[k] / n, m + mass[k] / n);
            for (var k = low; k <= high; k++)
                (tt, tm) = (tt + (temperature[k] - t) * (temperature[k] - t), tm + (temperature[k] - t) * (mass[k] - m));
            rate[i] = tt > 0 ? -tm / tt : 0;
        }

        return rate;
    }
}

/// <summary>A stretch of temperature in which mass is lost.</summary>
/// <param name="From">Where it begins, °C.</param>
/// <param name="To">Where it ends, °C.</param>
/// <param name="Fastest">Where most is lost in a kelvin, °C.</param>
/// <param name="Endless">True where the curve ends before the step does.</param>
public sealed record HeatingStep(double From, double To, double Fastest, bool Endless);
