namespace Holdfast.Reports.Figures;

/// <summary>
/// The colours of figures. Series colours are those of M. Okabe and K. Ito, "Color Universal Design" (2002, revised 2008), as printed by
/// B. Wong, Nature Methods 8 (2011) 441. On white only the four that keep 3:1 against it carry lines and marks.
/// </summary>
public static class Palette
{
    /// <summary>Black of the set.</summary>
    public const string Black = "#000000";

    /// <summary>Orange of the set.</summary>
    public const string Orange = "#E69F00";

    /// <summary>Sky blue of the set.</summary>
    public const string SkyBlue = "#56B4E9";

    /// <summary>Bluish green of the set.</summary>
    public const string BluishGreen = "#009E73";

    /// <summary>Yellow of the set.</summary>
    public const string Yellow = "#F0E442";

    /// <summary>Blue of the set.</summary>
    public const string Blue = "#0072B2";

    /// <summary>Vermilion of the set.</summary>
    public const string Vermilion = "#D55E00";

    /// <summary>Reddish purple of the set.</summary>
    public const string ReddishPurple = "#CC79A7";

    /// <summary>The colour on a white sheet and in every file.</summary>
    /// <param name="tone">What it is for.</param>
    public static string Light(Tone tone) => tone switch
    {
        Tone.Series1 => Blue,
        Tone.Series2 => Vermilion,
        Tone.Series3 => BluishGreen,
        Tone.Series4 => ReddishPurple,
        Tone.Text => "#1A1A1A",
        Tone.Line => "#333333",
        Tone.Grey => "#737373",
        Tone.Shade => "#EDEDED",
        Tone.Paper => "#FFFFFF",
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "No such tone."),
    };

    /// <summary>The colour on a dark screen.</summary>
    /// <param name="tone">What it is for.</param>
    public static string Dark(Tone tone) => tone switch
    {
        Tone.Series1 => SkyBlue,
        Tone.Series2 => Orange,
        Tone.Series3 => BluishGreen,
        Tone.Series4 => ReddishPurple,
        Tone.Text => "#E8EAED",
        Tone.Line => "#C4C7CC",
        Tone.Grey => "#8F959E",
        Tone.Shade => "#262C34",
        Tone.Paper => "#15191E",
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "No such tone."),
    };

    /// <summary>The tone of a series.</summary>
    /// <param name="slot">Its style, 0 to 3.</param>
    public static Tone OfSlot(int slot) => slot switch
    {
        0 => Tone.Series1,
        1 => Tone.Series2,
        2 => Tone.Series3,
        3 => Tone.Series4,
        _ => throw new ArgumentOutOfRangeException(nameof(slot), slot, "A series style is 0 to 3."),
    };

    /// <summary>
    /// Rules for figures in a page: dark colours when the system or the page asks for them, light ones otherwise and on paper. Files never use them.
    /// A page chooses by data-theme="light" or "dark" on its root element.
    /// </summary>
    public static string Stylesheet()
    {
        var light = Rules(Light);
        var dark = Rules(Dark);
        return $"{Scoped(light, "")}@media screen and (prefers-color-scheme: dark) {{\n{Scoped(dark, ":root:not([data-theme=\"light\"]) ")}}}\n"
            + $"@media screen {{\n{Scoped(dark, ":root[data-theme=\"dark\"] ")}}}\n";
    }

    private static string[] Rules(Func<Tone, string> colour)
        => Enum.GetValues<Tone>().SelectMany(t => new[]
        {
            $".figure-sheet .fill-{Class(t)} {{ fill: {colour(t)}; }}",
            $".figure-sheet .stroke-{Class(t)} {{ stroke: {colour(t)}; }}",
        }).ToArray();

    private static string Scoped(string[] rules, string scope) => string.Concat(rules.Select(r => scope + r + "\n"));

    /// <summary>The name of a tone in class names.</summary>
    internal static string Class(Tone tone) => tone.ToString().ToLowerInvariant();
}
