using System.Text;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;
using Holdfast.Techniques.Elements;
using Holdfast.Techniques.Infrared;
using Holdfast.Techniques.Micrographs;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Techniques.Particles;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>What became of a spoilt file.</summary>
internal enum FuzzedEnd
{
    /// <summary>Refused or not understood, with a finding that says so.</summary>
    Refused,

    /// <summary>Left open with a question.</summary>
    Asked,

    /// <summary>Taken in, and every number of it was worked out.</summary>
    Taken,
}

/// <summary>A spoilt file on the whole way that files go: understood, asked about, taken in, worked out, shown.</summary>
internal sealed class FuzzedReading
{
    // Questions lead to questions; nobody answers more than this.
    private const int MostRounds = 8;

    private const int PagesOneIn = 3;

    private static readonly Study Empty = new() { Title = "invented" };

    /// <summary>What became of it.</summary>
    public FuzzedEnd End { get; private set; }

    /// <summary>What was said of it that weighs most; empty for nothing.</summary>
    public string Said { get; private set; } = "";

    /// <summary>What is wrong with how it was treated; null for nothing.</summary>
    public string? Fault { get; private set; }

    /// <summary>Reads a file as the program would, whatever it is.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="bytes">The spoilt file.</param>
    /// <param name="chance">How its questions are answered.</param>
    public static FuzzedReading Of(string name, byte[] bytes, SeededStream chance)
    {
        var reading = new FuzzedReading();
        try
        {
            reading.Fault = reading.Read(name, bytes, chance);
        }
#pragma warning disable CA1031 // Whatever comes out is what is looked for.
        catch (Exception fault) when (fault is not OutOfMemoryException)
#pragma warning restore CA1031
        {
            reading.Fault = fault.ToString();
        }

        return reading;
    }

    private string? Read(string name, byte[] bytes, SeededStream chance)
    {
        if (PictureHead.FormatOf(bytes) is not null && PixelFault(name, bytes) is { } fault)
            return fault;
        var answers = Answers.None;
        Understanding understood;
        for (var round = 0; ; round++)
        {
            understood = Take.Understand(Empty, [new IncomingFile(name, bytes)], answers)[0].Understanding;
            if (understood.Findings.FirstOrDefault(f => f.Code == Room.Code) is { } fallen)
                return fallen.Sentence;
            Holdfast.Studies.Import.Question[] open = [.. understood.Questions.Where(q => q.IsOpen)];
            if (open.Length == 0 || round == MostRounds || chance.Below(8) == 0)
                break;
            foreach (var question in open)
                answers = answers.With(question.Id, question.Choices.IsEmpty ? "7" : question.Choices[chance.Below(2) * chance.Below(question.Choices.Length)]);
            // What was assumed can be changed as well.
            foreach (var question in understood.Questions.Where(q => q.Assumed is not null && chance.Below(6) == 0))
                answers = answers.With(question.Id, question.Choices[chance.Below(question.Choices.Length)]);
        }

        End = understood.NeedsDecision ? FuzzedEnd.Asked : understood.Proposal is null or { Measurements: null, Samples.IsEmpty: true, Claims.IsEmpty: true, Apparatus.IsEmpty: true, Margins.IsEmpty: true } ? FuzzedEnd.Refused : FuzzedEnd.Taken;
        Said = understood.Findings.OrderByDescending(f => f.Weight).Select(f => $"{f.Code} {f.Sentence}").FirstOrDefault() ?? "";
        if (End == FuzzedEnd.Asked)
            return null;
        if (End == FuzzedEnd.Refused)
            return understood.Findings.Any(f => f.Weight != Weight.Note) || understood.Points.Any() || understood.Questions.Any(q => q.Answer is "leave-out" or TechniqueList.Table) ? null : "nothing was taken in, and no finding says why";
        if (!(understood.Proposal!.Measurements ?? []).SelectMany(m => m.Columns).SelectMany(c => c.Numbers ?? []).All(n => n is null || double.IsFinite(n.Value)))
            return "a number that was read is not finite";
        // What a file itself calls "NaN" is shown as its words.
        var saysSo = Encoding.Latin1.GetString(bytes).Contains("nan", StringComparison.OrdinalIgnoreCase);
        return Worked(Fold.After(Empty, understood.Proposal with { Files = [] }, 1, default, ""), understood, saysSo, chance);
    }

    private static string? PixelFault(string name, byte[] bytes)
    {
        try
        {
            var head = PictureHead.Of(bytes, name);
            var picture = Picture.Of(bytes, head.Main, name);
            return (picture.Width, picture.Height) == (head.Pages[head.Main].Width, head.Pages[head.Main].Height) ? null : "the picture has another size than its header says";
        }
        catch (StudyException refused)
        {
            return refused.Message.Length > 0 && refused.Code.Length > 0 ? null : "a picture was refused without a word";
        }
    }

    // Everything that a reader can be shown of it.
    private static string? Worked(Study study, Understanding understood, bool saysSo, SeededStream chance)
    {
        var dossier = Dossier.Of(study);
        var evidence = dossier.Evidence;
        var findings = understood.Findings.Concat(evidence.Findings).Concat(OfTechniques(evidence)).ToArray();
        if (findings.FirstOrDefault(f => f.Code == Room.Code) is { } fallen)
            return fallen.Sentence;
        if (dossier.Verdicts.FirstOrDefault(v => (v.Reason + string.Concat(v.Warnings)).Contains(Room.Code, StringComparison.Ordinal)) is { } verdict)
            return verdict.Reason + string.Concat(verdict.Warnings);
        if (dossier.Verdicts.SelectMany(v => v.Numbers).FirstOrDefault(n => !double.IsFinite(n.Value)) is { } number)
            return $"{number.Name} of a verdict is not finite";
        // A cell refuses what is not finite.
        foreach (var kind in Catalogue.Of<IStudyTables>())
            _ = kind.Of(evidence).Count();
        // Drawing takes longest: it is done for some.
        foreach (var (id, _, content) in chance.Below(PagesOneIn) > 0 ? [] : ResultSections.OnPage(dossier, new PageLinks(_ => null, _ => null, _ => "")))
        {
            var text = string.Concat(content.Select(c => NodeWriter.Write(c, Syntax.Html)));
            if ((saysSo ? [Room.Code] : new[] { Room.Code, "NaN", "∞" }).FirstOrDefault(w => text.Contains(w, StringComparison.Ordinal)) is { } word)
                return $"the section {id} says {word}: …{text[Math.Max(0, text.IndexOf(word, StringComparison.Ordinal) - 160)..]}";
        }

        var named = findings.Any(f => f.Weight != Weight.Note);
        foreach (var trail in Catalogue.Of<IDerivedNumbers>().SelectMany(k => k.Of(evidence)))
        {
            if (!double.IsFinite(trail.Value.Value) || !double.IsFinite(trail.Value.U) || trail.Value.U < 0)
                return $"{trail.Address} is {trail.Value.Value} ± {trail.Value.U}";
            if (!named && Possible(trail) is { } range && !(trail.Value.Value >= range.Low && trail.Value.Value <= range.High))
                return FormattableString.Invariant($"{trail.Address} is {trail.Value.Value} {trail.Unit}, and nothing is said about it");
        }

        return null;
    }

    private static IEnumerable<Finding> OfTechniques(Evidence evidence)
        => SorptionStudy.Of(evidence).Isotherms.SelectMany(i => i.Findings.Concat(i.Refused is { } refused ? [refused] : []))
            .Concat(DiffractionStudy.Of(evidence).Findings).Concat(DiffractionStudy.Of(evidence).Patterns.SelectMany(p => p.Findings))
            .Concat(InfraredStudy.Of(evidence).Spectra.SelectMany(s => s.Findings)).Concat(ElementStudy.Of(evidence).Powders.SelectMany(p => p.Findings))
            .Concat(ParticleStudy.Of(evidence).Lists.SelectMany(l => l.Findings));

    // What no powder passes (common practice): no solid takes up more than some 8000 m2/g of nitrogen, no bench lattice is longer than 200 Å.
    private static (double Low, double High)? Possible(NumberTrail trail) => trail.Unit switch
    {
        "m2/g" => (-1000, 10_000),
        "cm3/g" => (-5, 25),
        "Å" => (1, 200),
        "°" => (-20, 180),
        "nm" => (0.05, 1e7),
        "mm" => (-20, 20),
        "cm^-1" => (1, 50_000),
        _ => trail.Address.StartsWith("share:", StringComparison.Ordinal) ? (0, 1) : null,
    };
}
