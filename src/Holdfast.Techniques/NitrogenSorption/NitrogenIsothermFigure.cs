using Holdfast.Claims;
using Holdfast.Porosity;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>The isotherm with both branches, and beside it the BET line with its residuals.</summary>
internal sealed class NitrogenIsothermFigure : IStudyFigure
{
    /// <inheritdoc/>
    public int Place => 4;

    // Points outside the window are drawn up to so many times the height of those inside.
    private const double Tallest = 20;

    /// <inheritdoc/>
    public IEnumerable<Figure> Of(Dossier dossier)
        => SorptionStudy.Of(dossier.Evidence).Isotherms.Where(i => i.Refused is null && !i.Branches.Adsorption.IsEmpty).Select(i => One(i, dossier));

    private static Figure One(SorptionIsotherm isotherm, Dossier dossier)
    {
        var (id, name) = (isotherm.Measurement.Id, isotherm.Measurement.Sample);
        var (up, down) = (isotherm.Branches.Adsorption, isotherm.Branches.Desorption);
        var x = new Axis("p/p_0", null, "relative pressure") { Min = 0, Max = 1, Chosen = true };
        var panel = new Panel(x, new Axis("n", "mmol g^-1", "amount adsorbed") { Min = 0 },
        [
            new Marks([.. up.Select(p => new Mark(p.X, p.Amount))]) { Slot = 0, Label = down.IsEmpty ? null : RichText.Literal("adsorption") },
            .. down.IsEmpty ? Array.Empty<Layer>() : [new Marks([.. down.Select(p => new Mark(p.X, p.Amount))]) { Slot = 1, Label = RichText.Literal("desorption") }],
        ]);
        var window = isotherm.Bet?.Chosen;
        return new Figure(
            StudyFigure.Id("nitrogen-isotherm", name + "-" + id), $"Nitrogen isotherm of {name} ({id})",
            $"Amount adsorbed against relative pressure, {InWords.Count(up.Length, "adsorption point")} and {InWords.Count(down.Length, "desorption point")}"
                + (window is null ? "; no window gives a BET area." : $"; beside it the BET line over {InWords.Plain(window.From)} to {InWords.Plain(window.To)} with its residuals."),
            window is null ? [panel] : [panel, Line(isotherm, window)])
        {
            Caption = $"Nitrogen isotherm of {name} at 77 K ({id}), {(isotherm.Mass is { } m ? InWords.Setting(m, "g") : "mass not recorded")}, degassed {isotherm.Degassing ?? "as not recorded"}.",
            Notes =
            [
                $"Marks: single points as measured. Type, as a suggestion: {isotherm.Shape?.Words ?? "not classified"}.",
                .. window is null ? [] : new RichText[] { $"BET line: {InWords.Count(window.Points, "point")}, C = {InWords.Plain(window.C)}; below it what is measured less the line." },
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
            RestsOn = [id],
        };
    }

    private static Panel Line(SorptionIsotherm isotherm, BetWindow window)
    {
        SorptionPoint[] used = [.. isotherm.Branches.Adsorption.Skip(window.First).Take(window.Points)];
        static double Y(SorptionPoint p) => p.X / (p.Amount * (1 - p.X));
        double At(double x) => window.Intercept + window.Slope * x;
        // Where next to nothing was taken up the ordinate has no end, and the line would be a dot beside it.
        var highest = Tallest * used.Max(Y);
        var beyond = isotherm.Branches.Adsorption.Where(p => p.Amount > 0 && Y(p) <= highest && p.X <= Math.Min(BetArea.UpperEnd, window.To * 1.6) && !used.Contains(p)).ToArray();
        return new Panel(new Axis("p/p_0", null, "relative pressure") { Min = 0 }, new Axis("x/[n(1 − x)]", "g mmol^-1", "BET ordinate") { Min = 0 },
        [
            ModelCurve.Of(At, window.From, window.To),
            .. beyond.Length > 0 ? [new Marks([.. beyond.Select(p => new Mark(p.X, Y(p)))]) { Slot = 1, Label = RichText.Literal("outside the window") }] : Array.Empty<Layer>(),
            new Marks([.. used.Select(p => new Mark(p.X, Y(p)))]),
        ])
        {
            Residuals = new Residuals(new Axis("Δ", null, "point less line"), [new Marks([.. used.Select(p => new Mark(p.X, Y(p) - At(p.X)))])]),
        };
    }
}
