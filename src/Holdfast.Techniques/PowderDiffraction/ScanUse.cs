using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Whether a pattern is of a powder of the study or of a standard that gives the width of the instrument.</summary>
internal static partial class ScanUse
{
    private const string Sample = "powder of the study";

    /// <summary>States which, by the words above the scan and the name of the file; an answer changes it.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="lines">Rows above the scan.</param>
    public static ImmutableArray<MeasuredSetting> Ask(MeasurementSource source, ImmutableArray<(int Row, string Text)> lines)
    {
        var (row, text) = lines.FirstOrDefault(l => Words().IsMatch(l.Text));
        var isStandard = text is not null || Words().IsMatch(Path.GetFileNameWithoutExtension(source.Talk.FileName).Replace('_', ' '));
        var answer = source.Talk.Assume(source.Question("use"), Codes.Ambiguous,
            isStandard ? $"This pattern is of a standard and gives the width of the instrument: {text ?? source.Talk.FileName} says so." : "This pattern is of a powder of the study.",
            isStandard ? [ScanNames.Standard, Sample] : [Sample, ScanNames.Standard]);
        return answer == ScanNames.Standard ? [new(ScanNames.Use, ScanNames.Standard, null, "", row)] : [];
    }

    [GeneratedRegex(@"(?<![a-z])(LaB6|SRM\s*\d{3}[a-z]?|(instrument(al)?|line|width|profile|silicon|Si)[\s-]standard|standard reference)(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Words();
}
