using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Claims that the data invite and that read alike: three or more of a kind become one entry that names them all.</summary>
/// <param name="First">The first of them; it stands for all.</param>
/// <param name="Others">The others, in order.</param>
internal sealed record Alike(Verdict First, ImmutableArray<Verdict> Others)
{
    private const int OneByOne = 2;

    /// <summary>Every verdict in one entry, in the order of the verdicts.</summary>
    /// <param name="verdicts">The verdicts.</param>
    /// <param name="likeness">What must be the same for claims of one rule and ruling to share an entry.</param>
    public static IReadOnlyList<Alike> Of(IEnumerable<Verdict> verdicts, Func<Verdict, string> likeness)
    {
        var entries = new List<Alike>();
        foreach (var kind in verdicts.GroupBy(v => v.Claim.Stated ? "stated " + v.Claim.Id : $"{v.Claim.Rule} {v.Ruling} {likeness(v)}", StringComparer.Ordinal))
        {
            var all = kind.ToArray();
            if (all.Length <= OneByOne)
                entries.AddRange(all.Select(v => new Alike(v, [])));
            else
                entries.Add(new(all[0], [.. all.Skip(1)]));
        }

        return entries;
    }

    /// <summary>What tells a claim from the first: its series or run, else its own sentence.</summary>
    /// <param name="verdict">One of the others.</param>
    public static string Name(Verdict verdict)
        => verdict.Claim.Parameters.Count > 0 ? InWords.Listed(verdict.Claim.Parameters.Values) : verdict.Sentence;
}
