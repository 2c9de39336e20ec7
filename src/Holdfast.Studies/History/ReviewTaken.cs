using System.Collections.Immutable;

namespace Holdfast.Studies.History;

/// <summary>The remarks of one reader on what she had before her.</summary>
/// <param name="By">Her name as she gave it.</param>
/// <param name="On">Number of the entry that she had before her.</param>
/// <param name="Fingerprint">Hash of that entry.</param>
/// <param name="Remarks">The remarks, in her order.</param>
public sealed record ReviewTaken(string By, long On, string Fingerprint, ImmutableArray<PinnedRemark> Remarks);

/// <summary>A remark was answered; a later answer stands for the earlier one.</summary>
/// <param name="Remark">Its address.</param>
/// <param name="Words">What is answered.</param>
public sealed record RemarkAnswered(string Remark, string Words) : Change
{
    /// <inheritdoc/>
    public override string Says() => "answer " + Remark;
}

/// <summary>A remark was closed.</summary>
/// <param name="Remark">Its address.</param>
public sealed record RemarkClosed(string Remark) : Change
{
    /// <inheritdoc/>
    public override string Says() => "close " + Remark;
}
