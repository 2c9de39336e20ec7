using System.Collections.Immutable;
using System.Text;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>A sheet of claims: which rule, in her own words, and its parameters, each in a column of its own name.</summary>
internal static class ClaimsTable
{
    /// <summary>Understands one. Without a column "rule", "claim" names the rule and the id is made from it and its parameters.</summary>
    public static Draft Understand(TableSource source, Amounts.DecimalMark? mark)
    {
        var cells = new SheetCells(source, mark);
        var (claim, rule, wording) = (cells.Place(HeadingWords.Claim), cells.Place(HeadingWords.Rule), cells.Place(HeadingWords.Wording));
        var id = rule >= 0 ? claim : -1;
        var ruleAt = rule >= 0 ? rule : claim;
        var remarks = SampleProperties.Remark.Headings;
        var parameters = Enumerable.Range(0, cells.Keys.Length)
            .Where(i => i != id && i != ruleAt && i != wording && cells.Keys[i].Length > 0 && !remarks.Contains(cells.Keys[i]) && !HeadingWords.Position.Contains(cells.Keys[i])).ToList();
        var used = source.Study.Claims.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        var claims = ImmutableArray.CreateBuilder<ClaimStated>();
        foreach (var row in cells.Rows)
        {
            if (cells.Words(row, ruleAt) is not { } ruleId)
            {
                cells.LeaveOut(row, "it names no rule.");
                continue;
            }
            var about = Ordinal.Words;
            foreach (var i in parameters)
            {
                if (cells.Words(row, i) is { } value)
                    about = about.SetItem(Kebab(source.Layout.Headings[i]), value);
            }
            var name = cells.Words(row, id) ?? Unused(Kebab(string.Join(' ', parameters.Select(i => cells.Words(row, i)).OfType<string>().Prepend(ruleId))), used);
            used.Add(name);
            claims.Add(new ClaimStated(name, Kebab(ruleId), about, cells.Words(row, wording)));
        }
        return cells.Draft(new TakenIn { Claims = claims.ToImmutable() }, claims.Count);
    }

    private static string Unused(string name, HashSet<string> used)
    {
        var free = name;
        for (var n = 2; used.Contains(free); n++)
            free = $"{name}-{Ordinal.Text(n)}";
        return free;
    }

    // "Equilibrium reached 120 min" is equilibrium-reached-120-min; points inside numbers stay.
    private static string Kebab(string text)
    {
        var name = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsLetterOrDigit(text[i]) || (text[i] == '.' && i > 0 && i + 1 < text.Length && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1])))
                name.Append(char.ToLowerInvariant(text[i]));
            else if (name.Length > 0 && name[^1] != '-')
                name.Append('-');
        }
        return name.ToString().TrimEnd('-');
    }
}
