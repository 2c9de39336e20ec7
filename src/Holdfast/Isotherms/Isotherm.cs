using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>The isotherms, found by one pass over the library: an isotherm is added by adding its file.</summary>
public static class Isotherm
{
    private static readonly IReadOnlyList<Model> Found = Model.AllIn(typeof(Isotherm).Namespace!);

    /// <summary>Every isotherm over the equilibrium concentration, ordered by name. A curve known under several names stands here once.</summary>
    public static IReadOnlyList<Model> All { get; } = [.. Found.Where(m => m.Card.Abscissa is null)];

    /// <summary>Isotherms whose abscissa is C/Cs, for which the solubility Cs must be given.</summary>
    public static IReadOnlyList<Model> OverRelativeConcentration { get; } = [.. Found.Where(m => m.Card.Abscissa is not null)];

    /// <summary>The isotherm of a name or of one of its other names ("Hill" is Sips); null when there is none.</summary>
    /// <param name="name">Name or alias, as on the card; case does not count.</param>
    public static Model? Named(string name)
        => Found.FirstOrDefault(m => m.Card.Aliases.Prepend(m.Card.Name).Contains(name, StringComparer.OrdinalIgnoreCase));

    /// <summary>How many different curves stand behind a list of names: Sips, Hill and Koble-Corrigan are one.</summary>
    /// <param name="names">Names or aliases; unknown names count as they stand.</param>
    public static int CountDistinct(IEnumerable<string> names)
        => names.Select(n => Named(n)?.Card.Name ?? n).Distinct(StringComparer.OrdinalIgnoreCase).Count();
}
