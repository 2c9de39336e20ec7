namespace Holdfast.Reports.Figures;

/// <summary>What a colour is for. The colour itself comes from the <see cref="Palette"/>, so that a dark screen can change it and a file never does.</summary>
public enum Tone
{
    /// <summary>First series.</summary>
    Series1,

    /// <summary>Second series.</summary>
    Series2,

    /// <summary>Third series.</summary>
    Series3,

    /// <summary>Fourth series.</summary>
    Series4,

    /// <summary>Letters and figures.</summary>
    Text,

    /// <summary>Axes, ticks, reference lines.</summary>
    Line,

    /// <summary>Struck marks and leaders.</summary>
    Grey,

    /// <summary>Shaded zones.</summary>
    Shade,

    /// <summary>The sheet.</summary>
    Paper,
}
