using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;
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
        var lines = StudyFigure.Of<ArrheniusFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>();
        foreach (var family in families)
        {
            content.Add(Prose.Heading(family.Name));
            if (figures.GetValueOrDefault(StudyFigure.Id("van-t-hoff", family.Isotherms[0].Fitted.Series.Name)) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(numbering.Table(() => TemperatureTable.Of(family)));
            content.Add(Prose.Paragraph(Words(family, numbering)));
            if (TemperatureTable.Heats(family) is { } heats)
                content.Add(numbering.Table(heats));
            if (!family.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(family.Findings));
        }

        foreach (var rate in rates)
        {
            content.Add(Prose.Heading($"Rates of {rate.Name}"));
            if (lines.GetValueOrDefault(StudyFigure.Id(ArrheniusFigure.Kind, rate.Series[0].Name)) is { } line)
                content.Add(numbering.Figure(line));
            content.Add(numbering.Table(() => RateTable.Of(rate)));
            content.Add(Prose.Paragraph(Words(rate, numbering)));
            if (!rate.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(rate.Findings));
        }

        return new("temperature", "Temperature", content);
    }

    private static Node[] Words(TemperatureFamily family, Numbering numbering)
    {
        if (family.Line is not { } line)
            return ["No line of ln K on 1/T was drawn: three temperatures with a settled Langmuir constant are the least."];
        var (first, propagated) = (family.Isotherms[0].Fitted.Series.Name, line.PropagatedEnthalpy.U);
        Node[] enthalpy =
        [
            $"The slope gives ΔH° = {InWords.Of(line.Enthalpy, "kJ/mol")}", .. numbering.Trail("dH:" + first), $" by the scatter about the line ({Freedom(line.Enthalpy.DegreesOfFreedom)})"
                + (propagated > 0 ? $"; the uncertainties of the constants alone give a standard uncertainty of {InWords.Plain(propagated, "kJ/mol")}. The wider of the two intervals judges the sign." : "."),
        ];
        return family.Choice?.StandardState is not { } state ? enthalpy :
        [
            .. enthalpy,
            $" ΔS° = {InWords.Of(line.Entropy, "J/(mol K)")}", .. numbering.Trail("dS:" + first),
            $" and ΔG° = {InWords.Of(line.FreeEnergy(line.Line.HarmonicMeanTemperature), "kJ/mol")}", .. numbering.Trail("dG-line:" + first),
            $" at {InWords.Plain(line.Line.HarmonicMeanTemperature, "K")}, where the line is known best, belong to the standard state {state}."
                + string.Create(CultureInfo.InvariantCulture, $" ΔH° and ΔS° are correlated by {line.Correlation:0.0000}, as for any data over so short a range: one result, not two.")
                + " That ΔG° is below 0 follows from uptake being observed; no kind of binding is read from it.",
        ];
    }

    private static IEnumerable<Node> Words(RateFamily rate, Numbering numbering)
    {
        yield return $"By the {rate.Curve.ToLowerInvariant()} curve at every temperature, ";
        foreach (var (energy, i) in rate.Energies.Select((e, i) => (e, i)))
        {
            yield return $"{(i == 0 ? "" : " and ")}the apparent activation energy of {energy.Constant} is {InWords.Of(energy.Line.ActivationEnergy, "kJ/mol")}";
            foreach (var link in numbering.Trail(TemperatureNumbers.EnergyAddress(rate, i)))
                yield return link;
            yield return $" by the scatter about the line ({Freedom(energy.Line.ActivationEnergy.DegreesOfFreedom)})"
                + (energy.Line.PropagatedActivationEnergy.U is > 0 and var u ? $", with a standard uncertainty of {InWords.Plain(u, "kJ/mol")} from the constants alone" : "");
        }

        yield return "." + (rate.Energies.Length > 1 ? " The second-order constant contains the plateau, which changes with temperature: the two differ by that, and the one meant must be said." : "")
            + string.Create(CultureInfo.InvariantCulture, $" Under about {Arrhenius.DiffusionBelow:0} kJ/mol diffusion in water could set the pace, over {Arrhenius.SurfaceStepAbove:0} a step at the surface: hints, from common practice, and no proof.");
    }

    private static string Freedom(double dof) => string.Create(CultureInfo.InvariantCulture, $"{dof:0} degree{(dof == 1 ? "" : "s")} of freedom");
}
