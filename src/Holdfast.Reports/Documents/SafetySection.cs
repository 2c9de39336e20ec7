using Holdfast.Reports.Markup;
using Holdfast.Safety;
using Holdfast.Studies;

namespace Holdfast.Reports.Documents;

/// <summary>The usual cautions for work of this kind. They remind; the supplier's sheet and the local rules decide.</summary>
internal static class SafetySection
{
    /// <summary>The section.</summary>
    public static Section Of(Study study) => new("safety", "Safety",
    [
        Prose.Paragraph(
            "Salts of heavy metals are treated as poisonous until the supplier’s sheet says otherwise. Make no dust or mist of salts or loaded powder; wear gloves, goggles and a coat. Add acid to water, never water to acid; nitric acid and organic matter are kept apart. "
            + "Collect metal solutions, acidic rinses and loaded solids as labelled waste, each by itself; nothing goes down the sink. Ventilate the flame and its exhaust."),
        .. Listed(study),
        Prose.Paragraph(Caution.Reservation + " Work that needs a licence is done under one."),
    ]);

    private static IEnumerable<Node> Listed(Study study)
    {
        var cautions = StudyCautions.Of(study);
        if (cautions.Count > 0)
            yield return Prose.List(cautions.Select(c => $"{SentenceCase.Of(c.Class)}: {c.Advice} Codes for {c.Example}: {c.Hazards} ({c.Status})."));
    }
}
