using System.Collections.Immutable;
using Holdfast.Composition;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Acts;

/// <summary>Something that is said of the study as a whole and goes into the methods text or the package that is handed over.</summary>
/// <param name="Key">Its key among the details of a study; "title" and "analyte" are the study's own.</param>
/// <param name="Title">Words for its field.</param>
/// <param name="Example">What could stand there; invented.</param>
public sealed record StudyDetail(string Key, string Title, string Example)
{
    /// <summary>Every detail, in the order of the methods text; what only a package tells comes last.</summary>
    public static ImmutableArray<StudyDetail> All { get; } =
    [
        new("title", "Title", "lead on chitosan beads"),
        new("analyte", "Metal (name or symbol)", "lead"),
        new("material", "Material", "chitosan beads, batch 3"),
        new("author", "Author", "A. Student"),
        new("water", "Water", "0.01 mol/L NaNO3"),
        new("preparation", "Preparation of the material", "dried at 60 °C, sieved to 100–200 µm"),
        new("stock", "Stock of the metal", "1000 mg/L standard in 2 % HNO3"),
        new("chemicals", "Chemicals and water grade", "analytical grade, deionised water"),
        new("shaking", "Shaking", "150 rpm on an orbital shaker"),
        new("separation", "Separation", "0.45 µm syringe filter"),
        new("separation-uptake", "Uptake by the separating step", "none seen in a control, 2 % at most"),
        new("ph-buffers", "pH electrode calibrated at", "pH 4, 7 and 10"),
        new("sensing-stirring", "Stirring and delay before a light reading", "stirred, read after 2 min"),
        new("order", "Order of the vessels, seed and blocks", "drawn by lot, seed 7"),
        new("plan", "Plan and amendments", "written down before the first vessel; one amendment"),
        new("shelf", "Where samples and powders are kept, and what is left", "cold room, box 4: 1.2 g of batch 3; vessels of KIN-05 discarded"),
        new("licence", "Licence of the data", "CC-BY-4.0"),
        new("orcid", "ORCID of the author", "0000-0000-0000-0001"),
        new("publisher", "Publisher of the data: repository or institute", "data repository of the institute"),
    ];

    /// <summary>The detail a word names, or null: "metal" is the analyte.</summary>
    /// <param name="word">Its key, or "metal".</param>
    public static StudyDetail? Named(string word)
        => All.FirstOrDefault(d => string.Equals(d.Key, string.Equals(word?.Trim(), "metal", StringComparison.OrdinalIgnoreCase) ? "analyte" : word?.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>What the study says; "" for nothing.</summary>
    /// <param name="study">The study.</param>
    public string In(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return Key switch
        {
            "title" => study.Title,
            "analyte" => study.Analyte ?? "",
            _ => study.Details.GetValueOrDefault(Key, ""),
        };
    }

    /// <summary>What was typed, as it is kept; null with what is wrong with it.</summary>
    /// <param name="typed">As typed; "" says it no more.</param>
    /// <param name="trouble">What is wrong; "" when nothing is.</param>
    public string? Read(string typed, out string trouble)
    {
        trouble = "";
        var said = (typed ?? "").Trim().Normalize();
        if (Key == "title" && said.Length == 0)
        {
            trouble = "The title is missing. Type a few words that tell this study from others.";
            return null;
        }
        if (Key == "licence" && said.Length > 0)
        {
            if (Licence.Named(said) is { } licence)
                return licence.Id;
            trouble = $"“{said}” is no licence that is known here. Choose one of {string.Join(", ", Licence.All.Select(l => l.Id))}.";
            return null;
        }
        if (Key == "orcid" && said.Length > 0)
        {
            if (Orcid.Read(said) is { } orcid)
                return orcid;
            trouble = $"“{said}” is no ORCID: it has 16 digits in fours, and the last one must check the others. Type it as in 0000-0000-0000-0001.";
            return null;
        }
        if (Key != "analyte" || said.Length == 0)
            return said;
        if (ElementNames.Find(said) is { } element)
            return element.Symbol;
        trouble = $"“{said}” is no element that is known here. Type its symbol or its name: Pb, lead.";
        return null;
    }

    /// <summary>The change that says all of these; null when the study says them already, or with what is wrong.</summary>
    /// <param name="study">The study.</param>
    /// <param name="typed">What was typed, each with its detail.</param>
    /// <param name="trouble">What is wrong and of which detail; null when nothing is.</param>
    public static StudyDescribed? Change(Study study, IEnumerable<(StudyDetail Detail, string Typed)> typed, out (StudyDetail Detail, string Sentence)? trouble)
    {
        ArgumentNullException.ThrowIfNull(typed);
        trouble = null;
        var said = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (detail, words) in typed)
        {
            if (detail.Read(words, out var wrong) is not { } value)
            {
                trouble = (detail, wrong);
                return null;
            }
            if (!string.Equals(value, detail.In(study), StringComparison.Ordinal))
                said[detail.Key] = value;
        }
        return said.Count == 0 ? null : new StudyDescribed(said.ToImmutable());
    }
}
