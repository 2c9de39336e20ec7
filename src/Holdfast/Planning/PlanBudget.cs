namespace Holdfast.Planning;

/// <summary>What planned vessels take: liquid, metal, sorbent and readings.</summary>
/// <param name="Vessels">Vessels with sorbent and metal.</param>
/// <param name="Blanks">Vessels with metal and without sorbent.</param>
/// <param name="SorbentControls">Vessels with sorbent and without metal.</param>
/// <param name="Volume">Solution that holds metal, mL.</param>
/// <param name="Metal">Metal in it, mg.</param>
/// <param name="Sorbent">Sorbent, mg.</param>
/// <param name="Readings">Readings of these vessels.</param>
public sealed record PlanBudget(int Vessels, int Blanks, int SorbentControls, double Volume, double Metal, double Sorbent, int Readings)
{
    /// <summary>Readings of each vessel; common practice.</summary>
    public const int ReadingsEach = 3;

    /// <summary>Standards of a calibration; each is read <see cref="ReadingsEach"/> times at the start and at the end of a run. Common practice.</summary>
    public const int Standards = 7;

    /// <summary>One blank and one check standard are read after so many vessels; common practice.</summary>
    public const int VesselsPerCheck = 10;

    /// <summary>Solution, stock and sorbent are made so much more than is needed; share, common practice.</summary>
    public const double Overage = 0.1;

    /// <summary>Nothing planned.</summary>
    public static PlanBudget None { get; } = new(0, 0, 0, 0, 0, 0, 0);

    /// <summary>Vessels of every kind.</summary>
    public int All => Vessels + Blanks + SorbentControls;

    /// <summary>Readings with those of the calibration, of blanks and of check standards.</summary>
    public int ReadingsWithChecks
        => Readings + 2 * Standards * ReadingsEach + 2 * ReadingsEach * (All / VesselsPerCheck);

    /// <summary>Metal that has to be at hand, mg.</summary>
    public double MetalWithOverage => Metal * (1 + Overage);

    /// <summary>Sorbent that has to be at hand, mg.</summary>
    public double SorbentWithOverage => Sorbent * (1 + Overage);

    /// <summary>One more vessel.</summary>
    /// <param name="start">Concentration at the start, mg/L; 0 for none.</param>
    /// <param name="volume">Volume of liquid, mL.</param>
    /// <param name="sorbent">Sorbent, mg; 0 for none.</param>
    public PlanBudget With(double start, double volume, double sorbent)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        ArgumentOutOfRangeException.ThrowIfNegative(sorbent);
        return new(
            Vessels + (start > 0 && sorbent > 0 ? 1 : 0), Blanks + (sorbent > 0 ? 0 : 1), SorbentControls + (start > 0 ? 0 : sorbent > 0 ? 1 : 0),
            Volume + (start > 0 ? volume : 0), Metal + start * volume / 1000, Sorbent + sorbent, Readings + ReadingsEach);
    }

    /// <summary>Both together.</summary>
    /// <param name="other">What is planned beside it.</param>
    public PlanBudget Plus(PlanBudget other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(
            Vessels + other.Vessels, Blanks + other.Blanks, SorbentControls + other.SorbentControls, Volume + other.Volume, Metal + other.Metal,
            Sorbent + other.Sorbent, Readings + other.Readings);
    }

    /// <summary>Stock that has to be at hand, overage included, mL.</summary>
    /// <param name="stock">Concentration of the stock, mg of metal in each litre, above 0.</param>
    public double StockVolume(double stock)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stock);
        return 1000 * MetalWithOverage / stock;
    }

    /// <summary>Time at the instrument, min.</summary>
    /// <param name="secondsEach">Time that one reading takes, s, above 0.</param>
    public double InstrumentTime(double secondsEach)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(secondsEach);
        return ReadingsWithChecks * secondsEach / 60;
    }
}
