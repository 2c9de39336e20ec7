using System.Collections.Immutable;

namespace Holdfast.Studies.History;

/// <summary>The whole history of a study in memory: entries in order, chained, with the state they fold to.</summary>
public sealed class Daybook
{
    private readonly Lazy<Study> study;
    private readonly Lazy<UndoOrder> order;

    /// <summary>A daybook of these entries.</summary>
    /// <param name="entries">Numbered from 1 without a gap, each with the hash that follows from the one before.</param>
    public Daybook(ImmutableArray<Entry> entries)
    {
        for (var i = 0; i < entries.Length; i++)
        {
            if (entries[i].Number != i + 1)
                throw new ArgumentException($"Entry {Ordinal.Text(i + 1)} carries the number {Ordinal.Text(entries[i].Number)}.", nameof(entries));
        }
        Entries = entries;
        study = new(() => Fold.Of(Entries));
        order = new(() => UndoOrder.Of(Entries));
    }

    private Daybook(ImmutableArray<Entry> entries, Study known)
    {
        Entries = entries;
        study = new(known);
        order = new(() => UndoOrder.Of(Entries));
    }

    /// <summary>All entries, in order.</summary>
    public ImmutableArray<Entry> Entries { get; }

    /// <summary>Number of the last entry; 0 for none.</summary>
    public long Version => Entries.Length;

    /// <summary>Hash of the last entry: the study's fingerprint.</summary>
    public string Fingerprint => Entries.IsEmpty ? Chain.Start : Entries[^1].Hash;

    /// <summary>The present state.</summary>
    public Study Study => study.Value;

    /// <summary>What an undo or redo would take.</summary>
    public UndoOrder Undo => order.Value;

    /// <summary>Every file that is kept under originals/, once each: what was taken in, undone takes included, and what was handed in when the study was sealed.</summary>
    public IEnumerable<TakenFile> Files => Entries.Select(e => e.Change)
        .SelectMany(c => c switch { TakenIn taken => taken.Files, Sealed { Documents: { } documents } => documents, _ => Enumerable.Empty<TakenFile>() })
        .DistinctBy(f => f.Sha256, StringComparer.Ordinal);

    /// <summary>The same daybook up to an entry: what the study was then.</summary>
    /// <param name="version">Number of the last entry to keep, from 1.</param>
    public Daybook At(long version) => new(Entries[..checked((int)version)]);

    /// <summary>The daybook with one more entry; nothing is kept by this.</summary>
    /// <param name="when">When.</param>
    /// <param name="who">Who.</param>
    /// <param name="change">What was done; see <see cref="Permitted"/>.</param>
    public Daybook With(DateTimeOffset when, string who, Change change)
    {
        var number = Version + 1;
        var entry = EntryText.Read(EntryText.Write(number, ToMillisecond(when), who, change), Fingerprint);
        var entries = Entries.Add(entry);
        if (!study.IsValueCreated || change is Undone or Redone)
            return new Daybook(entries);
        var state = Fold.After(Study, entry.Change, number, entry.When, who);
        return new Daybook(entries, state with
        {
            Version = number,
            Fingerprint = entry.Hash,
        });
    }

    /// <summary>What the clock did: a step back by more than a minute is worth knowing, though order goes by number.</summary>
    public ImmutableArray<Finding> ClockFindings()
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        for (var i = 1; i < Entries.Length; i++)
        {
            var back = Entries[i - 1].When - Entries[i].When;
            if (back > TimeSpan.FromSeconds(60))
            {
                findings.Add(Finding.Of(Codes.ClockMovedBack, Weight.Note, $"The clock moved back by {Ordinal.Text((long)back.TotalSeconds)} s before entry "
                    + $"{Ordinal.Text(i + 1)}. Order goes by entry number, so no result changes."));
            }
        }
        return findings.ToImmutable();
    }

    private static DateTimeOffset ToMillisecond(DateTimeOffset when) => new(when.Ticks - (when.Ticks % TimeSpan.TicksPerMillisecond), when.Offset);
}
