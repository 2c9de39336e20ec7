using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>Whether masses of dissolved portions can be in the unit over their column.</summary>
internal static class PortionMass
{
    /// <summary>No one dissolves more of a powder in a flask, g (common practice: 0.01 to 1 g).</summary>
    public const double Largest = 5;

    /// <summary>The unit of the masses as stated, or as answered where they would be heavier than anyone dissolves; null while it is asked.</summary>
    /// <param name="source">The table.</param>
    /// <param name="digests">Its columns.</param>
    /// <param name="mark">Decimal mark.</param>
    public static string? Unit(MeasurementSource source, DigestTable digests, DecimalMark mark)
    {
        var stated = digests.UnitOf(digests.MassColumn);
        double[] masses = [.. digests.Table.Numbers(digests.MassColumn, mark).OfType<double>().Where(m => m > 0)];
        if (masses.Length == 0 || !stated.IsConvertibleTo(Amounts.Unit.Parse("g")) || masses.Min() * stated.Convert(1, Amounts.Unit.Parse("g")) <= Largest)
            return stated.Plain;
        var heading = digests.Table.Named(digests.MassColumn);
        var finer = stated.Plain == "kg" ? "g" : "mg";
        var id = source.Question("unit:" + heading);
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            string.Create(CultureInfo.InvariantCulture, $"“{heading}” of {digests.Lines.Select(l => l.Cells.FirstOrDefault(c => !c.IsBlank).Text).FirstOrDefault() ?? source.Talk.FileName}: {masses.Min():G4} {stated.Plain} of powder is more than anyone dissolves in a flask. Is the mass in {finer}?"), [finer, stated.Plain], heading);
        source.Talk.Explain(id, [.. new[] { finer, stated.Plain }.Select(u => string.Create(CultureInfo.InvariantCulture, $"the first portion weighs {masses[0]:G4} {u}"))]);
        return answer is null ? null : answer == finer || answer == stated.Plain ? answer : throw Answers.Unknown(id, answer, "a unit of mass");
    }
}
