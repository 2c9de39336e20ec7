using System.Collections.Frozen;

namespace Holdfast.Studies.Import;

/// <summary>Words for what a sample is for, in a column of their own or at the start of its label.</summary>
internal static class RoleWords
{
    private static readonly FrozenDictionary<string, SampleRole> Words = Group(
        (SampleRole.Vessel, "vessel vial sample unknown unk smp test treated sorption"),
        (SampleRole.Standard, "standard std stnd cal calibration calibrationstandard calstd calibrator"),
        (SampleRole.CheckStandard, "checkstandard checkstd check chk qc qcstandard qualitycontrol ccv icv"),
        (SampleRole.Blank, "blank blk reagentblank methodblank calibrationblank calblank"),
        (SampleRole.Solvent, "solvent solventblank scatter scatterblank liquidalone"),
        (SampleRole.Control, "control ctrl sorbentfree sorbentfreecontrol nosorbent"),
        (SampleRole.SorbentBlank, "sorbentblank sorbentonly powderblank powderonly"),
        (SampleRole.StartSolution, "startsolution start initial initialsolution feed"),
        (SampleRole.Spike, "spike spiked matrixspike"),
        (SampleRole.Digest, "digest digested digestion solid"),
        (SampleRole.Outlet, "outlet effluent columnoutlet"));

    // Only these are safe to tell from a label; a vial called "Control 3" may be a control of anything.
    private static readonly FrozenSet<SampleRole> OnLabels = [SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank, SampleRole.Solvent];

    /// <summary>What a role column's cell says, or null.</summary>
    /// <param name="text">The cell.</param>
    public static SampleRole? Read(string text) => Words.TryGetValue(HeadingWords.Key(text), out var role) ? role : null;

    /// <summary>What a label hints at, or null: "Std 2", "Blank", "QC-1".</summary>
    /// <param name="code">The label.</param>
    public static SampleRole? Guess(string code)
    {
        var first = string.Concat(code.TrimStart().TakeWhile(char.IsLetter));
        return Read(first) is { } role && OnLabels.Contains(role) ? role : null;
    }

    private static FrozenDictionary<string, SampleRole> Group(params (SampleRole Role, string Words)[] groups)
        => groups.SelectMany(g => g.Words.Split(' ').Select(w => (w, g.Role))).ToFrozenDictionary(x => x.w, x => x.Role, StringComparer.Ordinal);
}
