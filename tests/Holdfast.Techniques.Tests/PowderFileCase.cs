using System.Collections.Immutable;
using System.Text.Json;
using System.Text.RegularExpressions;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Diffraction;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;
using Holdfast.Techniques.HeatingCurves;
using Holdfast.Techniques.Infrared;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Techniques.Particles;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Testing;

/// <summary>One case of files that say what a powder is, as people bring them: its files, what a careful reader does, and the true quantities.</summary>
internal sealed class PowderFileCase
{
    private readonly string folder;
    private readonly JsonElement expected;
    private readonly JsonElement said;

    private PowderFileCase(string folder)
    {
        this.folder = folder;
        said = Root("case.json");
        expected = Root("expected.json");
    }

    /// <summary>Its folder's name.</summary>
    public string Name => Path.GetFileName(folder);

    /// <summary>"understands", "asks" or "refuses": what a careful reader does.</summary>
    public string Human => said.GetProperty("human").GetString()!;

    /// <summary>The cases below a folder, or the one in it.</summary>
    /// <param name="folder">The folder.</param>
    public static IEnumerable<PowderFileCase> In(string folder)
        => Directory.EnumerateDirectories(folder).Append(folder).Where(d => File.Exists(Path.Combine(d, "case.json"))).Order(StringComparer.Ordinal).Select(d => new PowderFileCase(d)).Where(c => c.said.TryGetProperty("method", out _));

    /// <summary>Takes the files in, without an answer, and compares.</summary>
    public IntakeOutcome Run()
    {
        var study = new Study { Title = "invented", Analyte = "Ni" };
        var understood = Take.Understand(study, [.. said.GetProperty("files").EnumerateArray().Select(f => f.GetString()!).Select(f => new IncomingFile(f, File.ReadAllBytes(Path.Combine(folder, "files", f))))], Beforehand());
        ImmutableArray<string> open = [.. understood.SelectMany(u => u.Understanding.Questions).Where(q => q.IsOpen).Select(q => $"{q.Id}: {q.Text}")];
        var findings = understood.SelectMany(u => u.Understanding.Findings).Where(f => f.Weight != Weight.Note).Select(f => f.ToString()).ToList();
        if (open.IsEmpty)
        {
            study = understood.OrderBy(u => u.Turn).Where(u => u.Understanding.Proposal is not null)
                .Aggregate(study, (s, u) => Fold.After(s, u.Understanding.Proposal!, s.Version + 1, DateTimeOffset.UnixEpoch, ""));
        }

        var evidence = Evidence.Of(study);
        findings.AddRange(SorptionStudy.Of(evidence).Isotherms.SelectMany(i => i.Findings.Append(i.Refused)).OfType<Finding>().Concat(DiffractionStudy.Of(evidence).Patterns.SelectMany(p => p.Findings))
            .Concat(InfraredStudy.Of(evidence).Spectra.SelectMany(s => s.Findings)).Concat(ElementStudy.Of(evidence).Powders.SelectMany(p => p.Findings)).Concat(HeatingStudy.Of(evidence).Curves.SelectMany(c => c.Findings)).Concat(ParticleStudy.Of(evidence).Lists.SelectMany(l => l.Findings))
            .Select(f => f.ToString()));
        var (right, wrong, missing) = (0, new List<string>(), new List<string>());
        foreach (var row in expected.GetProperty("quantities").EnumerateArray())
        {
            var (sample, quantity, value) = (row.GetProperty("sample").GetString()!, row.GetProperty("quantity").GetString()!, row.GetProperty("value").GetDouble());
            var what = $"{sample} {quantity}";
            if (Quantity(evidence, sample, quantity, value, row) is not { } found)
                missing.Add(what);
            else if (Math.Abs(found - value) <= Tolerance(row, value))
                right++;
            else
                wrong.Add(FormattableString.Invariant($"{what} {found:G6} for {value:G6}"));
        }

        foreach (var row in Rows("withhold"))
        {
            foreach (var quantity in row.GetProperty("quantities").EnumerateArray().Select(q => q.GetString()!))
            {
                if (Quantity(evidence, row.GetProperty("sample").GetString()!, quantity, double.NaN, row) is { } given && !(row.TryGetProperty("unless", out _) && findings.Exists(IsAbout)))
                    wrong.Add(FormattableString.Invariant($"{row.GetProperty("sample")} {quantity} {given:G4} where none may be given"));
            }
        }

        var named = open.Any(IsAbout) || findings.Exists(IsAbout);
        return new(Name, Human, right, expected.GetProperty("quantities").GetArrayLength(), [.. wrong], [.. missing], open, [.. findings],
            wrong.Count > 0 ? named ? "WRONG, something was said" : "WRONG"
            : Human == "understands" ? missing.Count == 0 && open.IsEmpty ? "RIGHT" : open.IsEmpty ? "MUTE" : "ASKED"
            : named ? "ASKED" : open.IsEmpty && findings.Count == 0 ? "MUTE" : "ASKED OTHERWISE")
        { AskingIsFine = said.TryGetProperty("asking_is_fine", out var fine) && fine.GetBoolean() };
    }

    // What the user states before anything is read: the cell of a phase she knows.
    private Answers Beforehand()
        => Given("cell") is { } cell ? Answers.None.With("unit:cell", string.Join(' ', cell.EnumerateArray().Select(c => c.GetDouble().ToString(System.Globalization.CultureInfo.InvariantCulture)))) : Answers.None;

    private JsonElement? Given(string name) => said.TryGetProperty("given", out var given) && given.ValueKind == JsonValueKind.Object && given.TryGetProperty(name, out var value) ? value : null;

    private static double Tolerance(JsonElement row, double value)
        => row.TryGetProperty("tolerance", out var t) ? Math.Max(t.TryGetProperty("rel", out var rel) ? rel.GetDouble() * Math.Abs(value) : 0, t.TryGetProperty("abs", out var abs) ? abs.GetDouble() : 0) : 0;

    private double? Quantity(Evidence evidence, string sample, string quantity, double near, JsonElement row) => said.GetProperty("method").GetString() switch
    {
        "sorption" => One(SorptionStudy.Of(evidence).Isotherms, i => i.Measurement.Sample, sample) is { } isotherm ? OfIsotherm(isotherm, quantity) : null,
        "diffraction" when quantity == "scans" => DiffractionStudy.Of(evidence).Patterns.Count(p => p.Sample.StartsWith(sample, StringComparison.Ordinal)),
        "diffraction" => One(DiffractionStudy.Of(evidence).Patterns, p => p.Sample, sample) is { } pattern ? OfPattern(pattern, quantity, near) : null,
        "infrared" => OfSpectrum(InfraredStudy.Of(evidence), sample, quantity, near, row),
        "composition" when quantity is "mass_loss" or "residue" or "sample_mass" => One(HeatingStudy.Of(evidence).Curves, c => c.Powder, sample) is { } heated ? OfHeating(heated, quantity, row) : null,
        "composition" => OfComposition(ElementStudy.Of(evidence), sample, quantity, row),
        _ => One(ParticleStudy.Of(evidence).Lists.Where(l => l.Measurand == quantity.Split('_')[0] || quantity == "count"), l => l.Powder, sample) is { } list ? OfParticles(list, quantity) : null,
    };

    private static double? OfIsotherm(SorptionIsotherm i, string quantity) => quantity switch
    {
        "bet_area" => i.Area?.Value,
        "bet_area_lowest" => i.Bet?.Chosen is null ? null : i.Bet.Lowest,
        "bet_area_highest" => i.Bet?.Chosen is null ? null : i.Bet.Highest,
        "monolayer" => i.Bet?.Chosen?.Monolayer,
        "bet_c" => i.Bet?.Chosen?.C,
        "bet_area_fixed_0.05_0.30" => i.Bet?.Fixed?.Area,
        "pore_volume_0.95" => i.PoreVolume?.Value,
        "pore_volume_0.99" => i.VolumeWithVoids,
        "points_adsorption" => i.Branches.Adsorption.Length,
        "points_desorption" => i.Branches.Desorption.Length,
        "sample_mass" => i.Mass,
        _ => null,
    };

    private double? OfPattern(PatternFound pattern, string quantity, double near)
    {
        double? FromLattice(Func<Lattice, double?> get) => GivenLattice(pattern) is { } lattice ? get(lattice) : null;
        return quantity switch
        {
            "wavelength" => pattern.Radiation.Ka1,
            "points" => pattern.Fitted?.Scan.Length,
            "peak_2theta" => double.IsNaN(near) ? pattern.Lines.FirstOrDefault()?.TwoTheta : pattern.Lines.MinBy(l => Math.Abs(l.TwoTheta - near))?.TwoTheta,
            "peak_d" => pattern.Lines.Select(l => (double?)Bragg.Spacing(l.TwoTheta, pattern.Radiation.Ka1)).MinBy(d => Math.Abs(d!.Value - near)),
            "unmatched_2theta" => pattern.Lines.Select(l => (double?)l.TwoTheta).MinBy(x => Math.Abs(x!.Value - near)),
            "a" => FromLattice(l => l.Parameters[0].Value),
            "c" => FromLattice(l => l.Parameters[1].Value) ?? (pattern.Axis is { Axis: { Symbol: "c" } c } ? c.Value : null),
            "displacement" => FromLattice(l => l.Displacement(pattern.Radius ?? Given("radius_mm")!.Value.GetDouble()).Value),
            _ => null,
        };
    }

    private Lattice? GivenLattice(PatternFound pattern)
    {
        if (Given("cell") is not { } stated || Given("hkl") is not { } planes)
            return pattern.Lattice;
        double[] cell = [.. stated.EnumerateArray().Select(e => e.GetDouble())];
        return DiffractionStudy.With(pattern, new(cell[0], cell[1], cell[2], cell[3], cell[4], cell[5]), planes.EnumerateArray().Select(h => new Miller(h[0].GetInt32(), h[1].GetInt32(), h[2].GetInt32()))).Lattice;
    }

    private static double? OfSpectrum(InfraredStudy study, string sample, string quantity, double near, JsonElement row)
    {
        double? Band(string powder, double at) => One(study.Spectra, s => s.Powder, powder)?.Bands.MinBy(b => double.IsNaN(at) ? 0 : Math.Abs(b.Band.Wavenumber - at))?.Band.Wavenumber;
        if (!quantity.StartsWith("shift", StringComparison.Ordinal))
            return Band(sample, near);
        // "shift_1089" of "FT-Ti - FT-0": the band that lies there in the second, and the same band in the first; or both named beside it.
        string[] named = row.TryGetProperty("between", out var two) ? [two[1].GetString()!, two[0].GetString()!] : sample.Split([" - ", " minus "], StringSplitOptions.None);
        // "doped less parent" where there are two.
        if (named is [var own] && study.Spectra.Select(s => s.Powder).Distinct().ToList() is { Count: 2 } both)
            named = [own, both.First(p => p != own)];
        if (named is not [var after, var before] || !double.TryParse(quantity[(quantity.LastIndexOf('_') + 1)..], System.Globalization.CultureInfo.InvariantCulture, out var at))
            return null;
        return Band(after, at + near) - Band(before, at);
    }

    private static double? OfHeating(PowderHeated heated, string quantity, JsonElement row) => quantity switch
    {
        "mass_loss" when row.TryGetProperty("between", out var two) => heated.Curve.At(two[0].GetDouble()) - heated.Curve.At(two[1].GetDouble()),
        "mass_loss" => heated.Steps.Select(s => (double?)heated.Loss(s).Value).Max(),
        "residue" when row.TryGetProperty("at", out var at) => heated.Curve.At(at.GetDouble()),
        "residue" => heated.Steps.MaxBy(s => heated.Loss(s).Value) is { } largest ? heated.Curve.At(largest.To) : null,
        "water" => null,
        _ => heated.Curve.Milligrams / 1000,
    };

    private double? OfComposition(ElementStudy study, string sample, string quantity, JsonElement row)
    {
        var powder = One(study.Powders, p => p.Name, sample) ?? study.Powders.FirstOrDefault(p => p.Places.Any(x => Plain(x.Name) == Plain(sample))) ?? (study.Powders.Length == 1 ? study.Powders[0] : null);
        var place = powder?.Places.FirstOrDefault(x => Plain(x.Name) == Plain(sample)) ?? (powder?.Places.Length == 1 ? powder.Places[0] : null);
        var element = row.TryGetProperty("element", out var symbol) ? symbol.GetString() : null;
        if (quantity is "atomic_percent" or "loading")
        {
            if (quantity == "atomic_percent")
                return place?.Atoms.Where(a => a.Key.Symbol == element).Select(a => (double?)a.Value.Value).FirstOrDefault();
            double[] all = [.. (place is null ? powder?.Places ?? [] : [place]).SelectMany(x => x.AsWritten.Where(a => a.Key.Symbol == element || x.AsWritten.Length == 1).Select(a => a.Value))];
            return all.Length == 0 ? null : all.Average();
        }

        var formula = row.TryGetProperty("formula", out var own) ? own.GetString() : Given("x")?.GetString();
        if (formula is null || ElementRatio.Read(formula).Value is not { } ratio)
            return null;
        return quantity switch
        {
            "ratio" => place is null ? powder?.Mean(ratio)?.Value : ratio.Of(place.Atoms)?.Value,
            "x" => powder?.Mean(ratio)?.Value,
            "x_u" => powder?.Mean(ratio)?.StandardError,
            "x_sd" => powder?.Mean(ratio) is { } mean ? mean.StandardError * Math.Sqrt(mean.N) : null,
            _ => null,
        };
    }

    // Lengths are expected in nm, whatever unit a list is kept in.
    private static double? OfParticles(SizeList list, string quantity)
    {
        var factor = ParticleFiles.Nanometres(list.Unit) ?? 1;
        return quantity[(quantity.IndexOf('_', StringComparison.Ordinal) + 1)..] switch
        {
            "count" => list.Particles.Length,
            "mean" => list.Statistics.Summary.Mean * factor,
            "sd" => list.Statistics.Summary.Sd * factor,
            "d50" => list.Statistics.Summary.Median * factor,
            _ => null,
        };
    }

    // By its name; one alone may have been named after its file.
    private static T? One<T>(IEnumerable<T> all, Func<T, string> name, string sample)
        where T : class
    {
        T[] found = [.. all];
        return Array.Find(found, f => Plain(name(f)) == Plain(sample)) ?? Array.Find(found, f => Plain(name(f)).Contains(Plain(sample), StringComparison.Ordinal) || (name(f).Length > 1 && Plain(sample).Contains(Plain(name(f)), StringComparison.Ordinal)))
            ?? (found.Length == 1 ? found[0] : null);
    }

    private JsonElement.ArrayEnumerator Rows(string name) => expected.TryGetProperty(name, out var rows) && rows.ValueKind == JsonValueKind.Array ? rows.EnumerateArray() : default;

    private bool IsAbout(string text) => said.TryGetProperty("names", out var names) && Matches(names, "where", text) && Matches(names, "what", text);

    private static bool Matches(JsonElement names, string kind, string text)
        => !names.TryGetProperty(kind, out var patterns) || patterns.EnumerateArray().Any(p => Regex.IsMatch(text, p.GetString()!, RegexOptions.NonBacktracking | (kind == "what" ? RegexOptions.IgnoreCase : RegexOptions.None)));

    private static string Plain(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private JsonElement Root(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, file)));
        return document.RootElement.Clone();
    }
}
