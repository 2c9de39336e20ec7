namespace Holdfast.Cli;

/// <summary>Exit codes; scripts rely on them, so they never change meaning.</summary>
internal static class Exit
{
    /// <summary>Done; for defend, all asked claims hold.</summary>
    public const int Done = 0;

    /// <summary>Command not understood.</summary>
    public const int NotUnderstood = 2;

    /// <summary>A claim is not shown yet, none is contradicted.</summary>
    public const int NotShownYet = 3;

    /// <summary>A claim is contradicted.</summary>
    public const int Contradicted = 4;

    /// <summary>The data need a decision; nothing was kept.</summary>
    public const int NeedsDecision = 5;

    /// <summary>No such sample, reading or claim.</summary>
    public const int NoSuchThing = 6;

    /// <summary>Changed elsewhere, or sealed.</summary>
    public const int ChangedOrSealed = 7;

    /// <summary>Storage: full, read-only, damaged.</summary>
    public const int Storage = 8;

    /// <summary>Stopped by the user; nothing was kept.</summary>
    public const int Stopped = 9;

    /// <summary>A fault in Holdfast itself.</summary>
    public const int Fault = 70;

    /// <summary>The exit code that goes with a message code of the study or its files.</summary>
    /// <param name="code">HF code.</param>
    public static int Of(string code) => code switch
    {
        Studies.Codes.UnknownSample => NoSuchThing,
        Studies.Codes.NotAStudy => NoSuchThing,
        Studies.Codes.ChangedElsewhere or Studies.Codes.Sealed or Studies.Codes.PlanFrozen or Studies.Codes.OpenElsewhere => ChangedOrSealed,
        Studies.Codes.DiskFull or Studies.Codes.ReadOnlyFolder or Studies.Codes.Damage or Studies.Codes.NewerVersion
            or Studies.Codes.NotKept or Studies.Codes.Link or Studies.Codes.ClockMovedBack => Storage,
        _ => NeedsDecision,
    };
}
