using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Holdfast.Reports.Tests.Workbooks;

/// <summary>Works a workbook's formulas out from the numbers that were typed in, as a spreadsheet does (ECMA-376 part 1, 18.17); what a formula remembers is not used.</summary>
internal sealed class SheetFormulas
{
    private readonly Dictionary<(string Sheet, string Cell), Cell> cells = [];
    private readonly Dictionary<string, string> names = new(StringComparer.OrdinalIgnoreCase);

    public SheetFormulas(SpreadsheetDocument file)
    {
        var book = file.WorkbookPart!;
        foreach (var sheet in book.Workbook!.Sheets!.Elements<Sheet>())
        {
            foreach (var cell in ((WorksheetPart)book.GetPartById(sheet.Id!.Value!)).Worksheet!.Descendants<Cell>())
                cells[(sheet.Name!.Value!, cell.CellReference!.Value!)] = cell;
        }

        foreach (var name in book.Workbook.DefinedNames?.Elements<DefinedName>() ?? [])
            names[name.Name!.Value!] = name.Text;
    }

    /// <summary>Every cell with a formula: where it stands, what it says, what it remembers.</summary>
    public IEnumerable<(string Sheet, string Cell, string Formula, double Remembered)> All
        => cells.Where(c => c.Value.CellFormula is not null).Select(c => (c.Key.Sheet, c.Key.Cell, c.Value.CellFormula!.Text, double.Parse(c.Value.CellValue!.Text, NumberStyles.Float, CultureInfo.InvariantCulture)));

    /// <summary>The number in a cell, worked out.</summary>
    public double Of(string sheet, string cell)
    {
        var known = cells[(sheet, cell)];
        return known.CellFormula is { } formula ? new Reader(formula.Text, sheet, this).All() : double.Parse(known.CellValue!.Text, NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    /// <summary>The words in a cell; empty where there are none.</summary>
    public string Words(string sheet, string cell) => cells.TryGetValue((sheet, cell), out var known) ? known.InlineString?.InnerText ?? "" : "";

    private sealed class Reader(string text, string sheet, SheetFormulas book)
    {
        private int at;

        public double All()
        {
            var value = Sum();
            return at == text.Length ? value : throw new FormatException($"{text} at {at.ToString(CultureInfo.InvariantCulture)}");
        }

        private double Sum()
        {
            var value = Next('-') ? -Product() : Product();
            while (true)
            {
                if (Next('+'))
                    value += Product();
                else if (Next('-'))
                    value -= Product();
                else
                    return value;
            }
        }

        private double Product()
        {
            var value = Power();
            while (true)
            {
                if (Next('*'))
                    value *= Power();
                else if (Next('/'))
                    value /= Power();
                else
                    return value;
            }
        }

        private double Power()
        {
            var value = Atom();
            return Next('^') ? Math.Pow(value, Atom()) : value;
        }

        private double Atom()
        {
            if (Next('('))
                return Closed(Sum());
            var word = Word();
            if (char.IsAsciiDigit(word[0]))
                return double.Parse(word, CultureInfo.InvariantCulture);
            switch (word)
            {
                case "SQRT" when Next('('):
                    return Closed(Math.Sqrt(Sum()));
                case "AVERAGE" when Next('('):
                    var range = Word();
                    _ = Next(':');
                    return Closed(Range(range, Word()).Average());
                default:
                    return book.names.TryGetValue(word, out var place) ? Place(place) : Place(word);
            }
        }

        private IEnumerable<double> Range(string from, string to)
        {
            var (of, first) = Split(from);
            var column = string.Concat(first.TakeWhile(char.IsAsciiLetter));
            for (var row = int.Parse(first.AsSpan(column.Length), CultureInfo.InvariantCulture); row <= int.Parse(to.AsSpan(column.Length), CultureInfo.InvariantCulture); row++)
                yield return book.Of(of, column + row.ToString(CultureInfo.InvariantCulture));
        }

        private double Place(string address)
        {
            var (of, cell) = Split(address.Replace("$", "", StringComparison.Ordinal).Replace("'", "", StringComparison.Ordinal));
            return book.Of(of, cell);
        }

        private (string Sheet, string Cell) Split(string address) => address.Split('!') is [var of, var cell] ? (of, cell) : (sheet, address);

        private double Closed(double value) => Next(')') ? value : throw new FormatException("A bracket of " + text + " is not closed.");

        private string Word()
        {
            var from = at;
            while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '_' or '!' or '.' or '$' or '\''))
                at++;
            return at > from ? text[from..at] : throw new FormatException($"{text} at {at.ToString(CultureInfo.InvariantCulture)}");
        }

        private bool Next(char sign)
        {
            if (at >= text.Length || text[at] != sign)
                return false;
            at++;
            return true;
        }
    }
}
