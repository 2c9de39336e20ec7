using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>Several powders in one table of elements, each with its name beside or above its amounts.</summary>
internal static class PowdersOfOneTable
{
    private const string Powders = "powders", OnePowder = "one-powder", Shown = ", ";
    private const int MostShown = 6;

    /// <summary>The powder of a line.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="lines">Its amounts.</param>
    /// <param name="table">How they are laid out.</param>
    /// <param name="powder">What the file as a whole is of.</param>
    public static Func<ElementLine, string> Of(MeasurementSource source, ImmutableArray<ElementLine> lines, IElementTable table, string powder)
    {
        string[] names = [.. lines.Select(l => l.Powder).OfType<string>().Distinct(StringComparer.Ordinal)];
        if (names.Length == 0 || PortionNames.AreOfOne(names, table.PowderHeading, powder))
            return _ => powder;
        if (names.Length == 1)
            return _ => FileWords.Spelled(source, names[0]);

        // Names of powders above or beside amounts are far likelier than names of places; a file called as one of them says nothing else.
        var id = source.Question("powders");
        var answer = source.Talk.Assume(id, Codes.UnknownSample, $"{string.Join(Shown, names.Take(MostShown))}{(names.Length > MostShown ? " …" : "")} are powders, each with a composition of its own.", [Powders, OnePowder], [.. names]);
        source.Talk.Explain(id, ["no mean over them", $"they are places of {powder}, with a mean and scatter over all"]);
        return answer == OnePowder ? _ => powder : l => FileWords.Spelled(source, l.Powder!);
    }
}
