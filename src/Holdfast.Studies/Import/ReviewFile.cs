using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>A small file of remarks, as a page that was sent to review writes it: JSON with the study's fingerprint and entry, the reader's name, and the remarks with their pins.</summary>
public static class ReviewFile
{
    /// <summary>What the file says it is.</summary>
    public const string Schema = "holdfast-review/1";

    /// <summary>Most remarks of one file.</summary>
    public const int MostRemarks = 1_000;

    /// <summary>Longest remark, quotation, address or name, in signs.</summary>
    public const int Longest = 10_000;

    private const int Head = 200;
    private static readonly ImmutableArray<string> Kinds = ["number", "figure", "claim", "sentence"];

    /// <summary>True for bytes that begin as such a file does.</summary>
    /// <param name="bytes">The whole file.</param>
    public static bool Is(ReadOnlySpan<byte> bytes)
    {
        var begin = Encoding.UTF8.GetString(bytes[..Math.Min(bytes.Length, Head)]).TrimStart('\uFEFF', ' ', '\r', '\n', '\t');
        return begin.StartsWith('{') && begin.Contains($"\"{Schema}\"", StringComparison.Ordinal);
    }

    /// <summary>Reads one.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <exception cref="StudyException">Damaged (HF-406) or past a limit (HF-407).</exception>
    public static ReviewTaken Read(byte[] bytes, string fileName)
    {
        try
        {
            using var json = JsonDocument.Parse(bytes, new JsonDocumentOptions { MaxDepth = 8 });
            var root = json.RootElement;
            if (Words(root, "schema") != Schema)
                throw Damaged("it is of no form that is known here");
            var remarks = ImmutableArray.CreateBuilder<PinnedRemark>();
            foreach (var remark in root.GetProperty("remarks").EnumerateArray())
            {
                if (remarks.Count == MostRemarks)
                    throw new StudyException(Codes.LimitExceeded, $"{fileName} holds more than {Ordinal.Text(MostRemarks)} remarks, which is past the limit, so nothing is kept.");
                var kind = Words(remark, "kind");
                if (!Kinds.Contains(kind))
                    throw Damaged($"remark {Ordinal.Text(remarks.Count + 1)} is pinned to nothing that is known");
                remarks.Add(new(kind, Words(remark, "target"), Words(remark, "quote"), Words(remark, "words"), remark.GetProperty("made").GetDateTimeOffset()));
                if (string.IsNullOrWhiteSpace(remarks[^1].Words))
                    throw Damaged($"remark {Ordinal.Text(remarks.Count)} holds no words");
            }

            return new(Words(root, "by"), root.GetProperty("entry").GetInt64(), Words(root, "fingerprint"), remarks.ToImmutable());
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or FormatException or KeyNotFoundException)
        {
            throw Damaged("it is not whole", e);
        }

        string Words(JsonElement at, string name)
        {
            var words = at.GetProperty(name).GetString() ?? throw Damaged($"it lacks {name}");
            if (words.Length > Longest)
                throw new StudyException(Codes.LimitExceeded, $"{fileName} holds a text of more than {Ordinal.Text(Longest)} signs, which is past the limit, so nothing is kept.");
            return words.Normalize();
        }

        StudyException Damaged(string what, Exception? inner = null)
            => new(Codes.Unreadable, $"{fileName} is no file of remarks that can be read: {what}. Nothing is taken in from it. Ask for it once more.", inner);
    }
}
