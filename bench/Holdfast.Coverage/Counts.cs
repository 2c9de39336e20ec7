using System.Globalization;

namespace Holdfast.Coverage;

/// <summary>What has been counted so far, kept in a file after every block: a run that is stopped goes on where it was.</summary>
internal sealed class Counts
{
    private readonly string path;
    private readonly Dictionary<(string Condition, string Quantity), Tally> all = [];

    /// <summary>Reads what was counted before.</summary>
    /// <param name="path">The file; made when it is not there.</param>
    public Counts(string path)
    {
        this.path = path;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        foreach (var cells in (File.Exists(path) ? File.ReadLines(path) : []).Select(l => l.Split(';')).Where(c => c.Length == 7))
        {
            int[] n = [.. cells[2..].Select(c => int.Parse(c, CultureInfo.InvariantCulture))];
            Add(cells[0], new(cells[1], n[0], n[1], n[2], n[3], n[4]));
        }
    }

    /// <summary>Studies counted of a condition.</summary>
    public int Studies(Simulated condition) => Of(condition).Select(t => t.Studies).FirstOrDefault();

    /// <summary>What was counted of a condition, its parameters first.</summary>
    public IEnumerable<Tally> Of(Simulated condition)
        => condition.Quantities.Select(q => all.GetValueOrDefault((condition.Name, q))).OfType<Tally>();

    /// <summary>Conditions that were counted, the least covered first.</summary>
    public IEnumerable<Simulated> WorstFirst()
        => Simulated.All.Where(c => Studies(c) > 0).OrderBy(c => Of(c).Min(t => t.Share)).ThenBy(c => c.Name, StringComparer.Ordinal);

    /// <summary>Keeps a block.</summary>
    public void Keep(Simulated condition, IEnumerable<Tally> block)
    {
        foreach (var tally in block)
        {
            Add(condition.Name, tally);
            File.AppendAllText(path, string.Create(CultureInfo.InvariantCulture,
                $"{condition.Name};{tally.Quantity};{tally.Studies};{tally.Printed};{tally.Covered};{tally.Below};{tally.Above}\n"));
        }
    }

    private void Add(string condition, Tally tally)
        => all[(condition, tally.Quantity)] = all.TryGetValue((condition, tally.Quantity), out var before) ? before.Plus(tally) : tally;
}
