namespace Holdfast.Reports.Figures;

/// <summary>A label: runs in roman or italic, on the line, lowered or raised. A plain string is taken literally; <see cref="Parse"/> reads markup.</summary>
/// <param name="Runs">The runs, in reading order.</param>
public sealed record RichText(IReadOnlyList<RichRun> Runs)
{
    /// <summary>No text.</summary>
    public static RichText Empty { get; } = new([]);

    /// <summary>All characters without style.</summary>
    public string Plain => string.Concat(Runs.Select(r => r.Text));

    /// <summary>As it is read aloud: positions become words or pauses.</summary>
    public string Spoken => Speech.OfLabel(this);

    /// <summary>A string is a literal label: only superscript and subscript characters become runs.</summary>
    /// <param name="literal">The characters.</param>
    public static implicit operator RichText(string literal) => Literal(literal);

    /// <summary>A literal label: "batch_2" stays "batch_2".</summary>
    /// <param name="literal">The characters.</param>
    public static RichText Literal(string literal)
    {
        ArgumentNullException.ThrowIfNull(literal);
        return new(RichTextReader.Literal(literal));
    }

    /// <summary>Reads markup: *italic*, _e or _{eq} lowered, ^-1 or ^{2+} raised, a backslash takes the next character literally.</summary>
    /// <param name="markup">The markup.</param>
    public static RichText Parse(string markup)
    {
        ArgumentNullException.ThrowIfNull(markup);
        return new(RichTextReader.Read(markup, symbols: false));
    }

    /// <summary>
    /// A quantity and its unit as a ratio, "q_e / (mg g^-1)": single letters of the symbol are italic, the unit is roman, in brackets when
    /// it has more than one part. The plotted number is then dimensionless (IUPAC Green Book, 3rd ed., 1.1 and 1.4).
    /// </summary>
    /// <param name="symbol">Markup of the symbol, or a word: "q_e", "F_0/F", "pH", "Absorbance".</param>
    /// <param name="unit">The unit: "mg g^-1", "mg/g", "min"; null or empty for none.</param>
    public static RichText Quantity(string symbol, string? unit)
    {
        ArgumentNullException.ThrowIfNull(symbol);
        var left = RichTextReader.Read(symbol, symbols: true);
        return string.IsNullOrWhiteSpace(unit)
            ? new(left)
            : new(RichTextReader.Join([.. left, new("\u00A0/ "), .. RichTextReader.Unit(unit, bracketed: true)]));
    }

    /// <summary>A unit alone, products by a space and divisors as negative powers: "mg/g" becomes mg g^-1.</summary>
    /// <param name="unit">The unit as written.</param>
    public static RichText Unit(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return new(RichTextReader.Unit(unit, bracketed: false));
    }

    /// <summary>This label followed by another.</summary>
    /// <param name="more">What follows.</param>
    public RichText With(RichText more)
    {
        ArgumentNullException.ThrowIfNull(more);
        return new(RichTextReader.Join([.. Runs, .. more.Runs]));
    }

    /// <inheritdoc/>
    public bool Equals(RichText? other) => other is not null && Runs.SequenceEqual(other.Runs);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Plain);

    /// <inheritdoc/>
    public override string ToString() => Plain;
}
