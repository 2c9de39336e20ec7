using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;

namespace Holdfast.Reports.Words;

/// <summary>
/// A chapter that was edited in a word processor, held against the chapter it was: changed and new paragraphs come back as proposals, numbers that were changed by hand are shown against
/// the study's. Nothing is kept by this.
/// </summary>
/// <param name="On">Number of the entry that the edited file was made from.</param>
/// <param name="IsKnown">False where the file does not say it, so that the present study was taken.</param>
/// <param name="Proposals">What can be taken over, in the order of the file.</param>
/// <param name="Numbers">Numbers that were changed by hand.</param>
/// <param name="LeftOut">Paragraphs of the program that the file no longer has; they stay in the chapter.</param>
public sealed record EditedChapter(long On, bool IsKnown, ImmutableArray<WordProposal> Proposals, ImmutableArray<ChangedNumber> Numbers, ImmutableArray<string> LeftOut)
{
    private const string Mark = "holdfast_";

    // Two paragraphs are one that was edited where they share at least this part of their words.
    private const double Alike = 0.35;

    /// <summary>Name of the bookmark by which a chapter says from which entry it was made: a name holds 40 signs at most.</summary>
    /// <param name="fingerprint">Hash of the entry.</param>
    internal static string BookmarkOf(string fingerprint) => Mark + fingerprint[..Math.Min(30, fingerprint.Length)];

    /// <summary>Holds an edited file against the study.</summary>
    /// <param name="docx">The file.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <param name="daybook">The study's history.</param>
    /// <exception cref="StudyException">Damaged or no DOCX (HF-406), or past a limit (HF-407).</exception>
    public static EditedChapter Of(byte[] docx, string fileName, Daybook daybook)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        var edited = WordParagraphs.Read(docx, fileName);
        var mark = edited.SelectMany(p => p.Bookmarks).FirstOrDefault(b => b.StartsWith(Mark, StringComparison.Ordinal));
        var entry = mark is null ? null : daybook.Entries.FirstOrDefault(e => BookmarkOf(e.Hash) == mark);
        if (mark is not null && entry is null)
            throw new StudyException(Codes.Unreadable, $"{fileName} was made from another study, or from entries that this one does not have. Nothing is proposed. Check which file was edited.");
        var on = entry?.Number ?? daybook.Version;
        var evidence = Dossier.Of(daybook.At(on).Study);
        var chapter = StudyChapter.Of(evidence);
        var before = WordParagraphs.Read(chapter.Docx(), "chapter.docx");
        var now = on == daybook.Version ? before : WordParagraphs.Read(StudyChapter.Of(Dossier.Of(daybook.Study)).Docx(), "chapter.docx");
        return new Comparison(before, edited, now, chapter, evidence.Evidence, daybook.Study).Made(on, entry is not null);
    }

    /// <summary>Sentences that were reworded and that the chapter no longer says: her words for them wait until it does.</summary>
    /// <param name="study">The study.</param>
    public static ImmutableArray<string> WithoutPlace(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (study.Rewordings.Count == 0)
            return [];
        var chapter = StudyChapter.Of(Dossier.Of(study with { Rewordings = study.Rewordings.Clear() }));
        var said = chapter.Sections.SelectMany(s => s.Content).SelectMany(Tree.All).Where(e => e.Name is "p" or "li").Select(e => NumbersInText.Masked(OwnWords.OneLine(e.Words))).ToHashSet(StringComparer.Ordinal);
        return [.. study.Rewordings.Keys.Where(k => !said.Contains(k))];
    }

    private sealed class Comparison(
        ImmutableArray<WordParagraph> before, ImmutableArray<WordParagraph> edited, ImmutableArray<WordParagraph> now, WrittenDocument chapter, Evidence evidence, Study study)
    {
        private readonly ImmutableArray<WordProposal>.Builder proposals = ImmutableArray.CreateBuilder<WordProposal>();
        private readonly ImmutableArray<ChangedNumber>.Builder numbers = ImmutableArray.CreateBuilder<ChangedNumber>();
        private readonly ImmutableArray<string>.Builder leftOut = ImmutableArray.CreateBuilder<string>();
        private readonly Dictionary<string, List<string>> texts = study.Texts.ToDictionary(t => t.Key, t => OwnWords.Paragraphs(t.Value.Text).ToList(), StringComparer.Ordinal);

        // Paragraphs of the program that can be reworded: those that the tree has as such.
        private readonly HashSet<string> sentences = [.. chapter.Sections.SelectMany(s => s.Content).SelectMany(Tree.All).Where(e => e.Name is "p" or "li" && !Tree.All(e).Any(i => i.Name == "math")).Select(e => OwnWords.OneLine(e.Words))];
        private readonly Dictionary<string, (string Place, int Index, int Line)> hers = Rendered(evidence);

        public EditedChapter Made(long on, bool isKnown)
        {
            var kept = Kept();
            var (from, at) = (0, 0);
            foreach (var (i, j) in kept.Append((before.Length, edited.Length)))
            {
                Hunk(from, i, at, j);
                (from, at) = (i + 1, j + 1);
            }

            return new(on, isKnown, proposals.ToImmutable(), numbers.ToImmutable(), leftOut.ToImmutable());
        }

        // Longest common run of paragraphs, in order (J. W. Hunt and M. D. McIlroy's problem; here the plain table of lengths).
        private List<(int I, int J)> Kept()
        {
            var lengths = new int[before.Length + 1, edited.Length + 1];
            for (var i = before.Length - 1; i >= 0; i--)
            {
                for (var j = edited.Length - 1; j >= 0; j--)
                    lengths[i, j] = before[i].Text == edited[j].Text ? lengths[i + 1, j + 1] + 1 : Math.Max(lengths[i + 1, j], lengths[i, j + 1]);
            }

            var kept = new List<(int, int)>();
            for (int i = 0, j = 0; i < before.Length && j < edited.Length;)
            {
                if (before[i].Text == edited[j].Text)
                    kept.Add((i++, j++));
                else if (lengths[i + 1, j] >= lengths[i, j + 1])
                    i++;
                else
                    j++;
            }

            return kept;
        }

        private void Hunk(int from, int to, int at, int end)
        {
            var next = from;
            for (var j = at; j < end; j++)
            {
                var best = Enumerable.Range(next, to - next).Select(i => (Index: i, Share: Share(before[i].Text, edited[j].Text))).Where(p => p.Share >= Alike).OrderByDescending(p => p.Share).ThenBy(p => p.Index).FirstOrDefault((Index: -1, Share: 0.0));
                // One paragraph in the place of one is that one edited, however much of it is new; cells of tables are such.
                var pair = best.Index >= 0 ? best.Index : to - next == 1 && end - j == 1 ? next : -1;
                if (pair < 0)
                {
                    Added(j);
                    continue;
                }

                for (; next < pair; next++)
                    Gone(next);
                Changed(pair, j);
                next = pair + 1;
            }

            for (; next < to; next++)
                Gone(next);
        }

        private void Changed(int i, int j)
        {
            var (was, written) = (before[i].Text, edited[j].Text);
            var byHand = ByHand(i, written);
            numbers.AddRange(byHand);
            if (hers.TryGetValue(was, out var own) && texts.TryGetValue(own.Place, out var paragraphs) && own.Index < paragraphs.Count)
            {
                paragraphs[own.Index] = own.Line < 0 ? Referred(paragraphs[own.Index], written, byHand)
                    : string.Join('\n', paragraphs[own.Index].Split('\n').Select((l, n) => n == own.Line ? "- " + Referred(l, written, byHand) : l));
                Propose(own.Place, was, written, new TextWritten(own.Place, Whole(paragraphs)));
            }
            else if (sentences.Contains(was) && NumbersInText.Masked(was) != NumbersInText.Masked(written))
            {
                // What was her wording already goes on from the program's own sentence.
                var (key, from) = study.Rewordings.FirstOrDefault(r => NumbersInText.Masked(r.Value) == NumbersInText.Masked(was) || NumbersInText.Masked(Plain(r.Value)) == NumbersInText.Masked(was)) is { Key: { } known } ? (known, was) : (NumbersInText.Masked(was), was);
                Propose(Section(j), was, written, new SentenceReworded(key, Numbered(from, written, byHand)));
            }
            else if (byHand.Length == 0 && !sentences.Contains(was))
            {
                leftOut.Add($"“{Short(was)}” reads “{Short(written)}” in the file. It holds an equation, or is part of a table, a heading or a caption, which follow from the study.");
            }
        }

        private static string Plain(string rewording) => NumbersInText.Replaced(rewording.Replace("{#", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal), (_, _) => "1");

        private void Added(int j)
        {
            if (edited[j].IsHeading)
                return;
            var place = Section(j);
            if (!texts.TryGetValue(place, out var paragraphs))
                texts[place] = paragraphs = [];
            paragraphs.Add(edited[j].Text);
            Propose(place, "", edited[j].Text, new TextWritten(place, Whole(paragraphs)));
        }

        private void Gone(int i)
        {
            if (hers.TryGetValue(before[i].Text, out var own) && texts.TryGetValue(own.Place, out var paragraphs) && own.Index < paragraphs.Count)
            {
                // Places of the others stay what they were: what is left out is an empty paragraph or line until the end.
                paragraphs[own.Index] = own.Line < 0 ? "" : string.Join('\n', paragraphs[own.Index].Split('\n').Select((l, n) => n == own.Line ? "" : l));
                Propose(own.Place, before[i].Text, "", new TextWritten(own.Place, Whole(paragraphs)));
            }
            else if (!before[i].IsHeading)
            {
                leftOut.Add($"“{Short(before[i].Text)}” is gone from the file; it follows from the study and stays in the chapter.");
            }
        }

        private void Propose(string place, string was, string written, Change change) => proposals.Add(new(proposals.Count + 1, place, was, written, change));

        // Numbers of a sentence that stand in both in other digits; where one has more of them, those that only one has.
        private ImmutableArray<ChangedNumber> ByHand(int paragraph, string written)
        {
            var was = before[paragraph].Text;
            var (own, typed) = (NumbersInText.Of(was), NumbersInText.Of(written));
            if (own.Length != typed.Length)
            {
                var left = typed.ToList();
                string[] gone = [.. own.Where(n => !left.Remove(n))];
                return gone.Length == left.Count ? [.. gone.Zip(left, (a, b) => One(a, b))] : [.. left.Where(_ => gone.Length > 0).Select(b => One(string.Join(" or ", gone.Distinct()), b))];
            }

            return [.. own.Zip(typed).Where(p => p.First != p.Second).Select(p => One(p.First, p.Second))];

            ChangedNumber One(string studys, string hand)
            {
                var place = own.IndexOf(studys);
                return new(Short(was), studys, hand, place >= 0 && Today(paragraph) is { } today ? NumbersInText.Of(today)[place] : studys);
            }
        }

        // The same sentence in the chapter of today: cells are alike but for their numbers, so that their order tells them apart; null where it is gone.
        private string? Today(int paragraph)
        {
            var masked = NumbersInText.Masked(before[paragraph].Text);
            bool IsSame(WordParagraph p) => NumbersInText.Masked(p.Text) == masked;
            string[] then = [.. before.Where(IsSame).Select(p => p.Text)], today = [.. now.Where(IsSame).Select(p => p.Text)];
            return then.Length == today.Length ? today[before.Take(paragraph).Count(IsSame)] : null;
        }

        // Her words with the study's numbers by their places in the program's sentence.
        private static string Numbered(string was, string written, ImmutableArray<ChangedNumber> byHand)
        {
            var own = NumbersInText.Of(was).ToList();
            return NumbersInText.Replaced(written, (_, number) =>
            {
                var studys = byHand.FirstOrDefault(c => c.Written == number)?.Studys ?? number;
                var place = own.IndexOf(studys);
                if (place < 0)
                    return number;
                own[place] = "";
                return string.Create(CultureInfo.InvariantCulture, $"{{#{place + 1}}}");
            });
        }

        // Her own text with the addresses of its numbers, where they stand as the study had them or were changed by hand.
        private string Referred(string markdown, string written, ImmutableArray<ChangedNumber> byHand)
        {
            foreach (var address in OwnWords.Addresses(markdown))
            {
                if (OwnWords.Number(address, evidence) is not { } shown)
                    continue;
                var typed = byHand.Aggregate(shown, (text, c) => text.Replace(c.Studys, c.Written, StringComparison.Ordinal));
                foreach (var form in new[] { shown, typed })
                {
                    if (written.IndexOf(form, StringComparison.Ordinal) is var at && at >= 0)
                    {
                        written = $"{written[..at]}{{{address}}}{written[(at + form.Length)..]}";
                        break;
                    }
                }
            }

            return written;
        }

        private string Section(int j)
        {
            var headings = chapter.Sections.Select((s, i) => (s.Id, Heading: OwnWords.OneLine(chapter.Heading(i)))).ToDictionary(s => s.Heading, s => s.Id, StringComparer.Ordinal);
            for (; j >= 0; j--)
            {
                if (headings.TryGetValue(edited[j].Text, out var id))
                    return id;
            }

            return OwnText.Places[0];
        }

        private static string Whole(IEnumerable<string> paragraphs)
            => string.Join("\n\n", paragraphs.Select(p => string.Join('\n', p.Split('\n').Where(l => l.Length > 0))).Where(p => p.Length > 0));

        private static Dictionary<string, (string, int, int)> Rendered(Evidence evidence)
        {
            var rendered = new Dictionary<string, (string, int, int)>(StringComparer.Ordinal);
            foreach (var own in evidence.Study.Texts.Values)
            {
                foreach (var (index, paragraph) in OwnWords.Paragraphs(own.Text).Index())
                {
                    foreach (var (line, element) in OwnWords.Blocks(paragraph, evidence).SelectMany(Tree.All).Where(e => e.Name is "p" or "li").Index())
                        rendered.TryAdd(OwnWords.OneLine(element.Words), (own.Place, index, element.Name == "li" ? line : -1));
                }
            }

            return rendered;
        }

        private static double Share(string one, string other)
        {
            var (a, b) = (one.Split(' ').ToHashSet(StringComparer.Ordinal), other.Split(' ').ToHashSet(StringComparer.Ordinal));
            var both = a.Count(b.Contains);
            return both / (double)(a.Count + b.Count - both);
        }

        private static string Short(string text) => text.Length <= 90 ? text : text[..90] + "…";
    }
}

/// <summary>One thing that an edited file proposes.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Place">Section of the chapter.</param>
/// <param name="Was">The paragraph as it was; empty for a new one.</param>
/// <param name="Written">The paragraph as she wrote it; empty for one that she took out.</param>
/// <param name="Change">What is kept when it is accepted. Several about her own text of one section hold those before them.</param>
public sealed record WordProposal(int Number, string Place, string Was, string Written, Change Change);

/// <summary>A number that was changed by hand.</summary>
/// <param name="Where">The paragraph it stands in.</param>
/// <param name="Studys">The number that the study had when the file was made.</param>
/// <param name="Written">The number in the file.</param>
/// <param name="Now">The study's number today.</param>
public sealed record ChangedNumber(string Where, string Studys, string Written, string Now);
