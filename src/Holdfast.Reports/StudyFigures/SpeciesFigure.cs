using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;
using Holdfast.Speciation;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyFigures;

/// <summary>
/// The metal's dissolved species against pH at the concentration of the study, the range of pH in which each solid begins to form, and beside
/// it the removals of the vessels whose end pH was recorded, at the highest pH they reached.
/// </summary>
internal sealed class SpeciesFigure : IStudyFigure
{
    private const double From = 3;
    private const double To = 12;
    private const double Seen = 0.05;

    public int Place => 52;

    public IEnumerable<Figure> Of(Dossier dossier)
    {
        var guard = PrecipitationGuard.Of(dossier.Evidence);
        if (guard.Ions.Count == 0 || guard.Vials.Where(v => v.Onsets is not null).GroupBy(v => v.Onsets!).MaxBy(g => g.Count()) is not { } most)
            yield break;
        foreach (var ion in guard.Ions)
            yield return One(ion, most.Key, [.. guard.Vials.Where(v => Near(v, most.Key))], dossier);
    }

    private static bool Near(GuardedVial vial, SolidOnsets onsets)
        => vial.Vessel.Sample.Number(BatchProperties.EndPh) is not null && vial.Onsets is { } own && Tolerances.SameStart(onsets.Concentration, own.Concentration);

    private static Figure One(MetalIon ion, SolidOnsets onsets, IReadOnlyList<GuardedVial> vials, Dossier dossier)
    {
        var water = new MetalInWater(ion, onsets.Concentration / 1000 / ion.MolarMass, onsets.IonicStrength);
        double[] phs = [.. Enumerable.Range(0, 181).Select(i => From + (To - From) * i / 180)];
        var spread = phs.Select(water.At).ToArray();
        var shown = Enumerable.Range(0, water.Species.Count)
            .Select(s => (Species: s, Most: spread.Max(d => d.Shares[s])))
            .Where(s => s.Most >= Seen)
            .OrderByDescending(s => s.Most)
            .Take(Layer.Slots)
            .OrderBy(s => s.Species)
            .ToArray();
        var x = new Axis("pH", null, "pH") { Min = From, Max = To };
        Zone[] zones = [.. Zones(ion, onsets)];
        var metal = Concentration(onsets);
        return new Figure(
            StudyFigure.Id("species", ion.Name),
            $"Species of {ion.Name} against pH",
            $"Share of each dissolved species of {ion.Name} against pH at {metal}, with the ranges of pH in which its solids begin to form, and removal at the highest pH each vessel reached.",
            [
                new Panel(x, new Axis("share", "%", "share of the dissolved metal") { Min = 0, Max = 105 },
                [
                    .. zones,
                    .. shown.Select((s, slot) => new ModelCurve([.. spread.Select(d => (d.Ph, 100 * d.Shares[s.Species]))], From, To)
                    {
                        Slot = slot,
                        Label = Formula(Charged(water.Species[s.Species])),
                    }),
                ]),
                .. vials.Count == 0 ? [] : new[]
                {
                    new Panel(x, new Axis("R", "%", "removal"),
                    [
                        .. zones,
                        new Marks(StudyFigure.Marks(
                            vials.Select(v => v.Vessel), [], v => vials.First(g => g.Vessel == v).HighestPh, v => v.Removal)),
                    ]),
                },
            ])
        {
            Caption = $"Dissolved species of {ion.Name} at {metal}, ionic strength {InWords.Plain(onsets.IonicStrength, "mol/L")}, 25 °C, no solid allowed; beside them the vessels of that start concentration whose end pH was recorded, at the higher of start and end pH.",
            Notes =
            [
                "Shaded: where a solid begins to form, two standard uncertainties of the constants to either side.",
                .. shown.Length < spread[0].Shares.Count ? new RichText[] { RichText.Literal("Species below 5 % at every pH shown are left out.") } : [],
                .. ion.Hydrolysis.Any(h => h.Status.Contains("from memory", StringComparison.Ordinal)) ? new RichText[] { "Some constants are from memory; compare them with the named review." } : [],
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    // Aged, fresh and carbonate: the first of each that is reached.
    private static IEnumerable<Zone> Zones(MetalIon ion, SolidOnsets onsets)
        => new[] { SolidKind.Aged, SolidKind.Fresh, SolidKind.Carbonate }
            .Select(kind => onsets.Lowest(s => s.Kind == kind && s.Metal == ion.Name))
            .Where(o => o is { Low: not null, Ph: < To })
            .Select(o => new Zone(AxisName.X, Math.Max(From, o!.Low!.Value), Math.Min(To, o.High ?? To), Formula(o.Solid.Name)));

    private static string Concentration(SolidOnsets onsets) => InWords.Plain(onsets.Concentration, "mg/L");

    private static string Charged(DissolvedSpecies species)
        => species.Charge == 0 ? species.Formula
            : string.Create(CultureInfo.InvariantCulture, $"{species.Formula}^{{{(Math.Abs(species.Charge) == 1 ? "" : Math.Abs(species.Charge).ToString(CultureInfo.InvariantCulture))}{(species.Charge > 0 ? "+" : "−")}}}");

    // Numbers of atoms stand low: a digit after a letter or a bracket.
    private static RichText Formula(string formula)
        => RichText.Parse(string.Concat(formula.Select((c, i) => char.IsAsciiDigit(c) && i > 0 && (char.IsAsciiLetter(formula[i - 1]) || formula[i - 1] == ')') ? $"_{{{c}}}" : c.ToString())));
}
