using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;
using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>References run one way: Holdfast ← Studies ← Claims ← Reports ← Techniques ← the doors. The program holds both doors, so the command line may open the other.</summary>
public class ArrowTests
{
    private static readonly string[] Order = ["Holdfast", "Holdfast.Studies", "Holdfast.Claims", "Holdfast.Reports", "Holdfast.Techniques"];
    private static readonly string[] Doors = ["Holdfast.Cli", "Holdfast.Web"];
    private const string WrittenByTheCompiler = "System.Environment.get_CurrentManagedThreadId";
    private static readonly string[] Impure =
        ["System.IO.", "System.Net.", "System.DateTime", "System.TimeProvider", "System.TimeZone", "System.Environment", "System.Console", "System.Random", "System.Guid", "System.Globalization.CultureInfo.get_Current"];

    [Fact]
    public void ProjectFiles_TheirReferences_PointTowardsTheScience()
    {
        var projects = Directory.EnumerateFiles(Repository.Path("src"), "*.csproj", SearchOption.AllDirectories).ToList();
        Assert.True(projects.Count >= Order.Length);
        foreach (var project in projects)
        {
            var name = Path.GetFileNameWithoutExtension(project);
            foreach (var reference in XDocument.Load(project).Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value)))
                Assert.True(MayRefer(name, reference), $"{name} refers to {reference}.");
        }
    }

    // The compiler drops references that nothing uses, so that what is left is what the code really touches.
    [Fact]
    public void Assemblies_TheirReferences_PointTowardsTheScience()
        => Assert.All(Shipped.Assemblies, a => Assert.All(
            a.GetReferencedAssemblies().Select(r => r.Name!).Where(n => n.StartsWith("Holdfast", StringComparison.Ordinal)),
            r => Assert.True(MayRefer(a.GetName().Name!, r), $"{a.GetName().Name} refers to {r}.")));

    [Fact]
    public void Science_ItsReferences_AreTheFrameworkAndTheNumericsPackageOnly()
        => Assert.All(
            Shipped.Science.GetReferencedAssemblies().Select(r => r.Name!),
            r => Assert.True(r.StartsWith("System.", StringComparison.Ordinal) || r is "MathNet.Numerics", $"The science refers to {r}."));

    // Files, clock, network, screen and unseeded chance belong to the layers above. Read from the compiled assembly, not from its source.
    [Fact]
    public void Science_WhatItTouches_IsNoFileClockNetworkOrUnseededChance()
    {
        using var file = new PEReader(File.OpenRead(Shipped.Science.Location));
        var metadata = file.GetMetadataReader();
        var touched = metadata.MemberReferences.Select(metadata.GetMemberReference)
            .Where(m => m.Parent.Kind == HandleKind.TypeReference)
            .Select(m => (Type: metadata.GetTypeReference((TypeReferenceHandle)m.Parent), Member: metadata.GetString(m.Name)))
            .Select(m => $"{metadata.GetString(m.Type.Namespace)}.{metadata.GetString(m.Type.Name)}.{m.Member}").ToList();
        Assert.Contains("System.Math.Exp", touched);
        HouseRule.Holds("The science is pure.", touched
            .Where(t => t != WrittenByTheCompiler && Impure.Any(i => t.StartsWith(i, StringComparison.Ordinal))));
    }

    private static bool MayRefer(string from, string to)
    {
        var reached = Array.IndexOf(Order, to);
        if (from == "Holdfast.Cli" && to == "Holdfast.Web")
            return true;
        return reached >= 0 && (Doors.Contains(from) || Array.IndexOf(Order, from) > reached);
    }
}
