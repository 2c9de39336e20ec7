namespace Holdfast.Studies.Import;

/// <summary>What is refused rather than slowly suffered. Each limit is stated in the message that refuses. They bound the work, never the
/// time: what a file brings may not depend on how busy the computer is.</summary>
public static class Limits
{
    /// <summary>Largest text file or workbook, in bytes.</summary>
    public const long File = 64L << 20;

    /// <summary>Largest picture, in bytes.</summary>
    public const long Picture = 320L << 20;

    /// <summary>Largest drop of several files, in bytes.</summary>
    public const long Drop = 2L << 30;

    /// <summary>Most files of one drop.</summary>
    public const int Files = 2_000;

    /// <summary>Deepest folder of a drop.</summary>
    public const int Depth = 32;

    /// <summary>Most rows of one table.</summary>
    public const int Rows = 2_000_000;

    /// <summary>Most columns of one table.</summary>
    public const int Columns = 4_096;

    /// <summary>Most cells of one workbook, all sheets together, with the blank rows and cells before those that hold something.</summary>
    public const int Cells = 10_000_000;

    /// <summary>Longest cell, in characters.</summary>
    public const int Cell = 32_767;

    /// <summary>Most parts of a workbook's archive.</summary>
    public const int ArchiveEntries = 5_000;

    /// <summary>Most bytes of a workbook's archive once unpacked.</summary>
    public const long Unpacked = 512L << 20;

    /// <summary>Most times larger than its packed form an archive may be, past <see cref="RatioFrom"/>.</summary>
    public const int Ratio = 200;

    /// <summary>Unpacked size from which the ratio is looked at, in bytes.</summary>
    public const long RatioFrom = 1L << 20;

    /// <summary>The refusal of a table that is too large.</summary>
    /// <param name="fileName">The file.</param>
    /// <param name="what">What is too many: "more than 4096 columns".</param>
    public static StudyException Exceeded(string fileName, string what)
        => new(Codes.LimitExceeded, $"{fileName} has {what}, which is past the limit, so nothing is kept. Export only what you need.");
}
