namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Names under which the columns and settings of a measurement are kept.</summary>
internal static class ScanNames
{
    /// <summary>Columns of a scan.</summary>
    public const string TwoTheta = "2theta", Theta = "theta", Spacing = "d", Q = "Q", Counts = "counts", Background = "background";

    /// <summary>Settings of a scan.</summary>
    public const string Radiation = "radiation", Wavelength = "wavelength", Second = "wavelength of Kα2", Ratio = "ratio of Kα2 to Kα1", Radius = "goniometer radius", Use = "use", Cell = "reference cell";

    /// <summary>What a pattern is used for.</summary>
    public const string Standard = "standard for the width of the instrument";

    /// <summary>Columns and settings of a list of lines.</summary>
    public const string Width = "width", Planes = "hkl", List = "list of lines";

    /// <summary>Whose lines a list holds.</summary>
    public const string Measured = "of the powder", Reference = "of a known phase";

    /// <summary>Columns and settings of a structure.</summary>
    public const string Structure = "structure", Label = "label", Element = "element", X = "x", Y = "y", Z = "z", Occupancy = "occupancy", B = "B", Operation = "operation";
}
