using System.Collections.Immutable;

namespace Holdfast.Studies.History;

/// <summary>What is undone at present, and what an undo or a redo would take next. There is no limit of depth.</summary>
/// <param name="Undone">Numbers of the entries that are not in force.</param>
/// <param name="Next">The entry an undo would take, or null.</param>
/// <param name="Back">The entry a redo would bring back, or null; a new change after an undo leaves nothing to redo.</param>
public sealed record UndoOrder(ImmutableHashSet<long> Undone, Entry? Next, Entry? Back)
{
    /// <summary>Works it out from the entries.</summary>
    /// <param name="entries">Entries in order.</param>
    public static UndoOrder Of(ImmutableArray<Entry> entries)
    {
        var inForce = new Stack<Entry>();
        var takenBack = new Stack<Entry>();
        var undone = ImmutableHashSet.CreateBuilder<long>();
        foreach (var entry in entries)
        {
            if (entry.Change is Undone && inForce.TryPop(out var newest))
            {
                takenBack.Push(newest);
                undone.Add(newest.Number);
            }
            else if (entry.Change is Redone && takenBack.TryPop(out var last))
            {
                inForce.Push(last);
                undone.Remove(last.Number);
            }
            else if (entry.Change.CanBeUndone)
            {
                inForce.Push(entry);
                takenBack.Clear();
            }
        }
        return new UndoOrder(undone.ToImmutable(), inForce.TryPeek(out var next) ? next : null, takenBack.TryPeek(out var back) ? back : null);
    }
}
