using System.Globalization;

namespace Holdfast.Simulated;

/// <summary>Counts of every row of simulated studies, kept in a file after every twenty: a run that is stopped goes on where it was.</summary>
/// <param name="path">Its file.</param>
/// <param name="ends">In how many ways a study can end.</param>
internal sealed class Ledger(string path, int ends)
{
    private const int Batch = 20;

    private readonly Dictionary<string, int[]> counts = (File.Exists(path) ? File.ReadAllLines(path) : []).Select(l => l.Split('\t'))
        .ToDictionary(c => c[0], c => c[1..].Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray(), StringComparer.Ordinal);

    /// <summary>How many studies of a row ended in each way.</summary>
    /// <param name="row">Name of the row.</param>
    public int[] this[string row] => counts.GetValueOrDefault(row) ?? new int[ends];

    /// <summary>Judges studies until so many are counted; the seed of each is its number.</summary>
    /// <param name="row">Name of the row.</param>
    /// <param name="studies">How many.</param>
    /// <param name="judge">How the study of a seed ends, from 0.</param>
    public void Fill(string row, int studies, Func<ulong, int> judge)
    {
        for (var count = this[row]; count.Sum() < studies; Keep(row, count))
        {
            for (var i = 0; i < Batch && count.Sum() < studies; i++)
                count[judge((ulong)count.Sum())]++;
        }
    }

    private void Keep(string row, int[] count)
    {
        counts[row] = count;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllLines(path + ".new", counts.Select(c => $"{c.Key}\t{string.Join('\t', c.Value)}"));
        File.Move(path + ".new", path, overwrite: true);
    }
}
