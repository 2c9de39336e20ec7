using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Rows whose remark says that the vessel came to harm: "half spilled before filtering, repeat", "verschüttet", "se derramó". Whether they count is asked.</summary>
internal static class SpoiltRows
{
    // Common practice of the bench, without accents, in the languages of the lexicon: words of five letters and more are beginnings, shorter ones whole words.
    private const int ShortestBeginning = 5;

    private static readonly ImmutableArray<string> Harm = [..
        ("spill spilled spilt leak leaks leaked leaking leaky overflow overturn knocked tipped broke broken crack contaminat torn burst evaporated lost mislabel mixedup "
        + "verschutt ausgelaufen undicht ubergelaufen umgekippt umgefallen verlor verlust zerbroch gebroch kaputt geplatzt gerissen verunreinigt kontamin verwechselt "
        + "renvers fuite debord perdu perdue perte casse cassee brise brisee contamin dechir "
        + "derram fuga goteo perdio perdid roto rota rompio volco volcado "
        + "rovesciat fuoriusc perdita perso persa rotto rotta traboccat "
        + "vazou vazamento vazado perdeu perda quebro quebrado quebrada entorno transbord "
        + "rozla rozlan wylan wyciek przeciek stracon utracon pekni stluczon zanieczyszcz "
        + "gemorst gelekt lekt lek verontreinigd overgelopen dokuldu sizdi kayip kirildi spilld lackt forlorad rozlit vylit vytek ztracen rozbit tumpah bocor hilang pecah").Split(' ')];

    private static readonly HashSet<string> Anew = new(
        ("repeat redo remeasure wiederholen neu refaire recommencer repeter repetir rehacer ripetere rifare refazer powtorzyc herhalen tekrarla opakovat ulangi").Split(' '), StringComparer.Ordinal);

    // "Redone, old tube 4 broken": what was broken is not what this row is of.
    private static readonly HashSet<string> Former = new("old former previous alte altes alter vorige ancien ancienne viejo vieja anterior vecchia vecchio velho velha antigo antiga stary stara stare oude gamla stara lama".Split(' '), StringComparer.Ordinal);

    /// <summary>Asks about each of them.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Ask(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var uses = columns.ToDictionary(c => c.Index);
        foreach (var row in rows.Where(r => !r.IsLeftOut))
        {
            var remark = RemarkOf(row.Row, uses);
            if (remark is null)
                continue;
            // "Spilled - ignore" has decided already; so has a row without any result, where others have one.
            if ((!row.Signals.Exists(s => s.Readout.Value is not null || s.Readout.Below is not null) && rows.Exists(r => r.Signals.Exists(s => s.Readout.Value is not null))) || NotToUse.Says(remark))
            {
                row.IsLeftOut = source.Talk.Assume("spoilt:" + row.Written, Codes.OddCell, $"{row.Written} (row {History.Ordinal.Text(row.Row.Number)}) is left out, as its remark says: “{remark}”.", ["leave-out", "keep"], row.Written) == "leave-out";
                continue;
            }

            var answer = source.Talk.Ask("spoilt:" + row.Written, Codes.OddCell, $"{row.Written} (row {History.Ordinal.Text(row.Row.Number)}) has the remark “{remark}”. Leave it out, or does its result count?", ["leave-out", "keep"], row.Written);
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    private static string? RemarkOf(GridRow row, Dictionary<int, Column> uses)
    {
        for (var i = 0; i < row.Cells.Length; i++)
        {
            if (row.Cells[i] is { Kind: CellKind.Text, IsBlank: false } cell && SaysSo(cell.Text, uses.GetValueOrDefault(i)))
                return cell.Text;
        }

        return null;
    }

    // A code or a number says it only with words beside it; "repeat 2" is a replicate anywhere but in a remark.
    private static bool SaysSo(string text, Column? column)
    {
        var isRemark = column is null || column.Property == SampleProperties.Remark || column.Use is ColumnUse.NotUnderstood;
        if (!isRemark && (!Lexicon.HasSpace(text) || column!.Use is ColumnUse.Role or ColumnUse.Position || (column.Property?.Holds == Holds.Words && column.Use != ColumnUse.Code)))
            return false;
        return SaysSo(Lexicon.Tokens(text), isRemark);
    }

    private static bool SaysSo(ImmutableArray<string> tokens, bool isRemark)
    {
        return !tokens.Any(Former.Contains) && tokens.Where((t, i) => (Harm.Any(h => h.Length >= ShortestBeginning ? t.StartsWith(h, StringComparison.Ordinal) : t == h) || (isRemark && Anew.Contains(t))) && !(i > 0 && Lexicon.Denials.Contains(tokens[i - 1])) && !(i > 1 && Lexicon.Denials.Contains(tokens[i - 2]))).Any();
    }
}
