using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>Per cent of oxides under the names of their metals: metals of an oxide cannot add up to the whole powder, and per cent of the oxides do.</summary>
internal static class MetalsAsOxides
{
    private const string Oxides = "oxides", Elements = "elements", Setting = "amounts are of";
    private const string Words = AmountWords.Oxides + " bead* fused perle* perla* perola* schmelz* fondu* fundid* fus* stopion* fluorescen* fluoresz* xrf rfa fluorescenz* ignition gluhverlust gluehverlust loi feu fuego fogo calcina* prazeni*";

    // Below that something is missing anyway; above a hundred and a little it is no whole.
    private const double Low = 90, High = 102, Exactly = 0.05;

    // As analysts reckon them. First those that no powder in water holds as a metal.
    private static readonly Dictionary<string, string> Usual = "Li2O Na2O K2O Rb2O Cs2O MgO CaO SrO BaO Al2O3 B2O3 SiO2 P2O5 Sc2O3 Y2O3 La2O3 CeO2 Nd2O3 Sm2O3 Eu2O3 Gd2O3 Dy2O3 Ho2O3 Er2O3 Tm2O3 Yb2O3 Lu2O3 TiO2 ZrO2 HfO2 V2O5 Nb2O5 Ta2O5".Split(' ').ToDictionary(Metal, o => o, StringComparer.Ordinal);
    private static readonly Dictionary<string, string> MayBeMetal = "Cr2O3 MnO Fe2O3 CoO NiO CuO ZnO Ga2O3 In2O3 SnO2 Sb2O3 PbO Bi2O3 CdO MoO3 WO3".Split(' ').ToDictionary(Metal, o => o, StringComparer.Ordinal);

    /// <summary>Asks where the amounts are plausible as oxides only; the lines are then of oxides. False while it is asked.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="table">How its amounts are laid out.</param>
    /// <param name="kind">What they are said to be.</param>
    /// <param name="lines">The amounts, afterwards as answered.</param>
    /// <param name="settings">Where the answer is kept.</param>
    public static bool Settle(MeasurementSource source, IElementTable table, string kind, ref ImmutableArray<ElementLine> lines, ImmutableArray<MeasuredSetting>.Builder settings)
    {
        if (table.HasBoth || table.Unit != "%" || kind == ElementFiles.Atomic || lines.IsEmpty || lines.Any(l => l.Species.Oxide is not null || OxideOf(l) is null))
            return true;
        double[] sums = [.. lines.GroupBy(l => (l.Powder, l.Spot)).Select(g => g.Sum(l => l.Mass ?? 0))];
        var never = lines.Where(l => Usual.ContainsKey(l.Element.Symbol)).Sum(l => l.Mass ?? 0);
        var said = source.Grid.Rows.Any(r => r.Cells.Any(c => MeasuredTable.Has(c.Text, Words)));

        // Totals of exactly 100 were made so, perhaps over the metals alone.
        if (sums.Any(s => s is < Low or > High) || never * 2 <= sums.Sum() || (!said && Array.TrueForAll(sums, s => Math.Abs(s - 100) <= Exactly)))
            return true;
        var oxides = lines.Select(l => Species.Find(OxideOf(l)!)!).DistinctBy(s => s.Symbol).ToDictionary(s => s.Element.Symbol, StringComparer.Ordinal);
        var id = source.Question("oxides");
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            $"{string.Join(", ", oxides.Keys)} ({table.MassHeading}) add up to {sums.Average().ToString("0.0", CultureInfo.InvariantCulture)} % without any oxygen, which metals of an oxide cannot. Are these per cent of the oxides {string.Join(", ", oxides.Values.Select(o => o.Symbol))}?", [Oxides, Elements], table.MassHeading);
        var converted = lines.Select(l => l with { Species = oxides[l.Element.Symbol] }).ToImmutableArray();
        source.Talk.Explain(id, [ElementFiles.Consequence(converted, l => l.Mass is { } m ? l.Species.MassOf(m).Value : null, _ => null), ElementFiles.Consequence(lines, l => l.Mass, _ => null)]);
        if (answer == Oxides)
        {
            lines = converted;
            settings.Add(new(Setting, Oxides, null, "", 0));
        }

        return answer is not null;
    }

    private static string? OxideOf(ElementLine line) => Usual.GetValueOrDefault(line.Element.Symbol) ?? MayBeMetal.GetValueOrDefault(line.Element.Symbol);

    private static string Metal(string oxide) => Composition.Formula.Parse(oxide).Parts.First(p => p.Key.Symbol != "O").Key.Symbol;
}
