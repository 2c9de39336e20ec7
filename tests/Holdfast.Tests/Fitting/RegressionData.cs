using System.Text.Json;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>The checked regression numbers of reference/regression.</summary>
internal static class RegressionData
{
    /// <summary>The eight small curves: key in the files, model.</summary>
    public static IReadOnlyDictionary<string, Model> Curves { get; } = new Dictionary<string, Model>(StringComparer.Ordinal)
    {
        ["langmuir"] = Model.Of<Langmuir>(),
        ["freundlich"] = Model.Of<Freundlich>(),
        ["pfo"] = Model.Of<PseudoFirstOrder>(),
        ["pso"] = Model.Of<PseudoSecondOrder>(),
        ["sips"] = Model.Of<Sips>(),
        ["redlich"] = Model.Of<RedlichPeterson>(),
        ["elovich"] = Model.Of<Elovich>(),
        ["toth"] = Model.Of<Toth>(),
    };

    /// <summary>A file of the folder.</summary>
    public static JsonElement Read(string file)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "regression", file)));
        return json.RootElement.Clone();
    }

    /// <summary>The points of one of the eight curves.</summary>
    public static Points Points(string curve)
    {
        var data = Read("synthetic-curves.json").GetProperty(curve);
        return new(data.GetProperty("x").Doubles(), data.GetProperty("y").Doubles());
    }

    /// <summary>Points from two columns of a CSV file.</summary>
    public static Points Table(string file, string x, string y, Func<ReferenceRow, bool>? where = null, Func<double, double>? ofX = null)
    {
        var rows = ReferenceTable.Read("regression", file).Where(where ?? (_ => true)).ToArray();
        return new([.. rows.Select(r => ofX is null ? r.Number(x) : ofX(r.Number(x)))], [.. rows.Select(r => r.Number(y))]);
    }

    /// <summary>An array of numbers.</summary>
    public static double[] Doubles(this JsonElement array) => [.. array.EnumerateArray().Select(e => e.GetDouble())];

    /// <summary>A property further in.</summary>
    public static JsonElement At(this JsonElement element, params string[] path) => path.Aggregate(element, (e, name) => e.GetProperty(name));
}
