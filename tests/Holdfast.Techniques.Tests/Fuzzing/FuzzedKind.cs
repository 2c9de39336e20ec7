using System.Collections.Immutable;
using System.Text;
using Holdfast.Statistics;
using Holdfast.Techniques.Tests.Micrographs;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>Files of one kind that are spoilt and read again.</summary>
/// <param name="Name">"aif", "cif", "jcamp", "scan", "table", "tiff".</param>
/// <param name="Seeds">Sound and faulty files of the kind, by name.</param>
internal sealed record FuzzedKind(string Name, ImmutableArray<(string Name, byte[] Bytes)> Seeds)
{
    /// <summary>Every kind, with the files of the repository and, where it is there, of the folder of outside files.</summary>
    /// <param name="root">Root of the repository.</param>
    /// <param name="reference">The folder that HOLDFAST_REFERENCE names, or null.</param>
    public static ImmutableArray<FuzzedKind> All(string root, string? reference)
    {
        var powder = Path.Combine(root, "samples", "demo-powder");
        var people = Path.Combine(root, "reference", "characterisation", "cases");
        var outside = reference is null ? null : Path.Combine(reference, "characterisation");
        IEnumerable<(string, byte[])> In(string? folder, params string[] patterns)
            => folder is null || !Directory.Exists(folder) ? [] : patterns.SelectMany(p => Directory.EnumerateFiles(folder, p, SearchOption.AllDirectories)).Order(StringComparer.Ordinal).Select(f => (Path.GetFileName(f), File.ReadAllBytes(f)));
        return
        [
            new("aif", [("own.aif", Encoding.UTF8.GetBytes(OwnAif())), .. In(people, "*.aif"), .. In(outside, "*.aif")]),
            new("cif", [.. In(powder, "*.cif"), ("own-scan.cif", Encoding.UTF8.GetBytes(OwnScan())), .. In(outside, "*.cif")]),
            new("jcamp", [("own.jdx", Encoding.UTF8.GetBytes(OwnSpectrum())), ("own-dif.jdx", Encoding.UTF8.GetBytes(OwnDifferences())), .. In(people, "*.dx"), .. In(outside, "*.jdx")]),
            new("scan", [.. In(powder, "xrd-*.txt"), .. In(outside, "*.xy", "*.dat", "RT-1.csv"), .. In(people, "*.xy", "*.dat", "*.prn")]),
            new("table", [.. In(powder, "n2-*.csv", "ir-*.csv", "edx-*.csv", "rods.csv"), .. In(outside is null ? null : Path.Combine(outside, "files"), "*.csv", "*.tsv", "*.txt"), .. In(people, "*.csv", "*.tsv", "*.txt"), .. In(outside is null ? null : Path.Combine(outside, "sorption", "isotherms"), "*.csv")]),
            new("tiff", [.. OwnPictures()]),
        ];
    }

    /// <summary>The input of a number: the same bytes on every machine that has the same seeds.</summary>
    /// <param name="number">Number of the input.</param>
    public (string Name, byte[] Bytes, SeededStream Chance) Input(int number)
    {
        var chance = new SeededStream((ulong)number, "fuzz " + Name);
        var (name, bytes) = Seeds[chance.Below(Seeds.Length)];
        return (name, Name == "tiff" ? TiffMutation.Of(bytes, chance) : TextMutation.Of(bytes, Seeds[chance.Below(Seeds.Length)].Bytes, chance), chance);
    }

    private static string OwnAif()
    {
        double[] x = [.. Enumerable.Range(1, 19).Select(i => 0.05 * i)];
        return "data_own\n_exptl_adsorptive 'N2'\n_exptl_temperature 77.3\n_adsnt_sample_mass 0.1012\n_adsnt_material_id 'own powder'\n_units_temperature K\n_units_pressure kPa\n_units_mass g\n_units_loading 'mmol/g'\n_exptl_p0 101.3\n"
            + "loop_\n_adsorp_pressure\n_adsorp_amount\n" + string.Concat(x.Select(v => FormattableString.Invariant($"{101.3 * v:F3} {90 * v / ((1 - v) * (1 + 89 * v)):F5}\n")))
            + "loop_\n_desorp_pressure\n_desorp_amount\n" + string.Concat(x.Reverse().Select(v => FormattableString.Invariant($"{101.3 * v:F3} {90 * v / ((1 - v) * (1 + 89 * v)) + 0.02:F5}\n")));
    }

    private static string OwnScan()
        => "data_scan\n_pd_meas_2theta_range_min 20.0\n_pd_meas_2theta_range_max 27.9\n_pd_meas_2theta_range_inc 0.1\n_diffrn_radiation_wavelength 1.5406\nloop_\n_pd_meas_counts_total\n"
            + string.Concat(Enumerable.Range(0, 80).Select(i => FormattableString.Invariant($"{80 + 900 * Math.Exp(-(i - 40) * (i - 40) / 8.0):F0}\n")));

    private static string OwnSpectrum()
        => "##TITLE=own powder\n##JCAMP-DX=4.24\n##DATA TYPE=INFRARED SPECTRUM\n##ORIGIN=invented\n##OWNER=nobody\n##XUNITS=1/CM\n##YUNITS=ABSORBANCE\n##RESOLUTION=4\n##FIRSTX=4000\n##LASTX=400\n##NPOINTS=451\n##XFACTOR=1\n##YFACTOR=0.0001\n##XYDATA=(X++(Y..Y))\n"
            + string.Concat(Enumerable.Range(0, 451).Chunk(9).Select(line => FormattableString.Invariant($"{4000 - 8 * line[0]} ") + string.Join(' ', line.Select(i => FormattableString.Invariant($"{500 + 6000 * Math.Exp(-Math.Pow((4000 - 8 * i - 1041) / 60.0, 2)):F0}"))) + "\n")) + "##END=\n";

    private static string OwnDifferences()
        => "##TITLE=own ramp\n##JCAMP-DX=4.24\n##DATA TYPE=INFRARED SPECTRUM\n##XUNITS=1/CM\n##YUNITS=TRANSMITTANCE\n##FIRSTX=1000\n##LASTX=1009\n##NPOINTS=10\n##XFACTOR=1\n##YFACTOR=0.01\n##XYDATA=(X++(Y..Y))\n1000A0JTLj\n1004A4JKLMN\n1009B9\n##END=\n";

    // Every form that is read, small, and forms that are refused.
    private static IEnumerable<(string, byte[])> OwnPictures()
    {
        foreach (var big in new[] { false, true })
        {
            foreach (var (bits, samples, compression, photometric) in new[] { (8, 1, 1, 1), (16, 1, 1, 0), (8, 3, 1, 2), (8, 1, 5, 1), (16, 1, 8, 1), (8, 3, 32773, 2), (8, 1, 6, 1), (8, 2, 32946, 1) })
            {
                yield return (FormattableString.Invariant($"own-{bits}-{samples}-{compression}.tif"),
                    new MadeTiff(17, 11) { IsBig = big, Bits = bits, Samples = samples, Compression = compression, Photometric = photometric, PerCentimetre = 4_000_000, IsDifference = compression == 5 }.Write());
            }
        }
    }
}
