namespace Holdfast.Amounts;

/// <summary>One symbol of a unit, prefix included: "mg", "µL", "min".</summary>
/// <param name="Ascii">As it is written in files: "uL".</param>
/// <param name="Pretty">As it is shown: "µL".</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Its size in base units.</param>
internal sealed record UnitSymbol(string Ascii, string Pretty, Dimension Dimension, ScaleFactor Factor)
{
    private static readonly (string Text, int Exponent)[] Prefixes =
        [("f", -15), ("p", -12), ("n", -9), ("u", -6), ("m", -3), ("c", -2), ("d", -1), ("h", 2), ("k", 3), ("M", 6)];

    /// <summary>Added to a value in this unit's scale to reach the base unit; not 0 for the degree Celsius alone.</summary>
    public double Offset { get; init; }

    /// <summary>The two parts of a mass, amount or volume fraction do not mix: "wt%" is not "at%".</summary>
    public string? Share { get; init; }

    /// <summary>All symbols that a text may use, by spelling; case counts, since Mg is not mg.</summary>
    public static IReadOnlyDictionary<string, UnitSymbol> BySpelling { get; } = Table();

    private static Dictionary<string, UnitSymbol> Table()
    {
        var mass = new Dimension(Mass: 1);
        var volume = new Dimension(Length: 3);
        var length = new Dimension(Length: 1);
        var time = new Dimension(Time: 1);
        var amount = new Dimension(Amount: 1);
        var energy = new Dimension(Length: 2, Mass: 1, Time: -2);
        var pressure = new Dimension(Length: -1, Mass: 1, Time: -2);
        var temperature = new Dimension(Temperature: 1);
        var table = new Dictionary<string, UnitSymbol>(StringComparer.Ordinal);

        // Sizes: SI Brochure, 9th edition (BIPM 2019), tables 2 to 8; pressure and energy outside SI as printed there in earlier editions.
        Add("g", mass, ScaleFactor.Of(1, 1, -3), "pnumk", "gram", "grams");
        Add("L", volume, ScaleFactor.Of(1, 1, -3), "numcd", "l", "ℓ", "liter", "litre", "liters", "litres");
        Add("m", length, ScaleFactor.One, "pnumcdk", "meter", "metre");
        Add("angstrom", length, ScaleFactor.Of(1, 1, -10), "", "Å", "Ang", "Angstrom");
        Add("s", time, ScaleFactor.One, "fpnum", "sec", "secs", "second", "seconds");
        Add("min", time, ScaleFactor.Of(60, 1, 0), "", "mins", "minute", "minutes");
        Add("h", time, ScaleFactor.Of(3600, 1, 0), "", "hr", "hrs", "hour", "hours");
        Add("d", time, ScaleFactor.Of(86400, 1, 0), "", "day", "days");
        Add("mol", amount, ScaleFactor.One, "fpnumk", "mole", "moles");
        Add("M", amount * volume.Pow(-1), ScaleFactor.Of(1000, 1, 0), "pnum", "molar");
        Add("K", temperature, ScaleFactor.One, "m", "kelvin");
        Add("J", energy, ScaleFactor.One, "mkM");
        Add("cal", energy, ScaleFactor.Of(4184, 1, -3), "k");
        Add("eV", energy, ScaleFactor.Of(1602176634, 1, -28), "mkM");
        Add("Pa", pressure, ScaleFactor.One, "mhkM");
        Add("bar", pressure, ScaleFactor.Of(1, 1, 5), "m");
        Add("atm", pressure, ScaleFactor.Of(101325, 1, 0), "");
        Add("Torr", pressure, ScaleFactor.Of(101325, 760, 0), "", "torr");
        Add("mmHg", pressure, ScaleFactor.Of(133322387415, 1, -9), "");
        Add("N", length * mass * time.Pow(-2), ScaleFactor.One, "mk");
        Add("W", energy * time.Pow(-1), ScaleFactor.One, "umk");
        Add("A", new(Current: 1), ScaleFactor.One, "pnum");
        Add("V", energy * time.Pow(-1) * new Dimension(Current: -1), ScaleFactor.One, "umk");
        Add("S", energy.Pow(-1) * time * new Dimension(Current: 2), ScaleFactor.One, "num");
        Add("Hz", time.Pow(-1), ScaleFactor.One, "kM");
        Add("rpm", time.Pow(-1), ScaleFactor.Of(1, 60, 0), "");
        Add("counts", new(Counts: 1), ScaleFactor.One, "", "count", "cts");
        Add("cps", new(Counts: 1, Time: -1), ScaleFactor.One, "k");
        Add("a.u.", new(Signal: 1), ScaleFactor.One, "", "a.u", "arb.u.");
        Add("deg", new(Angle: 1), ScaleFactor.One, "", "°", "degree", "degrees");
        Add("rad", new(Angle: 1), ScaleFactor.Of(5729577951308232, 1, -14), "m");
        Add("AU", Dimension.None, ScaleFactor.One, "m");

        // Ideal-gas volume at 273.15 K and 101325 Pa: R·273.15/101325 = 22413.96954 cm³/mol, R = 8.31446261815324 J/(mol K) (CODATA 2018, exact).
        var stp = ScaleFactor.Of(101325, 1, 0) / (ScaleFactor.Of(831446261815324, 1, -14) * ScaleFactor.Of(27315, 1, -2));
        table["cm3(STP)"] = new("cm3(STP)", "cm3(STP)", amount, stp * ScaleFactor.Of(1, 1, -6));
        table["cc"] = table["mL"];

        foreach (var spelling in new[] { "degC", "°C", "℃", "celsius", "Celsius" })
            table[spelling] = new("degC", "°C", temperature, ScaleFactor.One) { Offset = 273.15 };
        foreach (var spelling in new[] { "%", "percent", "pct" })
            table[spelling] = new("%", "%", Dimension.None, ScaleFactor.Of(1, 100, 0));
        foreach (var share in new[] { "wt", "at", "mol", "vol" })
            table[share + "%"] = new(share + "%", share + "%", Dimension.None, ScaleFactor.Of(1, 100, 0)) { Share = share };
        return table;

        void Add(string ascii, Dimension dimension, ScaleFactor factor, string prefixes, params ReadOnlySpan<string> aliases)
        {
            var pretty = ascii switch { "angstrom" => "Å", "deg" => "°", _ => ascii };
            var plain = new UnitSymbol(ascii, pretty, dimension, factor);
            table.Add(ascii, plain);
            foreach (var alias in aliases)
                table.Add(alias, plain);
            foreach (var (prefix, exponent) in Prefixes)
            {
                if (!prefixes.Contains(prefix[0], StringComparison.Ordinal))
                    continue;
                var sized = new UnitSymbol(prefix + ascii, (prefix == "u" ? "µ" : prefix) + pretty, dimension, factor * ScaleFactor.Of(1, 1, exponent));
                table.Add(prefix + ascii, sized);
                if (ascii == "L")
                    table.Add(prefix + "l", sized);
            }
        }
    }
}
