namespace Holdfast.Reports.Figures;

/// <summary>A step of ticks, Digit × 10^Exponent with digit 1, 2 or 5. Ticks are whole multiples of it, so their labels are exact.</summary>
/// <param name="Digit">1, 2 or 5.</param>
/// <param name="Exponent">Power of ten.</param>
public readonly record struct TickStep(int Digit, int Exponent)
{
    // Ends of a range come from arithmetic; a tick this close to an end, in steps, still counts.
    private const double Slack = 1e-9;

    /// <summary>The step as a number, in the axis unit.</summary>
    public double Size => Exponent >= 0 ? Digit * Math.Pow(10, Exponent) : Digit / Math.Pow(10, -Exponent);

    /// <summary>The next larger step.</summary>
    public TickStep Larger => Digit switch
    {
        1 => new(2, Exponent),
        2 => new(5, Exponent),
        _ => new(1, Exponent + 1),
    };

    /// <summary>The next smaller step.</summary>
    public TickStep Smaller => Digit switch
    {
        5 => new(2, Exponent),
        2 => new(1, Exponent),
        _ => new(5, Exponent - 1),
    };

    /// <summary>The smallest step with at most the given number of ticks in a range, but never fewer than two ticks.</summary>
    /// <param name="range">The range.</param>
    /// <param name="most">Most ticks wanted; at least 2.</param>
    /// <param name="whole">True for steps of whole numbers only.</param>
    public static TickStep For(AxisRange range, int most, bool whole = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 2);
        var step = new TickStep(1, (int)Math.Floor(Math.Log10((range.High - range.Low) / (most + 1))));
        if (whole && step.Exponent < 0)
            step = new(1, 0);
        while (step.Count(range) > most)
            step = step.Larger;
        while (step.Count(range) < 2 && !(whole && step is { Digit: 1, Exponent: 0 }))
            step = step.Smaller;
        return step;
    }

    /// <summary>Number of the first multiple inside a range.</summary>
    /// <param name="range">The range.</param>
    public long First(AxisRange range) => (long)Math.Ceiling(range.Low / Size - Slack);

    /// <summary>Number of the last multiple inside a range.</summary>
    /// <param name="range">The range.</param>
    public long Last(AxisRange range) => (long)Math.Floor(range.High / Size + Slack);

    /// <summary>How many multiples lie in a range.</summary>
    /// <param name="range">The range.</param>
    public long Count(AxisRange range) => Last(range) - First(range) + 1;

    /// <summary>Value of a multiple, in the axis unit.</summary>
    /// <param name="number">Which multiple.</param>
    public double Value(long number) => Exponent >= 0 ? number * Digit * Math.Pow(10, Exponent) : number * Digit / Math.Pow(10, -Exponent);
}
