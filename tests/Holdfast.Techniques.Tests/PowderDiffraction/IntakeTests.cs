using System.Globalization;
using System.Text.Json;
using Holdfast.Diffraction;
using Holdfast.Techniques.PowderDiffraction;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests.PowderDiffraction;

/// <summary>Files as people have them: what they mean, and what is asked.</summary>
public class IntakeTests
{
    private static readonly Radiation Copper = Radiation.Of("Cu")!;

    [Fact]
    public void DrawnBackground_IsNoSecondScan()
    {
        var understood = Intake.Understand("RT-1.csv", File.ReadAllBytes(Repository.Verbatim("characterisation", "files", "s07-cobalt-with-background", "files", "RT-1.csv")));
        Assert.NotNull(Assert.Single(Intake.Found(understood).Patterns).Measurement.Column(ScanNames.Background));
    }

    // One truth in many layouts: each is understood without a question, and the cell comes out.
    [Theory]
    [InlineData("semicolons and commas")]
    [InlineData("tabs")]
    [InlineData("commas with a heading")]
    [InlineData("blanks and decimal commas")]
    [InlineData("steps in words")]
    [InlineData("start stop step")]
    [InlineData("start step count")]
    [InlineData("steps with decimal commas")]
    [InlineData("one count a line")]
    [InlineData("running number first")]
    [InlineData("error column"), InlineData("roots of the counts")]
    [InlineData("background without a heading")]
    [InlineData("wavelength in nm")]
    [InlineData("falling angles")]
    [InlineData("German words")]
    [InlineData("comment marks")]
    [InlineData("four pairs a line")]
    [InlineData("French pairs of fixed width")]
    [InlineData("monochromator")]
    public void Layout_OfManyKinds_IsUnderstood(string layout)
    {
        var points = Made.Cubic(4.2112, Copper, displacement: -0.03);
        var understood = Intake.Text("ZF-3.txt", Written(layout, points));
        Assert.Empty(understood.Questions.Where(q => q.IsOpen).Select(q => q.Text));
        var pattern = Assert.Single(Intake.Found(understood).Patterns);
        Assert.Equal(points.Length, pattern.Fitted!.Value.Scan.Length);
        Assert.Equal(20, pattern.Fitted!.Value.Scan.TwoTheta[0], 1e-9);
        Assert.Equal(90, pattern.Fitted!.Value.Scan.TwoTheta[^1], 1e-9);
        Assert.Equal(Copper.Ka1, pattern.Radiation.Ka1, 1e-6);
        Assert.NotNull(pattern.Radiation.Ka2);
        Assert.Equal("ZF-3", pattern.Sample);
        Assert.Equal(4.2112, pattern.Lattice!.Parameters[0].Value, 3 * pattern.Lattice.Parameters[0].U);
    }

    private static string Written(string layout, (double TwoTheta, double Counts)[] points)
    {
        string Counts(int perLine) => string.Concat(points.Chunk(perLine).Select(c => string.Join(' ', c.Select(p => p.Counts.ToString("0", CultureInfo.InvariantCulture).PadLeft(7))) + "\n"));
        string Columns(string head, string separator, Func<(double TwoTheta, double Counts), int, string> row) => head + string.Concat(points.Select((p, i) => row(p, i) + "\n"));
        string Pairs(int perLine, bool comma) => string.Concat(points.Chunk(perLine).Select(c => string.Join("  ", c.Select(p => $"{N(p.TwoTheta).Replace('.', comma ? ',' : '.')} {N(p.Counts, "0").PadLeft(6)}")) + "\n"));
        static string N(double x, string format = "0.000") => x.ToString(format, CultureInfo.InvariantCulture);
        return layout switch
        {
            "semicolons and commas" => "Probe;ZF-3\nAnode;Cu\n2Theta;Impulse\n" + Made.Rows(points, ";", ','),
            "tabs" => "Sample: ZF-3\nRadiation\tCu Kα\n2θ (°)\tIntensity (counts)\n" + Made.Rows(points, "\t"),
            "commas with a heading" => "Sample,ZF-3\nWavelength,1.5406 Å,Kα\nAngle,Counts\n" + Made.Rows(points, ","),
            "blanks and decimal commas" => "Sample: ZF-3\nCu Ka radiation\n2theta I\n" + Made.Rows(points, " ", ',', "0.00"),
            "steps in words" => "Sample: ZF-3\nTube: Cu, K-alpha\nStart angle: 20.00\nStep size: 0.02\nStop angle: 90.00\n" + Counts(8),
            "start stop step" => "ZF-3 magnesia, CuKα\n20.00 90.00 0.02\n" + Counts(10),
            "start step count" => $"ZF-3, Cu Kalpha\n20.00 0.02 {points.Length}\n" + Counts(5),
            "steps with decimal commas" => "ZF-3 Cu Ka\n20,00 0,02 90,00\n" + Counts(10),
            "one count a line" => "ZF-3 Cu Ka\n20.00 0.02 90.00\n" + Counts(1),
            "running number first" => Columns("Sample: ZF-3\nCu Kα1 + Kα2\nNo.,2Theta,Counts\n", ",", (p, i) => $"{i + 1},{N(p.TwoTheta)},{N(p.Counts, "0")}"),
            "roots of the counts" => Columns("# powder ZF-3 washed\n# CuKa\n# 2theta   counts   sqrt(counts)\n", "   ", (p, _) => $"{N(p.TwoTheta)}   {N(p.Counts, "0")}   {N(Math.Sqrt(p.Counts), "0.00")}"),
            "error column" => Columns("# sample ZF-3\n# CuKa\n# 2theta intensity esd\n", " ", (p, _) => $"{N(p.TwoTheta)} {N(p.Counts, "0")} {N(Math.Sqrt(p.Counts), "0.00")}"),
            "background without a heading" => Columns("# sample ZF-3\n# CuKa\n# 2theta\n", " ", (p, _) => $"{N(p.TwoTheta)} {N(p.Counts, "0")} {N(80 + 250 * Math.Exp(-(p.TwoTheta - 10) / 20), "0.0")}"),
            "wavelength in nm" => "Sample: ZF-3\nlambda (nm): 0.15406\n2-Theta,cts\n" + Made.Rows(points, ","),
            "falling angles" => "Sample: ZF-3\nCu Ka\n2theta,counts\n" + Made.Rows(points.Reverse(), ","),
            "four pairs a line" => "sample ZF-3, Cu Kalpha\n2theta and counts, four pairs a line\n" + Pairs(4, false),
            "French pairs of fixed width" => "Échantillon : ZF-3\nAnticathode de cuivre, Kα1 1,54059 Å et Kα2 1,54443 Å\nAngle 2θ et coups\n" + Pairs(5, true),
            "monochromator" => "Sample: ZF-3\nRadiation: Cu Kα (graphite monochromator)\n2theta,counts\n" + Made.Rows(points, ","),
            "German words" => "Probe: ZF-3\nRöntgenröhre: Kupfer\nWinkel 2Theta;Zählrate (Impulse)\n" + Made.Rows(points, ";", ','),
            _ => "! sample: ZF-3\n! anode Cu\n! 2-theta [deg]    counts\n" + Made.Rows(points, "   "),
        };
    }

    [Fact]
    public void Radiation_ThatIsNotSaid_IsAsked_AndTheAnswerHolds()
    {
        var text = "2theta,counts\n" + Made.Rows(Made.Cubic(4.2112, Copper), ",");
        var asked = Intake.Text("ZF-3.csv", text);
        var question = Assert.Single(asked.Questions, q => q.IsOpen);
        Assert.Equal("unit:radiation", question.Id);
        Assert.Contains("d = ", question.Consequences[0], StringComparison.Ordinal);
        Assert.Null(asked.Proposal?.Measurements);
        var pattern = Assert.Single(Intake.Found(Intake.Text("ZF-3.csv", text, ("unit:radiation", "Cu Kα"))).Patterns);
        Assert.Equal(Copper.Ka1, pattern.Radiation.Ka1);
        Assert.Equal(1.2, Assert.Single(Intake.Found(Intake.Text("ZF-3.csv", text, ("unit:radiation", "1.2 Å"))).Patterns).Radiation.Ka1);
    }

    [Theory]
    [InlineData("Anode: Co\nWavelength: 1.5406 Å\n", "contradicts itself")]
    [InlineData("Anode: Cu\nWavelength: 1.78900 Å\n", "contradicts itself")]
    public void Radiation_ThatContradictsItself_IsAsked(string head, string words)
        => Assert.Contains(words, Assert.Single(Intake.Text("ZF-3.csv", head + "2theta,counts\n" + Made.Rows(Made.Cubic(4.2112, Copper), ",")).Questions, q => q.IsOpen).Text, StringComparison.Ordinal);

    // Lines of molybdenum under the word copper: the doublets split two and a half times too far. A strong sharp pattern is needed to see it.
    [Fact]
    public void Radiation_ThatTheLinesContradict_IsAsked()
    {
        var molybdenum = Radiation.Of("Mo")!;
        var points = Made.Lines([.. new[] { 25.0, 33, 41, 52, 60, 66, 71 }.Select(x => (x, 20000.0))], molybdenum, 0.09, 20, 75, 0.01, 3);
        var question = Assert.Single(Intake.Text("ZF-3.csv", "Cu Kα\n2theta,counts\n" + Made.Rows(points, ",")).Questions, q => q.IsOpen);
        Assert.Contains("split as those of Mo", question.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Doublet_ThatIsNotThere_IsLeftOut()
    {
        var single = Made.Lines([.. new[] { 25.0, 33, 41, 52, 60, 66, 71, 80 }.Select(x => (x, 9000.0))], Copper.WithoutKa2(), 0.08, 20, 85, 0.01, 4);
        Assert.Null(Assert.Single(Intake.Found(Intake.Text("ZF-3.csv", "Wavelength 1.54060 Å\n2theta,counts\n" + Made.Rows(single, ","))).Patterns).Radiation.Ka2);
    }

    [Theory]
    [InlineData("Theta (deg)", "θ", 2.0)]
    [InlineData("theta", "2θ", 1.0)]
    public void Axis_HeadedTheta_IsAsked(string heading, string answer, double factor)
    {
        var text = $"Cu Kα radiation, sample ZF-3\n{heading},counts\n" + Made.Rows(Made.Cubic(4.2112, Copper).Select(p => (p.TwoTheta / factor, p.Counts)), ",");
        var asked = Intake.Text("a.csv", text);
        Assert.Equal("axis", Assert.Single(asked.Questions, q => q.IsOpen).Id);
        var pattern = Assert.Single(Intake.Found(Intake.Text("a.csv", text, ("axis", answer))).Patterns);
        Assert.Equal(4.2112, pattern.Lattice!.Parameters[0].Value, 3 * pattern.Lattice.Parameters[0].U + 1e-3);
    }

    [Theory]
    [InlineData("d (Å)", "d")]
    [InlineData("Q (1/Å)", "Q")]
    public void Axis_OfSpacings_IsAsked_AndTurnedInto2Theta(string heading, string answer)
    {
        double X(double twoTheta) => answer == "d" ? Bragg.Spacing(twoTheta, Copper.Ka1) : 2 * Math.PI / Bragg.Spacing(twoTheta, Copper.Ka1);
        var text = $"sample ZF-3\nCu Kα1 only, wavelength 1.5406 Å\n{heading},counts\n" + Made.Rows(Made.Cubic(4.2112, Copper.WithoutKa2()).Select(p => (X(p.TwoTheta), p.Counts)), ",", '.', "0.000000");
        Assert.Equal("axis", Assert.Single(Intake.Text("a.csv", text).Questions, q => q.IsOpen).Id);
        var pattern = Assert.Single(Intake.Found(Intake.Text("a.csv", text, ("axis", answer))).Patterns);
        Assert.Equal(4.2112, pattern.Lattice!.Parameters[0].Value, 3 * pattern.Lattice.Parameters[0].U + 1e-3);
    }

    [Fact]
    public void TwoScans_BesideOneAngle_AreTwoPowders()
    {
        var (a, b) = (Made.Cubic(4.2112, Copper, seed: 1), Made.Cubic(4.2150, Copper, seed: 2));
        var text = "Cu Kα\n2theta,ZF-0,ZF-3\n" + string.Concat(a.Zip(b, (p, q) => string.Create(CultureInfo.InvariantCulture, $"{p.TwoTheta:0.00},{p.Counts:0},{q.Counts:0}\n")));
        Assert.Equal(["ZF-0", "ZF-3"], Intake.Found(Intake.Text("both.csv", text)).Patterns.Select(p => p.Sample));
    }

    // Below each other, each under its own name, with steps of its own.
    [Fact]
    public void Scans_BelowEachOther_AreReadApart()
    {
        var text = "Radiation: Cu Kα\n\nScan 1: ZF-3, as made\n2theta,counts\n" + Made.Rows(Made.Cubic(4.2112, Copper, seed: 1), ",") + "\nScan 2: ZF-5, washed\n2theta,counts\n" + Made.Rows(Made.Cubic(4.2300, Copper, seed: 2, step: 0.03, to: 89), ",");
        var understood = Intake.Text("both.csv", text);
        Assert.Empty(understood.Questions.Where(q => q.IsOpen).Select(q => q.Text));
        var patterns = Intake.Found(understood).Patterns;
        Assert.Equal(["ZF-3", "ZF-5"], patterns.Select(p => p.Sample));
        Assert.Equal(4.2112, patterns[0].Lattice!.Parameters[0].Value, 1e-3);
        Assert.Equal(4.2300, patterns[1].Lattice!.Parameters[0].Value, 1e-3);
    }

    // A cell that is known tells the tube: under copper no line lies where it has planes, under cobalt each does.
    [Theory]
    [InlineData("Co", "5.4112", true)]
    [InlineData("Cu", "5.4112", false)]
    public void Radiation_ThatTheStatedCellContradicts_IsAsked(string tube, string cell, bool asks)
    {
        var text = "Sample: ZF-3\nAnode: Cu\n2theta,counts\n" + Made.Rows(Made.Cubic(5.4112, Radiation.Of(tube)!.WithoutKa2(), width: 0.3), ",");
        var open = Intake.Text("ZF-3.csv", text, ("unit:cell", cell)).Questions.Where(q => q.IsOpen).ToList();
        Assert.Equal(asks ? 1 : 0, open.Count);
        if (asks)
            Assert.Contains("with Co Kα they do", open[0].Text, StringComparison.Ordinal);
    }

    // θ written under 2θ: with the cell known, each line lies at half its angle.
    [Theory, InlineData(2.0, true), InlineData(1.0, false)]
    public void HalfAngles_AreAskedAbout_WhereTheCellIsKnown(double divided, bool asks)
    {
        var text = "Sample: ZF-3\nCu Kα1 only\n2theta,counts\n" + Made.Rows(Made.Cubic(5.4112, Copper.WithoutKa2(), width: 0.3).Select(p => (Math.Round(p.TwoTheta / divided, 4), p.Counts)), ",");
        var open = Intake.Text("ZF-3.csv", text, ("unit:cell", "5.4112")).Questions.Where(q => q.IsOpen).ToList();
        Assert.Equal(asks ? ["axis"] : [], open.Select(q => q.Id));
        if (asks)
            Assert.Equal(5.4112, DiffractionStudy.With(Assert.Single(Intake.Found(Intake.Text("ZF-3.csv", text, ("unit:cell", "5.4112"), ("axis", "θ"))).Patterns), new(5.4112, 5.4112, 5.4112, 90, 90, 90), [new(1, 1, 1), new(2, 0, 0), new(2, 2, 0), new(3, 1, 1)]).Lattice!.Parameters[0].Value, 0.01);
    }

    // Three lines tell, where the cell is small enough that none would be met by chance.
    [Theory, InlineData(4.213, true), InlineData(21.0, false)]
    public void HalfAngles_OfFewLines_AreAskedAbout_WhereChanceIsOut(double cell, bool asks)
    {
        var text = "Sample: MG-2\nCu Kα1 only\n2theta,counts\n" + Made.Rows(Made.Cubic(4.213, Copper.WithoutKa2(), width: 0.3, to: 84).Select(p => (Math.Round(p.TwoTheta / 2, 4), p.Counts)), ",");
        Assert.Equal(asks, Intake.Text("MG-2.csv", text, ("unit:cell", cell.ToString(System.Globalization.CultureInfo.InvariantCulture))).Questions.Any(q => q is { IsOpen: true, Id: "axis" }));
    }

    // First angle, step and how many in words, marks around the counts, both lines of the tube by their wavelengths.
    [Theory]
    [InlineData("premier angle (2 thêta) : 20,00°\npas : 0,02°\nnombre de points : 3501")]
    [InlineData("erster Winkel 2θ: 20,00\nSchrittweite: 0,02\nAnzahl Punkte: 3501")]
    [InlineData("first angle 20.00 deg\nstep 0.02 deg\nnumber of points: 3501")]
    [InlineData("primer ángulo: 20,00\npaso: 0,02\nnúmero de puntos: 3501")]
    public void Counts_UnderFirstStepAndNumber_HaveTheirAngles(string head)
    {
        var counts = string.Concat(Made.Cubic(4.2112, Copper).Select(p => $"{p.Counts:0}\n"));
        var pattern = Assert.Single(Intake.Found(Intake.Text("ZF-3.txt", $"ZF-3\nanode Cu, K alpha 1 = 1,54059 et K alpha 2 = 1,54443 angström\n{head}\n*\n{counts}*\n")).Patterns);
        Assert.Equal((3501, 90), (pattern.Fitted!.Value.Scan.Length, Math.Round(pattern.Fitted.Value.Scan.TwoTheta[^1], 3)));
        Assert.NotNull(pattern.Radiation.Ka2);
    }

    // 3501 counts under words that make 4667 or 3751: the step or the stop is wrong, and nobody here knows which.
    [Theory, InlineData("step-is-wrong", "0.015", "90.00"), InlineData("stop-is-wrong", "0.02", "95.00")]
    public void CountThatDoesNotFitItsSettings_IsAskedAbout(string answer, string step, string stop)
    {
        var counts = string.Concat(Made.Cubic(4.2112, Copper).Select(p => $"{p.Counts:0}\n"));
        var text = $"Diffraction of ZF-3\nAnode: Cu (1.54059 Å)\nDébut: 20.00\nPas: {step}\nArrivée: {stop}\nCoups:\n{counts}";
        Assert.Equal("count", Assert.Single(Intake.Text("ZF-3.txt", text).Questions, q => q.IsOpen).Id);
        Assert.Equal(90, Assert.Single(Intake.Found(Intake.Text("ZF-3.txt", text, ("count", answer))).Patterns).Fitted!.Value.Scan.TwoTheta[^1], 1e-3);
    }

    // Bare columns of fine even steps may be a scan or a spectrum: asked, and read once it is said.
    [Fact]
    public void BareColumns_AreAskedAbout()
    {
        var text = Made.Rows(Made.Cubic(4.2112, Copper), " ");
        var asked = Intake.Text("scan.xy", text);
        Assert.Contains(asked.Questions, q => q.Id == "technique" && q.IsOpen);
        Assert.Null(asked.Proposal?.Measurements);
        Assert.Single(Intake.Found(Intake.Text("scan.xy", text, ("technique", "powder-diffraction"), ("unit:radiation", "Cu Kα"))).Patterns);
    }

    [Fact]
    public void OtherTables_AreLeftAlone()
    {
        Assert.DoesNotContain(Intake.Text("iso.csv", "sample,C0 (mg/L),m (mg),V (mL),Ce (mg/L)\nV-01,5,20,25,0.4\nV-02,10,20,25,0.9\n").Tables, t => t.Kind == Studies.Import.TableKind.Measurement);
        var spectrum = "wavelength (nm),absorbance\n" + string.Concat(Enumerable.Range(0, 400).Select(i => string.Create(CultureInfo.InvariantCulture, $"{200 + i},{0.1 + i * 0.001:0.000}\n")));
        Assert.DoesNotContain(Intake.Text("uv.csv", spectrum).Tables, t => t.Kind == Studies.Import.TableKind.Measurement);
    }

    [Theory]
    [InlineData("pdcif-range-form.cif")]
    [InlineData("pdcif-loop-form.cif")]
    public void PowderCif_InBothForms_GivesTheSamePoints(string file)
    {
        using var known = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "xrd", "synthetic", "pdcif.json")));
        var text = File.ReadAllText(Repository.Verbatim("characterisation", "xrd", "synthetic", file));
        var understood = Intake.Text(file, text);
        if (understood.Questions.Any(q => q.IsOpen))
            understood = Intake.Text(file, text, ("unit:radiation", "Cu Kα"));
        var pattern = Assert.Single(Intake.Found(understood).Patterns);
        Assert.Equal(known.RootElement.GetProperty("points").GetInt32(), pattern.Fitted!.Value.Scan.Length);
        Assert.Equal(known.RootElement.GetProperty("sum_counts").GetDouble(), pattern.Fitted!.Value.Scan.Counts.ToArray().Sum());
        Assert.Equal(27, pattern.Fitted!.Value.Scan.TwoTheta[0]);
        Assert.Equal(30, pattern.Fitted!.Value.Scan.TwoTheta[^1], 1e-9);
        Assert.Equal(1.5405929, pattern.Radiation.Ka1, 1e-6);
    }

    // The structure of zinc oxide beside the pattern of zinc oxide with quartz: matched, strangers named, lattice refined.
    [Fact]
    public void Structure_BesideAPattern_IsComparedWithIt()
    {
        var structure = Intake.Understand("zno.cif", File.ReadAllBytes(Repository.Verbatim("characterisation", "xrd", "cif", "zno-srm674.cif")));
        Assert.DoesNotContain(structure.Questions, q => q.IsOpen);
        var scan = Intake.Text("ZN-1.xy", "# Cu Kα\n# 2theta counts\n" + File.ReadAllText(Repository.Verbatim("characterisation", "xrd", "synthetic", "zincite-with-quartz.xy")));
        var pattern = Assert.Single(Intake.Found(structure, scan).Patterns);
        Assert.Equal("O Zn", pattern.Main!.Name);
        Assert.Empty(pattern.Main.Match.Missing);
        Assert.Contains(pattern.Strangers, s => Math.Abs(s.TwoTheta - 26.68) < 0.05);
        Assert.Equal(3.2495, pattern.Lattice!.Parameters[0].Value, 1e-3);
    }

    // Cut and mutated files are read, asked about or refused; nothing else, and quickly. The seed is fixed.
    [Fact]
    public void MutatedFiles_AreReadAskedOrRefused()
    {
        var random = new Random(77);
        var texts = new[] { "start step count", "semicolons and commas", "error column", "steps in words" }.Select(l => Written(l, Made.Cubic(4.2112, Copper, to: 32, step: 0.1))).ToArray();
        for (var i = 0; i < 200; i++)
        {
            var text = texts[i % texts.Length];
            for (var k = random.Next(1, 5); k > 0; k--)
            {
                var at = random.Next(text.Length);
                var length = Math.Min(random.Next(0, 40), text.Length - at);
                text = text[..at] + "x;,.\n-e0#°"[random.Next(10)] + text[(at + length)..];
            }

            var understood = Intake.Text("mutated.txt", text);
            if (understood.Proposal?.Measurements is { IsEmpty: false })
                Assert.DoesNotContain(Intake.Found(understood).Findings, f => f.Code == Room.Code);
        }
    }
}
