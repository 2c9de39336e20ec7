namespace Holdfast.Studies.Package;

/// <summary>Tables of what people wrote: remarks of readers, and the author's own words.</summary>
internal static partial class PlainTables
{
    // Most studies have none; their package stays as it was.
    private static IEnumerable<PlainTable> Remarks(Study study)
    {
        if (study.Remarks.IsEmpty)
            yield break;
        var table = new PlainTable("remarks", "One row a remark of a reader, with what was answered.",
        [
            new("id", "string", "Address of the remark."),
            new("by", "string", "Who made it."),
            new("on_entry", "integer", "Entry of the history that the reader had before her."),
            new("kind", "string", "What it is pinned to: number, figure, claim or sentence."),
            new("target", "string", "Address of that place."),
            new("quote", "string", "The words or the number as she saw them."),
            new("words", "string", "The remark."),
            new("made", "datetime", "When she wrote it, by her computer's clock."),
            new("answer", "string", "What was answered; empty while nothing was."),
            new("answered_by", "string", "Who answered."),
            new("answered", "datetime", "When."),
            new("closed", "datetime", "When it was closed; empty while it stands."),
        ], key: ["id"]);
        foreach (var r in study.Remarks)
            table.Add(r.Id, r.By, r.On, r.Pin.Kind, r.Pin.Target, r.Pin.Quote, r.Pin.Words, r.Pin.Made, r.Answer?.Words, r.Answer?.Who, r.Answer?.When, r.Closed);
        yield return table;
    }

    // The same.
    private static IEnumerable<PlainTable> Texts(Study study)
    {
        if (study.Texts.Count == 0 && study.Rewordings.Count == 0)
            yield break;
        var table = new PlainTable("texts", "One row a text of the author's own: words for a section of the chapter, or a sentence of the program in her words.",
        [
            new("kind", "string", "own text, or rewording."),
            new("place", "string", "Section of the chapter; for a rewording the sentence of the program with # for its numbers."),
            new("text", "string", "Her words: Markdown with addresses of numbers in braces; in a rewording {#2} is the second number of the sentence."),
            new("entry", "integer", "Entry of the history that wrote it; empty for a rewording."),
        ], key: ["kind", "place"]);
        foreach (var own in study.Texts.Values)
            table.Add("own text", own.Place, own.Text, own.Entry);
        foreach (var (was, text) in study.Rewordings)
            table.Add("rewording", was, text, null);
        yield return table;
    }
}
