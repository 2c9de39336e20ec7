using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Holdfast.Studies.Package;

/// <summary>The tables of the plain package: what a study holds, one table a kind.</summary>
internal static partial class PlainTables
{
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly ImmutableArray<PlainField> Where =
    [
        new("original_sha256", "string", "Fingerprint of the original file; empty for what was typed."),
        new("file", "string", "Name of the file when it was taken in."),
        new("sheet", "string", "Sheet of a workbook."),
        new("row", "integer", "Line or row, counted from 1; 0 when there is none."),
        new("column", "string", "Heading of the column."),
    ];

    /// <summary>All of them, in a fixed order.</summary>
    public static ImmutableArray<PlainTable> Of(Study study)
        => [Samples(study), Facts(study), Readings(study), .. Spectra(study), .. Measurements(study), .. Marks(study), Runs(study), Claims(study), Margins(study), Plan(study), .. Designed(study), .. Remarks(study), .. Texts(study), Apparatus(study), Strikes(study), Originals(study)];

    private static PlainTable Samples(Study study)
    {
        // Only what was recorded of some sample makes a column, in the order of the property's name.
        var properties = Property.All.Where(p => study.Samples.Any(s => s.Facts.ContainsKey(p.Name))).ToList();
        var table = new PlainTable("samples", "One row a sample: what it is and the numbers and words recorded about it. Censored and odd values are in facts.",
        [
            new("code", "string", "Code on the label."),
            new("role", "string", "What the sample is for."),
            new("struck", "boolean", "True when a line was drawn through it; see strikes."),
            .. properties.Select(p => new PlainField(ColumnName(p), p.Holds == Holds.Number ? "number" : "string", SentenceCase.Of(p.Title) + ".", p.Unit.Length > 0 ? p.Unit : null)),
        ], key: ["code"]);
        foreach (var sample in study.Samples)
        {
            table.Add([sample.Code, Role(sample.Role), study.IsStruck(sample),
                .. properties.Select(p => p.Holds == Holds.Number ? sample.Number(p) : (object?)sample.Words(p))]);
        }
        return table;
    }

    private static PlainTable Facts(Study study)
    {
        var table = new PlainTable("facts", "One row a fact about a sample, with the cell as it was written and where it was read.",
        [
            new("sample", "string", "Code of the sample."),
            new("property", "string", "What was recorded."),
            new("value", "number", "The number, in the unit beside it; empty for words, censored values and what is not a number."),
            new("unit", "string", "Unit of value, u and below."),
            new("u", "number", "Standard uncertainty that came with it."),
            new("below", "number", "Limit of a censored value."),
            new("words", "string", "The words, for a property that holds words."),
            new("written", "string", "The cell as it was written, with its unit."),
            .. Where,
        ], key: ["sample", "property"]);
        foreach (var sample in study.Samples)
        {
            foreach (var fact in sample.Facts.Values.OrderBy(f => f.Property, StringComparer.Ordinal))
            {
                table.Add([sample.Code, fact.Property, fact.Value, Property.Named(fact.Property)?.Unit, fact.U, fact.Below, fact.Words, fact.Written,
                    .. Place(fact.Origin)]);
            }
        }
        return table;
    }

    private static PlainTable Readings(Study study)
    {
        var table = new PlainTable("readings", "One row a reading: what an instrument showed for one portion of one sample, before any arithmetic.",
        [
            new("id", "string", "Address of the reading."),
            new("sample", "string", "Code of the sample."),
            new("run", "string", "Id of the run."),
            new("order", "integer", "Place in the run, from 1."),
            new("signal", "string", "What was read."),
            new("value", "number", "What was shown, in the unit beside it; empty when censored or not a number."),
            new("unit", "string", "Unit of value and below."),
            new("below", "number", "Limit of a censored reading."),
            new("u", "number", "Scatter that came with it."),
            new("dilution", "number", "How many times the portion was diluted."),
            new("portion", "integer", "Portions of one sample, diluted or poured separately, from 1."),
            new("written", "string", "The cell as it was written."),
            new("struck", "boolean", "True when it, or its sample, was struck."),
            .. Where,
        ], key: ["id"]);
        foreach (var r in study.Readings)
        {
            table.Add([r.Id, r.Sample, r.Run, r.Order, r.Signal, r.Value, Property.Named(r.Signal)?.Unit, r.Below, r.U, r.Dilution, r.Portion, r.Written,
                study.IsStruck(r), .. Place(r.Origin)]);
        }
        return table;
    }

    // Most studies hold none: their package stays as it was.
    private static IEnumerable<PlainTable> Spectra(Study study)
    {
        if (study.Readings.All(r => r.Spectrum is null))
            yield break;
        var table = new PlainTable("spectra", "One row a point of a spectrum, in the order of the file; the reading says which sample and run it belongs to.",
        [
            new("reading", "string", "Address of the reading."),
            new("point", "integer", "Place in the spectrum, from 1."),
            new("wavelength_nm", "number", "Wavelength.", "nm"),
            new("intensity", "number", "Intensity, in the detector's own unit."),
        ], key: ["reading", "point"]);
        foreach (var r in study.Readings.Where(r => r.Spectrum is not null))
        {
            for (var i = 0; i < r.Spectrum!.Wavelengths.Length; i++)
                table.Add(r.Id, i + 1, r.Spectrum.Wavelengths[i], r.Spectrum.Intensities[i]);
        }
        yield return table;
    }

    // Most studies hold none: their package stays as it was.
    private static IEnumerable<PlainTable> Measurements(Study study)
    {
        if (study.Measurements.IsEmpty)
            yield break;
        var heads = new PlainTable("measurements", "One row a measurement of a powder; its settings and points are in the tables of those names.",
        [
            new("id", "string", "Address of the measurement."),
            new("technique", "string", "Technique that read it."),
            new("sample", "string", "The powder, as it is called."),
            new("struck", "boolean", "True when a line was drawn through it; see strikes."),
            .. Where,
        ], key: ["id"]);
        var settings = new PlainTable("measurement_settings", "One row a setting of a measurement, as it was stated.",
        [
            new("measurement", "string", "Address of the measurement."),
            new("place", "integer", "Place among its settings, from 1."),
            new("name", "string", "What was set."),
            new("written", "string", "As it was written."),
            new("value", "number", "The number, in the unit beside it; empty for words."),
            new("unit", "string", "Its unit."),
            new("row", "integer", "Line or row of the file; 0 for what was answered."),
        ], key: ["measurement", "place"]);
        var points = new PlainTable("measurement_points", "One row a cell of a measurement, column by column, as it stands in the file.",
        [
            new("measurement", "string", "Address of the measurement."),
            new("column", "string", "What the column holds."),
            new("heading", "string", "Its heading as written."),
            new("unit", "string", "Unit of its numbers."),
            new("point", "integer", "Row of the measurement, from 1."),
            new("number", "number", "The number; empty where the row holds none."),
            new("words", "string", "The words of a column of words."),
        ], key: ["measurement", "column", "point"]);
        foreach (var m in study.Measurements)
        {
            heads.Add([m.Id, m.Technique, m.Sample, study.IsStruck(m), .. Place(m.Origin)]);
            foreach (var (i, s) in m.Settings.Index())
                settings.Add(m.Id, i + 1, s.Name, s.Written, s.Value, Said(s.Unit), s.Row);
            foreach (var column in m.Columns)
            {
                for (var i = 0; i < column.Length; i++)
                    points.Add(m.Id, column.Name, Said(column.Heading), Said(column.Unit), i + 1, column.Numbers?[i], column.Words?[i]);
            }
        }

        yield return heads;
        yield return settings;
        yield return points;
    }

    // Most studies hold none: their package stays as it was.
    private static IEnumerable<PlainTable> Marks(Study study)
    {
        if (study.Marks.IsEmpty)
            yield break;
        var table = new PlainTable("picture_marks", "One row a point of what was drawn on the picture of a measurement; one row without a point for what was only said.",
        [
            new("id", "string", "Address of the mark."),
            new("measurement", "string", "Address of the measurement whose picture it is."),
            new("kind", "string", "What was drawn or said."),
            new("point", "integer", "Place among its points, from 1; 0 for what was only said."),
            new("x", "number", "Pixels of the whole picture from its left edge."),
            new("y", "number", "Pixels of the whole picture from its upper edge."),
            new("written", "string", "What was said with it."),
            new("repeats", "string", "Address of the mark that was drawn afresh."),
            new("struck", "boolean", "True when a line was drawn through it; see strikes."),
            new("entry", "integer", "Entry of the history that made it."),
            new("who", "string", "Who drew it."),
        ], key: ["id", "point"]);
        foreach (var m in study.Marks)
        {
            (double X, double Y)?[] points = m.Points.IsEmpty ? [null] : [.. m.Places().Select(p => ((double, double)?)p)];
            foreach (var (i, p) in points.Index())
                table.Add(m.Id, m.Measurement, m.Kind, p is null ? 0 : i + 1, p?.X, p?.Y, Said(m.Written), m.Repeats, study.StrikeOf(m) is not null, m.Entry, m.Who);
        }

        yield return table;
    }

    private static PlainTable Runs(Study study)
    {
        var table = new PlainTable("runs", "One row a sitting at an instrument, with what its file said about itself.",
        [
            new("id", "string", "Id of the run."),
            new("signal", "string", "What was read."),
            new("details", "object", "What the file said, by key as written."),
            new("calibration", "string", "Run whose calibration was chosen for it; empty for its own."),
            .. Where,
        ], key: ["id"]);
        foreach (var run in study.Runs)
            table.Add([run.Id, run.Signal, Object(run.Details), study.Calibrations.GetValueOrDefault(run.Id), .. Place(run.Origin)]);
        return table;
    }

    private static PlainTable Claims(Study study)
    {
        var table = new PlainTable("claims", "One row a claim as stated, before it is judged.",
        [
            new("id", "string", "Id of the claim."),
            new("rule", "string", "Rule that judges it."),
            new("parameters", "object", "What it is about, by name."),
            new("wording", "string", "Her own words; empty for the rule's."),
            new("entry", "integer", "Entry of the history that stated it."),
            new("stated", "datetime", "When it was stated."),
        ], key: ["id"]);
        foreach (var c in study.Claims)
            table.Add(c.Id, c.Rule, Object(c.Parameters), c.Wording, c.Entry, c.When);
        return table;
    }

    private static PlainTable Margins(Study study)
    {
        var table = new PlainTable("margins", "One row a margin that was fixed: how large a difference still counts as none.",
        [
            new("name", "string", "Which margin."),
            new("low", "number", "Lower end, in the unit beside it."),
            new("high", "number", "Upper end, in the unit beside it."),
            new("unit", "string", "Its unit."),
            new("entry", "integer", "Entry of the history that fixed it."),
        ], key: ["name"]);
        foreach (var m in study.Margins)
            table.Add(m.Name, m.Low, m.High, m.Unit, m.Entry);
        return table;
    }

    private static PlainTable Plan(Study study)
    {
        var table = new PlainTable("plan", "One row a piece of planned work; what was withdrawn is in the history only.",
        [
            new("id", "string", "Its address."),
            new("work", "string", "What is to be done."),
            new("claim", "string", "Claim it would settle; empty for work of its own."),
            new("vessels", "integer", "How many vessels it needs."),
            new("settings", "string", "Settings to run, separated by semicolons."),
            new("entry", "integer", "Entry of the history that planned it."),
            new("planned", "datetime", "When it was planned."),
            new("who", "string", "Who planned it."),
            new("done", "datetime", "When it was noted as done; empty while it is to do."),
        ], key: ["id"]);
        foreach (var p in study.Plan)
            table.Add(p.Id, p.Work, p.Claim, p.Vessels, p.Settings.IsEmpty ? null : string.Join("; ", p.Settings), p.Entry, p.When, p.Who, p.Done);
        return table;
    }

    // Most studies have none; their package stays as it was.
    private static IEnumerable<PlainTable> Designed(Study study)
    {
        if (study.Designs.IsEmpty)
            yield break;
        var table = new PlainTable("planned_vessels", "One row a designed vessel with its targets; what was really done stands in samples and facts.",
        [
            new("code", "string", "Code on the label."),
            new("plan", "string", "Address of the plan."),
            new("series", "string", "Series."),
            new("role", "string", "What it is for."),
            new("replicate", "integer", "Which of the vessels of its level."),
            new("block", "integer", "Day or tray."),
            new("start_order", "integer", "Place in the order of starting within the series."),
            new("read_order", "integer", "Place in the order of reading within the series."),
            new("initial_concentration", "number", "Concentration at the start.", "mg/L"),
            new("volume", "number", "Volume of liquid.", "mL"),
            new("mass", "number", "Sorbent to weigh in.", "mg"),
            new("ph", "number", "pH at the start; empty where it is not set."),
            new("temperature", "number", "Temperature; empty where it is not set.", "K"),
            new("contact_time", "number", "Contact time.", "min"),
            new("starts_at", "number", "When it is started, after the beginning of its block.", "min"),
            new("expected", "number", "Concentration supposed after contact.", "mg/L"),
            new("dilution", "number", "How many times it is to be diluted for reading."),
            new("sorbent_batch", "string", "Batch of the sorbent; empty where one serves all."),
        ], key: ["code"]);
        foreach (var plan in study.Designs)
        {
            foreach (var v in plan.Vessels)
            {
                table.Add(v.Code, plan.Id, v.Series, Role(v.Role), v.Replicate, v.Block, v.StartOrder, v.ReadOrder, v.InitialConcentration, v.Volume, v.Mass, v.Ph, v.Temperature,
                    v.ContactTime, v.StartsAt, v.Expected, v.Dilution, v.Batch);
            }
        }

        yield return table;
    }

    private static PlainTable Apparatus(Study study)
    {
        var table = new PlainTable("apparatus", "One row a balance, flask, pipette or meter, and how well it is known.",
        [
            new("id", "string", "Its id."),
            new("serves", "string", "Property that it measures."),
            new("u", "number", "Standard uncertainty of one use, in the unit beside it."),
            new("unit", "string", "Unit of u."),
            new("relative_u", "number", "Relative standard uncertainty of one use: 0.01 for 1 %."),
            new("shared", "boolean", "True when one error is shared by everything it served."),
            new("basis", "string", "Where the uncertainty comes from."),
            .. Where,
        ], key: ["id"]);
        foreach (var i in study.Apparatus)
            table.Add([i.Id, i.Serves, i.U, i.U is null ? null : Property.Named(i.Serves)?.Unit, i.RelativeU, i.Shared, i.Basis, .. Place(i.Origin)]);
        return table;
    }

    private static PlainTable Strikes(Study study)
    {
        var table = new PlainTable("strikes", "One row a line drawn through a sample, reading, measurement or mark, with its reason.",
        [
            new("target", "string", "Sample code, or id of a reading, measurement or mark."),
            new("reason", "string", "Why."),
            new("entry", "integer", "Entry of the history."),
            new("struck", "datetime", "When."),
            new("who", "string", "Who."),
        ], key: ["target"]);
        foreach (var s in study.Strikes)
            table.Add(s.Target, s.Reason, s.Entry, s.When, s.Who);
        return table;
    }

    private static PlainTable Originals(Study study)
    {
        var table = new PlainTable("originals", "One row a file taken in; it lies byte for byte in the folder originals beside plain, under its fingerprint.",
        [
            new("sha256", "string", "Fingerprint, and name under originals."),
            new("file", "string", "Its name when it was taken in."),
            new("bytes", "integer", "Its length."),
            new("entry", "integer", "Entry of the history that took it in."),
            new("taken_in", "datetime", "When it was taken in."),
        ], key: ["sha256"]);
        foreach (var o in study.Originals)
            table.Add(o.Sha256, o.FileName, o.Bytes, o.Entry, o.When);
        return table;
    }

    /// <summary>"initial-concentration" in mg/L is the column initial_concentration_mg_per_L.</summary>
    private static string ColumnName(Property property)
    {
        var name = property.Name.Replace('-', '_');
        return property.Unit.Length == 0
            ? name
            : name + "_" + property.Unit.Replace("/", "_per_", StringComparison.Ordinal).Replace("%", "percent", StringComparison.Ordinal)
                .Replace(" ", "_", StringComparison.Ordinal);
    }

    private static string? Said(string words) => words.Length > 0 ? words : null;

    private static string Role(SampleRole role) => JsonNamingPolicy.KebabCaseLower.ConvertName(role.ToString());

    private static string Object(ImmutableSortedDictionary<string, string> words)
        => JsonSerializer.Serialize(words.OrderBy(w => w.Key, StringComparer.Ordinal).ToDictionary(w => w.Key, w => w.Value, StringComparer.Ordinal), Relaxed);

    private static object?[] Place(Origin? o) => o is null ? [null, null, null, null, null] : [o.Original, o.FileName, o.Sheet, o.Row, o.Column];
}
