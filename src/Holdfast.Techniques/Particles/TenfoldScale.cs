using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>Sizes whose median is a tenth, a thousandth or as many times that of their kin: whether they are in another unit than the heading says is asked.</summary>
internal static class TenfoldScale
{
    private const string AsWritten = "as-written";

    /// <summary>What the sizes are multiplied by as answered, 1 where they are right as written; null while it is asked.</summary>
    /// <param name="source">The list.</param>
    /// <param name="id">Id of the question.</param>
    /// <param name="text">The question.</param>
    /// <param name="label">What tells these sizes from the others.</param>
    /// <param name="median">Their median.</param>
    /// <param name="factor">What would make them alike.</param>
    /// <param name="unit">Their unit.</param>
    public static double? Ask(MeasurementSource source, string id, string text, string label, double median, double factor, string unit)
    {
        static string Shown(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
        var choice = "× " + Shown(factor);
        var answer = source.Talk.Ask(id, Codes.Ambiguous, text, [choice, AsWritten], label);
        source.Talk.Explain(id, [$"median {Shown(median * factor)} {unit}", $"median {Shown(median)} {unit}"]);
        return answer is null ? null : answer == choice ? factor : 1;
    }
}
