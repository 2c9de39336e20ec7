using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Pressures that go beyond the saturation pressure: no vapour does, so that one of the two is in another unit than it says.</summary>
internal static class PressureAbove
{
    /// <summary>Readings of p and p0 may differ by this part (common practice); beyond it the units are in doubt.</summary>
    public const double Most = 1.05;

    // An isotherm that reaches less of p0 would fit almost any unit.
    private const double Least = 0.3;

    /// <summary>The unit of the pressures as stated, or as answered where they lie above p0; null while it is asked.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="heading">What stands over the pressures.</param>
    /// <param name="stated">Their unit as stated.</param>
    /// <param name="highest">The highest of them.</param>
    /// <param name="saturation">p0 with its unit.</param>
    public static string? Unit(MeasurementSource source, string heading, string stated, double highest, MeasuredSetting saturation)
    {
        if (PressureUnit.In(stated) is not { } unit || PressureUnit.In(saturation.Unit) is not { } of || saturation.Value is not > 0 || highest * unit.Kilopascal <= Most * saturation.Value.Value * of.Kilopascal)
            return stated;
        double Reach(string name) => highest * PressureUnit.In(name)!.Kilopascal / (saturation.Value!.Value * of.Kilopascal);
        ImmutableArray<string> choices = [.. new[] { "mmHg", "mbar", "hPa", "kPa", "Pa", "bar" }.Where(n => n != stated && Reach(n) is >= Least and <= Most).OrderByDescending(Reach), stated];
        var id = source.Question("pressure");
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            string.Create(CultureInfo.InvariantCulture, $"“{heading}” goes up to {highest:G5}, above the saturation pressure of {saturation.Written}, which no vapour does. In which unit are the pressures?"), choices, heading);
        source.Talk.Explain(id, [.. choices.Select(c => string.Create(CultureInfo.InvariantCulture, $"p/p0 up to {Reach(c):0.###}"))]);
        return answer is null ? null : PressureUnit.In(answer)?.Name ?? throw Studies.Import.Answers.Unknown(id, answer, "a unit of pressure");
    }
}
