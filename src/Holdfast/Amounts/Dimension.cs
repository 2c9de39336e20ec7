namespace Holdfast.Amounts;

/// <summary>
/// What a unit measures, as powers of nine base dimensions. Seven bases are not enough at this bench: counts of a detector, arbitrary
/// intensity units and angles are kept apart from plain numbers, so that none of them is taken for a ratio by accident.
/// </summary>
/// <param name="Length">Power of the metre.</param>
/// <param name="Mass">Power of the kilogram.</param>
/// <param name="Time">Power of the second.</param>
/// <param name="Temperature">Power of the kelvin.</param>
/// <param name="Current">Power of the ampere.</param>
/// <param name="Amount">Power of the mole.</param>
/// <param name="Counts">Power of one detector count.</param>
/// <param name="Signal">Power of the arbitrary intensity unit.</param>
/// <param name="Angle">Power of the degree of arc.</param>
public readonly record struct Dimension(
    double Length = 0,
    double Mass = 0,
    double Time = 0,
    double Temperature = 0,
    double Current = 0,
    double Amount = 0,
    double Counts = 0,
    double Signal = 0,
    double Angle = 0)
{
    /// <summary>A plain number.</summary>
    public static Dimension None => default;

    /// <summary>The dimension of a product.</summary>
    public static Dimension operator *(Dimension a, Dimension b) => new(
        a.Length + b.Length, a.Mass + b.Mass, a.Time + b.Time, a.Temperature + b.Temperature, a.Current + b.Current,
        a.Amount + b.Amount, a.Counts + b.Counts, a.Signal + b.Signal, a.Angle + b.Angle);

    /// <summary>The dimension of a power.</summary>
    /// <param name="power">The power; halves occur (min^0.5).</param>
    public Dimension Pow(double power) => new(
        Length * power, Mass * power, Time * power, Temperature * power, Current * power,
        Amount * power, Counts * power, Signal * power, Angle * power);
}
