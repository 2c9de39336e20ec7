using Holdfast.Claims;
using Holdfast.Porosity;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Pore distribution of both branches on a logarithmic axis, the adsorption branch with its spread.</summary>
internal sealed class PoreSizeFigure : IStudyFigure
{
    /// <inheritdoc/>
    public int Place => 5;

    /// <inheritdoc/>
    public IEnumerable<Figure> Of(Dossier dossier)
        => SorptionStudy.Of(dossier.Evidence).Isotherms.Where(i => i.ByAdsorption is { Sizes.Mode: not null }).Select(i => One(i, dossier));

    private static Figure One(SorptionIsotherm isotherm, Dossier dossier)
    {
        var (id, name) = (isotherm.Measurement.Id, isotherm.Measurement.Sample);
        var (sizes, spread) = isotherm.ByAdsorption!.Value;
        var mode = sizes.Mode!.Value;
        return new Figure(
            StudyFigure.Id("pore-sizes", name + "-" + id), $"Pore sizes of {name} ({id})",
            $"dV/dlog d against diameter; by the adsorption branch the largest value stands at {InWords.Plain(mode.Diameter, "nm")}"
                + (isotherm.ByDesorption?.Mode is { } down ? $", by desorption at {InWords.Plain(down.Diameter, "nm")}." : "."),
            [
                new Panel(new Axis("d", "nm", "pore diameter") { Scale = AxisScale.Logarithmic }, new Axis("dV/dlog d", "cm^3 g^-1", "volume per decade of diameter") { Min = 0 },
                [
                    new Marks([.. sizes.Steps.Select((s, i) => new Mark(s.Diameter, s.Density) { YBar = ErrorBar.Around(s.Density, 2 * spread[i]) })]) { Slot = 0, Label = RichText.Literal("adsorption") },
                    .. isotherm.ByDesorption is { Mode: not null } other ? [new Marks([.. other.Steps.Select(s => new Mark(s.Diameter, s.Density))]) { Slot = 1, Label = RichText.Literal("desorption") }] : Array.Empty<Layer>(),
                ]),
            ])
        {
            Caption = $"Pore sizes of {name} ({id}) by Kelvin's equation with the layer of Harkins and Jura on the walls, cylinders.",
            Notes =
            [
                $"Bars: twice the spread when every amount has an error of {InWords.Plain(100 * PoreSizes.AmountError, "%")}. Kelvin's equation underestimates pores below about 10 nm; nothing is said under 2 nm.",
                .. isotherm.Findings.Where(f => f.Code == PorosityFindings.NoSizes).Select(f => RichText.Literal(f.Sentence)),
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
            RestsOn = [id],
        };
    }
}
