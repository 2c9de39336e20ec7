using System.Text.Json;

namespace Holdfast.Cli.Tests;

/// <summary>
/// The part of JSON Schema (draft 2020-12) that our schemas use. A keyword it does not know is a fault of the schema, so that nothing in it goes unchecked.
/// </summary>
internal static class JsonSchema
{
    /// <summary>Where a value departs from a schema; empty where it does not.</summary>
    /// <param name="schema">The schema.</param>
    /// <param name="value">The value.</param>
    public static IReadOnlyList<string> Faults(JsonElement schema, JsonElement value) => [.. Of(schema, schema, value, "$")];

    private static IEnumerable<string> Of(JsonElement root, JsonElement schema, JsonElement value, string at)
    {
        foreach (var rule in schema.EnumerateObject())
        {
            switch (rule.Name)
            {
                case "$schema" or "title" or "description" or "$defs" or "additionalProperties":
                    break;
                case "$ref":
                    foreach (var fault in Of(root, root.GetProperty("$defs").GetProperty(rule.Value.GetString()!.Split('/')[^1]), value, at))
                        yield return fault;
                    break;
                case "type":
                    var types = rule.Value.ValueKind == JsonValueKind.Array ? rule.Value.EnumerateArray().Select(t => t.GetString()!) : [rule.Value.GetString()!];
                    if (!types.Any(t => Is(value, t)))
                        yield return $"{at} is {value.ValueKind}, not {rule.Value}";
                    break;
                case "const":
                    if (!JsonElement.DeepEquals(rule.Value, value))
                        yield return $"{at} is not {rule.Value}";
                    break;
                case "enum":
                    if (!rule.Value.EnumerateArray().Any(e => JsonElement.DeepEquals(e, value)))
                        yield return $"{at} is {value}, none of {rule.Value}";
                    break;
                case "anyOf":
                    var tried = rule.Value.EnumerateArray().Select(s => Of(root, s, value, at).ToList()).ToList();
                    if (tried.TrueForAll(t => t.Count > 0))
                        yield return $"{at} is none of its forms: {string.Join("; ", tried.SelectMany(t => t))}";
                    break;
                case "items":
                    if (value.ValueKind == JsonValueKind.Array)
                    {
                        foreach (var fault in value.EnumerateArray().SelectMany((item, i) => Of(root, rule.Value, item, $"{at}[{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}]")))
                            yield return fault;
                    }

                    break;
                case "required":
                    foreach (var name in rule.Value.EnumerateArray().Select(n => n.GetString()!).Where(n => value.ValueKind == JsonValueKind.Object && !value.TryGetProperty(n, out _)))
                        yield return $"{at} has no {name}";
                    break;
                case "properties":
                    if (value.ValueKind != JsonValueKind.Object)
                        break;
                    foreach (var member in value.EnumerateObject())
                    {
                        if (!rule.Value.TryGetProperty(member.Name, out var one))
                        {
                            if (schema.TryGetProperty("additionalProperties", out var more) && more.ValueKind == JsonValueKind.False)
                                yield return $"{at} has {member.Name}, which is not foreseen";
                            continue;
                        }

                        foreach (var fault in Of(root, one, member.Value, $"{at}.{member.Name}"))
                            yield return fault;
                    }

                    break;
                default:
                    throw new ArgumentException($"The schema uses {rule.Name}, which is not checked here.", nameof(schema));
            }
        }
    }

    private static bool Is(JsonElement value, string type) => type switch
    {
        "object" => value.ValueKind == JsonValueKind.Object,
        "array" => value.ValueKind == JsonValueKind.Array,
        "string" => value.ValueKind == JsonValueKind.String,
        "boolean" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
        "null" => value.ValueKind == JsonValueKind.Null,
        "integer" => value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out _),
        _ => value.ValueKind == JsonValueKind.Number,
    };
}
