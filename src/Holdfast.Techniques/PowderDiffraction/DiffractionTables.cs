using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Lines of every pattern, and their lattices and sizes.</summary>
internal sealed class DiffractionTables : IStudyTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["ns"] = "not told by these lines",
        ["nm"] = "no match with a known phase",
        ["ni"] = "no width of the instrument was measured",
        ["nr"] = "not recorded",
        ["nu"] = "without scatter, so nothing to hold it against",
    };

    /// <inheritdoc/>
    public string Name => DiffractionFiles.TechniqueName;

    /// <inheritdoc/>
    public IEnumerable<Table> Of(Evidence evidence)
    {
        var study = DiffractionStudy.Of(evidence);
        if (study.Patterns.IsEmpty)
            yield break;
        yield return Numbers(study);
        foreach (var pattern in study.Patterns)
            yield return Lines(pattern);
    }

    /// <summary>One row a pattern.</summary>
    /// <param name="study">The patterns.</param>
    public static Table Numbers(DiffractionStudy study)
        => new(
            "diffraction",
            "Powder diffraction: lattice and crystallite size",
            [
                new Column("pattern", "Pattern") { NamesRows = true },
                new Column("powder", "Powder"),
                new Column("radiation", "Radiation"),
                new Column("wavelength", "Wavelength") { Unit = "Å" },
                new Column("phase", "Phase"),
                new Column("lines", "Lines, matched"),
                .. new[] { "a", "b", "c" }.Select(s => new Column(s, s) { Unit = "Å" }),
                .. new[] { ("alpha", "α"), ("beta", "β"), ("gamma", "γ") }.Select(s => new Column(s.Item1, s.Item2) { Unit = "°" }),
                new Column("displacement", "Sample below the axis") { Unit = "mm" },
                new Column("strangers", "Lines of no known phase"),
                new Column("limit", "Smallest line that would be seen, of the strongest") { Unit = "%" },
                new Column("size", "Crystallites from") { Unit = "nm" },
                new Column("largest", "to") { Unit = "nm" },
                new Column("strain", "Strain e"),
            ],
            [.. study.Patterns.Select(One)],
            Codes)
        {
            Notes =
            [
                "Value ± standard uncertainty. Lattice: least squares of the places of lines with the height of the sample refined; half the difference to a zero error of the scale is added to the uncertainty.",
                "Crystallites: bracket of both ways to take the width of the instrument off, widened by two standard uncertainties of breadths and K = 0.9 (5 %). A volume-weighted length of coherent columns, no particle size.",
            ],
        };

    /// <summary>One row a line.</summary>
    /// <param name="pattern">The pattern.</param>
    public static Table Lines(PatternFound pattern) => pattern.Fitted is var (_, fit) ? Fitted(pattern, fit) : Listed(pattern);

    private static Table Fitted(PatternFound pattern, ProfileFit fit)
    {
        var matched = Matched(pattern);
        var strongest = pattern.Lines.Select(l => l.Area).DefaultIfEmpty(1).Max();
        return new(
            "lines-" + LevelTable.Id(pattern.Measurement.Id),
            $"Lines of {pattern.Sample} ({pattern.Measurement.Id}), {pattern.Radiation.Name}",
            [
                new Column("place", "2θ") { Unit = "°", NamesRows = true },
                new Column("d", "d") { Unit = "Å" },
                new Column("height", "Height"),
                new Column("share", "Area of the strongest") { Unit = "%" },
                new Column("width", "Full width at half height") { Unit = "°" },
                new Column("eta", "Lorentz share"),
                new Column("z", "z"),
                new Column("phase", "Phase"),
                new Column("hkl", "h k l"),
                new Column("flags", "Remarks"),
            ],
            [.. pattern.Lines.Select(l => Row.Of(
                new MeasuredCell(l.TwoTheta, l.TwoThetaU) { Address = DiffractionNumbers.Line(pattern.Measurement.Id, l) }, new MeasuredCell(l.Spacing, l.SpacingU), new NumberCell(l.Height), new MeasuredCell(100 * l.Area / strongest, 100 * l.AreaU / strongest),
                new MeasuredCell(l.Width, l.WidthU), new NumberCell(l.Eta), double.IsFinite(l.Significance) ? new NumberCell(l.Significance) : new MissingCell("nu"),
                PhaseOf(matched, l), PlanesOf(matched, l), Words(l.Flags)))],
            Codes)
        {
            Notes =
            [
                $"Profiles fitted to the raw readings; uncertainties from the covariance × max(1, χ²ᵣ). z: net counts over their standard uncertainty; {fit.Search.Threshold.ToString("0.0", CultureInfo.InvariantCulture)} and more count, a 5 % chance of one false line in the whole scan.",
            ],
        };
    }

    private static Table Listed(PatternFound pattern)
    {
        var matched = Matched(pattern);
        return new(
            "lines-" + LevelTable.Id(pattern.Measurement.Id),
            $"Lines of {pattern.Sample} as listed ({pattern.Measurement.Id}), {pattern.Radiation.Name}",
            [
                new Column("place", "2θ") { Unit = "°", NamesRows = true },
                new Column("d", "d") { Unit = "Å" },
                new Column("height", "Intensity as listed"),
                new Column("width", "Width as listed") { Unit = "°" },
                new Column("phase", "Phase"),
                new Column("hkl", "h k l"),
            ],
            [.. pattern.Lines.Select(l => Row.Of(
                new NumberCell(l.TwoTheta) { Decimals = 3 }, new NumberCell(l.Spacing) { Decimals = 4 }, l.Height > 0 ? new NumberCell(l.Height) : new MissingCell("nr"), l.Width > 0 ? new NumberCell(l.Width) : new MissingCell("nr"),
                PhaseOf(matched, l), PlanesOf(matched, l)))],
            Codes)
        {
            Notes = ["As listed in the file; the list states no uncertainty, and the pattern it was made from is not in the study."],
        };
    }

    private static ILookup<FittedLine, (PhaseFound Phase, MatchedLine Match)> Matched(PatternFound pattern)
        => pattern.Phases.SelectMany(p => p.Match.Matched.Select(m => (p, m))).ToLookup(m => m.m.Line);

    private static Cell PhaseOf(ILookup<FittedLine, (PhaseFound Phase, MatchedLine Match)> matched, FittedLine line) => matched[line].Any() ? matched[line].First().Phase.Name : new MissingCell("nm");

    private static Cell PlanesOf(ILookup<FittedLine, (PhaseFound Phase, MatchedLine Match)> matched, FittedLine line)
        => matched[line].Any() && matched[line].First().Match.Reference.Planes is { } planes ? planes.ToString() : new MissingCell("nm");

    /// <summary>Remarks on a line, in words; empty for none.</summary>
    /// <param name="flags">Its flags.</param>
    public static string Words(LineDoubts flags)
        => string.Join("; ", new[]
        {
            (LineDoubts.MixingAtBound, "shape at its limit"), (LineDoubts.NarrowerThanInstrument, "narrower than the instrument"), (LineDoubts.WidthUncertain, "width uncertain"), (LineDoubts.Entangled, "entangled with a neighbour"),
            (LineDoubts.NotSettled, "fit not settled"), (LineDoubts.MaybeKBeta, "may be Kβ of a stronger line"), (LineDoubts.MaybeTungsten, "may be tungsten of the tube"),
        }.Where(w => flags.HasFlag(w.Item1)).Select(w => w.Item2));

    private static Row One(PatternFound p)
    {
        var id = p.Measurement.Id;
        Cell Parameter(string symbol)
        {
            if (p.Lattice is not { } lattice)
                return new MissingCell("ns");
            var at = lattice.Parameters.ToList().FindIndex(q => q.Symbol == symbol);
            return at < 0 ? "" : new MeasuredCell(lattice.Parameters[at].Value, lattice.Parameters[at].U) { Address = DiffractionNumbers.Cell(id, symbol) };
        }

        var (low, high) = p.Size?.Range ?? default;
        return Row.Of(
            id, p.Sample, p.Radiation.Name, new NumberCell(p.Radiation.Ka1) { Decimals = 6 },
            p.Main?.Name ?? (p.Cubic.IsEmpty ? new MissingCell("nm") : (Cell)string.Join(" or ", p.Cubic.Select(c => "cubic " + c.Lattice).Distinct())),
            string.Create(CultureInfo.InvariantCulture, $"{p.Lines.Length}{(p.Main is { } main ? $", {main.Match.Matched.Length}" : "")}"),
            Parameter("a"), Parameter("b"), Parameter("c"), Parameter("α"), Parameter("β"), Parameter("γ"),
            p.Lattice is { } l && p.Radius is { } r && l.Displacement(r) is var (value, u) ? new MeasuredCell(value, u) { Address = DiffractionNumbers.Displacement(id) } : new MissingCell(p.Lattice is null ? "ns" : "nr"),
            p.Main is null ? new MissingCell("nm") : new NumberCell(p.Strangers.Length), p.Main is { Match.DetectionLimit: var limit } && double.IsFinite(limit) ? new NumberCell(limit) : new MissingCell("nm"),
            p.Size is null ? new MissingCell("ns") : new NumberCell(low) { Address = p.Size.IsLimit ? null : DiffractionNumbers.Size(id) }, p.Size is null ? new MissingCell("ns") : double.IsFinite(high) ? new NumberCell(high) : new MissingCell(p.Size.HasInstrument ? "ns" : "ni"),
            p.Size is { IsSeparated: true, Plain: { } hall } ? new MeasuredCell(hall.Strain, hall.StrainU) : new MissingCell("ns"));
    }
}
