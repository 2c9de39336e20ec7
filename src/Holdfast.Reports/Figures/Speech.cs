using System.Globalization;

namespace Holdfast.Reports.Figures;

/// <summary>Labels and units as words, for readers who listen: "mg g^-1" is "milligrams per gram".</summary>
public static class Speech
{
    private static readonly Dictionary<string, (string One, string Many)> Units = new(StringComparer.Ordinal)
    {
        ["g"] = ("gram", "grams"),
        ["L"] = ("litre", "litres"),
        ["l"] = ("litre", "litres"),
        ["mol"] = ("mole", "moles"),
        ["m"] = ("metre", "metres"),
        ["min"] = ("minute", "minutes"),
        ["s"] = ("second", "seconds"),
        ["h"] = ("hour", "hours"),
        ["d"] = ("day", "days"),
        ["K"] = ("kelvin", "kelvins"),
        ["°C"] = ("degree Celsius", "degrees Celsius"),
        ["J"] = ("joule", "joules"),
        ["eV"] = ("electronvolt", "electronvolts"),
        ["Pa"] = ("pascal", "pascals"),
        ["bar"] = ("bar", "bars"),
        ["N"] = ("newton", "newtons"),
        ["W"] = ("watt", "watts"),
        ["A"] = ("ampere", "amperes"),
        ["V"] = ("volt", "volts"),
        ["S"] = ("siemens", "siemens"),
        ["Hz"] = ("hertz", "hertz"),
        ["M"] = ("mole per litre", "moles per litre"),
        ["%"] = ("percent", "percent"),
        ["°"] = ("degree", "degrees"),
        ["rpm"] = ("revolution per minute", "revolutions per minute"),
        ["counts"] = ("count", "counts"),
        ["cps"] = ("count per second", "counts per second"),
        ["arb. unit"] = ("arbitrary unit", "arbitrary units"),
        ["a.u."] = ("arbitrary unit", "arbitrary units"),
        ["Å"] = ("ångström", "ångströms"),
        ["wt%"] = ("percent by mass", "percent by mass"),
        ["at%"] = ("atom percent", "atom percent"),
    };

    private static readonly Dictionary<char, string> Prefixes = new()
    {
        ['f'] = "femto",
        ['p'] = "pico",
        ['n'] = "nano",
        ['µ'] = "micro",
        ['μ'] = "micro",
        ['u'] = "micro",
        ['m'] = "milli",
        ['c'] = "centi",
        ['d'] = "deci",
        ['h'] = "hecto",
        ['k'] = "kilo",
        ['M'] = "mega",
        ['G'] = "giga",
    };

    /// <summary>A unit as words; a symbol that is not known is read as written.</summary>
    /// <param name="unit">The unit: "mg g^-1", "mg/g", "µmol L⁻¹".</param>
    public static string OfUnit(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var factors = UnitFactor.Read(unit);
        var above = factors.Where(f => f.Power > 0).ToArray();
        var words = above.Select((f, i) => Word(f.Symbol, f.Power, many: i == above.Length - 1)).ToList();
        words.AddRange(factors.Where(f => f.Power < 0).Select(f => "per " + Word(f.Symbol, -f.Power, many: false)));
        return string.Join(' ', words);
    }

    /// <summary>A label as words: lowered runs follow with a pause, raised numbers become powers, raised charges are named.</summary>
    internal static string OfLabel(RichText label)
    {
        var words = label.Runs.Select(r => r.Shift switch
        {
            Shift.Sub => " " + r.Text + " ",
            Shift.Super when r.Text[^1] is '+' => " " + r.Text[..^1] + " plus ",
            Shift.Super when r.Text[^1] is '−' => " " + r.Text[..^1] + " minus ",
            Shift.Super => " to the power " + r.Text.Replace("−", "minus ", StringComparison.Ordinal) + " ",
            _ => r.Text.Replace('\u00A0', ' '),
        });
        return string.Join(' ', string.Concat(words).Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private static string Word(string symbol, int power, bool many)
    {
        if (Find(symbol) is not { } word)
            return power == 1 ? symbol : string.Create(CultureInfo.InvariantCulture, $"{symbol} to the power {power}");
        var name = many ? word.Many : word.One;
        return power switch
        {
            1 => name,
            2 => "square " + name,
            3 => "cubic " + name,
            _ => string.Create(CultureInfo.InvariantCulture, $"{name} to the power {power}"),
        };
    }

    private static (string One, string Many)? Find(string symbol)
    {
        if (Units.TryGetValue(symbol, out var whole))
            return whole;
        if (symbol.Length > 1 && Prefixes.TryGetValue(symbol[0], out var prefix) && Units.TryGetValue(symbol[1..], out var unit))
            return (prefix + unit.One, prefix + unit.Many);
        return null;
    }
}
