namespace Holdfast.Studies;

/// <summary>Stable codes of what can stand between a person and her data. Each has a page in docs/findings.</summary>
public static class Codes
{
    /// <summary>A column has no unit.</summary>
    public const string UnitMissing = "HF-401";

    /// <summary>A number can be read in two ways: decimal mark, date, ppm.</summary>
    public const string Ambiguous = "HF-402";

    /// <summary>A sample, reading or claim that the study does not have.</summary>
    public const string UnknownSample = "HF-404";

    /// <summary>The same file, or the same readings, were taken in before.</summary>
    public const string Duplicate = "HF-405";

    /// <summary>The file cannot be read.</summary>
    public const string Unreadable = "HF-406";

    /// <summary>A stated limit is passed.</summary>
    public const string LimitExceeded = "HF-407";

    /// <summary>A cell that is not what its column holds: "#DIV/0!", "NaN", a mass below zero.</summary>
    public const string OddCell = "HF-408";

    /// <summary>Meaning that will be lost: merged cells, formulas, hidden sheets, columns nobody knows.</summary>
    public const string MeaningLost = "HF-409";

    /// <summary>What was taken in is not enough for an uptake: start concentration, mass, volume or calibration is missing.</summary>
    public const string NothingFollows = "HF-439";

    /// <summary>The study changed since it was looked at.</summary>
    public const string ChangedElsewhere = "HF-420";

    /// <summary>The study is sealed.</summary>
    public const string Sealed = "HF-421";

    /// <summary>Another program has the study open for writing.</summary>
    public const string OpenElsewhere = "HF-422";

    /// <summary>Plan and margins are frozen, or cannot be frozen yet.</summary>
    public const string PlanFrozen = "HF-452";

    /// <summary>Nothing would change: struck already, nothing to undo.</summary>
    public const string NothingChanges = "HF-425";

    /// <summary>The disk is full.</summary>
    public const string DiskFull = "HF-430";

    /// <summary>The folder cannot be written to.</summary>
    public const string ReadOnlyFolder = "HF-431";

    /// <summary>Damage was found.</summary>
    public const string Damage = "HF-432";

    /// <summary>The clock moved back.</summary>
    public const string ClockMovedBack = "HF-433";

    /// <summary>The folder is not a study, or would not become one.</summary>
    public const string NotAStudy = "HF-434";

    /// <summary>The study was written by a newer version.</summary>
    public const string NewerVersion = "HF-435";

    /// <summary>A name that is to be written is a link.</summary>
    public const string Link = "HF-437";

    /// <summary>An entry is kept; the readable copies of the study beside the history are not refreshed.</summary>
    public const string NotRefreshed = "HF-438";

    /// <summary>The disk refused to keep what was written.</summary>
    public const string NotKept = "HF-436";
}
