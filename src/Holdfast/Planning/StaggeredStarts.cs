using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Planning;

/// <summary>
/// When to start each vessel so that one pair of hands can start and stop all of them at their exact contact times: the start takes some steps of the clock,
/// the stop others, and no two of these actions overlap. The contact time runs from the instant of starting to the instant of stopping.
/// </summary>
/// <remarks>
/// A depth-first search over the clock looks for a table as short as the bound below which none can be, then for one a step longer, and so on. Its effort is
/// counted in nodes, not in seconds, so that every computer finds the same table. What it does not find within its effort the simple rule gives: longest first,
/// each at the earliest place that is free. Equal vessels start in the order given.
/// </remarks>
/// <param name="Starts">Start of each vessel in steps of the clock, in the order given; the first is 0.</param>
/// <param name="End">When the last stop action is done.</param>
/// <param name="Bound">No table can end earlier than this: all the work of the hands, or the longest vessels one after the other.</param>
/// <param name="IsShortest">True when no shorter table exists: the bound is reached, or the search ruled out all that are shorter.</param>
/// <param name="SimpleEnd">When the simple rule ends.</param>
/// <param name="Nodes">Nodes of the search that were looked at.</param>
public sealed record StaggeredStarts(IReadOnlyList<int> Starts, int End, int Bound, bool IsShortest, int SimpleEnd, long Nodes)
{
    /// <summary>Effort of the search where nothing else is said, in nodes.</summary>
    public const long UsualEffort = 6_000_000;

    private const int EffortOfOneTry = 30_000;

    /// <summary>True when the search found something shorter than the simple rule.</summary>
    public bool IsBetterThanSimple => End < SimpleEnd;

    /// <summary>How the table was found and how good it is, in a sentence.</summary>
    /// <param name="unit">Unit of a step of the clock.</param>
    public string Says(string unit) => string.Create(CultureInfo.InvariantCulture,
        $"{(IsBetterThanSimple ? "Exact search" : "Longest first, earliest free place")}: {End} {unit}; {(IsShortest ? "none is shorter" : $"none can be shorter than {Bound} {unit}")}.")
        + (IsBetterThanSimple ? string.Create(CultureInfo.InvariantCulture, $" The simple rule would take {SimpleEnd} {unit}.") : "");

    /// <summary>Finds a table.</summary>
    /// <param name="contact">Contact times in whole steps of the clock, each at least as long as the start action.</param>
    /// <param name="start">Steps that the hands need to start a vessel, 1 or more.</param>
    /// <param name="stop">Steps that the hands need to stop a vessel, 1 or more.</param>
    /// <param name="effort">Nodes that the search may look at.</param>
    /// <exception cref="ArgumentException">There is no vessel, or one is to be stopped while it is still being started.</exception>
    public static StaggeredStarts Of(IReadOnlyList<int> contact, int start, int stop, long effort = UsualEffort)
    {
        ArgumentNullException.ThrowIfNull(contact);
        ArgumentOutOfRangeException.ThrowIfLessThan(start, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(stop, 1);
        if (contact.Count == 0)
            throw new ArgumentException("There is no vessel to start.", nameof(contact));
        if (contact.Min() < start)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"A contact time of {contact.Min()} is shorter than starting takes, {start}. Lengthen it, or start faster."), nameof(contact));
        }

        var simple = Simple(contact, start, stop);
        var simpleEnd = EndOf(simple, contact, stop);
        var bound = LowerBound(contact, start, stop);
        var ruledOut = true;
        long nodes = 0;
        for (var end = bound; end < simpleEnd && nodes < effort; end++)
        {
            // Half of what is left for each length: the shortest, likely the hardest, gets the most.
            var share = nodes + Math.Max(EffortOfOneTry, (effort - nodes) / 2);
            var exhausted = false;
            for (ulong attempt = 0; nodes < share && !exhausted; attempt++)
            {
                // Later tries draw another order of trying and get longer.
                var search = new Search(contact, start, stop, end, attempt, Math.Min(share - nodes, EffortOfOneTry * (1 + (long)(attempt / 8))));
                var found = search.Run();
                nodes += search.Nodes;
                if (found is not null)
                    return new(found, end, bound, ruledOut, simpleEnd, nodes);
                exhausted = search.IsExhausted;
            }

            ruledOut &= exhausted;
        }

        return new(simple, simpleEnd, bound, simpleEnd == bound || (ruledOut && nodes < effort), simpleEnd, nodes);
    }

    /// <summary>Longest first, each at the earliest place that is free.</summary>
    private static int[] Simple(IReadOnlyList<int> contact, int start, int stop)
    {
        var busy = new bool[contact.Max() + (contact.Count + 1) * 2 * (start + stop) + contact.Sum()];
        var starts = new int[contact.Count];
        foreach (var i in Enumerable.Range(0, contact.Count).OrderByDescending(i => contact[i]))
        {
            var at = 0;
            while (busy.AsSpan(at, start).Contains(true) || busy.AsSpan(at + contact[i], stop).Contains(true))
                at++;
            starts[i] = at;
            busy.AsSpan(at, start).Fill(true);
            busy.AsSpan(at + contact[i], stop).Fill(true);
        }

        return starts;
    }

    // Vessels of at least one contact time start and stop one after the other: k of them need (k − 1) times the longer action more than one.
    private static int LowerBound(IReadOnlyList<int> contact, int start, int stop)
        => contact.Distinct().Select(t => contact.Count(c => c == t) is var k ? t + stop + (k - 1) * Math.Max(start, stop) : 0)
            .Append(contact.Count * (start + stop)).Max();

    private static int EndOf(int[] starts, IReadOnlyList<int> contact, int stop) => starts.Zip(contact, (s, t) => s + t + stop).Max();

    /// <summary>One search for a table that ends by a given step, going along the clock: at each free step a vessel is started, or the hands rest.</summary>
    private sealed class Search
    {
        private readonly int start;
        private readonly int stop;
        private readonly int end;
        private readonly long effort;
        private readonly int[] times;
        private readonly int[] left;
        private readonly List<int>[] startsOf;
        private readonly int[][] vessels;
        private readonly bool[] busy;
        private readonly double[] liking;
        private readonly SeededStream stream;
        private readonly double chance;
        private int rest;
        private int open;

        public Search(IReadOnlyList<int> contact, int start, int stop, int end, ulong attempt, long effort)
        {
            (this.start, this.stop, this.end, this.effort) = (start, stop, end, effort);
            times = [.. contact.Distinct().OrderDescending()];
            vessels = [.. times.Select(t => Enumerable.Range(0, contact.Count).Where(i => contact[i] == t).ToArray())];
            left = [.. vessels.Select(v => v.Length)];
            startsOf = [.. times.Select(_ => new List<int>())];
            busy = new bool[end];
            rest = end - contact.Count * (start + stop);
            open = contact.Count;
            stream = new SeededStream(attempt, "staggered starts");
            chance = attempt == 0 ? 0 : 1;
            liking = new double[times.Length];
        }

        public long Nodes { get; private set; }

        public bool IsExhausted { get; private set; }

        public int[]? Run()
        {
            if (rest < 0)
            {
                IsExhausted = true;
                return null;
            }

            if (!Follow(0))
            {
                IsExhausted = Nodes < effort;
                return null;
            }

            var found = new int[vessels.Sum(v => v.Length)];
            for (var k = 0; k < times.Length; k++)
            {
                for (var i = 0; i < vessels[k].Length; i++)
                    found[vessels[k][i]] = startsOf[k][i];
            }

            return found;
        }

        private bool Follow(int at)
        {
            while (at < end && busy[at])
                at++;
            if (open == 0)
                return true;
            if (++Nodes >= effort || !CanStillEnd(at))
                return false;
            var free = 0;
            while (free < start && at + free < end && !busy[at + free])
                free++;
            if (free == start)
            {
                Span<int> order = stackalloc int[times.Length];
                var many = Order(at, order);
                for (var i = 0; i < many; i++)
                {
                    var k = order[i];
                    Put(at, k, true);
                    if (Follow(at + start))
                        return true;
                    Put(at, k, false);
                    if (Nodes >= effort)
                        return false;
                }
            }

            // The hands rest: one step, or up to the next action where too little room is left to start anything.
            var idle = free == start ? 1 : Math.Max(1, free);
            if (rest < idle)
                return false;
            rest -= idle;
            if (Follow(at + idle))
                return true;
            rest += idle;
            return false;
        }

        private bool CanStillEnd(int at)
        {
            for (var k = 0; k < times.Length; k++)
            {
                if (left[k] > 0 && at + (left[k] - 1) * Math.Max(start, stop) + times[k] + stop > end)
                    return false;
            }

            return true;
        }

        // Vessels that fit here, best first: the stop closes up with other actions, and long contact times early.
        private int Order(int at, Span<int> order)
        {
            var many = 0;
            for (var k = 0; k < times.Length; k++)
            {
                var to = at + times[k];
                if (left[k] == 0 || to + stop > end || busy.AsSpan(to, stop).Contains(true))
                    continue;
                var before = to == at + start || busy[to - 1];
                var after = to + stop == end || busy[to + stop];
                liking[k] = (before ? 1 : 0) + (after ? 1 : 0) + times[k] / (double)times[0] + chance * stream.Uniform() * 1.5;
                var place = many++;
                for (; place > 0 && liking[order[place - 1]] < liking[k]; place--)
                    order[place] = order[place - 1];
                order[place] = k;
            }

            return many;
        }

        private void Put(int at, int k, bool on)
        {
            busy.AsSpan(at, start).Fill(on);
            busy.AsSpan(at + times[k], stop).Fill(on);
            (left[k], open) = on ? (left[k] - 1, open - 1) : (left[k] + 1, open + 1);
            if (on)
                startsOf[k].Add(at);
            else
                startsOf[k].RemoveAt(startsOf[k].Count - 1);
        }
    }
}
