namespace Holdfast.Reports.Figures.Drawing;

/// <summary>What a step of a path does.</summary>
public enum PathVerb
{
    /// <summary>Starts a piece.</summary>
    Move,

    /// <summary>A straight line.</summary>
    Line,

    /// <summary>A cubic curve.</summary>
    Curve,

    /// <summary>Back to where the piece started.</summary>
    Close,
}
