using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques;

/// <summary>Rows that the student herself struck out with a word beside them: "rejected", "am Rand, verworfen".</summary>
internal static class StruckRows
{
    private const string Words = "rejected reject discarded discard excluded exclude struck omit omitted ignore ignored outlier verworfen* gestrichen ausgeschlossen ausreisser aussortiert ungultig rejete* ecarte* exclu* elimine* ignore* descartad* excluid* rechazad* eliminad* scartat* esclus* eliminat* odrzucon* wykluczon* pominiet* skreslon* weggelaten afgekeurd geschrapt vyrazen* ignorowac";
    private const string Denials = "not nicht kein keine pas no non nao nie niet";

    /// <summary>True for a row in which a cell of words says that it does not count.</summary>
    /// <param name="row">The row.</param>
    public static bool Is(GridRow row)
        => row.Cells.Any(c => c.Kind == CellKind.Text && !c.IsBlank && Says(MeasuredTable.WordsOf(c.Text)));

    private static bool Says(ImmutableArray<string> words)
        => Enumerable.Range(0, words.Length).Any(i => MeasuredTable.Has(words[i], Words) && !(i > 0 && MeasuredTable.Has(words[i - 1], Denials)));
}
