using System.Text;

namespace Holdfast.DemoData;

/// <summary>A file of the demo as it lies in the folder.</summary>
/// <param name="Name">File name.</param>
/// <param name="Bytes">Content.</param>
public sealed record DemoFile(string Name, byte[] Bytes)
{
    /// <summary>A text file of lines, each ended by a line feed, in UTF-8.</summary>
    /// <param name="name">File name.</param>
    /// <param name="lines">Lines.</param>
    public static DemoFile Text(string name, IEnumerable<string> lines)
        => new(name, Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n"))));
}
