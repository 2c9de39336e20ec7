using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Pinned;

/// <summary>A file beside the tests that holds what was said before.</summary>
internal static class PinnedFile
{
    /// <summary>Compares, or with HOLDFAST_PIN=1 writes the file anew.</summary>
    /// <param name="name">The file's name, without its ending.</param>
    /// <param name="said">What is said now.</param>
    public static void Compare(string name, IEnumerable<string> said)
    {
        var path = Repository.Path("tests", "Holdfast.Claims.Tests", "Pinned", name + ".txt");
        string[] now = [.. said];
        if (Environment.GetEnvironmentVariable("HOLDFAST_PIN") == "1")
            File.WriteAllText(path, string.Join('\n', now) + "\n");
        var before = File.ReadAllText(path).TrimEnd('\n').Split('\n');
        var at = Enumerable.Range(0, Math.Max(now.Length, before.Length)).FirstOrDefault(i => i >= now.Length || i >= before.Length || now[i] != before[i], -1);
        Assert.True(at < 0, at < 0 ? "" : $"{name}.txt, line {at + 1}, said before:\n{(at < before.Length ? before[at] : "(nothing)")}\nsaid now:\n{(at < now.Length ? now[at] : "(nothing)")}");
    }
}
