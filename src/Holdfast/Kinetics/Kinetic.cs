using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>The kinetic curves, found by one pass over the library: a curve is added by adding its file.</summary>
public static class Kinetic
{
    /// <summary>Every kinetic curve, ordered by name.</summary>
    public static IReadOnlyList<Model> All { get; } = Model.AllIn(typeof(Kinetic).Namespace!);

    /// <summary>The curve of that name; null when there is none.</summary>
    /// <param name="name">As on the card; case does not count.</param>
    public static Model? Named(string name) => All.FirstOrDefault(m => string.Equals(m.Card.Name, name, StringComparison.OrdinalIgnoreCase));
}
