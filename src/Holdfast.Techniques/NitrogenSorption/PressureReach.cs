using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>How far pressures reach towards the saturation pressure: no vapour goes beyond it, and an isotherm that would end near it in another unit hardly stops far below.</summary>
internal static class PressureReach
{
    /// <summary>Readings of p and p0 may differ by this part (common practice); beyond it the units are in doubt.</summary>
    public const double Most = 1.05;

    // An isotherm that reaches less of p0 would fit almost any unit.
    private const double Least = 0.3;

    // A whole isotherm ends between these parts of p0 (common practice); one that seems to end below the third, and would end there in another unit, was headed wrongly.
    private const double WholeFrom = 0.94, WholeTo = 1.02, SeemsShort = 0.8;

    /// <summary>The unit of the pressures as stated, or as answered where their reach puts it in doubt; null while it is asked.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="heading">What stands over the pressures.</param>
    /// <param name="stated">Their unit as stated.</param>
    /// <param name="highest">The highest of them.</param>
    /// <param name="saturation">p0 with its unit.</param>
    public static string? Unit(MeasurementSource source, string heading, string stated, double highest, MeasuredSetting saturation)
    {
        if (PressureUnit.In(stated) is not { } unit || PressureUnit.In(saturation.Unit) is not { } of || saturation.Value is not > 0)
            return stated;
        double Reach(string name) => highest * PressureUnit.In(name)!.Kilopascal / (saturation.Value!.Value * of.Kilopascal);
        var (isAbove, reach) = (Reach(unit.Name) > Most, Reach(unit.Name));
        var (from, to) = isAbove ? (Least, Most) : (WholeFrom, WholeTo);
        string[] others = [.. new[] { "mmHg", "mbar", "hPa", "kPa", "Pa", "bar" }.Where(n => PressureUnit.In(n)!.Kilopascal != unit.Kilopascal && Reach(n) >= from && Reach(n) <= to).OrderByDescending(Reach)];
        if (!isAbove && (reach >= SeemsShort || others.Length == 0))
            return stated;
        ImmutableArray<string> choices = [.. others, stated];
        var doubt = isAbove ? string.Create(CultureInfo.InvariantCulture, $"“{heading}” goes up to {highest:G5}, above the saturation pressure of {saturation.Written}, which no vapour does.")
            : string.Create(CultureInfo.InvariantCulture, $"“{heading}” goes up to {highest:G5} only, p/p0 {reach:G2} of the saturation pressure of {saturation.Written}; in {others[0]} the isotherm would end at {Reach(others[0]):0.###}, as a whole one does.");
        var id = source.Question("pressure");
        var answer = source.Talk.Ask(id, Codes.Ambiguous, doubt + " In which unit are the pressures?", choices, heading);
        source.Talk.Explain(id, [.. choices.Select(c => string.Create(CultureInfo.InvariantCulture, $"p/p0 up to {Reach(c):0.###}"))]);
        return answer is null ? null : PressureUnit.In(answer)?.Name ?? throw Studies.Import.Answers.Unknown(id, answer, "a unit of pressure");
    }
}
