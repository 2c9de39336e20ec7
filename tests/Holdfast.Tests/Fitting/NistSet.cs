using System.Globalization;
using System.Text.Json;
using Holdfast.Fitting;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>A NIST StRD set: data and certificate, from reference/nist-strd.</summary>
internal sealed class NistSet
{
    private NistSet(string name, JsonElement certificate, double[][] columns)
    {
        Name = name;
        Certificate = certificate;
        Y = columns[0];
        X = columns[1..];
        if (certificate.TryGetProperty("responseTransform", out var transform) && transform.GetString() == "ln")
            Y = [.. Y.Select(v => Math.Log(v))];
    }

    public string Name { get; }

    public JsonElement Certificate { get; }

    public double[] Y { get; }

    public double[][] X { get; }

    public Points Points => new(X[0], Y);

    public double[] Certified => Numbers("certified");

    public double[] StandardDeviations => Numbers("standardDeviation");

    public double Number(string property) => Certificate.GetProperty(property).GetDouble();

    public double[] Numbers(string property) => [.. Certificate.GetProperty(property).EnumerateArray().Select(e => e.GetDouble())];

    public static IEnumerable<string> Names(string folder)
        => Directory.GetFiles(Repository.Path("reference", "nist-strd", folder), "*.json")
            .Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal);

    public static NistSet Read(string folder, string name)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "nist-strd", folder, name + ".json")));
        var rows = File.ReadAllLines(Repository.Path("reference", "nist-strd", folder, name + ".csv")).Skip(1)
            .Where(l => l.Length > 0).Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var columns = Enumerable.Range(0, rows[0].Length).Select(c => rows.Select(r => r[c]).ToArray()).ToArray();
        return new(name, json.RootElement.Clone(), columns);
    }
}
