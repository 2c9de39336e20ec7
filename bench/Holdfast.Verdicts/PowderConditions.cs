using Holdfast.Claims;
using Holdfast.Infrared;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Techniques.Elements;
using Holdfast.Techniques.Infrared;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Techniques.Particles;
using Holdfast.Techniques.PowderDiffraction;
using static Holdfast.Verdicts.NumberConditions;

namespace Holdfast.Verdicts;

/// <summary>Rules about the powder: what its measurements give is drawn about its truth, spectra and lists are made point by point, and the rule decides.</summary>
internal static class PowderConditions
{
    /// <summary>All of them.</summary>
    public static IEnumerable<Condition> All() => OfDiffraction().Concat(OfSorption()).Concat(OfParticles()).Concat(OfComposition()).Concat(OfBands()).Concat(OfSpectra());

    private static IEnumerable<Condition> OfDiffraction()
    {
        // Height of a foreign line in per cent of the strongest; one of 0.5 % has z = 5.
        (string, double, Truth)[] lines = [("none", 0, Truth.True), ("one of 0.3 %, which nobody would see", 0.3, Truth.True), ("one of 1 %, as the claim says", 1, Truth.Margin), ("one of 3 %", 3, Truth.False)];
        foreach (var (name, share, truth) in lines)
        {
            yield return new("phase-pure", $"lines of 1 % claimed, u of a line 0.1 %, foreign line: {name}", truth, Ruled("pure " + name, chance =>
            {
                var seen = share + 0.1 * chance.Normal();
                return PhasePure.Decide(share > 0 ? [(30, seen / 0.1, seen, 0.1)] : [], 1, 0.5, 1, areCounts: true, ghosts: false);
            }));
        }

        (string, double, Truth)[] changes = [("0.012 Å", 0.012, Truth.True), ("none", 0, Truth.False)];
        foreach (var (name, change, truth) in changes)
        {
            foreach (var parameters in new[] { 1, 2 })
            {
                yield return new("lattice-changed", Invariant($"{parameters} of a lattice, u 0.002 Å each, 8 degrees of freedom, change: {name}"), truth, Ruled($"lattice {parameters} {name}", chance => LatticeChanged.Decide(
                    [.. Enumerable.Range(0, parameters).Select(i => ("ac"[i].ToString(), "Å", Found("powder", 5.64 + (i == 0 ? change : 0) + 0.002 * chance.Normal(), 0.002, chance, 8), Found("parent", 5.64 + 0.002 * chance.Normal(), 0.002, chance, 8)))],
                    8, 90, sameRadiation: true, null)));
            }
        }

        double[] contents = [0, 2.5, 5, 10];
        (string, double, int, Truth)[] slopes =
        [
            ("−0.0015 Å per %", -0.0015, 0, Truth.True), ("none", 0, 0, Truth.Margin), ("0.0015 Å per %, the other way", 0.0015, 0, Truth.False), ("−0.0015 Å per %, and a phase of the ion beside it", -0.0015, 1, Truth.False),
        ];
        foreach (var (name, slope, strangers, truth) in slopes)
        {
            yield return new("entered-lattice", $"contents of 0, 2.5, 5, 10 %, u of a 0.001 Å, smaller expected, slope: {name}", truth, Ruled("entered " + name, chance => EnteredLattice.Decide(
                "a", [.. contents.Select(x => (x, 9.42 + slope * x + 0.001 * chance.Normal(), 0.001))], larger: false, strangers)));
        }

        foreach (var c in Three("crystallite-size", "five lines give 20 nm within 15 % and a bracket of 15 % more, stated 20, 30, 45 nm", [20.0, 30, 45],
            (chance, stated) => { var middle = 20 * Math.Exp(0.06 * chance.Normal()); return CrystalliteSize.Decide(0.85 * middle, 1.15 * middle, 5, hasInstrument: true, separated: true, stated); }))
            yield return c;
    }

    private static IEnumerable<Condition> OfSorption()
    {
        var n = Math.Max(AreaDecreased.Limits.Portions, SampleSize.ForTwoMeans(8 / 2.0).N);
        foreach (var c in Three("area-decreased", Invariant($"parent of 100 m2/g, portions differ by 2 %, n = {n} of each; powder of 92, 100, 108 m2/g"), [92.0, 100, 108],
            (chance, area) => AreaDecreased.Decide(Summary.Of(Draw(chance, area, 0.02 * area, n)).MeanEstimate().Value!, Summary.Of(Draw(chance, 100, 2, n)).MeanEstimate().Value!, sameOutgassing: true, massesKnown: true, null, 0)))
            yield return c;

        // By the branches: adsorption shows the pore, desorption a smaller one, or the closing of the loop alone.
        (string, double, double, Truth)[] sizes = [("its size", 10, 7, Truth.True), ("half as much again", 15, 7, Truth.False), ("the closing of the loop at 3.8 nm", 3.8, 3.8, Truth.False)];
        foreach (var (name, claimed, down, truth) in sizes)
        {
            yield return new("pore-size", $"pores of 10 nm by adsorption within 3 %, desorption at {Invariant($"{down}")} nm; claimed: {name}", truth, Ruled("pores " + name, chance =>
            {
                var up = 10 * Math.Exp(0.03 * chance.Normal());
                return PoreSize.Decide(claimed, new(up, 0.93 * up, 1.07 * up, down * Math.Exp(0.02 * chance.Normal()), "IV(a)", "H1", true, 24, 0.985, true));
            }));
        }
    }

    // Log-normal sizes in eight images that differ by 3 %, as many particles as the rule asks for.
    private static IEnumerable<Condition> OfParticles()
    {
        const int images = 8;
        const double spread = 0.31;
        var each = (int)Math.Ceiling(ParticlesUnchanged.Needed(Math.Exp(spread), 1.11) / (double)images);
        (double, string?)[] Sizes(SeededStream chance, double mean, int images) => [.. Enumerable.Range(0, images).SelectMany(i =>
        {
            var shift = 0.03 * chance.Normal();
            return Enumerable.Range(0, each).Select(_ => (mean * Math.Exp(spread * chance.Normal() + shift), (string?)Invariant($"{i}")));
        })];
        SizeComparison Compared(SeededStream chance, double ratio, int images) => SizeComparison.Of(Sizes(chance, 50 * ratio, images), Sizes(chance, 50, images)).Value!;
        foreach (var c in Three("particles-unchanged", Invariant($"ratio 1, 1.11, 1.25, GSD 1.36, {images} images × {each} particles of each, then as many as the rule advises"), [1, 1.11, 1.25],
            (chance, ratio) =>
            {
                var then = (int)Math.Ceiling(ParticlesUnchanged.Advised(Compared(chance, ratio, images), images * each, Math.Exp(spread), 1.11) / (double)each);
                return ParticlesUnchanged.Decide(Compared(chance, ratio, then), then * each, then, Math.Exp(spread), 0.90, 1.11);
            }))
            yield return c;
        (double, Truth)[] changes = [(1.25, Truth.True), (1, Truth.False), (0.8, Truth.False)];
        foreach (var (ratio, truth) in changes)
        {
            yield return new("particles-changed", Invariant($"larger claimed, ratio {ratio}, GSD 1.36, {images} images × {each} particles of each"), truth, Ruled(Invariant($"changed {ratio}"), chance => ParticlesChanged.Decide(
                Compared(chance, ratio, images), images * each, images, larger: true, 0.90, 1.11)));
        }
    }

    // A method off by what it is known to, the same for all portions, and portions that scatter.
    private static IEnumerable<Condition> OfComposition()
    {
        foreach (var c in Three("composition-matches", "formula 0.040, next 0.080; truth 1, 1.10, 1.25 times the formula, 3 digests that differ by 1 %, method off by 2 %", [1, 1.10, 1.25],
            (chance, times) => { var seen = 0.04 * times * (1 + 0.02 * chance.Normal()); return CompositionMatches.Decide("Co/(Co+Zn)", Draw(chance, seen, 0.01 * seen, CompositionMatches.Limits.Digests), 0.04, 0.08, dissolved: true, totalKnown: true, null); }))
            yield return c;
        (string, double, Truth)[] fields = [("as the formula", 1, Truth.Mute), ("twice the formula", 2, Truth.False)];
        foreach (var (name, times, truth) in fields)
        {
            yield return new("composition-matches", $"formula 0.040, five fields by standardless X-rays, off by 12.5 %: {name}", truth, Ruled("fields " + name, chance =>
            {
                var seen = 0.04 * times * (1 + 0.125 * chance.Normal());
                return CompositionMatches.Decide("Co/(Co+Zn)", Draw(chance, seen, 0.05 * seen, CompositionMatches.Limits.Places), 0.04, 0.08, dissolved: false, totalKnown: true, null);
            }));
        }
    }

    private static IEnumerable<Condition> OfBands()
    {
        const double resolution = 4;
        Decision Shift(SeededStream chance, double shift)
        {
            (double, double)[] Places(double at) => [.. Draw(chance, at, 1, BandShifts.Limits.Preparations).Select(p => (p, 1.0))];
            return BandShifts.Decide(Places(1041), Places(1041 + shift), resolution, measuredAlike: true);
        }

        foreach (var c in Three("band-shifts", "three preparations of each, sd 1 cm⁻¹, resolution 4 cm⁻¹, shift 12, 4, 0 cm⁻¹", [12, resolution, 0], Shift))
            yield return c;
        (string, double, double, Truth)[] bonds = [("12 cm⁻¹, none in the control", 12, 0, Truth.True), ("12 cm⁻¹, in the control as well", 12, 12, Truth.False), ("none, none in the control", 0, 0, Truth.False), ("as the resolution, none in the control", resolution, 0, Truth.Margin)];
        foreach (var (name, loaded, control, truth) in bonds)
            yield return new("bond-formed", $"three preparations of each, sd 1 cm⁻¹, resolution 4 cm⁻¹, shift: {name}", truth, Ruled("bond " + name, chance => BondFormed.Decide(Shift(chance, loaded), Shift(chance, control))));
        foreach (var c in Three("carboxylate-bound", "unidentate claimed, u of each distance 2 cm⁻¹, 40, 20, 0 cm⁻¹ above the salt's", [40, CarboxylateStretches.LargerBy, 0],
            (chance, above) => CarboxylateBound.Decide(new(205 + above + 2 * chance.Normal(), 2), new(205 + 2 * chance.Normal(), 2), CarboxylateBinding.Unidentate, measuredAlike: true)))
            yield return c;
    }

    private static IEnumerable<Condition> OfSpectra()
    {
        (double At, double Height, double Width)[] water = [(1632, 0.14, 70), (3435, 0.32, 380)], phosphate = [(563, 0.42, 30), (1041, 0.62, 80)], organic = [(1448, 0.3, 60), (1716, 0.25, 40)];
        (string, (double, double, double)[], Truth)[] powders = [("its bands", [.. water, .. phosphate], Truth.True), ("one of two bands", [.. water, phosphate[1]], Truth.False), ("water alone", water, Truth.False)];
        foreach (var (name, bands, truth) in powders)
        {
            yield return new("group-shown", $"phosphate claimed, noise 0.0005: {name}", truth, Ruled("group " + name, chance =>
            {
                var spectrum = Spectrum(chance, v => Absorbance(v, bands));
                var found = GroupPossibility.Of(spectrum, BandSearch.Of(spectrum));
                return GroupShown.Decide(GroupShown.GroupNamed("phosphate"), new(Nothing, "P-1", null, spectrum, [.. found.Select(b => new NamedBand(b.Band, [.. AirBands.For(b.Band)], [.. b.Possibilities]))], []));
            }));
        }

        // The physical mixture is ground from the same parents; a baseline that bends is no bond.
        (string, double, double, Truth)[] composites = [("a band of its own, 0.02 high", 0.02, 0, Truth.True), ("nothing", 0, 0, Truth.False), ("grains that scatter 0.002 at 4000 cm⁻¹, as ν⁴", 0, 0.002, Truth.False), ("grains that scatter 0.02 at 4000 cm⁻¹, as ν⁴", 0, 0.02, Truth.False)];
        foreach (var (name, extra, bend, truth) in composites)
        {
            yield return new("more-than-mixture", $"0.6 and 0.3 of two parents, two preparations and a mixture, noise 0.0005, besides: {name}", truth, Ruled("mixture " + name, chance =>
            {
                InfraredSpectrum first = Spectrum(chance, v => Absorbance(v, [.. water, .. phosphate])), second = Spectrum(chance, v => Absorbance(v, organic));
                SpectralMixing Mixed(double own, double bent) => SpectralMixing.Of(Spectrum(chance, v => 0.6 * Absorbance(v, [.. water, .. phosphate]) + 0.3 * Absorbance(v, organic) + Absorbance(v, [(1560, own, 50)]) + bent * Math.Pow(v / 4000, 4)), [first, second]).Value!;
                return MoreThanMixture.Decide([Mixed(extra, bend), Mixed(extra, bend)], [Mixed(0, 0)]);
            }));
        }
    }

    private static Measurement Nothing { get; } = new("M-0001", "infrared", "P-1", [], [], new Origin(null, "invented", null, 0, null));

    private static InfraredSpectrum Spectrum(SeededStream chance, Func<double, double> absorbance)
        => InfraredSpectrum.Of(Enumerable.Range(0, 1801).Select(i => 4000.0 - 2 * i).Select(v => (v, 0.05 + absorbance(v) + 0.0005 * chance.Normal())), OrdinateScale.Absorbance, 4).Value!;

    private static double Absorbance(double v, (double At, double Height, double Width)[] bands) => bands.Sum(b => b.Height * Math.Exp(-4 * Math.Log(2) * Math.Pow((v - b.At) / b.Width, 2)));
}
