using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Holdfast.Studies.History;

/// <summary>An entry as canonical JSON bytes, one line without line breaks, and back.</summary>
/// <remarks>
/// Members in declared order, dictionaries in ordinal order, numbers in the shortest form that reads back exactly, nothing that is
/// not finite. The kind of change is looked up in a fixed table: a file can never name a type.
/// </remarks>
public static class EntryText
{
    private static readonly FrozenDictionary<string, Type> Kinds = new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["study-begun"] = typeof(StudyBegun),
        ["taken-in"] = typeof(TakenIn),
        ["layout-forgotten"] = typeof(LayoutForgotten),
        ["struck"] = typeof(Struck),
        ["restored"] = typeof(Restored),
        ["fact-corrected"] = typeof(FactCorrected),
        ["claim-stated"] = typeof(ClaimStated),
        ["claim-withdrawn"] = typeof(ClaimWithdrawn),
        ["margin-fixed"] = typeof(MarginFixed),
        ["apparatus-recorded"] = typeof(ApparatusRecorded),
        ["detail-set"] = typeof(DetailSet),
        ["work-planned"] = typeof(WorkPlanned),
        ["work-done"] = typeof(WorkDone),
        ["work-withdrawn"] = typeof(WorkWithdrawn),
        ["series-designed"] = typeof(SeriesDesigned),
        ["plan-frozen"] = typeof(PlanFrozen),
        ["marked"] = typeof(Marked),
        ["block-typed"] = typeof(BlockTyped),
        ["study-described"] = typeof(StudyDescribed),
        ["runs-described"] = typeof(RunsDescribed),
        ["calibration-chosen"] = typeof(CalibrationChosen),
        ["roles-given"] = typeof(RolesGiven),
        ["picture-marked"] = typeof(PictureMarked),
        ["text-written"] = typeof(TextWritten),
        ["sentence-reworded"] = typeof(SentenceReworded),
        ["remark-answered"] = typeof(RemarkAnswered),
        ["remark-closed"] = typeof(RemarkClosed),
        ["undone"] = typeof(Undone),
        ["redone"] = typeof(Redone),
        ["sealed"] = typeof(Sealed),
        ["amended"] = typeof(Amended),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<Type, string> Names = Kinds.ToFrozenDictionary(k => k.Value, k => k.Key);

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        MaxDepth = 64,
        Converters =
        {
            new JsonStringEnumConverter<SampleRole>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false),
            new SortedWords<string>(),
            new SortedWords<Fact>(),
            new FiniteNumber(),
        },
    };

    private const string NewerMark = "newer";

    private static readonly JsonSerializerOptions Lenient = new(Options) { UnmappedMemberHandling = JsonUnmappedMemberHandling.Skip };

    /// <summary>Every kind of change there is, by the word that stands for it in the file.</summary>
    public static ImmutableArray<string> KindsKnown => [.. Kinds.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The word that stands for a change in the file: "taken-in".</summary>
    /// <param name="change">Any change.</param>
    public static string Kind(Change change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return Names[change.GetType()];
    }

    /// <summary>The canonical bytes of an entry.</summary>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="when">When, to the millisecond.</param>
    /// <param name="who">Who.</param>
    /// <param name="change">What was done.</param>
    /// <exception cref="ArgumentException">A number in it is not finite.</exception>
    public static byte[] Write(long number, DateTimeOffset when, string who, Change change)
    {
        ArgumentNullException.ThrowIfNull(change);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Encoder = Options.Encoder }))
        {
            json.WriteStartObject();
            json.WriteNumber("n", number);
            json.WriteString("when", when);
            json.WriteString("who", who);
            json.WriteString("kind", Kind(change));
            json.WritePropertyName("change");
            JsonSerializer.Serialize(json, change, change.GetType(), Options);
            json.WriteEndObject();
        }
        return stream.ToArray();
    }

    /// <summary>The entry that these bytes are, with the hash it has after the one before it.</summary>
    /// <param name="bytes">Canonical bytes.</param>
    /// <param name="before">Hash of the entry before it.</param>
    /// <exception cref="JsonException">The entry is of a kind, or says more, than this version knows.</exception>
    /// <exception cref="InvalidDataException">The bytes are no entry: a word where a number belongs, something missing.</exception>
    public static Entry Read(ReadOnlySpan<byte> bytes, string before)
    {
        try
        {
            return ReadWhole(bytes, before);
        }
        catch (JsonException e) when (e.Data.Contains(NewerMark))
        {
            throw;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException or NotSupportedException)
        {
            throw new InvalidDataException("These bytes are not an entry: " + e.Message, e);
        }
    }

    private static Entry ReadWhole(ReadOnlySpan<byte> bytes, string before)
    {
        var hash = Chain.Link(before, bytes);
        var kept = bytes.ToArray();
        using var json = JsonDocument.Parse(kept, new JsonDocumentOptions { MaxDepth = 64 });
        var root = json.RootElement;
        if (root.ValueKind != JsonValueKind.Object
            || !root.TryGetProperty("n", out var n) || !n.TryGetInt64(out var number)
            || !root.TryGetProperty("when", out var w) || !w.TryGetDateTimeOffset(out var when)
            || !root.TryGetProperty("who", out var p) || p.GetString() is not { } who
            || !root.TryGetProperty("kind", out var k) || k.GetString() is not { } kind
            || !root.TryGetProperty("change", out var c))
        {
            throw new JsonException("a part of it is missing.");
        }

        if (!Kinds.TryGetValue(kind, out var type))
            throw Newer($"Holdfast knows no kind of entry called {kind}.");
        if (Read(c, type) is not { } change || Sense.Missing(change))
            throw new JsonException("a part of what was done is missing.");
        return new Entry(number, when, who, change, [.. kept], hash);
    }

    // What reads well but for members that nobody here knows was written by a newer version; what does not read at all was not written by any.
    private static Change? Read(JsonElement change, Type type)
    {
        try
        {
            return change.Deserialize(type, Options) as Change;
        }
        catch (JsonException) when (IsReadableWithMore(change, type))
        {
            throw Newer("It says more than this version knows.");
        }
    }

    private static bool IsReadableWithMore(JsonElement change, Type type)
    {
        try
        {
            return change.Deserialize(type, Lenient) is Change;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or ArgumentException or NotSupportedException)
        {
            return false;
        }
    }

    private static JsonException Newer(string message)
    {
        var newer = new JsonException(message);
        newer.Data[NewerMark] = true;
        return newer;
    }

    // The platform builds sorted dictionaries with the culture's comparer; the order of a file may not depend on it.
    private sealed class SortedWords<T> : JsonConverter<ImmutableSortedDictionary<string, T>>
    {
        public override ImmutableSortedDictionary<string, T> Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options)
            => JsonSerializer.Deserialize<Dictionary<string, T>>(ref reader, options)!.ToImmutableSortedDictionary(StringComparer.Ordinal);

        public override void Write(Utf8JsonWriter writer, ImmutableSortedDictionary<string, T> value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            foreach (var (key, item) in value.OrderBy(v => v.Key, StringComparer.Ordinal))
            {
                writer.WritePropertyName(key);
                JsonSerializer.Serialize(writer, item, options);
            }
            writer.WriteEndObject();
        }
    }

    // Reading 1e999 would give infinity without a word.
    private sealed class FiniteNumber : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options)
            => reader.GetDouble() is var value && double.IsFinite(value) ? value : throw new JsonException("A stored number is not finite.");

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
            => writer.WriteNumberValue(double.IsFinite(value) ? value : throw new ArgumentException("A number that is not finite cannot be kept.", nameof(value)));
    }
}
