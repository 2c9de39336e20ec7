using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Thermodynamics;

namespace Holdfast.Reports.Documents;

/// <summary>Enthalpy, entropy and isosteric heat from isotherms at several temperatures, activation energies from rates.</summary>
internal sealed class TemperatureSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 62;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var families = TemperatureStudy.Of(dossier.Evidence).Families;
        var rates = RateStudy.Of(dossier.Evidence).Families;
        if (families.IsEmpty && rates.IsEmpty)
            return null;
        var figures = StudyFigure.Of<VantHoffFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>();
        foreach (var family in families)
        {
            content.Add(Prose.Heading(family.Name));
            if (figures.GetValueOrDefault(StudyFigure.Id("van-t-hoff", family.Isotherms[0].Fitted.Series.Name)) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(numbering.Table(TemperatureTable.Of(family)));
            content.Add(Prose.Paragraph(Words(family)));
            if (TemperatureTable.Heats(family) is { } heats)
                content.Add(numbering.Table(heats));
            if (!family.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(family.Findings));
        }

        foreach (var rate in rates)
        {
            content.Add(Prose.Heading($"Rates of {rate.Name}"));
            content.Add(numbering.Table(RateTable.Of(rate)));
            content.Add(Prose.Paragraph(Words(rate)));
            if (!rate.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(rate.Findings));
        }

        return new("temperature", "Temperature", content);
    }

    private static string Words(TemperatureFamily family)
    {
        if (family.Line is not { } line)
            return "No line of ln K on 1/T was drawn: three temperatures with a settled Langmuir constant are the least.";
        var propagated = line.PropagatedEnthalpy.U;
        var text = $"The slope gives ΔH° = {InWords.Of(line.Enthalpy, "kJ/mol")} by the scatter about the line ({Freedom(line.Enthalpy.DegreesOfFreedom)})"
            + (propagated > 0 ? $"; the uncertainties of the constants alone give a standard uncertainty of {InWords.Plain(propagated, "kJ/mol")}. The wider of the two intervals judges the sign." : ".");
        return family.Choice?.StandardState is not { } state ? text : text
            + $" ΔS° = {InWords.Of(line.Entropy, "J/(mol K)")} and ΔG° = {InWords.Of(line.FreeEnergy(line.Line.HarmonicMeanTemperature), "kJ/mol")} at {InWords.Plain(line.Line.HarmonicMeanTemperature, "K")}, where the line is known best, belong to the standard state {state}."
            + string.Create(CultureInfo.InvariantCulture, $" ΔH° and ΔS° are correlated by {line.Correlation:0.0000}, as for any data over so short a range: one result, not two.")
            + " That ΔG° is below 0 follows from uptake being observed; no kind of binding is read from it.";
    }

    private static string Words(RateFamily rate)
        => $"By the {rate.Curve.ToLowerInvariant()} curve at every temperature, "
            + InWords.Listed(rate.Energies.Select(e => $"the activation energy of {e.Constant} is {InWords.Of(e.Line.ActivationEnergy, "kJ/mol")}")) + "."
            + (rate.Energies.Length > 1 ? " The second-order constant contains the plateau, which changes with temperature: the two differ by that, and the one meant must be said." : "")
            + string.Create(CultureInfo.InvariantCulture, $" Under about {Arrhenius.DiffusionBelow:0} kJ/mol diffusion in water could set the pace, over {Arrhenius.SurfaceStepAbove:0} a step at the surface: hints, from common practice, and no proof.");

    private static string Freedom(double dof) => string.Create(CultureInfo.InvariantCulture, $"{dof:0} degree{(dof == 1 ? "" : "s")} of freedom");
}
