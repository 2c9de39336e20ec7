using Holdfast.Planning;
using Holdfast.Testing;

namespace Holdfast.Tests.Planning;

public class StaggeredStartsTests
{
    private static readonly (string Case, int Start, int Stop, int[] Contact)[] Cases =
    [
        ("A one replicate", 2, 3, [5, 10, 20, 30, 45, 60, 90, 120]),
        ("B triplicates", 2, 3, [.. new[] { 5, 10, 20, 30, 45, 60, 90, 120 }.SelectMany(t => new[] { t, t, t })]),
        ("C triplicates slow hands", 3, 5, [.. new[] { 5, 10, 20, 40, 80, 160 }.SelectMany(t => new[] { t, t, t })]),
    ];

    public static TheoryData<int> All() => [0, 1, 2];

    // reference/design/staggered-starts.csv: shortest tables proven by an integer program, and what the simple rule takes.
    [Theory, MemberData(nameof(All))]
    public void Of_EveryCase_IsAsShortAsProven(int which)
    {
        var (name, start, stop, contact) = Cases[which];
        var row = ReferenceTable.Read("design", "staggered-starts.csv").First(r => r["case"] == name);
        Assert.Equal(row.Number("minutes_to_start"), start);
        Assert.Equal(row.Number("minutes_to_stop"), stop);
        var found = StaggeredStarts.Of(contact, start, stop);
        Assert.Equal(row.Number("makespan_min"), found.End);
        Assert.Equal(row.Number("proven_lower_bound_min"), found.Bound);
        Assert.Equal(row.Number("makespan_of_simple_rule_min"), found.SimpleEnd);
        Assert.True(found.IsShortest);
        HandsNeverOverlap(found, contact, start, stop);
    }

    // Same file: the whole table of the simple rule.
    [Theory, MemberData(nameof(All))]
    public void Of_WithoutEffort_IsTheTableOfTheSimpleRule(int which)
    {
        var (name, start, stop, contact) = Cases[which];
        var found = StaggeredStarts.Of(contact, start, stop, effort: 0);
        foreach (var row in ReferenceTable.Read("design", "staggered-starts.csv").Where(r => r["case"].StartsWith(name + " (longest", StringComparison.Ordinal)))
            Assert.Equal(row.Number("start_min"), found.Starts[int.Parse(row["vessel"].AsSpan(1), System.Globalization.CultureInfo.InvariantCulture) - 1]);
        Assert.Contains("Longest first", found.Says("min"), StringComparison.Ordinal);
        Assert.Equal(found.End == found.Bound, found.IsShortest);
    }

    // Two vessels of 3 steps, start 2, stop 3, by hand: between the first start (0..2) and its stop (3..6) no start of 2 fits, so the second starts at 6 and is done at 12.
    [Fact]
    public void Of_WhereTheBoundCannotBeReached_RulesOutWhatIsShorter()
    {
        var found = StaggeredStarts.Of([3, 3], 2, 3);
        Assert.Equal(10, found.Bound);
        Assert.Equal(12, found.End);
        Assert.True(found.IsShortest);
        HandsNeverOverlap(found, [3, 3], 2, 3);
    }

    [Theory, InlineData(1, false), InlineData(2, true)]
    public void Of_ContactAroundTheStartAction_IsTakenFromThereOn(int contact, bool taken)
    {
        if (taken)
            Assert.Equal(contact + 3, StaggeredStarts.Of([contact], 2, 3).End);
        else
            Assert.Throws<ArgumentException>(() => StaggeredStarts.Of([contact], 2, 3));
    }

    private static void HandsNeverOverlap(StaggeredStarts found, int[] contact, int start, int stop)
    {
        var busy = new bool[found.End];
        for (var i = 0; i < contact.Length; i++)
        {
            foreach (var (from, length) in new[] { (found.Starts[i], start), (found.Starts[i] + contact[i], stop) })
            {
                Assert.DoesNotContain(true, busy[from..(from + length)]);
                busy.AsSpan(from, length).Fill(true);
            }
        }
    }
}
