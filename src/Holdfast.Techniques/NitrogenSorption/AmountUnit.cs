using System.Text.RegularExpressions;
using Holdfast.Porosity;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>A unit of the amount adsorbed.</summary>
/// <param name="Name">How it is kept: "cm3(STP)/g", "mmol/g", "cm3(STP)".</param>
/// <param name="Mmol">Millimoles in one of it, per gram or per sample.</param>
/// <param name="Per">Per what.</param>
/// <param name="SaysStp">True where the text says that volumes are at 0 °C and 101.325 kPa, or no volume is meant.</param>
internal sealed partial record AmountUnit(string Name, double Mmol, AmountPer Per, bool SaysStp)
{
    private static readonly (Regex Pattern, string Name, double Mmol, bool IsVolume)[] Numerators =
    [.. new (string Pattern, string Name, double Mmol, bool IsVolume)[]
    {
        (@"cm\^?3|ccm|cc|ml|cm\*\*3|см\^?3|мл", "cm3(STP)", 1 / Nitrogen.StpPerMmol, true),
        (@"mm\^?3|μl|ul|мкл", "mm3(STP)", 0.001 / Nitrogen.StpPerMmol, true),
        (@"dm\^?3|l|л", "L(STP)", 1000 / Nitrogen.StpPerMmol, true),
        (@"mmol|ммоль", "mmol", 1, false),
        (@"μmol|umol|mkmol|мкмоль", "umol", 0.001, false),
        (@"mol|моль", "mol", 1000, false),
        (@"mg|мг", "mg", 1 / Nitrogen.MolarMass, false),
    }.Select(n => (new Regex($"(^|[^a-zа-я0-9])(?<norm>n)?({n.Pattern})(?<rest>([^a-zа-я0-9].*)?)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking), n.Name, n.Mmol, n.IsVolume))];

    /// <summary>The units that can be answered, the usual ones first.</summary>
    public static IReadOnlyList<string> Choices { get; } = ["cm3(STP)/g", "mmol/g", "cm3(STP)", "mmol", "mg/g"];

    /// <summary>The unit that stands in a heading or a cell, or null. Brackets, raised digits, STP in any place: "cm³ g⁻¹, STP", "mL(STP)/g".</summary>
    /// <param name="text">A heading, a unit, a setting.</param>
    public static AmountUnit? In(string text)
    {
        var plain = FileWords.Plain(text);
        var saysStp = Stp().IsMatch(plain);
        var denied = SorptionWords.DeniesPerGram(text);
        var isLiquid = Liquid().IsMatch(plain);
        var bare = Spaces().Replace(Liquid().Replace(Stp().Replace(plain, " "), " "), " ");
        foreach (var (pattern, name, mmol, isVolume) in Numerators)
        {
            var match = pattern.Match(bare);
            if (!match.Success)
                continue;
            var rest = match.Groups["rest"].Value;
            saysStp |= match.Groups["norm"].Success;
            // A volume of liquid nitrogen is 650 times smaller than that of the gas, and often stands beside it.
            if (isLiquid && isVolume)
                return PerGram().IsMatch(rest) ? new(name.Replace("STP", "liquid", StringComparison.Ordinal) + "/g", mmol * Nitrogen.StpPerMmol / Nitrogen.LiquidPerMmol, AmountPer.Gram, true) : null;
            // Milligrams of nitrogen are an amount only per gram of powder; alone they are a mass.
            if (!denied && PerKilogram().IsMatch(rest))
                return new(name + "/kg", mmol / 1000, AmountPer.Gram, saysStp || !isVolume);
            if (!denied && PerGram().IsMatch(rest))
                return new(name + "/g", mmol, AmountPer.Gram, saysStp || !isVolume);
            return name == "mg" ? null : new(name, mmol, AmountPer.Sample, saysStp || !isVolume);
        }

        return null;
    }

    [GeneratedRegex(@"[\[({,;@]?\s*(\b(s\.?t\.?p|n\.?t\.?p|t\.?p\.?n|p\.?t\.?n|c\.?n\.?p\.?t|c\.?n\.?t\.?p|c\.n|i\.n|normbed\w*|norm|normal|н\.?у)\b\.?|标准|標準)\s*[\])},;]?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Stp();

    [GeneratedRegex(@"[(]?\s*(liquid\w*|flussig\w*|liquide|ciekl\w*|vloeiba\w*|жидк\w*|液\w*)\s*[)]?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Liquid();

    [GeneratedRegex(@"\s+", RegexOptions.NonBacktracking)]
    private static partial Regex Spaces();

    // What the amount is of may stand between: "mg N2 por g", "mmol gas adsorbed/g", "cm3 N2 g-1".
    private const string Of = @"^[\s(\[)\]·⋅*.]*([a-z][a-z0-9]{0,11}[\s)\]·⋅*.,]*){0,2}(/|per|pro|par|por|na|je)\s*[\[(]?\s*", OfPower = @"^[\s)\]·⋅*.(]*([a-z][a-z0-9]{0,11}[\s)\]·⋅*.,(]+){0,2}";

    [GeneratedRegex(Of + @"(g|gram\w*|г)([^a-zа-я]|$)|" + OfPower + @"(g|г)\s*\^?\s*\(?-\s*1", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerGram();

    [GeneratedRegex(Of + @"(kg|кг)([^a-zа-я]|$)|" + OfPower + @"(kg|кг)\s*\^?\s*\(?-\s*1", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerKilogram();
}

/// <summary>Per what an amount is.</summary>
internal enum AmountPer
{
    /// <summary>Per gram of powder.</summary>
    Gram,

    /// <summary>Of all the powder in the cell, or not said.</summary>
    Sample,
}
