using System.Globalization;

namespace Holdfast.Fuzz;

/// <summary>How far each kind has come, kept in a file: a run that is stopped goes on where it was.</summary>
internal sealed class Ledger
{
    private readonly string path, begun;

    /// <summary>Opens the ledger of a kind.</summary>
    /// <param name="folder">Where ledgers lie; made when it is not there.</param>
    /// <param name="kind">The kind.</param>
    public Ledger(string folder, string kind)
    {
        Directory.CreateDirectory(folder);
        (path, begun) = (Path.Combine(folder, kind + ".csv"), Path.Combine(folder, kind + ".begun"));
        foreach (var cells in (File.Exists(path) ? File.ReadLines(path) : []).Select(l => l.Split(';')))
            Count(cells[1..].Select(c => int.Parse(c, CultureInfo.InvariantCulture)).ToArray(), int.Parse(cells[0], CultureInfo.InvariantCulture));
        if (File.Exists(begun) && int.TryParse(File.ReadAllText(begun), CultureInfo.InvariantCulture, out var last) && last >= Next)
            StoppedIn = last;
    }

    /// <summary>Number of the next input.</summary>
    public int Next { get; private set; }

    /// <summary>Refused, asked about, taken in, faulty.</summary>
    public int[] Ends { get; } = new int[4];

    /// <summary>The input in which the run before was stopped; if it is the same one time after time, it brings the program down.</summary>
    public int? StoppedIn { get; }

    /// <summary>Notes that an input is about to be read.</summary>
    /// <param name="number">Its number.</param>
    public void Begin(int number) => File.WriteAllText(begun, number.ToString(CultureInfo.InvariantCulture));

    /// <summary>Keeps a block.</summary>
    /// <param name="next">Number of the first input behind it.</param>
    /// <param name="ends">How its inputs ended.</param>
    public void Keep(int next, int[] ends)
    {
        File.AppendAllText(path, string.Create(CultureInfo.InvariantCulture, $"{next};{string.Join(';', ends)}\n"));
        Count(ends, next);
    }

    private void Count(int[] ends, int next)
    {
        Next = next;
        for (var i = 0; i < ends.Length; i++)
            Ends[i] += ends[i];
    }
}
