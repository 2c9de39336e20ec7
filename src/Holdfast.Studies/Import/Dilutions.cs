using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>
/// Whether a reported concentration holds the dilution already. An absorbance never does. A concentration is settled on evidence, a start solution of known
/// concentration, a note, or what is possible at all; otherwise it is asked, with both readings.
/// </summary>
internal static class Dilutions
{
    private const string Multiply = "multiply";
    private const string AsItIs = "as-it-is";

    /// <summary>Settles the factor of every row.</summary>
    /// <param name="rows">The rows; their dilution becomes what readings are multiplied by.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        AskAboutUnread(rows, columns, source);
        AskAboutBlanks(rows, columns, source);
        AskAboutRatios(rows, columns, source);
        Noted(rows, columns, source);
        var reported = columns.Where(c => c.Use == ColumnUse.Signal && c.Property == SpectrometryProperties.ReportedConcentration).ToList();
        // An absorbance is always of the liquid that was read, and so is what a line made of it.
        if (reported.Count == 0 || reported.TrueForAll(c => c.IsOfTheLiquidRead))
            return;
        var beside = rows.Exists(r => FactorBeside(r) is not null);
        var read = rows.Where(r => !r.IsLeftOut && r.Code is not null).Select(r => (Row: r, Own: r.Dilution ?? FactorBeside(r), Vessel: source.Known.GetValueOrDefault(r.Code!)?.Number(SpectrometryProperties.Dilution)))
            .Where(r => (r.Own ?? 1) != 1 || (r.Vessel ?? 1) != 1).Select(r => (r.Row, r.Own, r.Vessel, Value: Mean(r.Row))).Where(r => r.Value is not null).ToList();
        if (read.Count == 0)
            return;
        var example = read.Find(r => r.Row.Role is null or SampleRole.Vessel);
        if (example.Row is null)
            example = read[0];
        var factor = example.Own is > 1 ? example.Own.Value : example.Vessel ?? 1;
        var heading = columns.FirstOrDefault(c => c.Property == SpectrometryProperties.Dilution)?.Heading ?? "the dilution of the vessel sheet";
        ImmutableArray<string> consequences = [$"× {Text(factor)}: {Text(example.Value!.Value * factor)} mg/L", $"as it is: {Text(example.Value.Value)} mg/L"];
        string decision;
        if (source.Talk.Answers.To("dilution") is { } answer)
        {
            decision = answer;
            source.Talk.Ask("dilution", Codes.Ambiguous, $"Does {reported[0].Heading} hold the dilution already?", [Multiply, AsItIs], reported[0].Heading);
        }
        else if (!beside && Evidence(read, rows, reported[0], source) is var (choice, why))
        {
            decision = source.Talk.Assume("dilution", Codes.Ambiguous, choice == Multiply
                ? $"{reported[0].Heading} is of the diluted liquid and is multiplied by {heading}: {why}."
                : $"{reported[0].Heading} holds the dilution already and is not multiplied by {heading}: {why}.",
                choice == Multiply ? [Multiply, AsItIs] : [AsItIs, Multiply], heading);
            if (choice == AsItIs)
                consequences = [.. consequences.Reverse()];
        }
        else
        {
            decision = "";
            var codes = read.Select(r => r.Row.Code!).Distinct(StringComparer.Ordinal).ToImmutableArray();
            source.Talk.Ask("dilution", Codes.Ambiguous, $"{string.Join(", ", codes.Take(4))}: is the dilution already in {reported[0].Heading}, or must it be multiplied by {heading}? "
                + $"{example.Row.Written} would be {Text(example.Value.Value * factor)} or {Text(example.Value.Value)} mg/L.", [Multiply, AsItIs], codes);
            foreach (var one in read)
                one.Row.IsUndecided = true;
        }

        source.Talk.Explain("dilution", consequences);
        if (decision.Length == 0)
            return;
        // What the result holds already, an absorbance beside it does not.
        var isBesideAbsorbance = columns.Any(c => c.Use == ColumnUse.Signal && SpectrometryProperties.IsCalibrated(c.Property!.Name));
        foreach (var (row, own, vessel, _) in read)
        {
            var all = (own ?? 1) * (own is > 1 ? 1 : vessel ?? 1);
            row.DilutionOfResult = string.Equals(decision, Multiply, StringComparison.OrdinalIgnoreCase) ? all : 1;
            row.Dilution = isBesideAbsorbance ? all : row.DilutionOfResult;
        }
    }

    // "all filtrates were diluted 0.5 mL to 10 mL": one factor for all that was read, standards apart.
    private static void Noted(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (source.Layout.Notes.DilutionFactor is not { Factor: { } factor and > 1 } noted || columns.Any(c => c.Property == SpectrometryProperties.Dilution))
            return;
        var read = rows.Where(r => r is { IsLeftOut: false, Dilution: null, Role: null or SampleRole.Vessel or SampleRole.StartSolution or SampleRole.Control } && r.Signals.Count > 0).ToList();
        if (read.Count == 0 || source.Talk.Assume("dilution:noted", Codes.Ambiguous, $"All samples are taken as diluted {Text(factor)} times, as a line says: “{noted.Written}”.", ["use", "ignore"], [.. read.Take(6).Select(r => r.Written)]) != "use")
            return;
        foreach (var row in read)
            row.Dilution = factor;
    }

    // The first that speaks decides; a value called corrected says which correction only when something else agrees.
    private static (string Choice, string Why)? Evidence(
        List<(SampleRow Row, double? Own, double? Vessel, double? Value)> read, List<SampleRow> rows, Column reported, TableSource source)
    {
        var notes = source.Layout.Notes;
        // Two dilutions that differ are two stories.
        var twice = read.Exists(r => r.Own is { } own && r.Vessel is { } vessel && !own.Equals(vessel))
            || (notes.DilutionFactor?.Factor is { } noted && read.Exists(r => Math.Abs(Math.Max(r.Own ?? 1, r.Vessel ?? 1) - noted) > 0.01 * noted));
        foreach (var row in rows.Where(r => r.Role == SampleRole.StartSolution || r.Role == SampleRole.CheckStandard))
        {
            var nominal = row.Facts.GetValueOrDefault(BatchProperties.InitialConcentration.Name)?.Value ?? row.Facts.GetValueOrDefault(SpectrometryProperties.StandardConcentration.Name)?.Value ?? NumberIn(row.Written);
            if (nominal is not > 0 || Mean(row) is not { } value || row.Dilution is not > 1)
                continue;
            if (Tolerances.SameSolution(value * row.Dilution.Value, nominal.Value))
                return (Multiply, $"{row.Written} reads {Text(value)}, and {Text(value)} × {Text(row.Dilution.Value)} = {Text(value * row.Dilution.Value)} mg/L is what it was made up to");
            if (Tolerances.SameSolution(value, nominal.Value))
                return (AsItIs, $"{row.Written} reads {Text(value)} mg/L, what it was made up to");
        }

        var heading = HeadingReading.Of(reported.Heading);
        var possible = read.Select(r => (r.Value, Factor: Math.Max(r.Own ?? 1, r.Vessel ?? 1), Start: StartOf(r.Row, source))).Where(r => r.Start is > 0).ToList();
        if (possible.Count > 0 && possible.Count(r => r.Value * r.Factor > r.Start * (1 + Tolerances.Solution)) * 2 > possible.Count)
            return (AsItIs, "multiplied, it would be above the start concentration");
        if (Closes(read, source) is var (choice, what))
            return (choice, what);
        if (twice || notes.IsDilutionDoubted || heading.Has(HeadingWord.Corrected))
            return null;
        if (notes.DilutionApplied is { Applied: { } applied, Written: var line } && read.TrueForAll(r => r.Own is not null))
            return (applied ? AsItIs : Multiply, $"“{line}”");
        if (notes.Lines.FirstOrDefault(SaysOfTheLiquidRead) is { } said)
            return (Multiply, $"“{said}”");
        return heading.Has(HeadingWord.AsRead) && heading.Tokens.Any(t => t is "read" or "asread" or "raw" or "instrument" or "display" or "displayed" or "measured" or "diluted" or "gemessen" or "abgelesen" or "mesure" or "mesuree" or "medida" or "medido" or "lida" or "leida")
            ? (Multiply, "it is what the instrument showed") : null;
    }

    // "mg/L in the liquid measured", "mg/L no líquido medido".
    private static bool SaysOfTheLiquidRead(string line)
        => Lexicon.Of(line) is var words && words.Contains(HeadingWord.Liquid) && words.Overlaps([HeadingWord.AsRead, HeadingWord.Dilution]) && !words.Contains(HeadingWord.Corrected) && line.Contains("g/l", StringComparison.OrdinalIgnoreCase) && !line.Any(char.IsDigit);

    // Her own removal or uptake column fits one of the two.
    private static (string Choice, string Why)? Closes(List<(SampleRow Row, double? Own, double? Vessel, double? Value)> read, TableSource source)
    {
        foreach (var (row, own, vessel, value) in read)
        {
            if (row.Facts.GetValueOrDefault(BatchProperties.ReportedRemoval.Name)?.Value is not { } removal || StartOf(row, source) is not { } start || start <= 0)
                continue;
            var left = start * (1 - (removal / 100));
            var multiplied = value!.Value * Math.Max(own ?? 1, vessel ?? 1);
            if (Math.Abs(multiplied - left) < 0.02 * start && Math.Abs(value.Value - left) > 0.05 * start)
                return (Multiply, "the removal beside it says so");
            if (Math.Abs(value.Value - left) < 0.02 * start && Math.Abs(multiplied - left) > 0.05 * start)
                return (AsItIs, "the removal beside it says so");
        }

        return null;
    }

    private static double? StartOf(SampleRow row, TableSource source)
        => row.Facts.GetValueOrDefault(BatchProperties.InitialConcentration.Name)?.Value ?? source.Known.GetValueOrDefault(row.Code!)?.Number(BatchProperties.InitialConcentration);

    // A dilution that cannot be read is never taken for none.
    private static void AskAboutUnread(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (columns.FirstOrDefault(c => c.Use == ColumnUse.Dilution) is not { } column)
            return;
        var unread = rows.Where(r => r is { IsLeftOut: false, Dilution: null } && r.Signals.Count > 0 && r.Row.At(column.Index).Text is var text && text.Any(char.IsLetterOrDigit)).ToList();
        if (unread.Count == 0)
            return;
        var answer = source.Talk.Ask("dilution:unread", Codes.Ambiguous, $"What does {unread[0].Row.At(column.Index).Text} in {column.Heading} of {unread[0].Written} mean? Write the factor into the file, leave {(unread.Count == 1 ? "the row" : $"the {Ordinal.Text(unread.Count)} rows")} out, or say that nothing was diluted.",
            ["leave-out", "undiluted"], [.. unread.Select(r => r.Written)]);
        foreach (var row in unread)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
            row.Dilution = answer is "undiluted" ? 1 : null;
        }
    }

    private static void AskAboutBlanks(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (columns.FirstOrDefault(c => c.Use == ColumnUse.Dilution) is not { } column || !rows.Exists(r => r.Dilution is > 1))
            return;
        var blank = rows.Where(r => r is { IsLeftOut: false, Dilution: null, Role: null or SampleRole.Vessel } && r.Signals.Exists(s => s.Readout.Value is not null)).ToList();
        if (blank.Count == 0)
            return;
        var answer = source.Talk.Ask("dilution:blank", Codes.Ambiguous, $"{column.Heading} is empty for {string.Join(", ", blank.Take(4).Select(r => r.Written))}. Were they read undiluted?", ["undiluted", "leave-out"], [.. blank.Select(r => r.Written)]);
        foreach (var row in blank)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }

    // "1:4" is one part made up to four, or one part and four.
    private static void AskAboutRatios(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (columns.FirstOrDefault(c => c.Use is ColumnUse.Dilution or ColumnUse.Fact && c.Property == SpectrometryProperties.Dilution) is not { } column)
            return;
        var ratios = rows.Where(r => !r.IsLeftOut && CellParts.IsRatio(r.Row.At(column.Index).Text)).ToList();
        if (ratios.Count == 0)
            return;
        var (written, parts) = (ratios[0].Row.At(column.Index).Text, CellParts.Factor(ratios[0].Row.At(column.Index).Text));
        var answer = source.Talk.Ask("dilution:ratio", Codes.Ambiguous, $"Is {written} in {column.Heading} one part made up to {parts}, or one part and {parts} parts of water? The second is a factor of one more.", ["made-up-to", "parts-of-water"], [.. ratios.Select(r => r.Written)]);
        foreach (var row in ratios)
        {
            row.IsUndecided |= answer is null;
            if (answer is not "parts-of-water")
                continue;
            row.Dilution += 1;
            if (row.Facts.GetValueOrDefault(SpectrometryProperties.Dilution.Name) is { Value: { } factor } fact)
                row.Facts = row.Facts.SetItem(SpectrometryProperties.Dilution.Name, fact with { Value = factor + 1 });
        }
    }

    private static double? FactorBeside(SampleRow row)
    {
        foreach (var signal in row.Signals)
        {
            if (signal.Readout.Factor is { } factor)
                return factor;
        }

        return null;
    }

    private static double? Mean(SampleRow row)
    {
        var values = row.Signals.Where(s => s.Column.Property == SpectrometryProperties.ReportedConcentration && s.Readout.Value is not null).Select(s => s.Readout.Value!.Value).ToList();
        return values.Count == 0 ? null : values.Average();
    }

    // "Working solution 40": the number of the label is what it was made up to.
    private static double? NumberIn(string label)
    {
        var tokens = label.Split([' ', '_', '-'], StringSplitOptions.RemoveEmptyEntries);
        return tokens.Length > 1 && double.TryParse(new string([.. tokens[^1].TakeWhile(c => char.IsDigit(c) || c == '.')]), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    private static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
