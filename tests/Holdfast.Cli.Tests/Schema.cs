using System.Text.Json;

namespace Holdfast.Cli.Tests;

/// <summary>
/// Holds JSON against docs/output.schema.json, by the keywords that it uses and no others (JSON Schema 2020-12, validation vocabulary). A keyword that is not
/// known here fails, so that the schema cannot say what nobody checks.
/// </summary>
internal sealed class Schema
{
    private static readonly HashSet<string> Silent = new(StringComparer.Ordinal) { "$schema", "$id", "$defs", "title", "description" };
    private readonly JsonElement root = JsonDocument.Parse(File.ReadAllText(Testing.Repository.Path("docs", "output.schema.json"))).RootElement;

    /// <summary>What does not agree; none when all does.</summary>
    public List<string> Odd(string json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. Odd(root, document.RootElement, "$")];
    }

    private IEnumerable<string> Odd(JsonElement schema, JsonElement value, string at)
    {
        foreach (var keyword in schema.EnumerateObject())
        {
            var odd = keyword.Name switch
            {
                "$ref" => Odd(Named(keyword.Value.GetString()!), value, at),
                "type" => IsOf(keyword.Value, value) ? [] : [$"{at} is {value.ValueKind}, not {keyword.Value}"],
                "const" => JsonElement.DeepEquals(keyword.Value, value) ? [] : [$"{at} is not {keyword.Value}"],
                "enum" => keyword.Value.EnumerateArray().Any(v => JsonElement.DeepEquals(v, value)) ? [] : [$"{at} is {value}, none of {keyword.Value}"],
                "required" => value.ValueKind == JsonValueKind.Object ? keyword.Value.EnumerateArray().Where(n => !value.TryGetProperty(n.GetString()!, out _)).Select(n => $"{at} has no {n}") : [],
                "properties" => value.ValueKind == JsonValueKind.Object
                    ? keyword.Value.EnumerateObject().Where(p => value.TryGetProperty(p.Name, out _)).SelectMany(p => Odd(p.Value, value.GetProperty(p.Name), at + "." + p.Name)) : [],
                "additionalProperties" => value.ValueKind == JsonValueKind.Object
                    ? value.EnumerateObject().Where(p => !(schema.TryGetProperty("properties", out var known) && known.TryGetProperty(p.Name, out _))).SelectMany(p => Odd(keyword.Value, p.Value, at + "." + p.Name)) : [],
                "items" => value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().SelectMany((v, i) => Odd(keyword.Value, v, FormattableString.Invariant($"{at}[{i}]"))) : [],
                "anyOf" => keyword.Value.EnumerateArray().Select(s => Odd(s, value, at).ToArray()).OrderBy(o => o.Length).First(),
                "allOf" => keyword.Value.EnumerateArray().SelectMany(s => Odd(s, value, at)),
                "if" => Odd(keyword.Value, value, at).Any() && schema.TryGetProperty("else", out var otherwise) ? Odd(otherwise, value, at) : [],
                "else" => [],
                _ when Silent.Contains(keyword.Name) => [],
                _ => [$"the schema says {keyword.Name}, which nobody checks"],
            };
            foreach (var line in odd)
                yield return line;
        }
    }

    private JsonElement Named(string reference)
        => reference.TrimStart('#', '/').Split('/').Aggregate(root, (here, step) => here.GetProperty(step));

    private static bool IsOf(JsonElement type, JsonElement value) => type.ValueKind == JsonValueKind.Array
        ? type.EnumerateArray().Any(t => IsOf(t, value))
        : type.GetString() switch
        {
            "object" => value.ValueKind == JsonValueKind.Object,
            "array" => value.ValueKind == JsonValueKind.Array,
            "string" => value.ValueKind == JsonValueKind.String,
            "boolean" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
            "number" => value.ValueKind == JsonValueKind.Number,
            "integer" => value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out _),
            "null" => value.ValueKind == JsonValueKind.Null,
            _ => false,
        };
}
