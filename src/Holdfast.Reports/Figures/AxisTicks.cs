using Holdfast.Amounts;

namespace Holdfast.Reports.Figures;

/// <summary>The ticks of an axis, worked out once for every drawing of a figure.</summary>
/// <param name="Major">Labelled ticks, by rising value.</param>
/// <param name="Minor">Values of the ticks without label, in the axis unit.</param>
public sealed record AxisTicks(IReadOnlyList<Tick> Major, IReadOnlyList<double> Minor)
{
    private const double Slack = 1e-9;

    /// <summary>The ticks of an axis.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="range">The values shown.</param>
    /// <param name="most">Most labelled ticks wanted; at least 2.</param>
    /// <param name="mark">Decimal mark.</param>
    public static AxisTicks Of(Axis axis, AxisRange range, int most, DecimalMark mark)
    {
        ArgumentNullException.ThrowIfNull(axis);
        return axis.Scale switch
        {
            AxisScale.Named => new(axis.Places.Select((p, i) => new Tick(i + 1, p)).ToArray(), []),
            AxisScale.Logarithmic => Logarithmic(range, most, mark),
            _ => Linear(range, most, axis.WholeNumbers, mark),
        };
    }

    private static AxisTicks Linear(AxisRange range, int most, bool whole, DecimalMark mark)
    {
        var step = TickStep.For(range, most, whole);
        var numbers = Numbers(step, range);
        var labels = TickText.Of(step, numbers, mark);
        var major = numbers.Select((n, i) => new Tick(step.Value(n), labels[i])).ToArray();

        return Between(step, numbers.Count) is var (fine, parts) && !(whole && fine.Exponent < 0)
            ? new(major, Numbers(fine, range).Where(n => n % parts != 0).Select(fine.Value).ToArray())
            : new(major, []);
    }

    // Few labelled ticks: fifths between those of 1 or 5, quarters between those of 2. Many: halves, and nothing between those of 5.
    private static (TickStep Fine, int Parts)? Between(TickStep step, int labelled) => (step.Digit, labelled > 6) switch
    {
        (1, false) => (new(2, step.Exponent - 1), 5),
        (1, true) => (new(5, step.Exponent - 1), 2),
        (2, false) => (new(5, step.Exponent - 1), 4),
        (2, true) => (new(1, step.Exponent), 2),
        (_, false) => (new(1, step.Exponent), 5),
        _ => null,
    };

    private static AxisTicks Logarithmic(AxisRange range, int most, DecimalMark mark)
    {
        var first = (int)Math.Floor(Math.Log10(range.Low));
        var last = (int)Math.Ceiling(Math.Log10(range.High));
        var all = Enumerable.Range(first, last - first + 1).SelectMany(k => Enumerable.Range(1, 9).Select(d => (Digit: d, Power: k)))
            .Where(t => Inside(t.Digit, t.Power)).ToArray();
        var decades = all.Where(t => t.Digit == 1).ToArray();
        var thirds = all.Where(t => t.Digit is 1 or 2 or 5).ToArray();
        var labelled = decades.Length > most ? Thinned(decades, most)
            : thirds.Length <= most ? thirds
            : decades;
        if (labelled.Length < 2)
            return Linear(range, most, whole: false, mark);

        var plain = labelled[0].Power >= -3 && labelled[^1].Power <= 4;
        var major = labelled.Select(t => new Tick(
            new TickStep(1, t.Power).Value(t.Digit),
            plain ? (RichText)TickText.Plain(t.Digit, t.Power, mark) : TickText.Scientific(t.Digit, t.Power, t.Power, mark, bare: true)));
        var minor = all.Except(labelled).Where(t => decades.Length <= most || t.Digit == 1).Select(t => new TickStep(1, t.Power).Value(t.Digit));
        return new(major.ToArray(), minor.ToArray());

        bool Inside(int digit, int power)
        {
            var value = new TickStep(1, power).Value(digit);
            return value >= range.Low * (1 - Slack) && value <= range.High * (1 + Slack);
        }
    }

    private static (int Digit, int Power)[] Thinned((int Digit, int Power)[] decades, int most)
    {
        var every = (decades.Length + most - 1) / most;
        return decades.Where(t => t.Power % every == 0).ToArray();
    }

    private static List<long> Numbers(TickStep step, AxisRange range)
    {
        var numbers = new List<long>();
        for (var n = step.First(range); n <= step.Last(range); n++)
            numbers.Add(n);
        return numbers;
    }
}
