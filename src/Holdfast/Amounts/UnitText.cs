namespace Holdfast.Amounts;

/// <summary>What a text turned out to say about a unit. A text with more than one meaning is asked about, never guessed.</summary>
public abstract record UnitText
{
    private UnitText()
    {
    }

    /// <summary>One clear unit.</summary>
    /// <param name="Unit">The unit.</param>
    /// <param name="Basis">As what and per what, where the text says so ("mg Ni/L", "mg/g dry"); null where it does not.</param>
    public sealed record Known(Unit Unit, Basis? Basis = null) : UnitText;

    /// <summary>Several meanings: the user must choose.</summary>
    /// <param name="Text">As written.</param>
    /// <param name="Candidates">What it could mean, likeliest first.</param>
    /// <param name="Question">What to ask.</param>
    public sealed record Ambiguous(string Text, IReadOnlyList<Unit> Candidates, string Question) : UnitText;

    /// <summary>There is a text, and it is no unit that is known here.</summary>
    /// <param name="Text">As written.</param>
    public sealed record Unknown(string Text) : UnitText;

    /// <summary>No text at all: nothing is said about a unit.</summary>
    public sealed record Absent : UnitText;
}
