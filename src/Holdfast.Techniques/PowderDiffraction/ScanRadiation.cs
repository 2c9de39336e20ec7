using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A radiation as it is used, and the wavelength as the file stated it.</summary>
/// <param name="Radiation">The radiation.</param>
/// <param name="Stated">Wavelength in the file, ångström; null for none.</param>
internal sealed partial record ScanRadiation(Radiation Radiation, double? Stated)
{
    /// <summary>The radiation that words name: "Cu Kα", "CuKa1", "1.5406 Å", "0.15406 nm"; null for others.</summary>
    /// <param name="words">The words.</param>
    public static ScanRadiation? Named(string words)
    {
        if (Wavelength().Match(words.Trim()) is { Success: true } w)
        {
            var value = double.Parse(w.Groups["number"].Value, CultureInfo.InvariantCulture) * (w.Groups["unit"].Value == "nm" ? 10 : 1);
            if (!Radiation.IsPossible(value))
                return null;
            return Radiation.Near(value) is { } near ? new(near, value) : new(Radiation.Monochromatic(value), value);
        }

        return Line().Match(words.Trim()) is { Success: true } m && Radiation.Of(m.Groups["anode"].Value) is { } known
            ? new(m.Groups["one"].Success ? known.WithoutKa2() : known, null) : null;
    }

    /// <summary>The radiation that the settings of a measurement give, or null.</summary>
    /// <param name="measurement">The measurement.</param>
    public static Radiation? Of(Measurement measurement)
    {
        if (measurement.Setting(ScanNames.Wavelength)?.Value is not { } first)
            return null;
        var anode = measurement.Setting(ScanNames.Radiation)?.Written.Split(' ')[0] ?? "";
        var known = Radiation.Of(anode);
        return new(known?.Anode ?? "", first, measurement.Setting(ScanNames.Second)?.Value, known?.Kb, measurement.Setting(ScanNames.Ratio)?.Value ?? 0);
    }

    /// <summary>The settings it is kept as.</summary>
    /// <param name="said">Where the file says it.</param>
    public ImmutableArray<MeasuredSetting> Settings(RadiationSaid said)
    {
        static string Number(double value) => value.ToString("0.0######", CultureInfo.InvariantCulture);
        var settings = ImmutableArray.CreateBuilder<MeasuredSetting>();
        settings.Add(new(ScanNames.Radiation, Radiation.Name, null, "", said.Row));
        settings.Add(new(ScanNames.Wavelength, $"{Number(Stated ?? Radiation.Ka1)} Å", Radiation.Ka1, "Å", said.Row));
        if (Radiation.Ka2 is { } second)
        {
            settings.Add(new(ScanNames.Second, $"{Number(second)} Å", second, "Å", said.Row));
            settings.Add(new(ScanNames.Ratio, Number(Radiation.Ratio), Radiation.Ratio, "", 0));
        }

        return settings.ToImmutable();
    }

    [GeneratedRegex(@"^(?<number>\d+\.\d+)\s*(?<unit>Å|A|nm)?$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Wavelength();

    [GeneratedRegex(@"^(?<anode>[A-Za-z]{2})\s*-?\s*(K\s*-?\s*(α|a|alpha)\s*(?<one>[1₁])?)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Line();
}
