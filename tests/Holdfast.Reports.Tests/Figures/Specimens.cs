using System.Globalization;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tests.Figures;

/// <summary>One figure of each kind, from neutral made-up numbers: they show how figures look and mean nothing.</summary>
public static class Specimens
{
    private static readonly double[] Wiggle = [0.31, -0.42, 0.12, 0.55, -0.23, -0.61, 0.38, 0.05, -0.17, 0.29, -0.35, 0.47];

    public static IReadOnlyDictionary<string, Func<Figure>> All { get; } = new SortedDictionary<string, Func<Figure>>(StringComparer.Ordinal)
    {
        ["calibration"] = Calibration,
        ["dose"] = Dose,
        ["kinetics"] = Kinetics,
        ["isotherm"] = Isotherm,
        ["ph"] = Acidity,
        ["sizes"] = Sizes,
        ["quenching"] = Quenching,
        ["infrared"] = Infrared,
        ["cycles"] = Cycles,
        ["log-log"] = LogLog,
        ["multiples"] = Multiples,
        ["competition"] = Competition,
        ["diffraction"] = Diffraction,
        ["recovery"] = Recovery,
    };

    public static Figure Calibration()
    {
        double[] c = [0, 2, 5, 10, 20, 30, 40];
        var points = c.SelectMany((x, i) => new[] { (x, y: 0.004 + 0.0121 * x + 0.004 * Wiggle[i]), (x, y: 0.004 + 0.0121 * x + 0.004 * Wiggle[i + 5]) }).ToArray();
        var line = ModelCurve.Of(x => 0.004 + 0.0121 * x, 0, 40);
        var band = new Band(line.Points.Select(p => (p.X, p.Y - 0.006 - 0.00004 * Math.Pow(p.X - 15, 2) / 4, p.Y + 0.006 + 0.00004 * Math.Pow(p.X - 15, 2) / 4)).ToArray())
        {
            Label = "95 % confidence band",
        };
        return new("calibration", "Calibration line", "Absorbance rises in proportion to concentration from 0 to 40 milligrams per litre; residuals show no trend.",
        [
            new Panel(
                new("ρ", "mg L^-1", "mass concentration"), new("A", null, "absorbance"),
                [band, line with { Label = "line fitted" }, new Marks(points.Select((p, i) => new Mark(p.x, p.y) { Id = Code("S", i) }).ToArray()), new ReferenceLine(AxisName.X, 0.8, "LOD")])
            {
                Residuals = new(new("ΔA", null, "residual absorbance"), [new Marks(points.Select(p => new Mark(p.x, p.y - 0.004 - 0.0121 * p.x)).ToArray())]),
            },
        ])
        {
            Notes = ["Two readings of each of seven standards.", RichText.Parse("LOD: 3.3 *s*/*b*.")],
        };
    }

    public static Figure Dose()
    {
        double[] dose = [0.1, 0.2, 0.4, 0.6, 0.8, 1.0];
        var removal = new List<Mark>();
        var loading = new List<Mark>();
        for (var i = 0; i < dose.Length; i++)
        {
            for (var k = 0; k < 3; k++)
            {
                var r = 96 * dose[i] / (dose[i] + 0.22) + 1.5 * Wiggle[(i + 4 * k) % 12];
                var id = Code("V", 3 * i + k);
                var state = i == 4 && k == 1 ? MarkState.Struck : MarkState.Measured;
                removal.Add(new(dose[i], r - (state == MarkState.Struck ? 9 : 0)) { Id = id, State = state });
                loading.Add(new(dose[i], (r - (state == MarkState.Struck ? 9 : 0)) / 100 * 40 / dose[i]) { Id = id, State = state });
            }
        }

        var x = new Axis("D", "g L^-1", "dose");
        return new("dose", "Removal and loading against dose", "Removal rises from 30 to 80 percent between 0.1 and 1.0 grams per litre while the loading falls.",
        [
            new(x, new("R", "%", "removal") { Min = 0, Max = 100 },
                [new Marks(removal), .. dose.Select((d, i) => new Annotation(d, removal.Skip(3 * i).Take(3).Max(m => m.Y) + 1, "abccde".Substring(i, 1)))]),
            new(x, new("q", "mg g^-1", "loading"), [new Marks(loading)]),
        ])
        {
            Notes = ["Single vessels, three a dose. Doses without a common letter differ (Tukey, 5 %)."],
        };
    }

    public static Figure Kinetics()
    {
        double[] t = [1, 2, 5, 10, 20, 30, 60, 90, 120];
        var layers = new List<Layer>();
        var strip = new List<Marks>();
        foreach (var (slot, plateau, k) in new[] { (0, 62.0, 0.0042), (1, 41.0, 0.0061) })
        {
            double Model(double x) => k * plateau * plateau * x / (1 + k * plateau * x);
            var marks = t.Select((x, i) => Barred(x, Model(x) + 1.6 * Wiggle[(i + 3 * slot) % 12], 1.8)).ToArray();
            layers.Add(new Marks(marks) { Slot = slot });
            layers.Add(ModelCurve.Of(Model, 0, 180, 1, 120) with { Slot = slot, Label = RichText.Parse(slot == 0 ? "40 mg L^-1" : "20 mg L^-1") });
            strip.Add(new(marks.Select(m => new Mark(m.X, m.Y - Model(m.X))).ToArray()) { Slot = slot });
        }

        layers.Add(ModelCurve.Of(x => 57 * (1 - Math.Exp(-0.11 * x)), 0, 180, 1, 120) with { Slot = 2, Label = "pseudo-first-order" });
        return new("kinetics", "Uptake with time", "Both series rise within 30 minutes and change little after 90 minutes.",
        [
            new(new("t", "min", "time"), new Axis("q_{*t*}", "mg g^-1", "loading"), layers) { Residuals = new(new("Δq", "mg g^-1", "residual loading"), strip) },
        ])
        {
            Notes = ["Bars: standard uncertainty (k = 1)."],
        };
    }

    public static Figure Isotherm()
    {
        double[] c = [0.4, 1.5, 4, 9, 18, 31, 47];
        static double Langmuir(double x) => 48 * 0.31 * x / (1 + 0.31 * x);
        var marks = c.Select((x, i) => new Mark(x, Langmuir(x) + 1.5 * Wiggle[i])
        {
            Id = Code("V", i),
            XBar = new(x * 0.93, x * 1.05),
            YBar = new(Langmuir(x) + 1.5 * Wiggle[i] - 1.4, Langmuir(x) + 1.5 * Wiggle[i] + 2.1),
        }).Append(new Mark(0.2, 4.6) { Id = "V-0", State = MarkState.BelowX, YBar = ErrorBar.Around(4.6, 0.8) }).ToArray();
        var rival = ModelCurve.Of(x => 15.5 * Math.Pow(x, 0.31), 0.01, 60, 0.4, 47);
        return new("isotherm", "Isotherm at 25 °C", "Loading rises steeply up to 10 milligrams per litre and levels near 46 milligrams per gram.",
        [
            new(new("c_e", "mg L^-1", "concentration at equilibrium"), new("q_e", "mg g^-1", "loading at equilibrium"),
                [
                    new Marks(marks),
                    ModelCurve.Of(Langmuir, 0, 60, 0.4, 47) with { Label = "Langmuir" },
                    rival with { Slot = 1, Label = "Freundlich" },
                ])
            {
                Residuals = new(new("Δq", "mg g^-1", "residual loading"),
                    [
                        new Marks(marks.Take(7).Select(m => new Mark(m.X, m.Y - Langmuir(m.X))).ToArray()),
                        new Marks(marks.Take(7).Select(m => new Mark(m.X, m.Y - 15.5 * Math.Pow(m.X, 0.31))).ToArray()) { Slot = 1 },
                    ]),
            },
        ])
        {
            Notes = ["Bars: expanded uncertainty (k = 2)."],
            MadeFrom = ["study specimen", "version 0"],
        };
    }

    public static Figure Acidity()
    {
        double[] ph = [2, 3, 4, 5, 6, 7, 8];
        double[] r = [3.1, 11, 34, 61, 78, 88, 97];
        var marks = ph.SelectMany((x, i) => Enumerable.Range(0, 2).Select(k => new Mark(x + 0.04 * k, r[i] + 2 * Wiggle[(i + 3 * k) % 12]) { Id = Code("V", 2 * i + k) })).ToArray();
        var blank = ph.Select((x, i) => new Mark(x, i < 5 ? 0.6 + Wiggle[i] : i == 5 ? 4 : 31)).ToArray();
        return new("ph", "Removal against pH", "Removal rises from 3 to 97 percent between pH 2 and 8; without sorbent metal is lost above pH 7.4.",
        [
            new(new("pH", null, "start pH") { Min = 1.5, Max = 8.5 }, new("R", "%", "removal") { Min = -5, Max = 105 },
                [
                    new Zone(AxisName.X, 7.4, 8.5, RichText.Parse("Ni(OH)_2 solid")),
                    new ReferenceLine(AxisName.X, 7.4, "SI = 0"),
                    new ReferenceLine(AxisName.X, 4.6, RichText.Parse("pH_pzc")),
                    new Marks(marks) { Label = "with sorbent" },
                    new Marks(blank) { Slot = 1, Label = "no sorbent" },
                ]),
            new(new("pH", null, "start pH") { Min = 1.5, Max = 8.5 }, new("pH_end", null, "end pH") { Min = 1.5, Max = 8.5 },
                [new SlopingLine(0, 1, "no change"), new Marks(ph.Select((x, i) => new Mark(x, x + 0.8 * Math.Exp(-Math.Pow(x - 4.6, 2)) + 0.2 * Wiggle[i])).ToArray())]),
        ]);
    }

    public static Figure Sizes()
    {
        int[] counts = [2, 9, 21, 30, 24, 14, 7, 3, 1];
        return new("sizes", "Particle length", "Lengths are spread from 20 to 110 nanometres with most near 55.",
        [
            new(new("L", "nm", "length"), new("N", null, "number of particles") { WholeNumbers = true },
                [
                    new Bars(counts.Select((n, i) => new Bar(20 + 10 * i, 30 + 10 * i, n)).ToArray()),
                    ModelCurve.Of(x => 28 * 55 / x * Math.Exp(-Math.Pow(Math.Log(x / 56), 2) / (2 * 0.08)), 15, 115) with { Slot = 1, Label = "log-normal" },
                ]),
        ]);
    }

    public static Figure Quenching()
    {
        double[] q = [0, 10, 20, 40, 60, 80, 100];
        return new("quenching", "Intensity and lifetime ratio", "The intensity ratio rises linearly to 60 micromoles per litre; the lifetime ratio stays near one.",
        [
            new(new("[Q]", "µmol L^-1", "quencher concentration"), new("F_0/F", null, "intensity or lifetime ratio"),
                [
                    new Marks(q.Select((x, i) => Barred(x, 1 + 0.012 * x + 0.00003 * x * x + 0.02 * Wiggle[i], 0.04) with { State = x > 60 ? MarkState.LeftOut : MarkState.Measured }).ToArray()),
                    ModelCurve.Of(x => 1 + 0.0132 * x, 0, 100, 0, 60) with { Label = RichText.Parse("*F*_0/*F*") },
                    new Marks(q.Select((x, i) => new Mark(x, 1 + 0.01 * Wiggle[i + 3])).ToArray()) { Slot = 1, Label = RichText.Parse("*τ*_0/*τ*") },
                    new Zone(AxisName.X, 0, 60, "linear range"),
                    new ReferenceLine(AxisName.X, 3.1, "LOD"),
                ]),
        ]);
    }

    public static Figure Infrared()
    {
        static double Spectrum(double v, double shift) => 0.05 + 0.5 * Peak(v, 3400 + shift, 180) + 0.35 * Peak(v, 1640 - shift, 25) + 0.28 * Peak(v, 1070, 60) + 0.06 * Peak(v, 2920, 30);
        static double Peak(double v, double at, double width) => Math.Exp(-Math.Pow((v - at) / width, 2));
        static Trace Scan(double shift, double lift)
            => new(Enumerable.Range(0, 3601).Select(i => (4000.0 - i, lift + Spectrum(4000.0 - i, shift) + 0.004 * Math.Sin(i * 12.9898) * Math.Cos(i * 4.1))).ToArray());
        return new("infrared", "Infrared spectra", "Bands at 3400 and 1640 per centimetre shift after loading.",
        [
            new(new("wavenumber", "cm^-1", "wavenumber") { Reversed = true, Min = 400, Max = 4000 }, new("A", null, "absorbance, offset"),
                [Scan(0, 0) with { Label = "before" }, Scan(18, 0.3) with { Slot = 1, Label = "loaded" }, new Zone(AxisName.X, 2300, 2400, RichText.Parse("CO_2")), new Annotation(1640, 0.72, "1622")]),
        ]);
    }

    public static Figure Cycles() => new("cycles", "Regeneration", "Loading falls from 41 to 36 milligrams per gram over five cycles.",
    [
        new(Axis.OfPlaces("cycle", "1", "2", "3", "4", "5"), new("q", "mg g^-1", "loading"),
            [
                new Bars(Enumerable.Range(1, 5).Select(i => new Bar(i - 0.38, i, 42 - 1.3 * i) { YBar = ErrorBar.Around(42 - 1.3 * i, 1.1) }).ToArray()) { Label = "taken up" },
                new Bars(Enumerable.Range(1, 5).Select(i => new Bar(i, i + 0.38, 39 - 1.6 * i) { YBar = ErrorBar.Around(39 - 1.6 * i, 1.4) }).ToArray()) { Slot = 1, Label = "eluted" },
                new ReferenceLine(AxisName.Y, 32.6, "margin (80 %)"),
            ]),
    ]);

    public static Figure LogLog() => new("log-log", "Four isotherms on logarithmic axes", "Four materials over four decades of concentration.",
    [
        new(new("c_e", "mg L^-1", "concentration at equilibrium") { Scale = AxisScale.Logarithmic }, new("q_e", "mg g^-1", "loading at equilibrium") { Scale = AxisScale.Logarithmic },
            Enumerable.Range(0, 4).SelectMany(s => new Layer[]
            {
                new Marks(Enumerable.Range(0, 9).Select(i => Decade(s, Math.Pow(10, -2 + 0.5 * i))).ToArray()) { Slot = s },
                ModelCurve.Of(x => Rise(s, x), 0.005, 200, 0.01, 100, logarithmic: true) with { Slot = s, Label = $"material {"ABCD"[s]}" },
            }).ToArray()),
    ]);

    public static Figure Multiples() => new("multiples", "Uptake at six temperatures", "The same shape at each temperature, with a rising plateau.",
        Panel.Multiples(new("t", "min", "time"), new("q_{*t*}", "mg g^-1", "loading"), Enumerable.Range(0, 6).Select(k => (Degrees(15 + 10 * k), (IReadOnlyList<Layer>)
        [
            new Marks(new double[] { 2, 5, 10, 20, 40, 60 }.Select((x, i) => new Mark(x, (20 + 4 * k) * (1 - Math.Exp(-0.08 * x)) + Wiggle[(i + k) % 12])).ToArray()),
            ModelCurve.Of(x => (20 + 4 * k) * (1 - Math.Exp(-0.08 * x)), 0, 60, 2, 60),
        ]))));

    public static Figure Competition() => new("competition", "Selectivity against other ions", "Only for sodium and potassium the coefficient is clearly above one.",
    [
        new(Axis.OfPlaces("competing ion", RichText.Parse("Na^+"), RichText.Parse("K^+"), RichText.Parse("Mg^2+"), RichText.Parse("Ca^2+"), RichText.Parse("Cu^2+"), RichText.Parse("Zn^2+")),
            new("α", null, "selectivity coefficient") { Scale = AxisScale.Logarithmic },
            [
                new ReferenceLine(AxisName.Y, 1, "no preference"),
                new Marks(new[] { 210, 160, 8.2, 5.1, 0.31, 0.92 }.Select((a, i) => new Mark(i + 1, a) { YBar = new(a / 1.5, a * 1.6) }).ToArray()),
            ]),
    ]);

    public static Figure Diffraction()
    {
        (double X, double Height)[] lines = [(11.3, 800), (22.8, 410), (34.6, 520), (38.9, 180), (46.2, 150), (60.5, 260), (61.8, 240)];
        double Pattern(double angle) => 1200 + lines.Sum(l => 14 * l.Height * Math.Exp(-Math.Pow((angle - l.X) / 0.25, 2)));
        return new("diffraction", "Powder patterns", "Every line of the pattern falls on a reference line.",
        [
            new(new("2θ", "°", "diffraction angle"), new("I", "counts", "intensity"),
                [
                    new Trace(Enumerable.Range(0, 6001).Select(i => (5 + 0.01 * i, Pattern(5 + 0.01 * i) + 120 * Math.Abs(Math.Sin(i * 12.9898)))).ToArray()) { Label = "sample" },
                    new Sticks(lines.Select(l => (l.X, l.Height)).ToArray()) { Slot = 1, Label = "reference" },
                ]),
        ]);
    }

    public static Figure Recovery() => new("recovery", "Found against added", "Found amounts follow the identity line.",
    [
        new(new("n_added", "µmol", "amount added"), new("n_found", "µmol", "amount found"),
            [
                new SlopingLine(0, 1, "identity"),
                new Marks(new[] { 0.5, 1.0, 2.0, 4.0, 8.0 }.Select((x, i) => Barred(x, x * 0.98 + 0.1 * Wiggle[i], 0.25)).ToArray()),
                ModelCurve.Of(x => 0.97 * x + 0.02, 0.5, 8) with { Label = "fitted" },
            ]),
    ]);

    private static RichText Degrees(int celsius) => celsius.ToString(CultureInfo.InvariantCulture) + " °C";

    private static double Rise(int s, double x) => (20 + 3 * s) * Math.Pow(x, 0.4 + 0.02 * s) / (1 + 0.02 * x);

    private static Mark Decade(int s, double x) => new(x, Rise(s, x)) { State = s == 3 && x < 0.02 ? MarkState.BelowY : MarkState.Measured };

    private static Mark Barred(double x, double y, double half) => new(x, y) { YBar = ErrorBar.Around(y, half) };

    private static string Code(string letter, int index) => letter + "-" + (index + 1).ToString(CultureInfo.InvariantCulture);
}
