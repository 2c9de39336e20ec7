using Holdfast.Studies;

namespace Holdfast.Reports.Documents;

/// <summary>The usual cautions for work of this kind. They remind; the supplier's sheet and the local rules decide.</summary>
internal static class SafetySection
{
    /// <summary>The section.</summary>
    public static Section Of(Study study) => new("safety", "Safety",
    [
        Prose.Paragraph(
            $"{Metal(study.Analyte)} Make no dust or mist of salts or loaded powder; wear gloves, goggles and a coat. Add acid to water, never water to acid; nitric acid and organic matter are kept apart. "
            + "Collect metal solutions, acidic rinses and loaded solids as labelled waste, each by itself; nothing goes down the sink. Ventilate the flame and its exhaust."),
        Prose.Paragraph(
            "This paragraph is a reminder and may be wrong or old. The supplier’s current safety data sheet, the local codes and the person responsible decide; work that needs a licence is done under one."),
    ]);

    // Common knowledge of the trade, kept general on purpose: hazard classes and first aid come from the supplier's sheet.
    private static string Metal(string? analyte) => analyte switch
    {
        "Ni" or "Co" => $"{Name(analyte)} salts can sensitise skin and airways and are treated as carcinogenic when breathed in.",
        "Pb" => "Lead salts are poisonous, build up in the body and can harm the unborn child.",
        "Cd" => "Cadmium salts are very poisonous, build up in the body and are treated as carcinogenic.",
        "Cr" => "Chromium(VI) is poisonous, can sensitise skin and is treated as carcinogenic; chromium(III) is less so, and one may become the other.",
        "Hg" => "Mercury compounds are very poisonous and build up in the body; some pass through gloves.",
        "As" => "Arsenic compounds are very poisonous and treated as carcinogenic; acid with a reducing agent can set free a poisonous gas.",
        "Cu" or "Zn" or "Mn" or "Ag" => $"{Name(analyte)} salts are harmful when swallowed, irritate the eyes and are harmful to life in water.",
        _ => "Salts of heavy metals are treated as poisonous until the supplier’s sheet says otherwise.",
    };

    private static string Name(string analyte) => analyte switch
    {
        "Ni" => "Nickel",
        "Co" => "Cobalt",
        "Cu" => "Copper",
        "Zn" => "Zinc",
        "Mn" => "Manganese",
        _ => "Silver",
    };
}
