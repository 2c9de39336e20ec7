using System.Globalization;
using System.Text;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;
using Holdfast.Reports.Trails;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Coverage;

/// <summary>
/// Studies of the powder: files as instruments and people write them, made from a hidden truth, read, taken in and worked out as the program does, and the interval of the number that a
/// reader is shown. Only what such a file says goes into it.
/// </summary>
internal static class PowderConditions
{
    private static readonly Study Empty = new() { Title = "invented", Invented = true };

    /// <summary>All of them.</summary>
    public static IEnumerable<Simulated> All() => Areas().Concat(Loadings()).Concat(Medians()).Concat(Lattices()).Concat(Crystallites());

    // The BET equation as far as its line goes, then a slower rise, as in real powders; portions that differ, each weighed to 0.3 mg.
    private static IEnumerable<Simulated> Areas()
        => from design in new (int Portions, double Scatter)[] { (1, 0.02), (2, 0.02), (3, 0.005), (3, 0.02), (3, 0.05), (6, 0.02) }
           select Simulated.One(
               FormattableString.Invariant($"BET area, {design.Portions} portions, {100 * design.Scatter:0.#} % between portions"), "Nitrogen at 77 K", ["BET area"],
               stream =>
               {
                   double area = 20 + 200 * stream.Uniform(), constant = 40 + 100 * stream.Uniform();
                   var files = Enumerable.Range(1, design.Portions).Select(i => ($"n2-{i}.csv", Isotherm(i, area * (1 + design.Scatter * stream.Normal()), constant, stream)));
                   return [(Printed(Worked(files), "bet-area:P-1"), area)];
               });

    private static string Isotherm(int portion, double area, double constant, SeededStream stream)
    {
        double[] pressures = [0.01, 0.02, 0.035, 0.05, 0.065, 0.08, 0.1, 0.12, 0.14, 0.16, 0.18, 0.2, 0.225, 0.25, 0.275, 0.3, 0.35, 0.4];
        const double perMmol = 97.5587, weighing = 0.0003, reading = 0.004;
        var mass = Math.Round(0.1 + 0.02 * stream.Uniform(), 4);
        var weighed = 1 + weighing / mass * stream.Normal();
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"Sample,P-1\nPortion,{portion}\nSample mass (g),{mass}\nAdsorptive,N2\nBath temperature (K),77.35\nRelative pressure (p/p0),Quantity adsorbed (mmol/g)\n"));
        foreach (var x in pressures)
        {
            var n = area / perMmol * constant * x / ((1 - x) * (1 + (constant - 1) * x)) * (1 - 0.15 * Math.Max(0, x - 0.25));
            text.Append(CultureInfo.InvariantCulture, $"{x},{n / weighed * (1 + reading * stream.Normal()):F6}\n");
        }

        return text.ToString();
    }

    // Standardless X-rays are known to 25 %, a digest to 4 %, both at two standard uncertainties: that is common to all places, and places scatter besides.
    private static IEnumerable<Simulated> Loadings()
        => from design in new (int Places, double Scatter, bool Dissolved)[] { (5, 0.05, false), (5, 0.15, false), (10, 0.15, false), (3, 0.02, true), (5, 0.05, true) }
           select Simulated.One(
               FormattableString.Invariant($"dopant share, {design.Places} {(design.Dissolved ? "digests" : "fields by X-rays")}, {100 * design.Scatter:0} % between them"), "Elements", ["dopant share"],
               stream =>
               {
                   var share = 0.01 + 0.09 * stream.Uniform();
                   var bias = 1 + (design.Dissolved ? 0.04 : 0.25) / 2 * stream.Normal();
                   var text = new StringBuilder(design.Dissolved ? "Sample,P-1\ndigest,Ca (mg/g),Eu (mg/g)\n" : "Sample,P-1\nQuantification,standardless\nField,Ca (at%),P (at%),Eu (at%),O (at%)\n");
                   for (var place = 1; place <= design.Places; place++)
                   {
                       // Atoms of the dopant for one of the host, as the method sees them.
                       var seen = share / (1 - share) * bias * (1 + design.Scatter * stream.Normal());
                       var host = 22.5 / (1 + seen);
                       text.Append(design.Dissolved
                           ? string.Create(CultureInfo.InvariantCulture, $"D{place},{host * 15 * 40.078 / 22.5:F4},{host * seen * 15 * 151.964 / 22.5:F4}\n")
                           : string.Create(CultureInfo.InvariantCulture, $"field {place},{host:F5},14.5,{host * seen:F5},62\n"));
                   }

                   return [(Printed(Worked([("elements-P-1.csv", text.ToString())], ("technique", "elements")), "share:P-1@Eu-Ca"), share)];
               });

    // Log-normal sizes under a bar that nobody calibrated, in images that differ, or without a word on images.
    private static IEnumerable<Simulated> Medians()
        => from design in new (int Particles, int Images, double Between)[] { (100, 0, 0.0), (300, 0, 0.0), (120, 4, 0.05), (200, 5, 0.1), (200, 10, 0.1), (400, 20, 0.1) }
           select Simulated.One(
               FormattableString.Invariant($"particle sizes, {design.Particles} particles, {(design.Images == 0 ? "images not recorded" : FormattableString.Invariant($"{design.Images} images that differ by {100 * design.Between:0} %"))}"), "Particles", ["mean", "D10", "D50", "D90"],
               stream =>
               {
                   double median = 30 + 70 * stream.Uniform(), spread = Math.Log(1.2 + 0.4 * stream.Uniform()), scale = 1 + 0.03 * stream.Normal();
                   var text = new StringBuilder(design.Images == 0 ? "no,length (nm)\n" : "no,image,length (nm)\n");
                   double[] shifts = [.. Enumerable.Range(0, Math.Max(design.Images, 1)).Select(_ => design.Between * stream.Normal())];
                   for (var i = 0; i < design.Particles; i++)
                   {
                       var image = i % shifts.Length;
                       var size = (median * scale * Math.Exp(spread * stream.Normal() + shifts[image])).ToString("F2", CultureInfo.InvariantCulture);
                       text.Append(CultureInfo.InvariantCulture, $"{i + 1},{(design.Images == 0 ? "" : $"image {image + 1},")}{size}\n");
                   }

                   // The whole powder holds what differs from image to image as well.
                   var whole = Math.Sqrt(spread * spread + design.Between * design.Between);
                   var evidence = Worked([("P-1.csv", text.ToString())]);
                   return [(Printed(evidence, "mean:P-1@length"), median * Math.Exp(whole * whole / 2)), .. new[] { (0.1, "d10"), (0.5, "d50"), (0.9, "d90") }.Select(q => (Printed(evidence, $"{q.Item2}:P-1@length"), median * Math.Exp(whole * NormalDistribution.Quantile(q.Item1))))];
               });

    // A powder of a known phase on a sample holder that stands too high or low, or under a scale with an error of its zero.
    private static IEnumerable<Simulated> Lattices()
        => from phase in new (string Name, string[] Parameters)[] { ("cubic", ["a"]), ("tetragonal", ["a", "c"]) }
           from shift in new (string Name, double Displacement, double Zero)[] { ("height of the sample 0.05°", 0.05, 0), ("zero of the scale 0.02°", 0, 0.02) }
           select Simulated.One(
               $"lattice, {phase.Name}, {shift.Name}", "Powder diffraction", phase.Parameters,
               stream =>
               {
                   double a = phase.Name == "cubic" ? 5.64 : 4.594, c = phase.Name == "cubic" ? a : 2.959;
                   (double trueA, double trueC) = (a * (1 + 0.001 * stream.Normal()), c * (1 + 0.001 * stream.Normal()));
                   if (phase.Name == "cubic")
                       trueC = trueA;
                   double displacement = shift.Displacement * stream.Normal(), zero = shift.Zero * stream.Normal();
                   var evidence = Worked(
                   [
                       ("phase.cif", Cif(phase.Name, a, c)),
                       ("scan-P-1.txt", Scan("P-1", Lines(phase.Name, trueA, trueC), 20, 110, stream, at => displacement * Math.Cos(Theta(at)) + zero, _ => 0.16)),
                   ]);
                   var pattern = DiffractionStudy.Of(evidence).Of("P-1")!;
                   return [.. phase.Parameters.Select(p => (Printed(evidence, DiffractionNumbers.Cell(pattern.Measurement.Id, p)), p == "a" ? trueA : trueC))];
               });

    // Widths of a standard give the instrument; the shape factor is not known better than to 5 %, and neither is how the two breadths add.
    private static IEnumerable<Simulated> Crystallites()
        => from size in new[] { 12.0, 30 }
           from strain in new[] { 0, 0.001 }
           select Simulated.One(
               FormattableString.Invariant($"crystallites, {size} nm, strain {strain}"), "Powder diffraction", ["size"],
               stream =>
               {
                   double k = Scherrer.UsualK * (1 + Scherrer.RelativeUOfK * stream.Normal()), power = 1 + stream.Uniform(), wavelength = Radiation.Of("Cu")!.Ka1;
                   double Instrument(double at) => 0.08 + 0.0004 * at;
                   double Sample(double at) => 180 / Math.PI * (k * wavelength / 10 / (size * Math.Cos(Theta(at))) + 4 * strain * Math.Tan(Theta(at)));
                   var lines = Lines("cubic", 5.64, 5.64);
                   var evidence = Worked(
                   [
                       ("line-standard.txt", Scan("LaB6 standard", Lines("cubic", 5.43, 5.43), 20, 110, stream, _ => 0, Instrument)),
                       ("scan-P-1.txt", Scan("P-1", lines, 20, 110, stream, _ => 0, at => Math.Pow(Math.Pow(Instrument(at), power) + Math.Pow(Sample(at), power), 1 / power))),
                   ], ("unit:radiation", "Cu Kα"));
                   return [(DiffractionStudy.Of(evidence).Of("P-1")?.Size?.Range, size)];
               });

    private static double Theta(double twoTheta) => twoTheta * Math.PI / 360;

    private static System.Collections.Immutable.ImmutableArray<ReferenceLine> Lines(string phase, double a, double c)
        => ComputedPattern.Of(new(new(a, a, c, 90, 90, 90), [SymmetryOperation.Parse("x,y,z")!], [.. Atoms(phase).Select(s => new AtomSite(s.Element, s.Element, s.X, s.Y, s.Z, 1, 0.5))]), Radiation.Of("Cu")!, 15, 130);

    private static (string Element, double X, double Y, double Z)[] Atoms(string phase) => phase == "cubic"
        ? [("Na", 0, 0, 0), ("Na", 0.5, 0.5, 0), ("Na", 0.5, 0, 0.5), ("Na", 0, 0.5, 0.5), ("Cl", 0.5, 0.5, 0.5), ("Cl", 0, 0, 0.5), ("Cl", 0, 0.5, 0), ("Cl", 0.5, 0, 0)]
        : [("Ti", 0, 0, 0), ("Ti", 0.5, 0.5, 0.5), ("O", 0.305, 0.305, 0), ("O", 0.695, 0.695, 0), ("O", 0.195, 0.805, 0.5), ("O", 0.805, 0.195, 0.5)];

    private static string Cif(string phase, double a, double c)
        => string.Create(CultureInfo.InvariantCulture, $"data_{phase}\n_chemical_name_common 'invented {phase}'\n_cell_length_a {a}\n_cell_length_b {a}\n_cell_length_c {c}\n_cell_angle_alpha 90\n_cell_angle_beta 90\n_cell_angle_gamma 90\n")
            + "loop_\n_space_group_symop_operation_xyz\n'x,y,z'\nloop_\n_atom_site_label\n_atom_site_fract_x\n_atom_site_fract_y\n_atom_site_fract_z\n_atom_site_B_iso_or_equiv\n"
            + string.Concat(Atoms(phase).Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{s.Element}{i + 1} {s.X} {s.Y} {s.Z} 0.5\n")));

    // Counts that scatter as counts do, half Lorentz and half Gauss, both lines of the tube.
    private static string Scan(string sample, IReadOnlyList<ReferenceLine> lines, double from, double to, SeededStream stream, Func<double, double> moved, Func<double, double> width)
    {
        const double step = 0.04, strongest = 6000, background = 120;
        var radiation = Radiation.Of("Cu")!;
        var counts = new double[(int)Math.Round((to - from) / step) + 1];
        Array.Fill(counts, background);
        foreach (var line in lines)
        {
            foreach (var (wavelength, share) in new[] { (radiation.Ka1, 1.0), (radiation.Ka2!.Value, radiation.Ratio) })
            {
                if (Bragg.TwoTheta(line.Spacing, wavelength) is not { } at)
                    continue;
                var (place, w, height) = (at + moved(at), width(at), share * strongest * line.Intensity!.Value / 100 * 0.16 / width(at));
                for (var i = Math.Max(0, (int)((place - 30 * w - from) / step)); i < counts.Length && from + i * step < place + 30 * w; i++)
                {
                    var u = (from + i * step - place) / w;
                    counts[i] += height * (0.5 / (1 + 4 * u * u) + 0.5 * Math.Exp(-4 * Math.Log(2) * u * u));
                }
            }
        }

        var text = new StringBuilder($"# sample: {sample}\n# radiation: Cu K-alpha\n# 2theta (deg)\tcounts\n");
        for (var i = 0; i < counts.Length; i++)
            text.Append(CultureInfo.InvariantCulture, $"{from + i * step:F2}\t{Math.Max(0, Math.Round(counts[i] + Math.Sqrt(counts[i]) * stream.Normal())):F0}\n");
        return text.ToString();
    }

    private static Evidence Worked(IEnumerable<(string Name, string Text)> files, params (string Question, string Answer)[] answers)
    {
        var understood = Take.Understand(Empty, [.. files.Select(f => new IncomingFile(f.Name, Encoding.UTF8.GetBytes(f.Text)))], answers.Aggregate(Answers.None, (a, q) => a.With(q.Question, q.Answer)));
        if (understood.SelectMany(u => u.Understanding.Questions).FirstOrDefault(q => q.IsOpen) is { } open)
            throw new InvalidOperationException($"A simulated file is asked about: {open.Text}");
        return Evidence.Of(understood.OrderBy(u => u.Turn).Aggregate(Empty, (s, u) => Fold.After(s, u.Understanding.Proposal! with { Files = [] }, s.Version + 1, default, "")));
    }

    // As the trail and its page print it: value ± expanded uncertainty at 95 %.
    private static (double Low, double High)? Printed(Evidence evidence, string address)
        => NumberTrail.Of(evidence, address) is { Value: { U: > 0 } value } && ExpandedUncertainty.Of(value).U is var half ? (value.Value - half, value.Value + half) : null;
}
