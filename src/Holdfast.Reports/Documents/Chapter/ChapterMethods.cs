using Holdfast.Claims;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>Materials and methods as recorded. What no record holds is not printed again and again: one list at the end says where to fill it in.</summary>
internal static class ChapterMethods
{
    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static Section Of(Dossier dossier)
    {
        var content = new List<Node>();
        foreach (var (title, sentences) in MethodsSection.Parts(dossier.Evidence))
        {
            string[] said = [.. sentences.Select(Prose.WithoutGaps).Where(s => s.Length > 0)];
            if (said.Length == 0)
                continue;
            content.Add(Prose.Heading(title));
            content.AddRange(said.Select(Prose.Paragraph));
        }

        if (dossier.Evidence.Vessels.Any(v => v.Uptake is not null))
        {
            content.Add(Prose.Heading("Calculation"));
            content.Add(Prose.Paragraph(
                "Uptake, removal in per cent and dose of a vessel follow from the concentrations at the start and left, the volume and the mass of sorbent: ",
                FormulaMath.Of("q = (C0 − Ce)·V / m"), ", ", FormulaMath.Of("R = 100·(C0 − Ce) / C0"), ", ", FormulaMath.Of("D = m / V"), "."));
        }

        content.Add(Prose.Paragraph("Salts of heavy metals and the loaded powder were to be handled as poisonous; the supplier’s safety data sheet and the local rules decide, and the record lists the usual cautions."));
        content.AddRange(MethodsGap.Places(MethodsSection.Text(dossier)));
        return new("methods", "Materials and methods", content);
    }
}
