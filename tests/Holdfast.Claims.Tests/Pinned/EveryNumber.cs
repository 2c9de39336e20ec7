using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Studies;

namespace Holdfast.Claims.Tests.Pinned;

/// <summary>Every number, word and ruling of a study worked out, with its address: found by walking through whatever the analyses give, so that a new one is in it by itself.</summary>
internal static class EveryNumber
{
    private const int Deepest = 14;

    // Nine digits: a change of a formula shows, the last bit of another processor's logarithm does not.
    private const string Nine = "E8";
    private const double Rounding = 1e-14;

    // What went in, functions, and the data of a curve (which stand in the vessels already): no results.
    private static readonly Type[] NoResult = [typeof(Delegate), typeof(Type), typeof(Model), typeof(Origin), typeof(Points), typeof(Evidence)];

    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Parts = [];

    private static readonly MethodInfo[] Analyses =
    [
        .. typeof(Evidence).Assembly.GetTypes().Where(t => t.Namespace == typeof(Evidence).Namespace && t != typeof(Evidence)).OrderBy(t => t.Name, StringComparer.Ordinal)
            .Select(t => t.GetMethod("Of", [typeof(Evidence)])).OfType<MethodInfo>().Where(m => m.IsStatic),
    ];

    /// <summary>Quantities, findings, analyses and verdicts of a study.</summary>
    public static IEnumerable<(string Address, string Value)> Of(Study study)
    {
        var dossier = Dossier.Of(study);
        return Of(dossier.Evidence, "evidence")
            .Concat(Analyses.SelectMany(a => Of(a.Invoke(null, [dossier.Evidence]), a.DeclaringType!.Name)))
            .Concat(dossier.Verdicts.SelectMany((v, i) => Of(v, $"verdict.{i}.{v.Claim.Id}")))
            .Concat(Of(MissingResult.Of(dossier.Evidence), "missing"));
    }

    /// <summary>Every leaf below a thing.</summary>
    public static IEnumerable<(string Address, string Value)> Of(object? thing, string address)
    {
        var found = new List<(string, string)>();
        Walk(thing, address, [], found);
        return found;
    }

    /// <summary>Few lines for many: one for each part, a count and a checksum of its values.</summary>
    public static IEnumerable<string> Summed(IEnumerable<(string Address, string Value)> all, int steps)
        => all.GroupBy(a => string.Join('.', a.Address.Split('.').Take(steps)), StringComparer.Ordinal)
            .Select(g => $"{g.Key}: {g.Count().ToString(CultureInfo.InvariantCulture)} values, {Checksum(g)}");

    /// <summary>A checksum of values and addresses.</summary>
    public static string Checksum(IEnumerable<(string Address, string Value)> all)
        => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', all.Select(a => $"{a.Address}={a.Value}")))))[..12];

    private static void Walk(object? thing, string address, HashSet<object> above, List<(string, string)> found)
    {
        if (Leaf(thing) is { } leaf)
        {
            found.Add((address, leaf));
            return;
        }

        if (above.Count > Deepest || NoResult.Any(t => t.IsInstanceOfType(thing)) || !above.Add(thing!))
            return;
        if (thing is ITuple tuple)
        {
            for (var i = 0; i < tuple.Length; i++)
                Walk(tuple[i], $"{address}.{i}", above, found);
        }
        else if (thing is IEnumerable many)
        {
            var i = 0;
            foreach (var one in many)
                Walk(one, $"{address}.{i++}", above, found);
            found.Add(($"{address}.count", i.ToString(CultureInfo.InvariantCulture)));
        }
        else
        {
            foreach (var part in Parts.GetOrAdd(thing!.GetType(), PartsOf))
                Walk(Value(part, thing), $"{address}.{part.Name}", above, found);
        }

        above.Remove(thing!);
    }

    private static PropertyInfo[] PartsOf(Type type)
        => [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && !p.PropertyType.IsByRefLike).OrderBy(p => p.Name, StringComparer.Ordinal)];

    // A property may refuse to answer; that it does is a result too.
    private static object? Value(PropertyInfo part, object thing)
    {
        try
        {
            var value = part.GetValue(thing);
            return value is not null && part.PropertyType.IsGenericType && part.PropertyType.GetProperty("IsDefault")?.GetValue(value) is true ? null : value;
        }
        catch (TargetInvocationException refused)
        {
            return refused.InnerException!.GetType().Name;
        }
    }

    private static string? Leaf(object? thing) => thing switch
    {
        null => "none",
        string text => text,
        double number => Digits(number),
        Measured measured => string.Create(CultureInfo.InvariantCulture, $"{Digits(measured.Value)} u {Digits(measured.U)} on {Digits(measured.DegreesOfFreedom)}"),
        Sample sample => sample.Code,
        Reading reading => reading.Id,
        Run run => run.Id,
        Study study => study.Title,
        IFormattable plain when thing.GetType().IsPrimitive || thing.GetType().IsEnum => plain.ToString(null, CultureInfo.InvariantCulture),
        bool yes => yes ? "yes" : "no",
        DateTimeOffset => "",
        _ => null,
    };

    private static string Digits(double number) => Math.Abs(number) < Rounding ? "0" : number.ToString(Nine, CultureInfo.InvariantCulture);
}
