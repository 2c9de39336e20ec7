using Holdfast.Fitting;

namespace Holdfast.Linearised;

/// <summary>
/// A curve of the trade rearranged into a line. The rearrangement changes the law of error and often puts the same reading on both axes,
/// so that its R² compares with nothing. It is drawn because examiners ask for it, and never concluded from.
/// </summary>
/// <param name="Curve">Name of the curve, as on its card.</param>
/// <param name="Abscissa">What goes on x: "ln C".</param>
/// <param name="Ordinate">What goes on y: "C/q".</param>
/// <param name="Given">Symbol of the parameter that must be known before the line can be drawn, or null.</param>
/// <param name="Trap">What the rearrangement does to the data.</param>
/// <param name="X">Abscissa from x, y and the given parameter.</param>
/// <param name="Y">Ordinate from x, y and the given parameter.</param>
/// <param name="Parameters">The curve's parameters, in its card's order, from the line and the given parameter.</param>
public sealed record LinearForm(
    string Curve,
    string Abscissa,
    string Ordinate,
    string? Given,
    string Trap,
    Func<double, double, double, double> X,
    Func<double, double, double, double> Y,
    Func<StraightLine, double, double[]> Parameters)
{
    /// <summary>The usual name of the plot: "C/q on C".</summary>
    public string Name => $"{Ordinate} on {Abscissa}";

    /// <summary>The line through the transformed readings. Readings that cannot be transformed are left out and counted, never shifted.</summary>
    /// <param name="x">Concentrations or times, in the unit of the data.</param>
    /// <param name="y">Uptakes, in the unit of the data.</param>
    /// <param name="given">The parameter that <see cref="Given"/> names; without it a form that needs one cannot be drawn.</param>
    public Outcome<DisplayLine> Display(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double? given = null)
    {
        if (x.Length != y.Length)
            throw new ArgumentException($"{x.Length} abscissas and {y.Length} ordinates.", nameof(y));
        if (Given is not null && given is null)
        {
            return Outcome<DisplayLine>.None(Finding.Of("HF-487", Weight.Note,
                $"The plot {Name} needs {Given} beforehand; it is not drawn without a value from a direct fit."));
        }

        var u = new List<double>();
        var v = new List<double>();
        for (var i = 0; i < x.Length; i++)
        {
            var (a, b) = (X(x[i], y[i], given ?? 0), Y(x[i], y[i], given ?? 0));
            if (!double.IsFinite(a) || !double.IsFinite(b))
                continue;
            u.Add(a);
            v.Add(b);
        }

        var skipped = x.Length - u.Count;
        if (u.Distinct().Count() < 2)
        {
            return Outcome<DisplayLine>.None(Finding.Of("HF-487", Weight.Note,
                string.Create(System.Globalization.CultureInfo.InvariantCulture,
                    $"The plot {Name} keeps {u.Count} of {x.Length} readings; a line needs two at different abscissas.")));
        }

        var line = StraightLine.Through([.. u], [.. v]);
        Finding[] findings = skipped == 0
            ? []
            : [Finding.Of("HF-488", Weight.Caution, string.Create(System.Globalization.CultureInfo.InvariantCulture,
                $"The plot {Name} cannot show {skipped} of {x.Length} readings (zero, negative or beyond the limit); they are left out here only."))];
        return new(new(this, line, Parameters(line, given ?? 0), u, v, skipped), findings);
    }
}

/// <summary>A linear form drawn through data. For display: nothing is concluded from it.</summary>
/// <param name="Form">The rearrangement.</param>
/// <param name="Line">The line.</param>
/// <param name="Parameters">What the line would say the curve's parameters are, in the card's order.</param>
/// <param name="X">Transformed abscissas of the readings shown.</param>
/// <param name="Y">Transformed ordinates of the readings shown.</param>
/// <param name="Skipped">Readings that the rearrangement cannot show.</param>
public sealed record DisplayLine(
    LinearForm Form, StraightLine Line, IReadOnlyList<double> Parameters, IReadOnlyList<double> X, IReadOnlyList<double> Y, int Skipped)
{
    /// <summary>The label that goes with it on every figure and table.</summary>
    public const string Label = "display";
}
