using System.Text.RegularExpressions;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>A unit of pressure.</summary>
/// <param name="Name">How it is kept: "mmHg".</param>
/// <param name="Kilopascal">Kilopascals in one of it.</param>
internal sealed record PressureUnit(string Name, double Kilopascal)
{
    /// <summary>All of them; a Torr is 101 325/760 Pa.</summary>
    private static readonly (Regex Pattern, PressureUnit Unit)[] Known =
    [.. new (string Pattern, PressureUnit Unit)[]
    {
        (@"kpa|кпа", new("kPa", 1)),
        (@"hpa|гпа", new("hPa", 0.1)),
        (@"mpa|мпа", new("MPa", 1000)),
        (@"mmhg|mm hg|mm\. ?hg|torr?|мм ?рт\.? ?ст\.?|торр", new("mmHg", 101.325 / 760)),
        (@"mbar|мбар", new("mbar", 0.1)),
        (@"bar|бар", new("bar", 100)),
        (@"atm|атм", new("atm", 101.325)),
        (@"psi[ag]?", new("psi", 6.894757)),
        (@"pa|па", new("Pa", 0.001)),
    }.Select(k => (new Regex($"(^|[^a-zа-я])({k.Pattern})([^a-zа-я0-9]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking), k.Unit))];

    /// <summary>The unit that stands in a heading or a setting, or null.</summary>
    /// <param name="text">A heading, a unit, a setting.</param>
    public static PressureUnit? In(string text)
    {
        var plain = FileWords.Plain(text);
        return Known.FirstOrDefault(k => k.Pattern.IsMatch(plain)).Unit;
    }
}
