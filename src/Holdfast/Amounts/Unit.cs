using System.Globalization;
using System.Text;

namespace Holdfast.Amounts;

/// <summary>
/// A unit as a user writes it: what it measures, its exact size, and the text to show. Units live at the doors; inside, formulas
/// take doubles in the unit that their card names.
/// </summary>
/// <remarks>
/// Two units are equal when they are written alike; <see cref="HasSameScale"/> tells whether they mean the same (1 mg/L and 1 µg/mL).
/// Sizes follow the SI Brochure, 9th edition, BIPM 2019.
/// </remarks>
public sealed class Unit : IEquatable<Unit>
{
    private readonly (UnitSymbol Symbol, double Power)[] parts;
    private readonly ScaleFactor factor;

    internal Unit(IEnumerable<(UnitSymbol Symbol, double Power)> parts)
    {
        this.parts = [.. parts];
        factor = ScaleFactor.One;
        foreach (var (symbol, power) in this.parts)
        {
            factor *= symbol.Factor.Pow(power);
            Dimension *= symbol.Dimension.Pow(power);
        }

        Plain = Write();
    }

    /// <summary>A plain number.</summary>
    public static Unit One { get; } = new([]);

    /// <summary>What the unit measures.</summary>
    public Dimension Dimension { get; }

    /// <summary>The form for files and the command line, ASCII only: "mg/L", "g/(mg min)", "1/min"; "1" for a plain number. <see cref="Parse"/> reads it back.</summary>
    public string Plain { get; }

    /// <summary>Size in SI base units (kg, m³, s, mol ...); for the degree Celsius the size of one degree.</summary>
    public double Scale => factor.Value;

    /// <summary>True for a plain number without any symbol; false for %, which is a hundredth.</summary>
    public bool IsOne => parts.Length == 0;

    /// <summary>The form for screen and print on one line: "mg/L" with µ, °C and Å where they belong; empty for a plain number.</summary>
    public string Pretty
        => IsOne ? "" : Fraction(p => p.Symbol.Pretty);

    /// <summary>The form with powers instead of a stroke, "mg L" followed by a raised "−1", as print asks for it.</summary>
    public IReadOnlyList<TextRun> Runs
    {
        get
        {
            var runs = new List<TextRun>();
            var line = new StringBuilder();
            foreach (var (symbol, power) in parts)
            {
                if (line.Length > 0 || runs.Count > 0)
                    line.Append('\u00A0');
                line.Append(symbol.Pretty);
                if (power == 1)
                    continue;
                runs.Add(new(line.ToString()));
                runs.Add(new(power.ToString("0.###", CultureInfo.InvariantCulture).Replace('-', '\u2212'), Raised: true));
                line.Clear();
            }

            if (line.Length > 0)
                runs.Add(new(line.ToString()));
            return runs;
        }
    }

    private double Offset => parts is [{ Power: 1 } single] ? single.Symbol.Offset : 0;

    private string? Share => parts is [{ Power: 1 } single] ? single.Symbol.Share : null;

    /// <summary>What a text says about a unit: known, several readings, unknown, or none there.</summary>
    /// <param name="text">From a header, a units line or a cell: "mg/L", "mg L-1", "mg·L⁻¹", "µg/mL".</param>
    public static UnitText Read(string? text) => UnitReader.Read(text);

    /// <summary>The unit that a program names; for text from a user see <see cref="Read"/>.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="ArgumentException">The text is no unit, or could be several.</exception>
    public static Unit Parse(string text)
        => Read(text) is UnitText.Known known ? known.Unit : throw new ArgumentException($"'{text}' is not one clear unit.", nameof(text));

    /// <summary>True when a value can pass from one to the other without further knowledge.</summary>
    public bool IsConvertibleTo(Unit other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Dimension == other.Dimension && (Share is null || other.Share is null || Share == other.Share);
    }

    /// <summary>True when both mean the same: 1 mg/L and 1 µg/mL.</summary>
    public bool HasSameScale(Unit other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return IsConvertibleTo(other) && factor.Equals(other.factor) && Offset.Equals(other.Offset);
    }

    /// <summary>A value of this unit in another one.</summary>
    /// <param name="value">The value, in this unit.</param>
    /// <param name="to">The unit wanted.</param>
    /// <exception cref="ArgumentException">The units measure different things.</exception>
    public double Convert(double value, Unit to)
    {
        var ratio = RatioTo(to);
        if (Offset.Equals(to.Offset))
            return ratio.Times(value);
        return (ScaleFactor.One / to.factor).Times(factor.Times(value) + Offset - to.Offset);
    }

    /// <summary>A difference or an uncertainty of this unit in another one: the zero point of the degree Celsius plays no part.</summary>
    /// <param name="difference">The difference, in this unit.</param>
    /// <param name="to">The unit wanted.</param>
    /// <exception cref="ArgumentException">The units measure different things.</exception>
    public double ConvertDifference(double difference, Unit to) => RatioTo(to).Times(difference);

    /// <summary>The unit of a product; a symbol that occurs in both is joined, so (mg/L)·(L/g) is mg/g.</summary>
    public static Unit operator *(Unit a, Unit b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var joined = a.parts.ToList();
        foreach (var (symbol, power) in b.parts)
        {
            var at = joined.FindIndex(p => p.Symbol.Ascii == symbol.Ascii);
            if (at < 0)
                joined.Add((symbol, power));
            else if (joined[at].Power + power == 0)
                joined.RemoveAt(at);
            else
                joined[at] = (symbol, joined[at].Power + power);
        }

        return new(joined);
    }

    /// <summary>The unit of a quotient.</summary>
    public static Unit operator /(Unit a, Unit b)
    {
        ArgumentNullException.ThrowIfNull(b);
        return a * b.Pow(-1);
    }

    /// <summary>The unit of a power.</summary>
    /// <param name="power">The power, without unit; 0 gives a plain number.</param>
    public Unit Pow(double power) => power == 0 ? One : new(parts.Select(p => (p.Symbol, p.Power * power)));

    /// <inheritdoc/>
    public bool Equals(Unit? other) => other is not null && string.Equals(Plain, other.Plain, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Unit);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Plain);

    public static bool operator ==(Unit? left, Unit? right) => left is null ? right is null : left.Equals(right);

    public static bool operator !=(Unit? left, Unit? right) => !(left == right);

    /// <summary>The form for files: <see cref="Plain"/>.</summary>
    public override string ToString() => Plain;

    private ScaleFactor RatioTo(Unit to)
    {
        ArgumentNullException.ThrowIfNull(to);
        if (!IsConvertibleTo(to))
            throw new ArgumentException($"{Plain} cannot become {to.Plain}: they measure different things.", nameof(to));
        return factor / to.factor;
    }

    private string Write() => IsOne ? "1" : Fraction(p => p.Symbol.Ascii);

    private string Fraction(Func<(UnitSymbol Symbol, double Power), string> symbol)
    {
        var above = string.Join(' ', parts.Where(p => p.Power > 0).Select(p => Raised(symbol(p), p.Power)));
        var below = parts.Where(p => p.Power < 0).Select(p => Raised(symbol(p), -p.Power)).ToArray();
        if (above.Length == 0)
            above = "1";
        return below.Length switch
        {
            0 => above,
            1 => $"{above}/{below[0]}",
            _ => $"{above}/({string.Join(' ', below)})",
        };
    }

    private static string Raised(string symbol, double power)
    {
        if (power == 1)
            return symbol;
        var digits = power.ToString("R", CultureInfo.InvariantCulture);
        return char.IsLetter(symbol[^1]) && power == Math.Floor(power) ? symbol + digits : $"{symbol}^{digits}";
    }
}
