using System.Text.RegularExpressions;

namespace Holdfast.Amounts;

/// <summary>A column's heading split into what it names and the unit it states.</summary>
/// <param name="Name">What the column holds, without the unit: "Ce".</param>
/// <param name="Unit">What the heading says about the unit; <see cref="UnitText.Absent"/> when it says nothing.</param>
public sealed partial record Header(string Name, UnitText Unit)
{
    /// <summary>A heading that is longer is a sentence: no unit is looked for in it.</summary>
    private const int LongestText = 160;

    /// <summary>Reads "Ce (mg/L)", "Ce / mg L-1", "Ce [mg·L⁻¹]", "Ce, mg/L", "Ce in mg/L", "ce_mg_per_L" and "Ce mg/L".</summary>
    /// <param name="text">The heading.</param>
    public static Header Read(string? text)
    {
        var heading = Spaces().Replace(text ?? "", " ").Trim();
        if (heading.Length > LongestText)
            return new(heading, new UnitText.Absent());
        foreach (var form in new[] { Bracketed(), Ratio(), Comma() })
        {
            if (form.Match(heading) is { Success: true } m && !EndsInUnit(m.Groups["name"].Value) && UnitReader.Read(m.Groups["unit"].Value) is (UnitText.Known or UnitText.Ambiguous) and var unit)
                return new(m.Groups["name"].Value.TrimEnd('/', ' '), unit);
        }

        if (Trailing(heading, '_') is { } file)
            return file;
        if (Trailing(heading, ' ') is { } spaced)
            return spaced;

        // A bracket that looks like a unit and is none that is known: the user is shown it, rather than told that there is no unit.
        if (Bracketed().Match(heading) is { Success: true } odd && odd.Groups["unit"].Value.Any(c => c is '/' or '^' or '-' or '%'))
            return new(odd.Groups["name"].Value.Trim(), new UnitText.Unknown(odd.Groups["unit"].Value));
        return new(heading, new UnitText.Absent());
    }

    // "Ce mg/L" is no ratio of "Ce mg" and L; "reading L1" ends in a number and in no litre.
    private static bool EndsInUnit(string name)
        => name.Trim().Split(' ') is [_, .., { Length: > 1 } last] && !char.IsDigit(last[^1]) && UnitReader.Read(last) is UnitText.Known { Unit.IsOne: false };

    /// <summary>A unit at the end without any bracket. One letter is not enough: K_L is no litre and "vial A" no ampere.</summary>
    private static Header? Trailing(string heading, char between)
    {
        for (var at = heading.IndexOf(between, StringComparison.Ordinal); at > 0; at = heading.IndexOf(between, at + 1))
        {
            var ending = heading[(at + 1)..].Replace('_', ' ').Trim();
            if (ending.Length < 2 && ending != "%")
                continue;
            if (UnitReader.Read(ending) is not UnitText.Known { Unit.IsOne: false } known)
                continue;
            var name = heading[..at];
            if (between == '_' && ending.Split(' ') is [var above, var below] && !ending.Any(char.IsDigit) && UnitReader.Read($"{above}/{below}") is UnitText.Known ratio)
                return new(name, new UnitText.Ambiguous(heading, [ratio.Unit, known.Unit], $"'{heading}': {above}/{below}?"));
            return new(name, known);
        }

        return null;
    }

    [GeneratedRegex(@"\s+", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^(?<name>.+?) ?(\((?<unit>[^()]*(\([^()]*\))?[^()]*)\)|\[(?<unit>[^\[\]]*)\]|\{(?<unit>[^{}]*)\})$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"^(?<name>[^/]+?) ?/ ?\(?(?<unit>.+?)\)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Ratio();

    [GeneratedRegex(@"^(?<name>.+?)(, ?| in )(?<unit>[^,]+)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Comma();
}
