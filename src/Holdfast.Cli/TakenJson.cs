using System.Text.Json;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Cli;

/// <summary>The whole understanding of files as JSON: docs/take.schema.json says what stands where.</summary>
internal static class TakenJson
{
    /// <summary>Writes it.</summary>
    /// <param name="taken">What came of taking the files in.</param>
    /// <param name="rehearsing">True when nothing was meant to be kept.</param>
    /// <param name="follows">First quantities, or null.</param>
    public static string Of(Taken taken, bool rehearsing, WhatFollows? follows) => Printed.Object(json =>
    {
        json.WriteBoolean("rehearsal", rehearsing);
        Number(json, "entry", taken.Entry?.Number);
        Each(json, "files", taken.Understandings, File);
        Each(json, "quantities", follows?.Rows ?? [], Quantity);
        Texts(json, "fits", follows?.Fits ?? []);
    });

    private static void File(Utf8JsonWriter json, Understanding file)
    {
        json.WriteString("name", file.FileName);
        json.WriteString("sha256", file.Sha256);
        json.WriteNumber("bytes", file.Bytes);
        Text(json, "reader", file.Reader);
        json.WriteString("sentence", file.Sentence);
        json.WriteBoolean("needs_decision", file.NeedsDecision);
        Text(json, "remembered_layout", file.RememberedLayout);
        Each(json, "tables", file.Tables, Table);
        Each(json, "questions", file.Questions, (j, q) => Question(j, file, q));
        Each(json, "findings", file.Findings, Finding);
        Texts(json, "not_used", NotTaken.Of(file));
        json.WritePropertyName("brings");
        if (file.Proposal is { } proposal)
            Brings(json, proposal);
        else
            json.WriteNullValue();
    }

    private static void Table(Utf8JsonWriter json, TableUnderstanding table)
    {
        Text(json, "sheet", table.Sheet);
        json.WriteBoolean("hidden", table.IsHidden);
        json.WriteString("kind", Name(table.Kind));
        Text(json, "left_out", table.LeftOut);
        Text(json, "turned", table.Turned);
        Text(json, "encoding", table.Encoding);
        Text(json, "separator", table.Separator);
        Text(json, "decimal", table.Decimal is { } mark ? Name(mark) : null);
        Number(json, "heading_line", table.HeadingLine);
        Texts(json, "settings", table.Settings);
        json.WriteStartObject("rows");
        json.WriteNumber("ready", table.Rows.Ready);
        json.WriteNumber("undecided", table.Rows.Undecided);
        json.WriteNumber("blank", table.Rows.Blank);
        json.WriteNumber("left_out", table.Rows.LeftOut);
        json.WriteEndObject();
        Each(json, "columns", table.Columns, Column);
    }

    private static void Column(Utf8JsonWriter json, ColumnUnderstanding column)
    {
        json.WriteString("heading", column.Heading);
        json.WriteString("use", Name(column.Use));
        Text(json, "property", column.Property);
        json.WriteString("meaning", column.Meaning);
        Text(json, "unit", column.Unit);
        Text(json, "kept_in", column.Stored);
        Text(json, "evidence", column.Evidence);
        Text(json, "remark", column.Remark);
        Texts(json, "examples", column.Examples);
        json.WriteString("question", column.Question);
        json.WriteString("unit_question", column.UnitQuestion);
        Each(json, "odd", column.Odd, (j, odd) =>
        {
            j.WriteNumber("row", odd.Row);
            j.WriteString("text", odd.Text);
            j.WriteString("why", odd.Why);
        });
    }

    private static void Question(Utf8JsonWriter json, Understanding file, Question question)
    {
        json.WriteString("id", question.Id);
        json.WriteString("code", question.Code);
        json.WriteString("text", question.Text);
        json.WriteBoolean("open", question.IsOpen);
        Text(json, "assumed", question.Assumed);
        Text(json, "answer", question.Answer);
        json.WriteBoolean("remembered", question.IsRemembered);
        Texts(json, "concerns", question.Concerns);
        Each(json, "choices", question.Choices.Select((c, i) => (Choice: c, Place: i)), (j, choice) =>
        {
            j.WriteString("answer", choice.Choice);
            j.WriteString("words", ChoiceWords.Of(question.Id, choice.Choice));
            Text(j, "consequence", choice.Place < question.Consequences.Length ? question.Consequences[choice.Place] : null);
            Texts(j, "arguments", ["--answer", $"{file.FileName}|{question.Id}={choice.Choice}"]);
        });
    }

    private static void Finding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("code", finding.Code);
        json.WriteString("weight", Name(finding.Weight));
        json.WriteString("sentence", finding.Sentence);
        Texts(json, "concerns", finding.Concerns);
    }

    private static void Brings(Utf8JsonWriter json, TakenIn proposal)
    {
        json.WriteStartObject();
        json.WriteNumber("samples", proposal.Samples.Length);
        json.WriteNumber("runs", proposal.Runs.Length);
        json.WriteNumber("readings", proposal.Readings.Length);
        json.WriteNumber("measurements", proposal.Measurements?.Length ?? 0);
        json.WriteNumber("claims", proposal.Claims.Length);
        json.WriteNumber("margins", proposal.Margins.Length);
        json.WriteNumber("apparatus", proposal.Apparatus.Length);
        json.WriteEndObject();
    }

    private static void Quantity(Utf8JsonWriter json, WhatFollowsRow row)
    {
        json.WriteString("sample", row.Vessel.Code);
        json.WriteString("role", InWords.Of(row.Vessel.Sample.Role));
        Measured(json, "c0", row.Waits ? null : row.Vessel.Start, "mg/L");
        Measured(json, "ce", row.Waits || row.Vessel.End is { IsBelowDetection: true } ? null : row.Vessel.End?.Value, "mg/L");
        Measured(json, "removal", row.Waits ? null : row.Vessel.Removal, "%");
        Measured(json, "q", row.Waits ? null : row.Vessel.Uptake, "mg/g");
        Text(json, "missing", row.Why);
    }

    private static void Measured(Utf8JsonWriter json, string name, Amounts.Measured? value, string unit)
    {
        json.WritePropertyName(name);
        if (value is { } known)
            JsonNumber.Of(known, unit).Write(json);
        else
            json.WriteNullValue();
    }

    private static void Each<T>(Utf8JsonWriter json, string name, IEnumerable<T> things, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var thing in things)
        {
            json.WriteStartObject();
            write(json, thing);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static void Text(Utf8JsonWriter json, string name, string? text)
    {
        if (text is null)
            json.WriteNull(name);
        else
            json.WriteString(name, text);
    }

    private static void Number(Utf8JsonWriter json, string name, long? number)
    {
        if (number is { } known)
            json.WriteNumber(name, known);
        else
            json.WriteNull(name);
    }

    private static string Name<T>(T value) where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());
}
