using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>Numbers that tests agree with have a source that a reader can find.</summary>
public class ReferenceTests
{
    [Fact]
    public void ReferenceFiles_AllOfThem_AreNamedInTheSourceBesideThem()
    {
        var root = Repository.Path("reference");
        var files = Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).Where(f => Path.GetFileName(f) != "SOURCE.md").ToList();
        Assert.NotEmpty(files);
        HouseRule.Holds("A reference file has a source.", files.Where(f => !IsNamed(f, root)).Select(f => Path.GetRelativePath(root, f)));
    }

    // A folder of like files (certified sets, published series) is named as a whole.
    private static bool IsNamed(string file, string root)
    {
        for (var folder = Path.GetDirectoryName(file)!; folder.Length >= root.Length; folder = Path.GetDirectoryName(folder)!)
        {
            var source = Path.Combine(folder, "SOURCE.md");
            if (!File.Exists(source))
                continue;
            var words = File.ReadAllText(source);
            var below = Path.GetRelativePath(folder, file).Replace('\\', '/');
            return words.Contains(Path.GetFileName(file), StringComparison.Ordinal)
                || below.Contains('/', StringComparison.Ordinal) && words.Contains(below.Split('/')[0] + "/", StringComparison.Ordinal);
        }

        return false;
    }
}
