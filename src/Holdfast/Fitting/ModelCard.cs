namespace Holdfast.Fitting;

/// <summary>The card of a curve: everything a reader needs to use it honestly.</summary>
/// <param name="Name">Name in the trade.</param>
/// <param name="Formula">The formula in one line.</param>
/// <param name="Parameters">Parameters in the order of the formula's span; at most four.</param>
/// <param name="Source">Where the formula comes from: author, journal, volume, page; "from memory" where not seen.</param>
/// <param name="Limits">Where it is valid, and what a close fit does not show.</param>
public sealed record ModelCard(string Name, string Formula, IReadOnlyList<Parameter> Parameters, string Source, string Limits)
{
    /// <summary>Other names of the same curve in other parameters. They are one curve: it is fitted, listed and counted once.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>What the abscissa is when it is not simply the concentration or the time, for example "C/Cs"; otherwise null.</summary>
    public string? Abscissa { get; init; }
}

/// <summary>What kind of thing a parameter is; it fixes the unit string and the range that a scan for starting points covers.</summary>
public enum Kind
{
    /// <summary>In the unit of y: a capacity or loading.</summary>
    Response,

    /// <summary>One over the unit of x: an affinity or a rate constant.</summary>
    PerX,

    /// <summary>In the unit of x.</summary>
    X,

    /// <summary>y over x: a slope, a partition constant.</summary>
    ResponsePerX,

    /// <summary>Without unit, around 1: an exponent or an order.</summary>
    Exponent,

    /// <summary>Without unit, between 0 and 1: a share.</summary>
    Fraction,

    /// <summary>One over the unit of y.</summary>
    PerResponse,

    /// <summary>One over the units of x and y: a second-order rate constant.</summary>
    PerXAndResponse,

    /// <summary>A unit of its own, given by the card.</summary>
    Other,
}

/// <summary>One parameter of a curve.</summary>
/// <param name="Symbol">Symbol in the formula: "qm", "k1".</param>
/// <param name="Kind">What kind of thing it is.</param>
/// <param name="Unit">Unit with {x} and {y} standing for the units of the data, for example "{y}" or "1/{x}"; "" when it has none.</param>
/// <param name="Meaning">What it means, in words.</param>
/// <param name="Above">The parameter stays above this (exclusive); null for no lower limit.</param>
/// <param name="Below">The parameter stays at or below this; null for no upper limit.</param>
public sealed record Parameter(string Symbol, Kind Kind, string Unit, string Meaning, double? Above = null, double? Below = null);
