using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>What lines outside the tables say of a measurement, key by key: mass, degassing, bath, gas, p0, units; what nobody here knows is kept under its own word.</summary>
internal sealed partial class SorptionSettings
{
    private readonly ImmutableArray<MeasuredSetting> all;

    private SorptionSettings(ImmutableArray<MeasuredSetting> all) => this.all = all;

    /// <summary>Everything that is said, in the order of the file.</summary>
    public ImmutableArray<MeasuredSetting> All => all;

    /// <summary>The words of the first setting of a name, or null.</summary>
    public MeasuredSetting? this[string name] => all.FirstOrDefault(s => s.Name == name);

    /// <summary>Mass of the sample, g; null where none is stated with a unit that can be read.</summary>
    public double? Mass => all.Where(s => s.Name == "mass" && s.Value > 0).OrderByDescending(s => After().IsMatch(FileWords.Plain(s.Written + " " + s.Unit)) ? 1 : 0)
        .Select(Grams).FirstOrDefault(m => m is not null);

    /// <summary>A mass in grams; null without a unit that can be read.</summary>
    /// <param name="mass">A setting that holds one.</param>
    public static double? Grams(MeasuredSetting mass) => mass.Unit switch { "mg" => mass.Value / 1000, "kg" => mass.Value * 1000, "g" => mass.Value, _ => null };

    /// <summary>The settings with this mass for the only one.</summary>
    /// <param name="mass">Mass of the powder as it was measured.</param>
    public SorptionSettings Weighing(MeasuredSetting mass) => new([mass with { Name = "mass" }, .. all.Where(s => s.Name is not ("mass" or OwnWords.MassAfter))]);

    /// <summary>The settings together with those of another grid of the file that this one does not state.</summary>
    /// <param name="others">Settings of a sheet of its own.</param>
    public SorptionSettings Or(SorptionSettings others) => new([.. all, .. others.all.Where(o => this[o.Name] is null)]);

    /// <summary>The settings with one more.</summary>
    /// <param name="setting">What was answered or follows.</param>
    public SorptionSettings With(MeasuredSetting setting) => new(all.Add(setting));

    /// <summary>Reads rows outside the tables.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="mark">The file's decimal mark, or null.</param>
    public static SorptionSettings Of(IEnumerable<GridRow> rows, DecimalMark? mark)
    {
        var found = ImmutableArray.CreateBuilder<MeasuredSetting>();
        foreach (var row in rows)
        {
            Cell[] cells = [.. row.Cells.Where(c => !c.IsBlank)];
            // Key in one cell, value in the next: also several pairs along one row.
            for (var i = 0; i < cells.Length; i++)
            {
                var text = cells[i].Text;
                var parts = Apart().Split(text);
                if (parts.Any(p => Pair().IsMatch(p)))
                {
                    foreach (var part in parts)
                        Add(found, part, row.Number, mark);
                }
                else if (i + 1 < cells.Length && !TableLayout.IsNumeric(cells[i]) && (SorptionWords.Setting(text) is not null || text.EndsWith(':') || text.StartsWith('_') || cells.Length == 2 || (cells.Length == 3 && i == 0 && TableLayout.IsNumeric(cells[1]) && !TableLayout.IsNumeric(cells[2]))))
                {
                    // The next cell may be a key of its own: "mass | 0.1 | sample | ZF-3"; a unit is no key.
                    var behind = cells.Length == 2 || i + 2 >= cells.Length || (cells[i + 2].Text.Count(char.IsLetter) > 2 && SorptionWords.Setting(cells[i + 2].Text) is not null) ? [cells[i + 1].Text] : UnitBehind(cells, i + 1);
                    var value = cells[i + 1].Kind == CellKind.Number && cells.Length == 2 ? Shortest(cells[i + 1].Text) : string.Join(' ', behind);
                    found.Add(Setting(text.TrimEnd(':', ' '), value, row.Number, cells[i + 1].Kind == CellKind.Number ? DecimalMark.Point : mark));
                    i += behind.Length;
                }
                else
                {
                    Add(found, text, row.Number, mark);
                }
            }
        }

        // A mass after outgassing beside no other is the mass; a file that names its units once has settings without any.
        var units = new SorptionSettings(found.Any(s => s.Name == "mass" && s.Value is not null) ? found.ToImmutable() : [.. found.Select(s => s.Name == OwnWords.MassAfter ? s with { Name = "mass" } : s)]);
        return new([.. units.all.Select(s => s is { Value: not null, Unit.Length: 0 } && UnitSaid(units, s.Name) is { Length: > 0 } unit ? s with { Unit = unit, Written = $"{s.Written} {unit}" } : s)]);
    }

    private static string? UnitSaid(SorptionSettings settings, string name) => name switch
    {
        "mass" => MassUnit().Match(FileWords.Plain(settings["unit-of-mass"]?.Written ?? "")).Groups["unit"].Value,
        "p0" => PressureUnit.In(settings["unit-of-pressure"]?.Written ?? "")?.Name,
        "bath-temperature" or "degas-temperature" => settings["unit-of-temperature"]?.Written,
        _ => null,
    };

    // Workbooks keep 0.0923 as 0.09229999999999999.
    private static string Shortest(string number)
        => double.TryParse(number, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var value) ? value.ToString("G12", System.Globalization.CultureInfo.InvariantCulture) : number;

    // "0.1032 | g": the unit in a cell of its own.
    private static string[] UnitBehind(Cell[] cells, int value)
        => value + 1 < cells.Length && TableLayout.IsNumeric(cells[value]) && !TableLayout.IsNumeric(cells[value + 1]) && cells[value + 1].Text.Length <= 6 ? [cells[value].Text, cells[value + 1].Text] : [cells[value].Text];

    private static void Add(ImmutableArray<MeasuredSetting>.Builder found, string text, int row, DecimalMark? mark)
    {
        text = Dots().Replace(text, ": ");
        // "tube + powder after degassing: powder 0.1083 g", "it weighed 0.1083 g after outgassing".
        var weighed = Pair().Match(text);
        var (about, said) = weighed.Success ? (weighed.Groups["key"].Value, WordAndMass().Match(weighed.Groups["value"].Value)) : (text, OnlyMass().Match(text));
        if (said.Success && Outgassing().IsMatch(FileWords.Plain(about)) && (weighed.Success || IsAfter(about)) && Number(said.Groups["number"].Value, mark) is { } grams)
            found.Add(new MeasuredSetting(IsAfter(about) ? OwnWords.MassAfter : "mass", $"{said.Groups["number"].Value} {said.Groups["unit"].Value}", grams, said.Groups["unit"].Value, row));
        else if (Pair().Match(text) is { Success: true } pair)
            found.Add(Setting(pair.Groups["key"].Value, pair.Groups["value"].Value, row, mark));
        else if (Amid().Match(text) is { Success: true } amid && SorptionWords.Setting(amid.Groups["key"].Value) is not null)
            found.Add(Setting(amid.Groups["key"].Value, amid.Groups["value"].Value, row, mark));
        else if (text.Any(char.IsLetter))
            found.Add(new MeasuredSetting("note", text.Trim(), null, "", row));
    }

    private static MeasuredSetting Setting(string key, string written, int row, DecimalMark? mark)
    {
        var name = SorptionWords.Setting(key) ?? key.Trim();
        // "sample after outgassing: 0.0982" names no sample, and "weighed again after outgassing: 0.0982 g (much water)" no way of outgassing.
        if (IsAfter(key) && !Vessel().IsMatch(FileWords.Plain(key)) && (name == "mass" || (name is "sample" or "degas" && !written.Any(char.IsLetter)) || (Outgassing().IsMatch(FileWords.Plain(key)) && BeginsWithMass().IsMatch(written.Trim()))))
            name = OwnWords.MassAfter;
        var number = Leading().Match(written.Trim());
        var value = number.Success && name is not ("sample" or "adsorptive") ? Number(number.Groups["number"].Value, mark) : null;
        var unit = value is null ? "" : Unit(name, number.Groups["unit"].Value, key);
        // What stands in the key is part of what was written: "Einwaage / g | 0,2156".
        return new(name, value is not null && unit.Length > 0 && Unit(name, number.Groups["unit"].Value, "").Length == 0 ? $"{written.Trim()} {unit}" : written.Trim(), value, unit, row);
    }

    private static bool IsAfter(string words) => After().IsMatch(FileWords.Plain(words)) && !Lost().IsMatch(FileWords.Plain(words));

    private static double? Number(string text, DecimalMark? mark)
        => (CellText.Read(text, mark) as CellText.Number ?? CellText.Read(text, null) as CellText.Number)?.Value;

    // The unit stands behind the number, or in the key: "Einwaage / g".
    private static string Unit(string name, string behind, string key) => name switch
    {
        "mass" or OwnWords.MassAfter => (MassUnit().Match(FileWords.Plain(behind)) is { Success: true } own ? own : MassUnit().Match(FileWords.Plain(key))) is { Success: true } m ? m.Groups["unit"].Value switch { "г" => "g", "мг" => "mg", var u => u } : "",
        "p0" => (PressureUnit.In(behind) ?? PressureUnit.In(key))?.Name ?? "",
        "bath-temperature" or "degas-temperature" or "degas" => FileWords.Plain(behind + " " + key) is var plain && plain.Contains("°c", StringComparison.Ordinal) || Celsius().IsMatch(plain) ? "°C" : Kelvin().IsMatch(plain) ? "K" : "",
        _ => behind.Trim(),
    };

    // "Weighed after outgassing ..... 142.7 mg", as reports are set.
    [GeneratedRegex(@"\s*\.{4,}\s*", RegexOptions.NonBacktracking)]
    private static partial Regex Dots();

    [GeneratedRegex(@"\s{2,}|\t|;|\|", RegexOptions.NonBacktracking)]
    private static partial Regex Apart();

    [GeneratedRegex(@"^[#%!\s]*(?<key>[^:=]{1,60}?)\s*[:=]\s*(?<value>\S.*)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Pair();

    [GeneratedRegex(@"^[#%!\s]*(?<key>\D{2,40}?)\s+(?<value>-?\d[\d.,]*\s*\S{0,6}.*)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Amid();

    [GeneratedRegex(@"^(?<number>[+\-\u2212]?\d[\d.,]*([\u00A0\u2009\u202F]\d{3}[\d.,]*)*([eE][+\-]?\d+)?)\s*(?<unit>.*)$", RegexOptions.ExplicitCapture | RegexOptions.Singleline | RegexOptions.NonBacktracking)]
    private static partial Regex Leading();

    [GeneratedRegex(@"(^|[^a-zа-я])(?<unit>mg|kg|g|мг|г)([^a-zа-я]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex MassUnit();

    [GeneratedRegex(@"degas|outgas|degaz|entgas|ausgeh|ausheiz|desgas|odgaz|ontgas|avgas|drying|trockn|sechage|secado|secagem|essicc|suszen", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Outgassing();

    [GeneratedRegex(@"^\p{L}[\p{L} ]*\s(?<number>\d+([.,]\d+)?)\s*(?<unit>mg|g)\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex WordAndMass();

    [GeneratedRegex(@"(^|[^a-z])(c|celsius|degc|deg c|grad)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Celsius();

    [GeneratedRegex(@"(^|[^a-z])(k|kelvin)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Kelvin();

    [GeneratedRegex(@"^\d+([.,]\d+)?\s*(mg|g)([^\p{L}/]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex BeginsWithMass();

    [GeneratedRegex(@"^\D*(?<number>\d+([.,]\d+)?)\s*(?<unit>mg|g)([^\p{L}/\d]\D*)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex OnlyMass();

    [GeneratedRegex(@"tube|tubo|provett|rohr|probowk|zkumav|buis|cell|flask|holder", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Vessel();

    [GeneratedRegex(@"loss|lost|verlust|perte|perdida|perdita|perda|strata|verlies|forlust", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Lost();

    [GeneratedRegex(@"after|nach|apres|despues|depois|dopo|(^|[^a-z])(na|po|efter|etter|sonra)([^a-z]|$)|dry|dried|trocken|getrocknet|degassed|degaze|outgassed|entgast|ausgeheizt|desgasificad|desgaseificad|degassat|odgazowan|ontgast|avgasad|seche|(^|[^a-z])(seca|secca|sucha|droge|droog|torr)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex After();
}
