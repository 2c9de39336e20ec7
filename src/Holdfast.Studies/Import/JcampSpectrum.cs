using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>One block of a JCAMP-DX file as points, with what its own checks say.</summary>
internal sealed record JcampSpectrum
{
    /// <summary>Title of the block.</summary>
    public required string Title { get; init; }

    /// <summary>What the block says about itself, the data left out.</summary>
    public required ImmutableArray<JcampRecord> Said { get; init; }

    /// <summary>Line of the data record.</summary>
    public required int DataLine { get; init; }

    /// <summary>Heading of the abscissa, with its unit.</summary>
    public required string AbscissaHeading { get; init; }

    /// <summary>Heading of the ordinate, with its unit.</summary>
    public required string OrdinateHeading { get; init; }

    /// <summary>The points in the order of the file; y is null for a missing one.</summary>
    public required ImmutableArray<(int Line, double X, double? Y)> Points { get; init; }

    /// <summary>What the checks of the format say.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Reads a block.</summary>
    /// <param name="block">Its records, one of them data.</param>
    /// <param name="fileName">The file, for messages.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">What is needed is missing or cannot be read (HF-406), or a limit is passed (HF-407).</exception>
    public static JcampSpectrum Of(IReadOnlyList<JcampRecord> block, string fileName, CancellationToken cancel)
    {
        var data = block.First(r => r.IsData);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (!JcampRecord.IsClosed(block))
            findings.Add(Caution("The file ends without END: it may have been cut off. Compare the number of points with the instrument's."));
        var labels = new JcampLabels(block, fileName);
        var equallySpaced = data.Value.Replace(" ", "", StringComparison.Ordinal).StartsWith("(X++", StringComparison.OrdinalIgnoreCase);
        var points = equallySpaced ? EquallySpaced(data, labels, fileName, findings, cancel) : Pairs(data, labels, fileName, cancel);
        if (points.IsEmpty)
            throw new StudyException(Codes.Unreadable, $"{fileName} has a data record without points, so nothing is taken in. Export the spectrum again.");
        Compare(labels, points, findings);
        return new()
        {
            Title = labels.Words("TITLE") ?? "",
            Said = [.. block.Where(r => r is { IsData: false, IsAside: false, Value.Length: > 0 })],
            DataLine = data.Line,
            AbscissaHeading = JcampLabels.Heading(labels.Words("XUNITS"), "x"),
            OrdinateHeading = JcampLabels.Heading(labels.Words("YUNITS"), "y"),
            Points = points,
            Findings = findings.ToImmutable(),
        };
    }

    private static ImmutableArray<(int Line, double X, double? Y)> EquallySpaced(
        JcampRecord data, JcampLabels labels, string fileName, ImmutableArray<Finding>.Builder findings, CancellationToken cancel)
    {
        double first = labels.Needed("FIRSTX"), end = labels.Needed("LASTX"), stated = labels.Needed("NPOINTS");
        var (xFactor, yFactor) = (labels.Number("XFACTOR") ?? 1, labels.Number("YFACTOR") ?? 1);
        var ordinates = new JcampOrdinates(fileName);
        foreach (var (number, text) in data.Following)
        {
            cancel.ThrowIfCancellationRequested();
            ordinates.Read(number, text);
        }

        var count = ordinates.Values.Count;
        foreach (var (line, says, summed) in ordinates.FailedChecks.Take(1))
        {
            findings.Add(Caution(string.Create(CultureInfo.InvariantCulture,
                $"Line {line} begins with {says}, the differences before it give {summed}: {ordinates.FailedChecks.Count} of {ordinates.Checks} checks fail. Export it again.")));
        }

        // Cut off at the end, the stated number of points gives the step; with a wrong number, the points that are there do.
        var step = Step(first, end, stated);
        if (count != stated)
        {
            if (Misplaced(ordinates, first, step, xFactor).Count > 0 && Misplaced(ordinates, first, Step(first, end, count), xFactor).Count == 0)
                step = Step(first, end, count);
            findings.Add(Caution(string.Create(CultureInfo.InvariantCulture, $"NPOINTS says {stated}, {count} ordinates are there: look whether the spectrum is whole.")));
        }

        var misplaced = Misplaced(ordinates, first, step, xFactor);
        if (misplaced.Count > 0 && count != stated)
        {
            throw new StudyException(Codes.Unreadable, string.Create(CultureInfo.InvariantCulture,
                $"{fileName}: from line {misplaced[0]} on, x does not continue, and {count} of {stated} points are there: lines are missing. Nothing is taken in."));
        }

        if (misplaced.Count > 0)
        {
            findings.Add(Caution(string.Create(CultureInfo.InvariantCulture,
                $"From line {misplaced[0]} on, x at the line starts contradicts LASTX {end}: {misplaced.Count} of {ordinates.LineStarts.Count} lines. Check the axis.")));
        }

        var gaps = ordinates.Values.Count(v => v.Value is null);
        if (gaps > 0)
            findings.Add(Caution($"{(gaps == 1 ? "1 ordinate is" : Ordinal.Text(gaps) + " ordinates are")} missing (?): kept as gaps."));
        return [.. ordinates.Values.Select((v, i) => (v.Line, first + i * step, v.Value * yFactor))];
    }

    private static double Step(double first, double end, double count) => count > 1 ? (end - first) / (count - 1) : 0;

    // Lines whose abscissa lies farther from its place than half a step or half its last digit.
    private static List<int> Misplaced(JcampOrdinates ordinates, double first, double step, double xFactor)
        => [.. ordinates.LineStarts.Where(s => Math.Abs(s.Written * xFactor - (first + s.Index * step)) > Math.Max(Math.Abs(step) / 2, Math.Abs(s.LastDigit * xFactor) / 2))
            .Select(s => s.Line)];

    private static ImmutableArray<(int Line, double X, double? Y)> Pairs(JcampRecord data, JcampLabels labels, string fileName, CancellationToken cancel)
    {
        var (xFactor, yFactor) = (labels.Number("XFACTOR") ?? 1, labels.Number("YFACTOR") ?? 1);
        var points = ImmutableArray.CreateBuilder<(int, double, double?)>();
        (int Line, double X)? open = null;
        foreach (var (number, text) in data.Following)
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var word in text.Split([' ', '\t', ',', ';'], StringSplitOptions.RemoveEmptyEntries))
            {
                if (!double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
                    throw new StudyException(Codes.Unreadable, $"Line {Ordinal.Text(number)} of {fileName} holds '{word}' among its pairs, so nothing is taken in. Export it again.");
                if (open is { } x)
                {
                    points.Add((x.Line, x.X * xFactor, value * yFactor));
                    open = null;
                }
                else
                    open = (number, value);
            }

            if (points.Count > Limits.Rows)
                throw Limits.Exceeded(fileName, $"more than {Ordinal.Text(Limits.Rows)} points");
        }

        return open is { } alone
            ? throw new StudyException(Codes.Unreadable, $"Line {Ordinal.Text(alone.Line)} of {fileName} holds an x without its y, so nothing is taken in. Export it again.")
            : points.ToImmutable();
    }

    // These labels are wrong in many honest files: worth a word, no more.
    private static void Compare(JcampLabels labels, ImmutableArray<(int Line, double X, double? Y)> points, ImmutableArray<Finding>.Builder findings)
    {
        var factor = Math.Abs(labels.Number("YFACTOR") ?? 1);
        double[] y = [.. points.Select(p => p.Y).OfType<double>()];
        if (y.Length == 0)
            return;
        foreach (var (label, found) in new[] { ("FIRSTY", points[0].Y), ("MAXY", y.Max()), ("MINY", y.Min()) })
        {
            if (labels.Number(label) is { } says && found is { } value && Math.Abs(says - value) > factor * 1.0001 + 1e-6 * Math.Abs(value))
            {
                findings.Add(Finding.Of(Codes.OddCell, Weight.Note, string.Create(CultureInfo.InvariantCulture,
                    $"{label} says {says:G6}, the points say {value:G6}: the points count.")));
            }
        }
    }

    private static Finding Caution(string sentence) => Finding.Of(Codes.OddCell, Weight.Caution, sentence);
}
