using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;

namespace Holdfast.Reports.HandOver;

/// <summary>What every description of a package says alike: title, people, dates, licence, fingerprint. All of it from the study, so that the same study says the same.</summary>
/// <param name="Daybook">The study's history.</param>
/// <param name="Dossier">The study worked out.</param>
/// <param name="Originals">Names of files taken in, by fingerprint.</param>
internal sealed record HandOverWords(Daybook Daybook, Dossier Dossier, ImmutableDictionary<string, string> Originals)
{
    /// <summary>The study.</summary>
    public Study Study => Daybook.Study;

    /// <summary>Its title.</summary>
    public string Title => Study.Title.Length == 0 ? "Untitled study" : Study.Title.ReplaceLineEndings(" ");

    /// <summary>The author as recorded; else who begun the study.</summary>
    public string Author => Said("author") ?? Daybook.Entries[0].Who;

    /// <summary>Everyone else who kept an entry.</summary>
    public IEnumerable<string> Others => Daybook.Entries.Select(e => e.Who).Distinct(StringComparer.Ordinal).Where(w => !string.Equals(w, Author, StringComparison.Ordinal));

    /// <summary>ORCID of the author, or null.</summary>
    public string? Orcid => Said("orcid") is { } typed ? Studies.Acts.Orcid.Read(typed) : null;

    /// <summary>The licence that was chosen, or null.</summary>
    public Licence? Licence => Said("licence") is { } typed ? Studies.Acts.Licence.Named(typed) : null;

    /// <summary>Who publishes the data, or null.</summary>
    public string? Publisher => Said("publisher");

    /// <summary>Where samples are kept, or null.</summary>
    public string? Shelf => Said("shelf");

    /// <summary>When the study was begun, and its last entry.</summary>
    public (DateTimeOffset From, DateTimeOffset To) When => (Daybook.Entries[0].When, Daybook.Entries[^1].When);

    /// <summary>The day of the last entry: a package of a later day is another only where the study is.</summary>
    public string Day => When.To.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Program and version.</summary>
    public string MadeBy { get; } = new ReportOptions().MadeBy;

    /// <summary>Said first where the data are invented; empty otherwise.</summary>
    public string Notice => Study.Invented ? "INVENTED DEMO DATA: no number here is a measurement. " : "";

    /// <summary>What it is, in two sentences.</summary>
    public string Abstract
    {
        get
        {
            var verdicts = Dossier.Verdicts.Where(v => v.Claim.Stated).ToArray();
            int Count(Ruling ruling) => verdicts.Count(v => v.Ruling == ruling);
            return Notice + string.Create(CultureInfo.InvariantCulture, $"Raw readings, what follows from them and the defence of each claim for {Title}")
                + (Study.Analyte is { } metal ? $": uptake of {metal} from water" : "") + (Said("material") is { } material ? $" by {material}" : "") + ". "
                + string.Create(CultureInfo.InvariantCulture, $"Of {verdicts.Length} stated claims {Count(Ruling.Holds)} hold, {Count(Ruling.NotShownYet)} are not shown yet and {Count(Ruling.Contradicted)} are contradicted.");
        }
    }

    /// <summary>Words by which it may be looked for.</summary>
    public IEnumerable<string> Keywords => new[] { "sorption", "uptake from water", Study.Analyte, Said("material") }.OfType<string>().Where(k => k.Length > 0);

    /// <summary>A detail of the study, or null where it is not said.</summary>
    /// <param name="key">Its key.</param>
    public string? Said(string key) => Study.Details.GetValueOrDefault(key) is { } words && words.Trim() is { Length: > 0 } said ? said.ReplaceLineEndings(" ") : null;
}
