using System.Globalization;

namespace Holdfast.Verdicts;

/// <summary>Counts of every condition, kept in a file after every twenty studies.</summary>
internal sealed class Ledger
{
    private const int Batch = 20;
    private readonly string path;
    private readonly Dictionary<string, Count> counts = new(StringComparer.Ordinal);

    /// <summary>Opens the ledger, with what it holds.</summary>
    /// <param name="path">Its file.</param>
    public Ledger(string path)
    {
        this.path = path;
        foreach (var line in File.Exists(path) ? File.ReadAllLines(path) : [])
        {
            var cells = line.Split('\t');
            counts[cells[0]] = new(int.Parse(cells[1], CultureInfo.InvariantCulture), int.Parse(cells[2], CultureInfo.InvariantCulture), int.Parse(cells[3], CultureInfo.InvariantCulture));
        }
    }

    /// <summary>What was counted for a condition.</summary>
    /// <param name="condition">The condition.</param>
    public Count this[Condition condition] => counts.GetValueOrDefault(Key(condition));

    /// <summary>Judges studies until so many are counted; the seed of each is its number.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="studies">How many.</param>
    public void Fill(Condition condition, int studies)
    {
        for (var count = this[condition]; count.Studies < studies; Keep(condition, count))
        {
            for (var i = 0; i < Batch && count.Studies < studies; i++)
                count = count.With(condition.Judge((ulong)count.Studies));
        }
    }

    private static string Key(Condition condition) => $"{condition.Rule} | {condition.Name}";

    private void Keep(Condition condition, Count count)
    {
        counts[Key(condition)] = count;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllLines(path + ".new", counts.Select(c => FormattableString.Invariant($"{c.Key}\t{c.Value.Holds}\t{c.Value.Open}\t{c.Value.Contradicted}")));
        File.Move(path + ".new", path, overwrite: true);
    }
}
